// Where an element of a picture can leave ink, never too small: for choosing what has to be drawn again.
import { apply, type Matrix } from '../theme/matrix.js';
import type { Attributes } from '../theme/xml.js';

export interface Bounds {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

export interface Ink extends Bounds {
  /** Only upright and level edges: it may be cut anywhere and still looks the same to the last bit. */
  straight: boolean;
}

/** In the picture's own units; undefined for what has no shape that is known here, which then counts as everywhere. */
export function inkOf(element: string, a: Attributes, matrix: Matrix): Ink | undefined {
  const shape = shapeOf(element, a);
  if (!shape) return undefined;
  const { points, straight } = shape;
  const scale = Math.max(Math.hypot(matrix[0], matrix[1]), Math.hypot(matrix[2], matrix[3]));
  // A mitre reaches as far as its limit, 4 by default, and a square cap less.
  const stroke = a.stroke && a.stroke !== 'none' ? number(a['stroke-width'], 1) * scale * (straight ? 1 : 2) : 0;
  const placed = points.map(([x, y]) => apply(matrix, x, y));
  const xs = placed.map((p) => p.x);
  const ys = placed.map((p) => p.y);
  const upright = matrix[1] === 0 && matrix[2] === 0;
  return { left: least(xs) - stroke, top: least(ys) - stroke, right: -least(xs.map((x) => -x)) + stroke, bottom: -least(ys.map((y) => -y)) + stroke, straight: straight && upright };
}

function least(list: readonly number[]): number {
  return list.reduce((m, n) => (n < m ? n : m), Infinity);
}

export function union(a: Bounds, b: Bounds): Bounds {
  return { left: Math.min(a.left, b.left), top: Math.min(a.top, b.top), right: Math.max(a.right, b.right), bottom: Math.max(a.bottom, b.bottom) };
}

export function meet(a: Bounds, b: Bounds): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

export function holds(a: Bounds, b: Bounds): boolean {
  return a.left <= b.left && a.top <= b.top && a.right >= b.right && a.bottom >= b.bottom;
}

type Point = [number, number];

function shapeOf(element: string, a: Attributes): { points: Point[]; straight: boolean } | undefined {
  const n = (name: string): number => number(a[name]);
  switch (element) {
    case 'rect': return { points: corners(n('x'), n('y'), n('x') + n('width'), n('y') + n('height')), straight: !a.rx && !a.ry };
    case 'line': return { points: [[n('x1'), n('y1')], [n('x2'), n('y2')]], straight: (n('x1') === n('x2') || n('y1') === n('y2')) && !/round/.test(a['stroke-linecap'] ?? '') };
    case 'circle': return { points: corners(n('cx') - n('r'), n('cy') - n('r'), n('cx') + n('r'), n('cy') + n('r')), straight: false };
    case 'ellipse': return { points: corners(n('cx') - n('rx'), n('cy') - n('ry'), n('cx') + n('rx'), n('cy') + n('ry')), straight: false };
    case 'polyline': case 'polygon': {
      const list = numbers(a.points ?? '');
      return { points: list.flatMap((x, i): Point[] => (i % 2 === 0 ? [[x, list[i + 1] ?? 0]] : [])), straight: false };
    }
    case 'path': return pathPoints(a.d ?? '');
    default: return undefined;
  }
}

function corners(left: number, top: number, right: number, bottom: number): Point[] {
  return [[left, top], [right, top], [left, bottom], [right, bottom]];
}

const takes: Record<string, number> = { M: 2, L: 2, H: 1, V: 1, C: 6, Q: 4, A: 7, Z: 0 };

/** Ends and control points, between which a curve lies; arcs with their radii all round. Undefined for what is no path, and for smooth curves, whose control points are not written. */
function pathPoints(d: string): { points: Point[]; straight: boolean } | undefined {
  const points: Point[] = [];
  let straight = true;
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter = '', list = ''] of d.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const command = letter.toUpperCase();
    const count = takes[command];
    if (count === undefined) return undefined;
    const args = command === 'A' ? arcNumbers(list) : numbers(list);
    if (count === 0) {
      [x, y] = [startX, startY];
      continue;
    }
    if (args.length === 0 || args.length % count !== 0) return undefined;
    for (let i = 0; i < args.length; i += count) {
      const [dx, dy] = letter === command ? [0, 0] : [x, y];
      const g = args.slice(i, i + count);
      if (command === 'H') x = dx + g[0]!;
      else if (command === 'V') y = dy + g[0]!;
      else if (command === 'A') {
        straight = false;
        points.push(...corners(x - g[0]! * 2, y - g[1]! * 2, x + g[0]! * 2, y + g[1]! * 2));
        [x, y] = [dx + g[5]!, dy + g[6]!];
      } else {
        for (let j = 0; j < count - 2; j += 2) points.push([dx + g[j]!, dy + g[j + 1]!]);
        const [toX, toY] = [dx + g[count - 2]!, dy + g[count - 1]!];
        if (command !== 'M' || i > 0) straight &&= command === 'L' || command === 'M' ? toX === x || toY === y : false;
        [x, y] = [toX, toY];
        if (command === 'M' && i === 0) [startX, startY] = [x, y];
      }
      points.push([x, y]);
    }
  }
  return points.length ? { points, straight } : undefined;
}

function numbers(text: string): number[] {
  return (text.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? []).map(Number);
}

/** The two flags of an arc may stand without a space before what follows. */
function arcNumbers(text: string): number[] {
  const arc = /\s*([-+\d.e]+)[\s,]*([-+\d.e]+)[\s,]+([-+\d.e]+)[\s,]+([01])[\s,]*([01])[\s,]*([-+]?[\d.]+(?:e[-+]?\d+)?)[\s,]*([-+]?[\d.]+(?:e[-+]?\d+)?)/gi;
  return [...text.matchAll(arc)].flatMap((m) => m.slice(1).map(Number));
}

function number(text: string | undefined, fallback = 0): number {
  const n = parseFloat(text ?? '');
  return Number.isFinite(n) ? n : fallback;
}
