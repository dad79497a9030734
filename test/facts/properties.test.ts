import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Fact, factKinds, Facts, isFact, readId, writeId } from '../../pipeline/facts/index.js';
import { Exact, unit } from '../../pipeline/quantities/index.js';
import { bareEpisode, type Reading } from '../../pipeline/records/index.js';

const place = { file: 'x.csv', line: 1, column: 1, endLine: 1, endColumn: 1 };
const name = fc.stringMatching(/^[\p{L}\p{N}][\p{L}\p{N}._-]{0,8}$/u);
const field = fc.oneof({ weight: 4, arbitrary: name }, { weight: 1, arbitrary: fc.constant('') });
const key = fc.tuple(field, field, field, field, field, field).map((f) => f.join('/'));
const runs = fc.array(fc.integer({ min: 1, max: 99_999 }), { minLength: 1, maxLength: 5 });

function make(a: number[], b: number[], u: string, decimals = 1): { facts: Facts; a: string; b: string } {
  const reading = (k: string) => (n: number, i: number): Reading => ({ key: k, run: String(i + 1), constant: false, place, quantity: { value: Exact.of(n, 10 ** decimals), unit: unit(u), decimals } });
  const [ka, kb] = ['x/s/w/m/p/load', 'y/s/w/m/p/load'];
  return { facts: new Facts(bareEpisode([...a.map(reading(ka)), ...b.map(reading(kb))], [], place)), a: ka, b: kb };
}
const get = (f: unknown): Fact => {
  if (!isFact(f as Fact)) throw new Error((f as { why: string }).why);
  return f as Fact;
};

test('a rise is the reversed rise turned round, exact and shown', () => {
  fc.assert(fc.property(runs, runs, (x, y) => {
    const { facts, a, b } = make(x, y, 'degC');
    const [up, down] = [get(facts.derive('rise', [a, b])), get(facts.derive('rise', [b, a]))];
    expect(up.value.equals(down.value.negated())).toBe(true);
    expect(up.shown.replace('−', '')).toBe(down.shown.replace('−', ''));
  }));
});

test('percent change is percent of less a hundred, and a ratio is a hundredth of it', () => {
  fc.assert(fc.property(runs, runs, (x, y) => {
    const { facts, a, b } = make(x, y, 'W');
    const [change, share, ratio] = (['percent_change', 'percent_of', 'ratio'] as const).map((k) => get(facts.derive(k, [a, b])));
    expect(change!.value.plus(Exact.of(100)).equals(share!.value)).toBe(true);
    expect(ratio!.value.times(Exact.of(100)).equals(share!.value)).toBe(true);
  }));
});

test('going there and back by percent changes multiplies to nothing', () => {
  fc.assert(fc.property(runs, runs, (x, y) => {
    const { facts, a, b } = make(x, y, 'W');
    const one = Exact.of(100);
    const [there, back] = [get(facts.derive('percent_change', [a, b])), get(facts.derive('percent_change', [b, a]))];
    expect(there.value.over(one).plus(Exact.of(1)).times(back.value.over(one).plus(Exact.of(1))).toString()).toBe('1');
  }));
});

test('what is shown is the exact value rounded once', () => {
  fc.assert(fc.property(runs, runs, fc.constantFrom('mean', 'rise', 'percent_change', 'ratio', 'median', 'range' as const), (x, y, kind) => {
    const { facts, a, b } = make(x, y, 'W');
    const f = get(facts.derive(kind, kind === 'mean' ? [a] : [a, b]));
    const digits = f.shown.replace(/[^\d.−]/g, '').replace('−', '-');
    expect(digits).toBe(f.value.toFixed(f.decimals));
    expect(f.value.round(f.decimals).minus(f.value).abs().times(Exact.of(2n * 10n ** BigInt(f.decimals))).compare(Exact.of(1))).toBeLessThanOrEqual(0);
  }));
});

test('the sofa note is there exactly when the rounded figures give another rounded difference', () => {
  fc.assert(fc.property(runs, runs, (x, y) => {
    const { facts, a, b } = make(x, y, 'degC', 0);
    const f = get(facts.derive('rise', [a, b]));
    const [fa, fb] = [get(facts.value(a)), get(facts.value(b))];
    const seen = fa.value.round(fa.decimals).minus(fb.value.round(fb.decimals));
    expect(f.sofa !== undefined).toBe(!seen.equals(f.value.round(f.decimals)));
  }));
});

test('mean, median and range lie among the values; ranks number them through', () => {
  fc.assert(fc.property(runs, runs, (x, y) => {
    const { facts, a, b } = make(x, y, 'W');
    const [low, high] = (['low', 'high'] as const).map((v) => get(facts.derive('range', [a, b], v)).value);
    for (const kind of ['mean', 'median'] as const) {
      const { value } = get(facts.derive(kind, [a, b]));
      expect(value.compare(low!) >= 0 && value.compare(high!) <= 0).toBe(true);
    }
    const places = [[a, b], [b, a]].map((o) => get(facts.derive('rank', o, 'highest')).value.toNumber());
    expect(places.sort().join()).toBe(low!.equals(high!) ? '1,1' : '1,2');
  }));
});

test('an id is read back as what it was written from, whatever the names', () => {
  const operand = fc.oneof(
    { weight: 4, arbitrary: key },
    { weight: 1, arbitrary: fc.tuple(key, name).map(([k, run]) => `${k}#${run}`) },
    { weight: 1, arbitrary: fc.tuple(key, key).map(([a, b]) => `(${writeId({ kind: 'rise', variant: '', operands: [a, b] })})`) },
    { weight: 1, arbitrary: fc.constantFrom('=1000g', '=38 dB(A)', '=3 L/min', '=-5') },
  );
  const subject = fc.oneof(key, fc.tuple(key, key).map(([a, b]) => `(${writeId({ kind: 'difference', variant: '', operands: [a, b] })})`));
  fc.assert(fc.property(fc.constantFrom(...factKinds), fc.constantFrom('', 'low', 'at-most'), subject, fc.array(operand, { maxLength: 4 }), (kind, variant, first, rest) => {
    const parts = { kind, variant, operands: [first, ...rest] };
    const id = writeId(parts);
    expect(readId(id)).toEqual(parts);
    expect(writeId(readId(id)!)).toBe(id);
  }), { numRuns: 2000 });
});

test('no text breaks the reading of an id', () => {
  const { facts } = make([1], [2], 'W');
  fc.assert(fc.property(fc.oneof(fc.string(), fc.stringMatching(/^(mean|rise|count\.below):[()~=,#/a-z.]{0,30}$/)), (text) => {
    const f = facts.get(text);
    expect(f === undefined || 'why' in f || f.id.length > 0).toBe(true);
  }), { numRuns: 2000 });
});
