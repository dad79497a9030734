// What may be said of a difference.
import { describe, expect, test } from 'vitest';
import { explain, factRecord, Facts, type FactKind, isFact, judge, outcomeOf, runsNeeded, tellOutcome, uncertaintyOf } from '../../pipeline/facts/index.js';
import { Exact, readQuantity, unit } from '../../pipeline/quantities/index.js';
import { readAccuracy } from '../../pipeline/records/accuracy.js';
import type { Episode, Instrument } from '../../pipeline/records/index.js';
import { episodeOf, factsOf } from './episode.js';

const place = { file: 'x', line: 1, column: 1, endLine: 1, endColumn: 1 } as Episode['place'];

function measuredWith(text: string, instruments: Partial<Instrument>[], matters: Record<string, string> = {}): Facts {
  const episode = episodeOf(text);
  episode.instruments = instruments.map((i) => {
    const limits = i.accuracy === undefined ? undefined : readAccuracy(i.accuracy);
    return { name: 'meter', measures: ['power'], place, ...i, ...(limits && !('why' in limits) && { limits }) };
  });
  for (const [measure, least] of Object.entries(matters)) {
    const read = readQuantity(least, unit('1'));
    if ('quantity' in read) episode.measures.set(measure, { ...episode.measures.get(measure)!, matters: read.quantity });
  }
  return new Facts(episode);
}

function of(facts: Facts, kind: FactKind, operands: string[]) {
  const f = facts.derive(kind, operands);
  if (!isFact(f)) throw new Error(f.why);
  return f;
}

const [a, b] = ['a///power//load', 'b///power//load'];
const pair = (x: string, y: string): string => `${a}: ${x} W\n${b}: ${y} W`;

describe('four outcomes', () => {
  test.each([
    ['clear of zero', '233.1 233.4 233.2', '298.0 298.3 298.7', '1 W', 'lower'],
    ['the other way round', '298.0 298.3 298.7', '233.1 233.4 233.2', '1 W', 'higher'],
    ['within what matters, zero inside', '300.0 300.1 300.2', '300.1 300.0 300.1', '1 W', 'same'],
    // 0.5 apart and known to about 0.2: surely different, and surely by less than matters.
    ['within what matters, zero outside', '300.0 300.1 300.2', '300.6 300.5 300.7', '1 W', 'same'],
    ['too much scatter', '290.0 300.0 310.0', '301.0 311.0 321.0', '1 W', 'undecided'],
    ['apart by less than matters, not surely', '299.0 300.0 301.0', '299.5 300.4 301.3', '1 W', 'undecided'],
    ['a share of the base that matters', '300.0 300.1 300.2', '303.0 303.1 303.2', '2 %', 'same'],
    ['a smaller share', '300.0 300.1 300.2', '303.0 303.1 303.2', '0.5 %', 'lower'],
  ])('%s', (_what, x, y, matters, outcome) => {
    const facts = measuredWith(pair(x, y), [], { power: matters });
    expect(outcomeOf(facts, of(facts, 'difference', [a, b]))).toBe(outcome);
    // A change in percent and a ratio say the same in another form.
    expect(outcomeOf(facts, of(facts, 'percent_change', [a, b]))).toBe(outcome);
    expect(outcomeOf(facts, of(facts, 'ratio', [a, b]))).toBe(outcome);
  });

  test('nothing is said of single runs, of a constant, or of what is no comparison', () => {
    const single = factsOf(`${a}: 233.1 W\n${b}: 298.0 298.3 298.7 W\na///power//limit: = 250 W`);
    expect(outcomeOf(single, of(single, 'difference', [a, b]))).toBe('undecided');
    expect(outcomeOf(single, of(single, 'difference', [b, 'a///power//limit']))).toBe('undecided');
    expect(outcomeOf(single, of(single, 'mean', [b]))).toBeUndefined();
    expect(outcomeOf(single, of(single, 'range', [a, b]))).toBeUndefined();
  });

  test('a share of a limit can be told from another, the limit being exact', () => {
    const facts = factsOf(`${pair('233.1 233.4 233.2', '298.0 298.3 298.7')}\na///power//limit: = 300 W`);
    const shares = [a, b].map((k) => of(facts, 'percent_of', [k, 'a///power//limit']));
    expect(outcomeOf(facts, of(facts, 'points', shares.map((s) => `(${s.id})`)))).toBe('lower');
  });
});

test('the house says what matters where the record does not, and a record can say otherwise', () => {
  const facts = factsOf(pair('300.0 300.1 300.2', '300.6 300.5 300.7'));
  expect(outcomeOf(facts, of(facts, 'difference', [a, b]))).toBe('same');
  const strict = new Facts(episodeOf(pair('300.0 300.1 300.2', '300.6 300.5 300.7'), { thresholds: [{ name: 'matters-power', value: '0.1 %', place }] }));
  expect(outcomeOf(strict, of(strict, 'difference', [a, b]))).toBe('lower');
});

describe('instruments', () => {
  const runs = pair('200.00 200.10 200.20', '100.00 100.10 100.20');

  // Rectangular: 1 % of 200.1 is 2.001, over √3 1.1553; with scatter 0.1/√3 = 0.05774 and steps 0.01/√12.
  test('accuracy counts in a mean (JCGM 100, 4.3.7 and 5.1.2)', () => {
    const facts = measuredWith(runs, [{ accuracy: '±1 %' }]);
    const u = uncertain(facts, 'mean', [a]);
    expect(u.standard).toBeCloseTo(Math.hypot(2.001 / Math.sqrt(3), 0.1 / Math.sqrt(3), 0.01 / Math.sqrt(12)), 9);
  });

  test('a stated level makes it a normal one', () => {
    const facts = measuredWith(runs, [{ accuracy: '±1 %', level: 0.95 }]);
    expect(uncertain(facts, 'mean', [a]).standard).toBeCloseTo(Math.hypot(2.001 / 1.959964, 0.1 / Math.sqrt(3), 0.01 / Math.sqrt(12)), 6);
  });

  const scatter = Math.hypot(0.1 / Math.sqrt(3), 0.1 / Math.sqrt(3), 0.01 / Math.sqrt(12), 0.01 / Math.sqrt(12));
  test.each([
    // One meter on both sides: in a difference what is constant cancels and what is in proportion is left of the difference.
    ['a constant error cancels', '±2 W', scatter],
    ['an error in proportion is one of the difference', '±1 %', Math.hypot(scatter, 1 / Math.sqrt(3))],
    ['a share of the range is constant', '±1 % of range 3000 W', scatter],
    ['digits are constant', '±2 digits', scatter],
  ])('%s', (_what, accuracy, standard) => {
    const facts = measuredWith(runs, [{ accuracy, resolution: { value: Exact.of(1, 100), unit: unit('W'), decimals: 2 } }]);
    expect(uncertain(facts, 'difference', [a, b]).standard).toBeCloseTo(standard, 9);
  });

  test('an error in proportion cancels in a ratio, a constant one does not', () => {
    const plain = uncertain(measuredWith(runs, []), 'ratio', [a, b]).standard;
    expect(uncertain(measuredWith(runs, [{ accuracy: '±5 %' }]), 'ratio', [a, b]).standard).toBeCloseTo(plain, 12);
    // ∂(x/y)/∂c for an error c of both: 1/y − x/y².
    const c = (1 / 100.1 - 200.1 / 100.1 ** 2) * (2 / Math.sqrt(3));
    expect(uncertain(measuredWith(runs, [{ accuracy: '±2 W' }]), 'ratio', [a, b]).standard).toBeCloseTo(Math.hypot(plain, c), 9);
  });

  test('two meters, or one in each setup, do not cancel', () => {
    const both = Math.hypot(scatter, 2 / Math.sqrt(3), 2 / Math.sqrt(3));
    expect(uncertain(measuredWith(runs, [{ accuracy: '±2 W', setups: ['a'] }, { accuracy: '±2 W', setups: ['b'] }]), 'difference', [a, b]).standard).toBeCloseTo(both, 9);
    expect(uncertain(measuredWith(runs, [{ accuracy: '±2 W', perSetup: true }]), 'difference', [a, b]).standard).toBeCloseTo(both, 9);
  });

  test('in a mean of several the shared error stays whole', () => {
    const facts = measuredWith(runs, [{ accuracy: '±2 W' }]);
    expect(uncertain(facts, 'mean', [a, b]).standard).toBeCloseTo(Math.hypot(scatter / 2, 2 / Math.sqrt(3)), 9);
  });

  test('a chain of facts keeps its sources: a difference of rises over one idle', () => {
    const facts = measuredWith(`a///power//load: 200.00 200.10 200.20 W\na///power//high: 300.00 300.10 300.20 W\na///power//idle: 50.00 60.00 70.00 W`, [{ accuracy: '±2 W' }]);
    const rise = (phase: string) => of(facts, 'rise', [`a///power//${phase}`, 'a///power//idle']);
    // The idle scatters by 5.8 and is in both: it leaves the difference as if it had been taken of the loads.
    expect(uncertain(facts, 'difference', [`(${rise('high').id})`, `(${rise('load').id})`]).standard).toBeCloseTo(uncertain(facts, 'difference', ['a///power//high', 'a///power//load']).standard, 9);
  });
});

/** Scatter alone, by hand, run by run: 30.0, 30.2, 30.1 over the room have s = 0.1. */
test('readings of the same moment are taken run by run: what they share cancels', () => {
  const facts = factsOf(`a///temperature/core/load: 50.000000 51.200000 52.100000 °C\na///temperature/room/load: 20.000000 21.000000 22.000000 °C`);
  expect(uncertain(facts, 'over_room', ['a///temperature/core/load', 'a///temperature/room/load']).standard).toBeCloseTo(0.1 / Math.sqrt(3), 6);
  expect(uncertain(facts, 'over_room', ['a///temperature/core/load', 'a///temperature/room/load']).dof).toBeCloseTo(2, 6);
});

describe('how many runs would settle it', () => {
  test('more than there are, and none for what is settled', () => {
    const facts = measuredWith(pair('290.0 300.0 310.0', '305.0 315.0 325.0'), [], { power: '1 W' });
    // 15 apart with a standard deviation of 10: 9 runs each by the exact sample size for an effect of 1.5 and a power of 80 %.
    expect(runsNeeded(facts, of(facts, 'difference', [b, a]))).toEqual({ runs: 9, outcome: 'higher' });
    expect(tellOutcome(facts, of(facts, 'difference', [b, a]))).toMatchObject({ outcome: 'undecided', runs: 9 });
    const clear = factsOf(pair('233.1 233.4 233.2', '298.0 298.3 298.7'));
    expect(runsNeeded(clear, of(clear, 'difference', [a, b]))).toBeUndefined();
  });

  test('none, where the meters are too coarse', () => {
    const facts = measuredWith(pair('300.0 300.1 300.2', '305.0 305.1 305.2'), [{ accuracy: '±10 W', setups: ['a'] }, { accuracy: '±10 W', setups: ['b'] }], { power: '1 W' });
    expect(runsNeeded(facts, of(facts, 'difference', [a, b]))?.runs).toBeUndefined();
    expect(tellOutcome(facts, of(facts, 'difference', [a, b]))!.says).toContain('no number of runs would tell');
  });

  test('that they are about the same may be settled sooner', () => {
    const facts = measuredWith(pair('299.0 300.0 301.0', '299.1 300.1 301.1'), [], { power: '2 W' });
    expect(runsNeeded(facts, of(facts, 'difference', [a, b]))).toMatchObject({ outcome: 'same' });
  });
});

test('facts.json: a decimal string, the factor, and the outcome of what compares', () => {
  const facts = factsOf(pair('233.1 233.4 233.2', '298.0 298.3 298.7'));
  const mean = factRecord(of(facts, 'mean', [a]), facts);
  // s/√3 = 0.088192, steps 0.1/√12 = 0.028868; t₉₅ for 2.45 degrees of freedom lies between 4.30 (2) and 3.18 (3).
  expect(mean).not.toHaveProperty('outcome');
  expect(mean.uncertainty).toMatch(/^\d+\.\d+$/);
  expect(Number(mean.uncertainty) / mean.coverageFactor!).toBeCloseTo(Math.hypot(0.0881917, 0.0288675), 5);
  expect(mean.coverageFactor).toBeGreaterThan(3.18);
  expect(mean.coverageFactor).toBeLessThan(4.31);
  expect(factRecord(of(facts, 'difference', [a, b]), facts)).toMatchObject({ outcome: 'lower' });
  expect(judge(facts, of(facts, 'difference', [a, b]))!.half95).toBeGreaterThan(0);
});

function uncertain(facts: Facts, kind: FactKind, operands: string[]) {
  const u = uncertaintyOf(facts, of(facts, kind, operands));
  if (!u) throw new Error('no uncertainty');
  return u;
}

test('explain prints the budget as a table and has it as data', () => {
  const facts = measuredWith(pair('200.00 200.10 200.20', '100.00 100.10 100.20'), [{ accuracy: '±(1 % + 0.5 W)' }]);
  const { derivation } = explain(facts, of(facts, 'difference', [a, b]).id);
  const lines = explain(facts, of(facts, 'difference', [a, b]).id).toString().split('\n');
  expect(lines.find((l) => l.includes('source'))).toMatch(/^ {2}source +type +standard +sensitivity +dof +contribution$/);
  // 1 % of the 100 W between them, rectangular; what is constant cancels and stands there with nothing.
  expect(derivation!.budget!.lines[0]).toMatchObject({ source: 'meter (±(1 % + 0.5 W)), in proportion', kind: 'B', sensitivity: 100, dof: null, contribution: 0.57735 });
  expect(derivation!.budget!.lines.find((l) => l.source.endsWith('constant'))).toMatchObject({ sensitivity: 0, contribution: 0 });
  expect(derivation!.outcome).toMatchObject({ outcome: 'higher' });
  expect(JSON.parse(JSON.stringify(derivation))).toEqual(derivation);
});
