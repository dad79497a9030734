// A quantity on its way to balance: a least-squares fit of final + amplitude · e^(−t/τ), and how far off it still is.
import { correlationTime } from './autocorrelation.js';
import { mean } from './moments.js';
import { tFactor } from './student.js';

export interface Estimate {
  value: number;
  /** By the propagation of small errors; the 95 % interval is by the fit itself and need not be symmetrical. */
  standardError: number;
  /** Infinite where the series does not bound it. */
  low: number;
  high: number;
}

export interface Approach {
  final: Estimate;
  /** Value at the first time less the final one: negative for what rises. */
  amplitude: Estimate;
  /** In the unit of the times. */
  timeConstant: Estimate;
  /** Value of the curve at the last time less the final one. */
  gap: Estimate;
  /** Standard deviation of the rests. */
  rest: number;
  /** How many independent values the series counts as. */
  effective: number;
}

/** More points do not tell an exponential better once their correlation is allowed for. */
const mostPoints = 200;

/**
 * By variable projection (Golub and Pereyra 1973): for each time constant the rest is a straight line in e^(−t/τ), so one
 * number is searched. Intervals by the profile of the sum of squares, widened for autocorrelated rests. Undefined below
 * eight values and where no exponential fits better than a level or a straight line does.
 */
export function fitApproach(times: ArrayLike<number>, values: ArrayLike<number>, level = 0.95): Approach | undefined {
  const { t, y, t0, t1 } = points(times, values);
  const n = t.length;
  if (n < 8) return undefined;
  const lasted = t1 - t0;
  const at = (tau: number, origin: number): Fit => lineIn(t, y, tau, origin);
  const squares = (logTau: number): number => at(Math.exp(logTau), t0).squares;
  const [lowest, highest] = [Math.log(lasted / n / 2), Math.log(lasted * 50)];
  const best = minimum(squares, lowest, highest);
  if (best === undefined) return undefined;
  const tau = Math.exp(best);
  const fit = at(tau, t0);
  const middle = mean(y);
  const flat = y.reduce((s, v) => s + (v - middle) ** 2, 0);
  if (!(flat > 0)) return undefined;
  const time = fit.squares > flat * 1e-24 ? correlationTime(y.map((v, i) => v - fit.final - fit.size * Math.exp((t0 - t[i]!) / tau)), 3) : 1;
  const effective = n / time;
  const dof = Math.max(1, effective - 3);
  const variance = (fit.squares / (n - 3)) * time;
  const wider = tFactor(level, dof) ** 2 * variance;
  if (!(flat - fit.squares > 2 * wider)) return undefined;
  const limit = fit.squares + wider;
  const lowTau = edge(squares, best, lowest, limit);
  const highTau = edge(squares, best, highest, limit);
  const open = highTau >= highest;
  const estimate = (pick: (f: Fit) => { value: number; spread: number }, origin: number, at0: number, error: number): Estimate => {
    let [low, high] = [at0, at0];
    for (let i = 0; i <= 60; i++) {
      const f = at(Math.exp(lowTau + ((highTau - lowTau) * i) / 60), origin);
      const { value, spread } = pick(f);
      const reach = Math.sqrt(Math.max(0, limit - f.squares) * spread);
      low = Math.min(low, value - reach);
      high = Math.max(high, value + reach);
    }
    return { value: at0, standardError: error, ...(open ? unbounded(fit.size, low, high, pick === finalOf) : { low, high }) };
  };
  const errors = (origin: number): [final: number, size: number, tau: number] => linearErrors(t, tau, at(tau, origin).size, origin).map((v) => Math.sqrt(v * variance)) as [number, number, number];
  const [finalError, amplitudeError, tauError] = errors(t0);
  const end = at(tau, t1);
  return {
    final: estimate(finalOf, t0, fit.final, finalError),
    amplitude: estimate(sizeOf, t0, fit.size, amplitudeError),
    timeConstant: { value: tau, standardError: tauError, low: Math.exp(lowTau), high: open ? Infinity : Math.exp(highTau) },
    gap: estimate(sizeOf, t1, end.size, errors(t1)[1]),
    rest: Math.sqrt(fit.squares / (n - 3)), effective,
  };
}

interface Fit {
  final: number;
  size: number;
  squares: number;
  /** Variances of `final` and `size` at this time constant, for rests of variance 1. */
  finalSpread: number;
  sizeSpread: number;
}

const finalOf = (f: Fit): { value: number; spread: number } => ({ value: f.final, spread: f.finalSpread });
const sizeOf = (f: Fit): { value: number; spread: number } => ({ value: f.size, spread: f.sizeSpread });

/** A course that a straight line explains as well heads for anything from here on. */
function unbounded(size: number, low: number, high: number, isFinal: boolean): { low: number; high: number } {
  const up = size < 0 === isFinal;
  return up ? { low, high: Infinity } : { low: -Infinity, high };
}

/** Least squares of y against e^(−(t−origin)/τ). */
function lineIn(t: readonly number[], y: readonly number[], tau: number, origin: number): Fit {
  const n = t.length;
  const e = t.map((x) => Math.exp((origin - x) / tau));
  const [me, my] = [mean(e), mean(y)];
  let [see, sey, syy] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    see += (e[i]! - me) ** 2;
    sey += (e[i]! - me) * (y[i]! - my);
    syy += (y[i]! - my) ** 2;
  }
  const size = sey / see;
  return { size, final: my - size * me, squares: Math.max(0, syy - size * sey), sizeSpread: 1 / see, finalSpread: 1 / n + (me * me) / see };
}

/** Diagonal of the inverse of JᵀJ for final, size and τ. */
function linearErrors(t: readonly number[], tau: number, size: number, origin: number): [number, number, number] {
  const m = [0, 0, 0, 0, 0, 0];
  for (const x of t) {
    const e = Math.exp((origin - x) / tau);
    const d = (size * e * (x - origin)) / tau ** 2;
    [1, e, d, e * e, e * d, d * d].forEach((v, i) => (m[i]! += v));
  }
  const [a, b, c, d, e, f] = m as [number, number, number, number, number, number];
  const determinant = a * (d * f - e * e) - b * (b * f - c * e) + c * (b * e - c * d);
  return [(d * f - e * e) / determinant, (a * f - c * c) / determinant, (a * d - b * b) / determinant].map((v) => Math.max(0, v)) as [number, number, number];
}

/** The lowest point by a grid and a golden section; undefined at the borders. */
function minimum(f: (x: number) => number, low: number, high: number): number | undefined {
  const steps = 48;
  const grid = Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps);
  const heights = grid.map(f);
  let least = 0;
  heights.forEach((h, i) => {
    if (h < heights[least]!) least = i;
  });
  if (least === 0 || least === steps) return undefined;
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [grid[least - 1]!, grid[least + 1]!];
  let [x, y] = [b - golden * (b - a), a + golden * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  for (let i = 0; i < 50; i++) {
    if (fx < fy) {
      [b, y, fy] = [y, x, fx];
      x = b - golden * (b - a);
      fx = f(x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + golden * (b - a);
      fy = f(y);
    }
  }
  return (a + b) / 2;
}

/** Where f passes the limit between the lowest point and a border; the border where it does not. */
function edge(f: (x: number) => number, inside: number, border: number, limit: number): number {
  if (f(border) <= limit) return border;
  let [a, b] = [inside, border];
  for (let i = 0; i < 40; i++) {
    const middle = (a + b) / 2;
    if (f(middle) <= limit) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Values that are there, averaged down to at most 200 blocks, each at its mean time. */
function points(times: ArrayLike<number>, values: ArrayLike<number>): { t: number[]; y: number[]; t0: number; t1: number } {
  const there: number[] = [];
  for (let i = 0; i < values.length; i++) if (Number.isFinite(values[i]!)) there.push(i);
  const size = Math.ceil(there.length / mostPoints);
  const count = Math.floor(there.length / Math.max(1, size));
  const t: number[] = [];
  const y: number[] = [];
  for (let b = 0; b < count; b++) {
    const block = there.slice(b * size, (b + 1) * size);
    t.push(mean(block.map((i) => times[i]!)));
    y.push(mean(block.map((i) => values[i]!)));
  }
  return { t, y, t0: times[there[0]!]!, t1: times[there.at(-1)!]! };
}
