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

/** Undefined where nothing changes. */
export function changedBox(scene: Scene, before: State, after: State, scale: number): Box | undefined {
  const there = (leaf: Leaf): boolean => seen(leaf, before) || seen(leaf, after);
  const changed = scene.leaves.filter((leaf) => there(leaf) && (before.whole !== after.whole || lookOf(leaf, before) !== lookOf(leaf, after)));
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
