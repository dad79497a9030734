import { expect, test } from 'vitest';
import { type FactKind, isFact, uncertaintyOf } from '../../pipeline/facts/index.js';
import { welch } from '../../pipeline/statistics/index.js';
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

test('a difference has the interval of Welch', () => {
  const w = welch([247.6, 248.3, 248.1], [199.1, 200.3, 200.2])!;
  const u = of('difference', [a, b])!;
  expect(u.half95).toBeCloseTo((w.interval.high - w.interval.low) / 2, 6);
  expect(u.dof).toBeCloseTo(w.dof, 6);
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

test('one run, a constant, a rank or a count have none', () => {
  expect(of('mean', ['c///power/board/load'])).toBeUndefined();
  expect(of('difference', [a, 'c///power/board/load'])).toBeUndefined();
  expect(of('constant', ['a///power/board/limit'])).toBeUndefined();
  expect(of('count', [a])).toBeUndefined();
  expect(of('median', [a, b])).toBeUndefined();
});
