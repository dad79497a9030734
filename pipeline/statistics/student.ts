// Student's t distribution: how far means of few values may stray.

/** Beyond this many degrees of freedom t is the normal distribution to nine digits. */
const asGoodAsNormal = 1e8;

/** Probability that |t| with `dof` degrees of freedom (any number above 0, Infinity included) is larger than |t|. */
export function twoSidedP(t: number, dof: number): number {
  if (dof > asGoodAsNormal) return twoSidedP(t, asGoodAsNormal);
  return incompleteBeta(dof / (dof + t * t), dof / 2, 0.5);
}

const factors = new Map<number, Map<number, number>>();
/** Effective degrees of freedom are any number at all: a long process would keep them without end. */
const mostFactors = 10_000;

/** The factor t that |t| exceeds with probability 1−level (0.95: 4.303 for 2 degrees of freedom). Throws RangeError for dof ≤ 0. */
export function tFactor(level: number, dof: number): number {
  if (!(dof > 0)) throw new RangeError(`no t for ${dof} degrees of freedom`);
  let known = factors.get(level);
  if (!known || known.size >= mostFactors) factors.set(level, (known = new Map()));
  let t = known.get(dof);
  if (t === undefined) known.set(dof, (t = searched(level, dof)));
  return t;
}

function searched(level: number, dof: number): number {
  let low = 0;
  let high = 1;
  while (twoSidedP(high, dof) > 1 - level && high < 1e12) high *= 2;
  for (let i = 0; i < 100 && high - low > 1e-13 * high; i++) {
    const middle = (low + high) / 2;
    if (twoSidedP(middle, dof) > 1 - level) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The degrees of freedom, from 0.001 to `most`, whose factor of `level` is t: the inverse of `tFactor`. `most` where t is no more than the normal factor. */
export function dofOfFactor(t: number, level: number, most = Infinity): number {
  if (t <= tFactor(level, Infinity)) return most;
  let low = 1e-3;
  let high = Math.min(most, asGoodAsNormal);
  for (let i = 0; i < 100 && high - low > 1e-12 * high; i++) {
    const middle = Math.sqrt(low * high);
    if (twoSidedP(t, middle) > 1 - level) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/** Welch–Satterthwaite: degrees of freedom of a sum of squared standard uncertainties (JCGM 100:2008, G.4); Infinity where none scatters. */
export function effectiveDof(parts: readonly { u2: number; dof: number }[]): number {
  const total = parts.reduce((s, p) => s + p.u2, 0);
  const bottom = parts.reduce((s, p) => s + (p.u2 === 0 || p.dof === Infinity ? 0 : p.u2 ** 2 / p.dof), 0);
  return bottom === 0 ? Infinity : total ** 2 / bottom;
}

/** Regularised incomplete beta function by its continued fraction, evaluated after Lentz. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || tiny);
  let f = d;
  for (let m = 1; m <= 500; m++) {
    const steps = [(m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)), (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))];
    let change = 1;
    for (const s of steps) {
      d = 1 / (1 + s * d || tiny);
      c = 1 + s / c || tiny;
      change = c * d;
      f *= change;
    }
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return (Math.exp(a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b)) * f) / a;
}

/** ln Γ(x) for x > 0: Stirling's series after shifting x above 12. */
export function logGamma(x: number): number {
  let shift = 0;
  let y = x;
  for (; y < 12; y++) shift += Math.log(y);
  const z = 1 / (y * y);
  return (y - 0.5) * Math.log(y) - y + 0.5 * Math.log(2 * Math.PI) + (1 / 12 - z * (1 / 360 - z * (1 / 1260 - z * (1 / 1680 - z / 1188)))) / y - shift;
}
