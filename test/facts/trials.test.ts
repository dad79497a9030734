// The claims of the trial episodes were worked out by a script of its own, from the tables alone: facts must come to the same.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { type FactKind, Facts, isFact } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readReadings } from '../../pipeline/records/index.js';
import { trialFolders } from '../trials/folders.js';

const trials = join(import.meta.dirname, '../trials');
const folders = trialFolders();
// Kinds whose expected value follows from the keys alone; the others hang on a rule of the sentence (at most, under the median …).
const pairs = ['rise', 'difference', 'percent_change', 'points', 'percent_of', 'ratio'];
const kinds = ['raw', 'mean', 'constant', 'rise', 'difference', 'percent_change', 'points', 'percent_of', 'ratio'] as const;

describe.each(folders)('%s', (folder) => {
  const file = join(trials, folder, 'readings.csv');
  const source = new Source(file, readFileSync(file, 'utf8'));
  const facts = new Facts(bareEpisode(readReadings(source).value ?? [], [], source.place(0)));
  const claims = parse(readFileSync(join(trials, folder, 'claims.csv'), 'utf8'), { columns: true }) as Record<string, string>[];

  test('facts come to what its claims expect', () => {
    const off: string[] = [];
    let same = 0;
    for (const { id, kind, refs, expected } of claims) {
      const keys = refs!.split('|').map((r) => r.trim());
      if (!(kinds as readonly string[]).includes(kind!) || keys.length > 2 || (keys.length > 1) !== pairs.includes(kind!)) continue;
      // `expected` is a magnitude, and the order of the keys says from what to what or what of what.
      const own = kind === 'raw' ? facts.readings(keys[0]!).map((r) => facts.derive('raw', [`${keys[0]!}#${r.run}`])) : [];
      const all = [...own, ...[keys, [...keys].reverse()].map((k) => facts.derive((kind === 'raw' ? 'mean' : kind) as FactKind, k))].filter(isFact);
      if (all.some((f) => agrees(f.value.toNumber(), Number(expected)))) same++;
      // Narrators take a percent or a multiple of degrees Celsius now and then; its zero is arbitrary, so there is no such fact.
      else if (/^(?:percent|ratio)/.test(kind!) && facts.readings(keys[0]!)[0]?.quantity.unit.dimension === 'temperature') expect(all).toEqual([]);
      else off.push(`${id} ${kind} ${refs}: ${expected}, not ${all.map((f) => f.value.toString()).join(' or ')}`);
    }
    expect(off).toEqual([]);
    expect(same).toBeGreaterThan(10);
  });
});

/** Four decimals stand in the table; a claim may be in millivolts, minutes or terabytes where the table has volts, seconds, gigabytes. */
function agrees(value: number, expected: number): boolean {
  return [1, 1000, 1 / 1000, 60, 1 / 60].some((scale) => Math.abs(Math.abs(value) * scale - expected) < 6e-5);
}
