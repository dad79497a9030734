// What facts.json promises of every fact: uncertainty, coverageFactor, outcome. On all demo episodes, and on small records worked out by hand.
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { open } from '../../pipeline/build.js';
import { type Fact, type FactKind, factRecord, type FactRecord, Facts, isFact, isIdle, listFacts, splitKey } from '../../pipeline/facts/index.js';
import { Exact, readQuantity, unit } from '../../pipeline/quantities/index.js';
import { readAccuracy } from '../../pipeline/records/accuracy.js';
import type { Instrument } from '../../pipeline/records/index.js';
import { episodeOf } from './episode.js';

const comparing: ReadonlySet<FactKind> = new Set(['difference', 'rise', 'points', 'over_room', 'percent_change', 'ratio']);
const plainDecimal = /^\d+(\.\d+)?$/;

/** What holds of each fact, whatever it is. */
function keepsItsPromise(fact: Fact, facts: Facts): void {
  const r = factRecord(fact, facts);
  expect(JSON.parse(JSON.stringify(r)), r.id).toEqual(r);
  expect(r.uncertainty === undefined, r.id).toBe(r.coverageFactor === undefined);
  if (r.uncertainty !== undefined) {
    expect(r.uncertainty, r.id).toMatch(plainDecimal);
    expect(Number(r.uncertainty), r.id).toBeGreaterThan(0);
    // From the normal factor to that of one degree of freedom.
    expect(r.coverageFactor, r.id).toBeGreaterThanOrEqual(1.9599);
    expect(r.coverageFactor, r.id).toBeLessThanOrEqual(12.707);
  }
  if (r.kind === 'mean' && r.against.length === 0 && r.readings.length > 1) expect(r.uncertainty, r.id).toBeDefined();
  if (r.kind === 'median' && facts.operands(fact).every((f) => f.readings.length > 1)) expect(r.uncertainty, r.id).toBeDefined();
  expect(r.outcome !== undefined, r.id).toBe(comparing.has(r.kind));
  if (!r.outcome) return;
  const [size, half] = [Math.abs(Number(r.value) - (r.kind === 'ratio' ? 1 : 0)), Number(r.uncertainty ?? NaN)];
  if (r.outcome === 'higher' || r.outcome === 'lower') {
    expect(Number(r.value) > (r.kind === 'ratio' ? 1 : 0), r.id).toBe(r.outcome === 'higher');
    if (!['percent_change', 'ratio'].includes(r.kind)) expect(size, r.id).toBeGreaterThan(half);
  }
  if (Number.isNaN(half) && !['percent_change', 'ratio'].includes(r.kind)) expect(r.outcome, r.id).toBe('undecided');
  const single = r.readings.length > 0 && facts.operands(fact).some((f) => f.readings.length === 1 && !facts.isQuoted(f.subject) && f.kind === 'mean');
  if (single) expect(r.outcome, r.id).toBe('undecided');
}

/** Each thing against each other that differs from it in its setup, its setting or its phase. */
function compared(facts: Facts): Fact[] {
  return facts.keys().flatMap((key) => {
    const idle = facts.idleOf(key);
    const room = facts.roomFor(key);
    const others = (['setup', 'setting'] as const).flatMap((field) => facts.sameBut(key, field).slice(0, 3));
    return [
      ...others.flatMap((o) => (['difference', 'percent_change', 'ratio', 'points'] as const).map((kind) => facts.derive(kind, [key, o]))),
      ...(idle && !isIdle(splitKey(key)!.phase) ? [facts.derive('rise', [key, idle])] : []),
      ...(room ? [facts.derive('over_room', [key, room])] : []),
    ].filter(isFact);
  });
}

/** Over all setups of each reading. */
function medians(facts: Facts): Fact[] {
  return facts.keys().map((key) => [key, ...facts.sameBut(key, 'setup')]).filter((k) => k.length > 2).map((k) => facts.derive('median', k)).filter(isFact);
}

const { episodes, asked } = open({ data: join(import.meta.dirname, '../../data'), only: [], cache: undefined });
test.each(asked)('episode %s keeps it', async (id) => {
  const facts = (await episodes.facts(id))!;
  const all = [...listFacts(facts), ...compared(facts), ...medians(facts)];
  expect(all.some((f) => factRecord(f, facts).outcome)).toBe(true);
  for (const f of all) keepsItsPromise(f, facts);
});

function record(text: string, instruments: Partial<Instrument>[] = [], matters: Record<string, string> = {}): Facts {
  const episode = episodeOf(text);
  episode.instruments = instruments.map((i) => {
    const limits = i.accuracy === undefined ? undefined : readAccuracy(i.accuracy);
    return { name: 'meter', measures: ['power'], place: episode.place, ...i, ...(limits && !('why' in limits) && { limits }) };
  });
  for (const [measure, least] of Object.entries(matters)) {
    const read = readQuantity(least, unit('1'));
    if ('quantity' in read) episode.measures.set(measure, { ...episode.measures.get(measure)!, matters: read.quantity });
  }
  return new Facts(episode);
}

function kept(facts: Facts, kind: FactKind, ...operands: string[]): Readonly<FactRecord> {
  const fact = facts.derive(kind, operands);
  if (!isFact(fact)) throw new Error(fact.why);
  keepsItsPromise(fact, facts);
  return factRecord(fact, facts);
}

const [a, b] = ['a///power//load', 'b///power//load'];
const [hot, cold] = ['a///temperature/core/load', 'b///temperature/core/load'];
const near = (r: Readonly<FactRecord>): [number, number] => [Number(Number(r.uncertainty).toPrecision(4)), Number(r.coverageFactor!.toPrecision(4))];

describe('measured facts', () => {
  // s = 1, u = 1/√3 = 0.57735; steps of 0.000001 add nothing: t₉₅(2) = 4.3027 (JCGM 100, Table G.2), ± 2.484.
  test('three runs', () => expect(near(kept(record(`${a}: 99.000000 100.000000 101.000000 W`), 'mean', a))).toEqual([2.484, 4.303]));
  // s = 0.14142, u = 0.1: t₉₅(1) = 12.706, ± 1.2706; with the steps of 0.1, u² = 0.01 + 0.01/12, and the interval no narrower.
  test('two runs', () => expect(near(kept(record(`${a}: 100.0 100.2 W`), 'mean', a))).toEqual([1.271, Number((1.27062 / Math.sqrt(0.01 + 0.01 / 12)).toPrecision(4))]));
  // Nothing scatters: a rectangle of ±0.5 and steps of 0.1, 1.95996 · √(0.5²/3 + 0.1²/12).
  test('the instrument alone', () => expect(near(kept(record(`${a}: 100.0 100.0 100.0 W`, [{ accuracy: '±0.5 W' }]), 'mean', a))).toEqual([Number((1.959964 * Math.sqrt(0.25 / 3 + 0.01 / 12)).toPrecision(4)), 1.96]));
  // 0.899, 0.900 and 0.901 V, s = 0.001.
  test('runs in two units', () => expect(near(kept(twoUnits(), 'mean', 'a///voltage/core/load'))).toEqual([0.002484, 4.303]));
  test('a single run, a constant and a limit have none, whatever the instrument says', () => {
    const facts = record(`${a}: 100.0 W\n${b}: = 90 W\na///power//limit: = 120 W`, [{ accuracy: '±0.5 W' }]);
    for (const r of [kept(facts, 'mean', a), kept(facts, 'raw', `${a}#1`), kept(facts, 'constant', b), kept(facts, 'constant', 'a///power//limit')]) expect([r.uncertainty, r.coverageFactor, r.outcome]).toEqual([undefined, undefined, undefined]);
  });
  test('what is very small stands without an exponent', () => {
    expect(kept(record('a///voltage/core/load: 0.00000100 0.00000102 0.00000101 V'), 'mean', 'a///voltage/core/load').uncertainty).toMatch(/^0\.0000000\d+$/);
  });
});

/** 0.899, 0.900 and 0.901 V, one of them written in millivolts. */
function twoUnits(): Facts {
  const episode = episodeOf('a///voltage/core/load: 0.899000 0.900000 0.901000 V');
  const third = episode.readings[2]!;
  third.quantity = { value: Exact.of(901), unit: unit('mV'), decimals: 3 };
  return new Facts(episode);
}

describe('differences', () => {
  const three = (x: number, step = 0.1): string => [x - step, x, x + step].map((v) => v.toFixed(6)).join(' ');
  test.each([
    ['first above second', three(110), three(100), 'higher'],
    ['first below second', three(100), three(110), 'lower'],
    // ± 0.227: 0.3 from zero is clear of it, and within the 1 W that matters with all of its interval.
    ['apart, and it does not matter', three(100.3), three(100), 'same'],
    ['equal', three(100), three(100), 'same'],
    // 0.9 + 0.227 passes 1 W; 0.9 − 0.227 is clear of zero.
    ['less than matters, but not surely', three(100.9), three(100), 'higher'],
    ['equal, and the interval wider than what matters', three(100, 1), three(100, 1), 'undecided'],
    ['two runs each, far apart', '110.0 110.1', '100.0 100.1', 'higher'],
    ['two runs each, close by', '100.0 101.0', '102.0 103.0', 'undecided'],
  ])('%s', (_what, x, y, outcome) => {
    const facts = record(`${a}: ${x} W\n${b}: ${y} W`, [], { power: '1 W' });
    expect(kept(facts, 'difference', a, b).outcome).toBe(outcome);
    expect(kept(facts, 'percent_change', a, b).outcome).toBe(outcome);
    expect(kept(facts, 'ratio', a, b).outcome).toBe(outcome);
  });

  test.each([
    ['a single run on either side', `${a}: 150.0 W`, `${b}: 100.0 100.1 100.2 W`],
    ['single runs on both', `${a}: 150.0 W`, `${b}: 100.0 W`],
    ['a value noted once', `${a}: = 150 W`, `${b}: 100.0 100.1 100.2 W`],
  ])('%s is undecided, however far apart', (_what, x, y) => {
    const facts = record(`${x}\n${y}`, [{ accuracy: '±0.1 W' }]);
    for (const [p, q] of [[a, b], [b, a]] as const) {
      const r = kept(facts, 'difference', p, q);
      expect([r.outcome, r.uncertainty]).toEqual(['undecided', undefined]);
      expect(kept(facts, 'percent_change', p, q).outcome).toBe('undecided');
    }
  });

  test('a limit has no uncertainty of its own to be decided on', () => {
    expect(kept(record(`${a}: 100.0 100.1 100.2 W\na///power//limit: = 250 W`), 'difference', a, 'a///power//limit').outcome).toBe('undecided');
  });

  // u² = 2 · 0.1²/3: u = 0.081650; four degrees of freedom, t 2.7764: ± 0.22670 W.
  test('of two units: in the unit of the first', () => {
    const facts = record(`${a}: ${three(100)} W\n${b}: ${three(0.09, 0.0001).replace(/(\d+\.\d{6})/g, '$1000')} kW`, [], { power: '1 W' });
    expect(kept(facts, 'difference', a, b)).toMatchObject({ unit: 'W', outcome: 'higher' });
    expect(near(kept(facts, 'difference', a, b))).toEqual([0.2267, 2.776]);
    expect(kept(facts, 'difference', b, a)).toMatchObject({ unit: 'kW', outcome: 'lower' });
    expect(near(kept(facts, 'difference', b, a))).toEqual([0.0002267, 2.776]);
  });

  // 60 °C is 140 °F; the spreads are alike: 0.1 K is 0.18 °F. 1 K matters.
  test('of degrees Celsius and Fahrenheit: a difference of degrees', () => {
    const facts = record(`${hot}: ${three(60)} °C\n${cold}: ${three(140, 0.18)} °F`, [], { temperature: '1 K' });
    expect(kept(facts, 'difference', hot, cold)).toMatchObject({ value: '0', unit: 'K', outcome: 'same' });
    expect(near(kept(facts, 'difference', hot, cold))).toEqual([0.2267, 2.776]);
    expect(kept(facts, 'difference', cold, hot)).toMatchObject({ unit: 'delta-degF', outcome: 'same' });
    expect(near(kept(facts, 'difference', cold, hot))).toEqual([0.4081, 2.776]);
  });

  test('where neither record nor house says what matters, nothing is called the same', () => {
    const facts = record('a///voltage/core/load: 0.900 0.900 0.900 V\nb///voltage/core/load: 0.900 0.900 0.900 V');
    expect(kept(facts, 'difference', 'a///voltage/core/load', 'b///voltage/core/load').outcome).toBe('undecided');
  });

  // One meter on both sides cancels; with one in each setup the limits of both stand: 1.95996 · √(2 · (2²/3 + 0.1²/12)) = 3.2.
  test('the instrument alone', () => {
    const runs = `${a}: 102.0 102.0 102.0 W\n${b}: 100.0 100.0 100.0 W`;
    expect(kept(record(runs, [{ accuracy: '±2 W' }]), 'difference', a, b)).toMatchObject({ outcome: 'higher' });
    const two = kept(record(runs, [{ accuracy: '±2 W', perSetup: true }]), 'difference', a, b);
    expect(two.outcome).toBe('undecided');
    expect(near(two)).toEqual([Number((1.959964 * Math.sqrt(2 * (4 / 3 + 0.01 / 12))).toPrecision(4)), 1.96]);
  });

  test('over a room that was read once nothing is decided', () => {
    const facts = record(`${hot}: 60.0 60.1 60.2 °C\na///temperature/room/load: 21.0 °C`);
    expect(kept(facts, 'over_room', hot, 'a///temperature/room/load').outcome).toBe('undecided');
  });

  test('of shares: points', () => {
    const facts = record('a///duty/fan/load: 40.0 40.1 40.2 %\nb///duty/fan/load: 55.0 55.1 55.2 %');
    expect(kept(facts, 'points', 'a///duty/fan/load', 'b///duty/fan/load').outcome).toBe('lower');
  });
});
