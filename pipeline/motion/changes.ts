// What of a picture changes from one frame to the next, as the smallest box of whole pixels that holds it.
import { type Bounds, holds, meet, union } from './bounds.js';
import { lookOf, seen, type View } from './frame-svg.js';
import type { Leaf, Scene } from './scene.js';
import type { State } from './timeline.js';

/** In pixels of the frame. */
export interface Box {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** Where anything is seen; undefined where nothing is. */
export function seenBox(scene: Scene, state: State, scale: number): Box | undefined {
  const there = scene.leaves.filter((leaf) => seen(leaf, state));
  if (there.length === 0) return undefined;
  const all: Bounds = { left: 0, top: 0, right: scene.width, bottom: scene.height };
  return boxOf(there.some((leaf) => !leaf.ink) ? all : there.map((leaf): Bounds => leaf.ink!).reduce(union), scene, scale);
}

/** What has to be drawn anew, how much of the whole is there left aside; undefined where nothing has. */
export function changedBox(scene: Scene, before: State | undefined, after: State, scale: number): Box | undefined {
  if (!before) return seenBox(scene, after, scale);
  const there = (leaf: Leaf): boolean => seen(leaf, before) || seen(leaf, after);
  const changed = scene.leaves.filter((leaf) => there(leaf) && lookOf(leaf, before) !== lookOf(leaf, after));
  if (changed.length === 0) return undefined;
  const all: Bounds = { left: 0, top: 0, right: scene.width, bottom: scene.height };
  if (changed.some((leaf) => !leaf.ink)) return boxOf(all, scene, scale);
  let box = changed.map((leaf): Bounds => leaf.ink!).reduce(union);
  // A slanted edge cut by the box would be reckoned from another point than in the whole, and a pixel of it could differ by one.
  const slanted = scene.leaves.filter((leaf) => seen(leaf, after) && !leaf.ink?.straight && !(leaf.role === 'panel' && leaf.element === 'rect'));
  for (let grown = true; grown;) {
    grown = false;
    for (const { ink } of slanted) {
      if (!ink) return boxOf(all, scene, scale);
      if (!meet(box, ink) || holds(box, ink)) continue;
      box = union(box, ink);
      grown = true;
    }
  }
  return boxOf(box, scene, scale);
}

/** Edges at even pixels, as animated WebP has them, and a pixel of air within. */
function boxOf({ left, top, right, bottom }: Bounds, { width, height }: Scene, scale: number): Box | undefined {
  const low = (n: number): number => Math.max(0, 2 * Math.floor((n * scale - 1) / 2));
  const high = (n: number, most: number): number => Math.min(most * scale, 2 * Math.ceil((n * scale + 1) / 2));
  const [x, y, endX, endY] = [low(left), low(top), high(right, width), high(bottom, height)];
  return endX > x && endY > y ? { left: x, top: y, width: endX - x, height: endY - y } : undefined;
}

export function viewOf({ left, top, width, height }: Box, scale: number): View {
  return { left: left / scale, top: top / scale, right: (left + width) / scale, bottom: (top + height) / scale, width, height };
}

/** Both together. */
export function joined(a: Box | undefined, b: Box | undefined): Box | undefined {
  if (!a || !b) return a ?? b;
  const [left, top] = [Math.min(a.left, b.left), Math.min(a.top, b.top)];
  return { left, top, width: Math.max(a.left + a.width, b.left + b.width) - left, height: Math.max(a.top + a.height, b.top + b.height) - top };
}
