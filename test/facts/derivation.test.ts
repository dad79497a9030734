import { describe, expect, test } from 'vitest';
import { explain, factRecord, Facts, isFact, listFacts, suggestIds } from '../../pipeline/facts/index.js';
import { episodeOf } from './episode.js';

const episode = episodeOf(`
bench/stock//temperature/core/idle: 38 38 39 °C
bench/stock/scene/temperature/core/load: 67 68 67 °C
bench/stock//power/board/limit: = 250 W
bench/stock/scene/power/board/load: 247.6 248.3 248.1 W
`.trim(), { secondUnits: new Map([['degC', 'degF']]) });
const [idleRun, loadRun] = [episode.readings[0]!, episode.readings[4]!];
const logPlace = { file: 'data/example/logs/stock-1.csv', line: 12, column: 1, endLine: 12, endColumn: 1 };
idleRun.place = logPlace;
idleRun.log = { trace: 'bench/stock//temperature/core#1', firstLine: 12, lastLine: 311, samples: 300 };
loadRun.aside = { reason: 'window was opened', place: episode.place };
episode.traces.push({ id: idleRun.log.trace, setup: 'bench', setting: 'stock', workload: '', measure: 'temperature', part: 'core', run: '1', unit: idleRun.quantity.unit, times: [0], values: [38], windows: [], place: logPlace });
episode.stated.push({ kind: 'percent_of', operands: ['bench/stock/scene/power/board/load', 'bench/stock//power/board/limit'], quantity: idleRun.quantity, place: episode.place, valuePlace: episode.place });
const facts = new Facts(episode);
const rise = 'rise:bench/stock/scene/temperature/core/load~workload=,phase=idle';

describe('explain', () => {
  const { derivation } = explain(facts, rise);

  test('gives formula, exact value, rounding and second unit', () => {
    expect(derivation).toMatchObject({ shown: '29 K', formula: '67 − 38.3', value: '28.6666666666667', ends: false, unit: 'K', second: '52 °F', readings: [] });
    expect(derivation!.rounding).toContain('half away from zero to a whole number');
  });

  test('goes down to the file and line of each reading, the rows of its log, and what was set aside', () => {
    const [load, idle] = derivation!.from;
    expect(idle!.readings[0]).toEqual({ run: '1', shown: '38 °C', file: 'data/example/logs/stock-1.csv', line: 12, log: { firstLine: 12, lastLine: 311, samples: 300 } });
    expect(load!.readings.map((r) => [r.run, r.line, r.aside])).toEqual([['1', 2, undefined], ['3', 2, undefined], ['2', 2, 'window was opened']]);
    expect(load!.spread).toBe('2 runs from 67 to 67, standard deviation 0 (n−1)');
  });

  test('says how a log gave what is no mean of its samples', () => {
    const one = episodeOf('a/s/w/energy/board/load: 23.1 Wh');
    one.readings[0]!.log = { trace: '', firstLine: 122, lastLine: 600, samples: 479, how: 'power summed by trapezoids over 120 s' };
    const { derivation: of } = explain(new Facts(one), 'mean:a/s/w/energy/board/load');
    expect(of!.readings[0]!.log).toEqual({ firstLine: 122, lastLine: 600, samples: 479, how: 'power summed by trapezoids over 120 s' });
    expect(String(explain(new Facts(one), 'mean:a/s/w/energy/board/load'))).toContain(':122–600, from 479 samples: power summed by trapezoids over 120 s');
  });

  test('prints all of it', () => {
    const text = String(explain(facts, rise));
    for (const part of ['29 K  rise:', '= 67 − 38.3', '28.6666666666667… K', 'spoken: twenty-nine degrees', 'also 52 °F', 'run 1: 38 °C  data/example/logs/stock-1.csv:12–311, from 300 samples', 'run 2: 68 °C  data/example/episode.yaml:2  (set aside: window was opened)']) expect(text).toContain(part);
  });

  test('shows the sofa note', () => {
    const of = new Facts(episodeOf('a///t/c/x: 53 54 54 °C\na///t/c/y: 33 33 34 °C'));
    expect(String(explain(of, 'difference:a///t/c/x~phase=y'))).toContain('on the sofa: 54 − 33 would give 21 K');
  });

  test('an unknown id is told with the nearest ones', () => {
    const wrong = explain(facts, 'rise:bench/stok/scene/temperature/core/load~workload=,phase=idle');
    expect(wrong.derivation).toBeUndefined();
    expect(wrong.nearest[0]).toBe(rise);
    expect(String(wrong)).toContain('cannot be derived: no reading of bench/stok/scene/temperature/core/load');
    expect(String(explain(facts, 'nothing like it'))).toBe('There is no fact "nothing like it".');
  });
});

test.each([
  ['board power under load', 'mean:bench/stock/scene/power/board/load'],
  ['core idle', 'mean:bench/stock//temperature/core/idle'],
  ['board limit', 'constant:bench/stock//power/board/limit'],
  ['rises:bench/stock/scene/temperature/core/load~workload=,phase=idle', rise],
  ['mean:bench/stock/scene/power/bord/load', 'mean:bench/stock/scene/power/board/load'],
  ['percent change:bench/stock/scene/power/board/load~workload=,phase=limit', 'percent_change:bench/stock/scene/power/board/load~workload=,phase=limit'],
])('"%s" suggests %s first', (text, id) => {
  expect(suggestIds(facts, text)[0]).toBe(id);
  expect(isFact(facts.get(id))).toBe(true);
});

describe('the list that is stored', () => {
  test('holds every mean and constant, what is stated, and what is handed in, once and in order', () => {
    const ids = listFacts(facts, [rise, rise, 'mean:bench/stock/scene/power/board/load', 'nonsense', 'mean:x/x/x/x/x/x']).map((f) => f.id);
    expect(ids).toEqual([
      'constant:bench/stock//power/board/limit', 'mean:bench/stock//temperature/core/idle', 'mean:bench/stock/scene/power/board/load', 'mean:bench/stock/scene/temperature/core/load',
      'percent_of:bench/stock/scene/power/board/load~workload=,phase=limit', rise,
    ]);
  });

  test('a fact is plain data with these fields first', () => {
    const f = facts.get(rise);
    const record = factRecord(isFact(f) ? f : (undefined as never), facts);
    expect(Object.keys(record).slice(0, 14)).toEqual(['id', 'kind', 'value', 'unit', 'shown', 'spoken', 'setup', 'setting', 'workload', 'measure', 'part', 'phase', 'against', 'from']);
    expect(JSON.parse(JSON.stringify(record))).toEqual(record);
    expect(record).toMatchObject({
      value: '28.6666666666667', unit: 'K', setup: 'bench', workload: 'scene', phase: 'load', against: ['bench/stock//temperature/core/idle'],
      from: ['bench/stock/scene/temperature/core/load', 'bench/stock//temperature/core/idle'],
      second: { value: '51.6', unit: 'delta-degF', shown: '52 °F', spoken: 'fifty-two degrees Fahrenheit' },
    });
    expect(record.readings[0]).toEqual({ run: '1', value: '67', unit: 'degC', file: 'data/example/episode.yaml', line: 2 });
  });

  test('a mean carries its spread', () => {
    const f = facts.value('bench/stock/scene/power/board/load');
    // Sample standard deviation of 247.6, 248.3, 248.1 by hand: √((0.4² + 0.3² + 0.1²) ÷ 2) = √0.13.
    expect(isFact(f) && factRecord(f, facts).spread).toEqual({ runs: 3, sd: '0.361', min: '247.6', max: '248.3' });
  });
});

test('the log of a run is found by the reading or by its key', () => {
  expect(facts.traceOf('bench/stock//temperature/core/idle', '1')?.place.file).toBe('data/example/logs/stock-1.csv');
  expect(facts.traceOf('bench/stock//temperature/core/load', '1')?.id).toBe('bench/stock//temperature/core#1');
  expect(facts.traceOf('bench/stock//temperature/core/idle', '2')).toBeUndefined();
});
