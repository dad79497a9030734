// A cubic curve from 0 0 to 1 1, given by its two inner points as in CSS (Easing Functions Level 1), solved by halving.

export type Easing = readonly [x1: number, y1: number, x2: number, y2: number];

/** The curve's height over `x`, both 0 to 1; never outside, so that no bar overshoots its length. */
export function ease([x1, y1, x2, y2]: Easing, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  let [low, high] = [0, 1];
  for (let i = 0; i < 40; i++) {
    const t = (low + high) / 2;
    if (curve(x1, x2, t) < x) low = t;
    else high = t;
  }
  return Math.min(1, Math.max(0, curve(y1, y2, (low + high) / 2)));
}

function curve(a: number, b: number, t: number): number {
  const s = 1 - t;
  return 3 * s * s * t * a + 3 * s * t * t * b + t * t * t;
}
