// The normal distribution.

/** Probability that a standard normal value is below x, to about 1e-14. */
export function normalBelow(x: number): number {
  const z = Math.abs(x);
  if (z > 38) return x < 0 ? 0 : 1;
  const tail = z < 3 ? 0.5 - density(z) * series(z) : density(z) * fraction(z);
  return x < 0 ? tail : 1 - tail;
}

function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Φ(z) − ½ over the density: z + z³/3 + z⁵/(3·5) … */
function series(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; term > 1e-17 * sum; k += 2) sum += term *= (z * z) / k;
  return sum;
}

/** 1 − Φ(z) over the density, by Laplace's continued fraction. */
function fraction(z: number): number {
  let f = z;
  for (let k = 120; k > 0; k--) f = z + k / f;
  return 1 / f;
}
