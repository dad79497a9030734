// A finished picture taken apart into what moves: its leaves in order, each with its role and where it leaves ink.
import { identity, type Matrix, multiply, readTransform } from '../theme/matrix.js';
import { type Attributes, tags, type Tag, writeAttributes } from '../theme/xml.js';
import { type Ink, inkOf } from './bounds.js';
import { isRole, type RoleName, usualRole } from './roles.js';

/** The opening of a group; the group as it is when it is moved, if it moves. */
interface Open {
  kind: 'open';
  text: string;
  /** Set on the group that bears the mark of a role which moves what is inside. */
  moved?: Moved;
}

interface Moved {
  role: RoleName;
  /** Zero line of what grows: `x 412.5` or `y 900`. */
  zero?: { axis: 'x' | 'y'; at: number };
  /** From where to where a line is uncovered. */
  span?: { from: number; to: number };
}

export interface Leaf {
  kind: 'leaf';
  role: RoleName;
  element: string;
  attributes: Attributes;
  /** What stands inside it; empty for shapes. */
  inside: string;
  moved?: Moved;
  /** Where it is when all is built; undefined where that cannot be told. */
  ink?: Ink;
}

export type Piece = Open | Leaf | { kind: 'close'; moved: boolean } | { kind: 'raw'; text: string };

export interface Scene {
  width: number;
  height: number;
  pieces: Piece[];
  leaves: Leaf[];
}

/** Kept as they are, and drawn with whatever refers to them. */
const definitions: ReadonlySet<string> = new Set(['defs', 'clipPath', 'linearGradient', 'radialGradient', 'mask', 'pattern', 'style', 'symbol', 'filter']);
const words: ReadonlySet<string> = new Set(['title', 'desc', 'metadata']);
const groups: ReadonlySet<string> = new Set(['g', 'a', 'svg']);
const handedDown = ['stroke', 'stroke-width', 'fill-opacity', 'stroke-opacity', 'stroke-linecap'] as const;

interface Level {
  matrix: Matrix | undefined;
  styles: Attributes;
  role?: RoleName;
  moved?: Moved;
}

/** `svg` is a whole picture, well-formed, with its size in its viewBox. Throws on a mark that names no role, which is a mistake of a template. */
export function sceneOf(svg: string): Scene {
  const all = [...tags(svg)];
  const root = all[0];
  const size = /^\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*$/.exec(root?.attributes.viewBox ?? '');
  if (root?.name !== 'svg' || !size) throw new Error('a picture that moves needs a viewBox from 0 0');
  const scene: Scene = { width: Number(size[1]), height: Number(size[2]), pieces: [], leaves: [] };
  const stack: Level[] = [{ matrix: identity, styles: {} }];
  for (let i = 1; i < all.length - 1; i++) {
    const tag = all[i]!;
    if (tag.kind === 'close') {
      scene.pieces.push({ kind: 'close', moved: stack.pop()!.moved !== undefined });
      continue;
    }
    if (words.has(tag.name) || definitions.has(tag.name)) {
      const end = closing(all, i);
      if (definitions.has(tag.name)) scene.pieces.push({ kind: 'raw', text: svg.slice(tag.start, all[end]!.end) });
      i = end;
      continue;
    }
    const above = stack.at(-1)!;
    const marked = markOf(tag);
    if (groups.has(tag.name)) {
      if (tag.kind === 'empty') continue;
      const { 'data-build': _role, 'data-zero': _zero, 'data-span': _span, class: _class, ...rest } = tag.attributes;
      scene.pieces.push({ kind: 'open', text: `<${tag.name}${writeAttributes(rest)}>`, ...(marked?.moves && { moved: marked.moved }) });
      stack.push({ matrix: placed(above.matrix, tag), styles: { ...above.styles, ...stylesOf(tag.attributes) }, role: marked?.role ?? above.role, ...(marked?.moves && { moved: marked.moved }) });
      continue;
    }
    const end = closing(all, i);
    const { 'data-build': _role, 'data-zero': _zero, 'data-span': _span, class: _class, ...attributes } = tag.attributes;
    const full = { ...above.styles, ...attributes };
    const first = tag.name === 'rect' && scene.leaves.length === 0;
    const matrix = placed(above.matrix, tag);
    const ink = matrix && inkOf(tag.name, full, matrix);
    const leaf: Leaf = {
      kind: 'leaf', element: tag.name, inside: tag.kind === 'open' ? svg.slice(tag.end, all[end]!.start) : '',
      role: marked?.role ?? above.role ?? (first ? 'panel' : usualRole(tag.name, /tnum/.test(tag.attributes['font-feature-settings'] ?? ''))),
      attributes: { ...inherited(above.styles, ['fill-opacity', 'stroke-opacity']), ...attributes },
      ...(marked?.moves && { moved: marked.moved }), ...(ink && { ink }),
    };
    scene.pieces.push(leaf);
    scene.leaves.push(leaf);
    i = end;
  }
  return scene;
}

/** Whether a leaf, or a group around it, moves rather than fades. */
function markOf({ attributes: a, name }: Tag): { role: RoleName; moves: boolean; moved: Moved } | undefined {
  const role = a['data-build'];
  if (role === undefined) return undefined;
  if (!isRole(role)) throw new Error(`<${name}> is marked to build as "${role}", which is no role`);
  const zero = /^([xy]) (-?[\d.]+)$/.exec(a['data-zero'] ?? '');
  const span = /^(-?[\d.]+) (-?[\d.]+)$/.exec(a['data-span'] ?? '');
  if (role === 'bars' && !zero) throw new Error(`<${name}> is to grow and has no data-zero`);
  if (role === 'line' && !span) throw new Error(`<${name}> is to be uncovered and has no data-span`);
  return {
    role, moves: role === 'bars' || role === 'line',
    moved: { role, ...(zero && { zero: { axis: zero[1] as 'x' | 'y', at: Number(zero[2]) } }), ...(span && { span: { from: Number(span[1]), to: Number(span[2]) } }) },
  };
}

function placed(above: Matrix | undefined, { attributes }: Tag): Matrix | undefined {
  if (!above) return undefined;
  try {
    return multiply(above, readTransform(attributes.transform));
  } catch {
    // A transform that is not read here: what is inside may be anywhere.
    return undefined;
  }
}

function stylesOf(attributes: Attributes): Attributes {
  return inherited(attributes, handedDown);
}

function inherited(attributes: Attributes, names: readonly string[]): Attributes {
  return Object.fromEntries(names.filter((k) => attributes[k] !== undefined).map((k) => [k, attributes[k]!]));
}

/** Index of the tag that ends the element begun at `from`. */
function closing(all: readonly Tag[], from: number): number {
  if (all[from]!.kind === 'empty') return from;
  let depth = 0;
  for (let i = from; i < all.length; i++) {
    if (all[i]!.kind === 'open') depth++;
    else if (all[i]!.kind === 'close' && --depth === 0) return i;
  }
  throw new Error(`<${all[from]!.name}> is not closed`);
}
