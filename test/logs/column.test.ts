// Figures of a column against exact arithmetic over the same decimals.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Column } from '../../pipeline/logs/column.js';
import { batch, PlainRow } from '../../pipeline/logs/plain-row.js';
import { Exact } from '../../pipeline/quantities/index.js';

const written = fc.tuple(fc.integer({ min: -9_999_999, max: 9_999_999 }), fc.integer({ min: 0, max: 5 })).map(([n, d]) => (n / 10 ** d).toFixed(d));
/** As they are printed by programs that know no better: up to 17 digits, and exponents. */
const long = fc.oneof(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.double({ min: 1e-9, max: 1e-3, noNaN: true }), fc.constantFrom(1e15, 9007199254740993, 1e21, 4e-20)).map(String);

function add(column: Column, bucket: number, text: string): void {
  const value = Number(text);
  const [digits = '', power = '0'] = text.split('e');
  const decimals = Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(power));
  if (decimals <= 15 && power === '0' && digits.replace(/[-.]/g, '').length <= 15) column.add(bucket, Number(digits.replace('.', '')), decimals, 1);
  else column.addNumber(bucket, value, decimals, 1);
}

const exactOf = (texts: readonly string[]): Exact[] => texts.map((t) => Exact.fromNumber(Number(t)));
const total = (xs: readonly Exact[]): Exact => xs.reduce((a, b) => a.plus(b), Exact.zero);

function filled(parts: readonly (readonly string[])[]): Column {
  const column = new Column(false, Math.max(1, parts.length));
  parts.forEach((texts, b) => {
    column.open(b);
    texts.forEach((t) => add(column, b, t));
  });
  column.settle();
  return column;
}

const parts = (cell: fc.Arbitrary<string>) => fc.array(fc.array(cell, { maxLength: 12 }), { minLength: 1, maxLength: 8 });

test.each([['of few digits', written], ['of any', fc.oneof(written, long)]] as const)('sums, extremes, first and last of numbers %s are exact', (_, cell) => {
  fc.assert(fc.property(parts(cell), (texts) => {
    const all = texts.flat();
    const span = filled(texts).span([[0, texts.length]]);
    const numbers = all.map(Number);
    expect(span.sum.toString(40)).toBe(total(exactOf(all)).toString(40));
    expect([span.count, span.first, span.last, span.min, span.max]).toEqual([all.length, numbers[0] ?? NaN, numbers.at(-1) ?? NaN, all.length ? Math.min(...numbers) : NaN, all.length ? Math.max(...numbers) : NaN]);
  }), { seed: 11, numRuns: 500 });
});

test('squares about the mean are right to 1e-12', () => {
  fc.assert(fc.property(parts(fc.tuple(fc.integer({ min: 4_000_000, max: 4_100_000 }), fc.integer({ min: 2, max: 3 })).map(([n, d]) => (n / 10 ** d).toFixed(d))), (texts) => {
    const all = exactOf(texts.flat());
    if (all.length === 0) return;
    const mean = total(all).over(Exact.of(all.length));
    const expected = total(all.map((x) => x.minus(mean).times(x.minus(mean)))).toNumber();
    expect(Math.abs(filled(texts).span([[0, texts.length]]).squares - expected)).toBeLessThanOrEqual(1e-12 * expected);
  }), { seed: 12, numRuns: 300 });
});

test('what a batch gives is what its numbers give one by one', () => {
  fc.assert(fc.property(fc.array(fc.oneof({ weight: 8, arbitrary: written }, fc.constant(''), long), { minLength: 1, maxLength: 100 }), fc.boolean(), (cells, levels) => {
    const rows = cells.map((c) => `${c}\n`).join('');
    const bytes = Buffer.from(`${rows}\0`);
    const plain = new PlainRow(Uint8Array.of(2, 0), { delimiter: 44, comment: -1, decimalComma: false, missing: new Set(), mayLackLast: true });
    let at = 0;
    let n = 0;
    // A line without anything is blank, and no row.
    for (const c of cells) at = c === '' ? at + 1 : plain.read(bytes, at, bytes.length - 1, n++);
    expect(at).toBe(rows.length);
    const [one, other] = [new Column(levels, 1), new Column(levels, 1)];
    for (const c of [one, other]) c.open(0);
    one.addPlain(0, plain, 0, n, 1);
    cells.filter((c) => c !== '').forEach((c) => add(other, 0, c));
    for (const c of [one, other]) c.settle();
    expect(n).toBeLessThanOrEqual(batch);
    for (const of of [(c: Column) => c.span([[0, 1]]), (c: Column) => [c.decimals, c.own, c.filled, c.steps, c.firstValue, c.changed?.value]]) expect(of(one)).toEqual(of(other));
  }), { seed: 13, numRuns: 500 });
});

test('buckets made of two, and of one cut in two, give what their samples give', () => {
  fc.assert(fc.property(parts(fc.oneof({ weight: 5, arbitrary: written }, long)), (texts) => {
    if (texts.length % 2 || texts.some((t) => t.length === 0)) return;
    const folded = filled(texts);
    folded.foldAll((c) => {
      for (let to = 0; 2 * to < texts.length; to++) c.fold(to, 2 * to, 2 * to + 1);
      return texts.length / 2;
    });
    for (let b = 0; 2 * b < texts.length; b++) {
      const both = [...texts[2 * b]!, ...texts[2 * b + 1]!];
      const span = folded.span([[b, b + 1]]);
      expect([span.sum.toString(40), span.count, span.first, span.last]).toEqual([total(exactOf(both)).toString(40), both.length, Number(both[0]), Number(both.at(-1))]);
    }
    folded.split(0, texts[0]!.map(Number), texts[1]!.map(Number));
    for (const b of [0, 1]) {
      const span = folded.span([[b, b + 1]]);
      expect([span.sum.toString(40), span.min, span.max]).toEqual([total(exactOf(texts[b]!)).toString(40), Math.min(...texts[b]!.map(Number)), Math.max(...texts[b]!.map(Number))]);
    }
  }), { seed: 14, numRuns: 300 });
});
