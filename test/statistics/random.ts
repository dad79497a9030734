// A seeded generator for simulated truth: every run of a test draws the same numbers.

export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/** Marsaglia's xorshift on 32 bits with a Weyl sequence (xorwow, Journal of Statistical Software 8 (2003)); normal values by his polar method. */
export function random(seed: number): Random {
  let [x, y, z, w, v, d] = [123456789 ^ seed, 362436069, 521288629, 88675123, 5783321 ^ Math.imul(seed, 2654435761), 6615241 + seed];
  let spare: number | undefined;
  const uniform = (): number => {
    const t = x ^ (x >>> 2);
    [x, y, z, w] = [y, z, w, v];
    v = v ^ (v << 4) ^ (t ^ (t << 1));
    d = (d + 362437) | 0;
    return ((d + v) >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 20; i++) uniform();
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const [a, b] = [2 * uniform() - 1, 2 * uniform() - 1];
      const s = a * a + b * b;
      if (s >= 1 || s === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(s)) / s);
      spare = b * scale;
      return a * scale;
    }
  };
  return { uniform, normal };
}
