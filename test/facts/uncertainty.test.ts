import { expect, test } from 'vitest';
import { type FactKind, isFact, uncertaintyOf } from '../../pipeline/facts/index.js';
import { factsOf } from './episode.js';

const facts = factsOf(`
a///power/board/load: 247.600000 248.300000 248.100000 W
b///power/board/load: 199.100000 200.300000 200.200000 W
c///power/board/load: 200 W
a///power/board/limit: = 250 W
d///temperature/core/load: 61 61 61 °C
`.trim());
const [a, b] = ['a///power/board/load', 'b///power/board/load'];
const of = (kind: FactKind, operands: string[]): ReturnType<typeof uncertaintyOf> => {
  const f = facts.derive(kind, operands);
  if (!isFact(f)) throw new Error(f.why);
  return uncertaintyOf(facts, f);
};

// s = √0.13 = 0.36056, u = s/√3 = 0.20817, t₉₅(2) = 4.303: ± 0.896 (JCGM 100:2008, 4.2.3 and Table G.2).
test('a mean of three runs', () => {
  const u = of('mean', [a])!;
  expect(u.standard).toBeCloseTo(0.20817, 5);
  expect(u.dof).toBeCloseTo(2, 5);
  expect(u.half95).toBeCloseTo(0.8957, 3);
});

// Worked examples of Welch's test that R and scipy give, as four public test suites carry them: t, degrees of freedom, and
// the 95 % interval of the first.
const examples: [string, string, number, number, [number, number]?][] = [
  [
    '27.5 21.0 19.0 23.6 17.0 17.9 16.9 20.1 21.9 22.6 23.1 19.6 19.0 21.7 21.4', '27.1 22.0 20.8 23.4 23.4 23.5 25.8 22.0 24.8 20.2 21.9 22.1 22.9 20.5 24.4',
    -2.455356398286, 24.988529290231, [-3.984096, -0.349237],
  ],
  ['30.02 29.99 30.11 29.97 30.01 29.99', '29.89 29.93 29.72 29.98 30.02 29.98', 1.959005808, 7.03055996],
  ['3 4 1 2.1', '490.2 340 433.9', -9.559497722, 2.000852349],
];
test.each(examples)('a difference of %s and %s is as sure as Welch says', (x, y, t, dof, interval) => {
  // Written with eight decimals, so that the resolution does not count.
  const fine = (runs: string): string => runs.split(' ').map((v) => Number(v).toFixed(8)).join(' ');
  const two = factsOf(`a///power//: ${fine(x)} W\nb///power//: ${fine(y)} W`);
  const f = two.derive('difference', ['a///power//', 'b///power//']);
  if (!isFact(f)) throw new Error(f.why);
  const u = uncertaintyOf(two, f)!;
  expect(f.value.toNumber() / u.standard).toBeCloseTo(t, 7);
  expect(u.dof).toBeCloseTo(dof, 6);
  if (interval) expect([f.value.toNumber() - u.half95, f.value.toNumber() + u.half95].map((v) => v.toFixed(6))).toEqual(interval.map((v) => v.toFixed(6)));
});

// Relative uncertainties of a quotient add in squares (JCGM 100:2008, 5.1.6).
test('a share, a change and a ratio', () => {
  const relative = of('mean', [a])!.standard / 248;
  expect(of('percent_of', [a, 'a///power/board/limit'])!.standard).toBeCloseTo(99.2 * relative, 9);
  const both = Math.hypot(relative, of('mean', [b])!.standard / (599.6 / 3));
  const share = (248 / (599.6 / 3)) * 100;
  expect(of('percent_change', [a, b])!.standard).toBeCloseTo(share * both, 9);
  expect(of('ratio', [a, b])!.standard).toBeCloseTo((share / 100) * both, 9);
});

// JCGM 100:2008, F.2.2.1: a step of 1 has the standard uncertainty 0.29.
test('runs that agree to the last place are known to the resolution', () => {
  const u = of('mean', ['d///temperature/core/load'])!;
  expect(u.standard).toBeCloseTo(0.288675, 6);
  expect(u.half95).toBeCloseTo(1.96 * 0.288675, 3);
});

test('one run, a constant, a rank, a count or the end of a range have none', () => {
  expect(of('mean', ['c///power/board/load'])).toBeUndefined();
  expect(of('difference', [a, 'c///power/board/load'])).toBeUndefined();
  expect(of('constant', ['a///power/board/limit'])).toBeUndefined();
  expect(of('count', [a])).toBeUndefined();
  expect(of('range', [a, b])).toBeUndefined();
  expect(of('median', [a, b, 'c///power/board/load'])).toBeUndefined();
});

// a is 248 ± 0.8957, as above, and in the middle of three; of two the median is their mean.
test('a median has the uncertainty of what is in the middle', () => {
  const more = factsOf(`a///power/board/load: 247.600000 248.300000 248.100000 W\nb///power/board/load: 199.100000 200.300000 200.200000 W\ne///power/board/load: 0.301000000 0.302000000 0.300000000 kW`);
  const doubt = (operands: string[]) => {
    const f = more.derive('median', operands);
    if (!isFact(f)) throw new Error(f.why);
    return uncertaintyOf(more, f)!;
  };
  expect(doubt([a, b, 'e///power/board/load']).half95).toBeCloseTo(0.8957, 3);
  expect(doubt(['e///power/board/load', a, b]).half95).toBeCloseTo(0.0008957, 6);
  expect(of('median', [a, b])!.half95).toBeCloseTo(of('mean', [a, b])!.half95, 9);
});

// JCGM 100:2008, 5.1.3: the sensitivities are ∂H/∂x = H²/(n·x²) and ∂G/∂x = G/(n·x).
test('a harmonic and a geometric mean of two settings', () => {
  const [x, y] = [a, b].map((k) => ({ value: facts.value(k) as { value: { toNumber(): number } }, u: of('mean', [k])!.standard }));
  const [p, q] = [x!.value.value.toNumber(), y!.value.value.toNumber()];
  const [H, G] = [(2 * p * q) / (p + q), Math.sqrt(p * q)];
  const mean = (variant: string) => {
    const f = facts.derive('mean', [a, b], variant);
    return isFact(f) ? uncertaintyOf(facts, f)!.standard : NaN;
  };
  expect(mean('harmonic')).toBeCloseTo(Math.hypot((H ** 2 / (2 * p ** 2)) * x!.u, (H ** 2 / (2 * q ** 2)) * y!.u), 9);
  expect(mean('geometric')).toBeCloseTo(Math.hypot((G / (2 * p)) * x!.u, (G / (2 * q)) * y!.u), 9);
});

// JCGM 100:2008, 4.4.3, Table 1 (readings from memory, recomputed): mean 100.145 °C, s 1.489, u 0.333. The steps of 0.01 add nothing that shows.
test('twenty readings of the guide', () => {
  const key = 'g///temperature/bath/';
  const twenty = factsOf(`${key}: 96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07 100.33 100.42 100.68 100.95 101.11 101.20 101.57 101.84 102.36 102.72 °C`);
  const mean = twenty.value(key);
  if (!isFact(mean)) throw new Error(mean.why);
  const u = uncertaintyOf(twenty, mean)!;
  expect(mean.value.toString()).toBe('100.145');
  expect(mean.spread!.sd!.toFixed(3)).toBe('1.489');
  expect(u.standard.toFixed(3)).toBe('0.333');
  // t₉₅ for 19 degrees of freedom is 2.093 (Table G.2).
  expect(u.factor.toFixed(2)).toBe('2.09');
});
