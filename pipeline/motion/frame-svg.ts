// One frame of a picture as SVG: the whole, or only what can be seen in a part of it.
import { writeAttributes } from '../theme/xml.js';
import { type Bounds, meet } from './bounds.js';
import type { Leaf, Piece, Scene } from './scene.js';
import type { State } from './timeline.js';

/** A part of the picture, in its own units, and how many pixels it takes. */
export interface View extends Bounds {
  width: number;
  height: number;
}

export function frameSvg(scene: Scene, state: State, view: View): string {
  const inside = scene.pieces.map((piece, i) => write(scene, piece, state, view, i)).join('').replace(/<g[^>]*><\/g>/g, '');
  const whole = state.whole === 1 ? inside : `<g opacity="${state.whole}">${inside}</g>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${view.width}" height="${view.height}" viewBox="${view.left} ${view.top} ${view.right - view.left} ${view.bottom - view.top}">${state.whole === 0 ? '' : whole}</svg>`;
}

/** Whether anything of it is there. */
export function seen(leaf: Leaf, state: State): boolean {
  return state.done[leaf.role] > 0;
}

/** All that the look of a leaf depends on. */
export function lookOf(leaf: Leaf, state: State): number {
  return state.done[leaf.role];
}

function write(scene: Scene, piece: Piece, state: State, view: View, index: number): string {
  switch (piece.kind) {
    case 'raw': return piece.text;
    case 'close': return piece.moved ? '</g></g>' : '</g>';
    case 'open': return piece.moved ? piece.text + around(scene, piece.moved, state, index) : piece.text;
    case 'leaf': {
      if (!seen(piece, state) || (piece.ink && !meet(piece.ink, view))) return '';
      const { element, inside } = piece;
      const fades = piece.role !== 'bars' && piece.role !== 'line';
      const attributes = fades ? faded(piece.attributes, state.done[piece.role]) : piece.attributes;
      const own = `<${element}${writeAttributes(attributes)}${inside ? `>${inside}</${element}>` : '/>'}`;
      return piece.moved ? `${around(scene, piece.moved, state, index)}${own}</g>` : own;
    }
  }
}

/** The opening of a group in which things are shorter, or covered from a place on. */
function around({ height, width }: Scene, moved: NonNullable<Leaf['moved']>, state: State, index: number): string {
  const done = state.done[moved.role];
  if (moved.zero) {
    const { axis, at } = moved.zero;
    if (done === 1) return '<g>';
    // A factor of nothing is no transform; what is not seen is not drawn anyway.
    const k = Math.max(done, 0.0001);
    const shift = Math.round(at * (1 - k) * 10_000) / 10_000;
    return axis === 'x' ? `<g transform="matrix(${k} 0 0 1 ${shift} 0)">` : `<g transform="matrix(1 0 0 ${k} 0 ${shift})">`;
  }
  if (moved.span && done < 1) {
    const { from, to } = moved.span;
    const id = `uncovered-${index}`;
    return `<clipPath id="${id}"><rect x="${from - width}" y="${-height}" width="${Math.round(width + (to - from) * done)}" height="${3 * height}"/></clipPath><g clip-path="url(#${id})">`;
  }
  return '<g>';
}

/** A leaf is faded by its own fill and stroke: a layer for each would have to be put together for every one of them. */
function faded(attributes: Record<string, string>, done: number): Record<string, string> {
  if (done === 1) return attributes;
  const times = (name: string): string => String(Math.round(Number(attributes[name] ?? 1) * done * 10_000) / 10_000);
  return { ...attributes, 'fill-opacity': times('fill-opacity'), 'stroke-opacity': times('stroke-opacity') };
}
