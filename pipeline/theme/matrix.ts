// Transforms as SVG writes them.

/** a b c d e f, as in SVG's matrix(). */
export type Matrix = readonly [number, number, number, number, number, number];

export const identity: Matrix = [1, 0, 0, 1, 0, 0];

export function multiply(m: Matrix, n: Matrix): Matrix {
  return [
    m[0] * n[0] + m[2] * n[1], m[1] * n[0] + m[3] * n[1],
    m[0] * n[2] + m[2] * n[3], m[1] * n[2] + m[3] * n[3],
    m[0] * n[4] + m[2] * n[5] + m[4], m[1] * n[4] + m[3] * n[5] + m[5],
  ];
}

export function apply(m: Matrix, x: number, y: number): { x: number; y: number } {
  return { x: m[0] * x + m[2] * y + m[4], y: m[1] * x + m[3] * y + m[5] };
}

/** Reads translate, scale, rotate (about the origin) and matrix; throws on any other, which would move text unseen. */
export function readTransform(text: string | undefined): Matrix {
  let m = identity;
  for (const [, name, list] of (text ?? '').matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const n = list!.trim().split(/[\s,]+/).map(Number);
    const [a = 0, b] = n;
    if (name === 'translate') m = multiply(m, [1, 0, 0, 1, a, b ?? 0]);
    else if (name === 'scale') m = multiply(m, [a, 0, 0, b ?? a, 0, 0]);
    else if (name === 'rotate' && n.length === 1) {
      const t = (a * Math.PI) / 180;
      m = multiply(m, [Math.cos(t), Math.sin(t), -Math.sin(t), Math.cos(t), 0, 0]);
    } else if (name === 'matrix' && n.length === 6) m = multiply(m, n as unknown as Matrix);
    else throw new Error(`transform ${name} is not supported`);
  }
  return m;
}
