import { describe, expect, test } from 'vitest';
import { type FactKind, factKinds, Facts, isFact } from '../../pipeline/facts/index.js';
import { Exact, unit } from '../../pipeline/quantities/index.js';
import { episodeOf, factsOf } from './episode.js';

const text = `
a/stock/scene/temperature/core/load: 67 67 68 °C
a/stock//temperature/core/idle: 38 38 39 °C
a/stock/scene/temperature/room/load: 21.4 21.6 21.5 °C
a/stock/scene/power/board/load: 247.6 248.3 248.1 W
a/low/scene/power/board/load: 200 200 200 W
a/stock//power/board/limit: = 250 W
a/stock/scene/rate/average/load: 96.3 96.1 96.5 fps
b/stock/scene/rate/average/load: 91 92 90 fps
c/stock/scene/rate/average/load: 96.3 96.1 96.5 fps
a/stock/scene/noise/card/load: 36 36 36 dB(A)
b/stock/scene/noise/card/load: 38 38 38 dB(A)
c/stock/scene/noise/card/load: 43 43 43 dB(A)
a/stock/scene/duty/fan/load: 40 41 40 %
b/stock/scene/duty/fan/load: 55 55 55 %
a/stock/scene/voltage/core/load: 0.905 0.905 0.905 V
a/low/scene/voltage/core/load: 875 875 875 mV
a///price//: = 499 USD
a/off/scene/power/board/load: 0 0 0 W
a/stock/scene/frames//load: 18000 18600 18300 frame-count
a/stock/scene/energy/board/load: 23.0 23.2 23.1 Wh
a/stock/scene/flow/loop/load: 1.00 1.00 1.00 L/min
a/stock/scene/temperature/out/load: 22.2 22.2 22.2 °C
a/stock/scene/temperature/in/load: 17.8 17.8 17.8 °C
a/stock/scene/noise/room/load: 28.0 28.0 28.0 dB(A)
a/stock/scene/noise/quiet/load: 20.0 20.0 20.0 dB(A)
`.trim();
const episode = episodeOf(text);
episode.coolant = { fluid: 'water', share: Exact.zero, place: episode.place };
episode.measures.set('rate', { ...episode.measures.get('rate')!, better: 'higher' });
// A log without noise: 60 °C − 30 K · e^(−t/40 s), a sample each second for 200 s.
const times = Array.from({ length: 201 }, (_, t) => t);
const logged = 'w/stock/scene/temperature/core/load';
episode.traces = [{ id: `${logged.slice(0, logged.lastIndexOf('/'))}#1`, setup: 'w', setting: 'stock', workload: 'scene', measure: 'temperature', part: 'core', run: '1', unit: unit('degC'), times, values: times.map((t) => 60 - 30 * Math.exp(-t / 40)), windows: [{ phase: 'load', start: 140, end: 200 }], place: episode.place }];
episode.readings.push({ key: logged, run: '1', quantity: { value: Exact.of(596, 10), unit: unit('degC'), decimals: 1 }, constant: false, place: episode.place, log: { trace: episode.traces[0]!.id, firstLine: 142, lastLine: 202, samples: 61, lasted: { window: 60, phase: 200 } } });
const facts = new Facts(episode);
const rate = (s: string): string => `${s}/stock/scene/rate/average/load`;
const noise = (s: string): string => `${s}/stock/scene/noise/card/load`;

const table: [FactKind, string, string[], string, string][] = [
  ['raw', '', ['a/stock/scene/power/board/load#2'], '248.3 W', '248.3'],
  ['mean', '', ['a/stock/scene/power/board/load'], '248.0 W', '248'],
  ['mean', '', ['a/stock//temperature/core/idle'], '38 °C', '38.3333333333333'],
  ['mean', '', [rate('a'), rate('b')], '93.7 fps', '93.65'],
  ['mean', '', [noise('a'), noise('b'), noise('c')], '40 dB(A)', '40.035075'], // 10·lg((10^3.6 + 10^3.8 + 10^4.3) ÷ 3), the mean level of ISO 3744; arithmetic 39
  ['mean', 'arithmetic', [noise('a'), noise('b'), noise('c')], '39 dB(A)', '39'],
  ['constant', '', ['a/stock//power/board/limit'], '250 W', '250'],
  ['rise', '', ['a/stock/scene/temperature/core/load', 'a/stock//temperature/core/idle'], '29 K', '29'],
  ['over_room', '', ['a/stock/scene/temperature/core/load', 'a/stock/scene/temperature/room/load'], '46 K', '45.8333333333333'],
  // 21.83 of room, corrected to 20: the rise of 45.83 in a room of 20.
  ['at_room', '', ['a/stock/scene/temperature/core/load', 'a/stock/scene/temperature/room/load', '=20degC'], '66 °C', '65.8333333333333'],
  ['difference', '', ['a/low/scene/power/board/load', 'a/stock/scene/power/board/load'], '−48.0 W', '-48'],
  ['difference', '', ['a/low/scene/voltage/core/load', 'a/stock/scene/voltage/core/load'], '−30 mV', '-30'],
  ['difference', '', ['a/stock/scene/voltage/core/load', 'a/low/scene/voltage/core/load'], '0.030 V', '0.03'],
  ['difference', '', ['a/stock//power/board/limit', 'a/stock/scene/power/board/load'], '2.0 W', '2'],
  ['percent_change', '', ['a/low/scene/power/board/load', 'a/stock/scene/power/board/load'], '−19 %', '-19.3548387096774'],
  ['points', '', ['b/stock/scene/duty/fan/load', 'a/stock/scene/duty/fan/load'], '15 points', '14.6666666666667'],
  ['percent_of', '', ['a/stock/scene/power/board/load', 'a/stock//power/board/limit'], '99 %', '99.2'],
  ['ratio', '', ['a/stock/scene/power/board/load', 'a/low/scene/power/board/load'], '1.24×', '1.24'],
  ['ratio', '', ['a/stock/scene/power/board/load', '=100 W'], '2.48×', '2.48'],
  ['ratio', '', ['a/low/scene/power/board/load', '=100 W'], '2×', '2'],
  ['rank', '', [rate('a'), rate('b'), rate('c')], '1', '1'],
  ['rank', '', [rate('b'), rate('a'), rate('c')], '3', '3'],
  ['rank', 'lowest', [rate('b'), rate('a'), rate('c')], '1', '1'],
  ['rank', 'highest', [noise('b'), noise('a'), noise('c')], '2', '2'],
  ['median', '', [rate('a'), rate('b'), rate('c')], '96.3 fps', '96.3'],
  ['median', '', [rate('a'), rate('b')], '93.7 fps', '93.65'],
  ['range', '', [rate('a'), rate('b'), rate('c')], '5.3 fps', '5.3'],
  ['range', 'low', [rate('a'), rate('b')], '91.0 fps', '91'],
  ['range', 'high-run', [rate('a'), rate('b')], '96.5 fps', '96.5'],
  ['range', '', ['a/stock/scene/temperature/core/load', 'a/stock//temperature/core/idle'], '29 K', '29'],
  ['count', '', [rate('a'), rate('b'), rate('c')], '3', '3'],
  ['count', 'settings', ['a/stock/scene/power/board/load', 'a/low/scene/power/board/load'], '2', '2'],
  ['count', 'runs', [rate('a')], '3', '3'],
  ['count', 'at-least', [rate('a'), rate('b'), rate('c'), '=96 fps'], '2', '2'],
  ['count', 'below', [noise('a'), noise('b'), noise('c'), '=38 dB(A)'], '1', '1'],
  ['per_watt', '', [rate('a'), 'a/stock/scene/power/board/load'], '0.388 fps/W', '0.388306451612903'],
  ['per_watt', '', ['(over_room:a/stock/scene/temperature/core/load~part=room)', 'a/stock/scene/power/board/load'], '0.185 K/W', '0.184811827956989'],
  ['per_price', '', [rate('a'), 'a///price//'], '0.193 fps/$', '0.192985971943888'],
  ['mean', 'harmonic', ['=30 fps', '=60 fps', '=200 fps'], '55 fps', '54.5454545454545'], // over equal frames; arithmetic 96.667
  ['mean', 'geometric', ['=2x', '=8x'], '4×', '4'],
  ['mean', 'geometric', [`(ratio:${rate('b')}~${rate('a')})`, `(ratio:${rate('a')}~${rate('b')})`], '1.00×', '1'], // the ratios of two workloads, each the other way round
  ['energy', '', ['a/low/scene/power/board/load', '=90 s'], '5.00 Wh', '5'],
  ['energy', 'joules', ['a/low/scene/power/board/load', '=90 s'], '18,000 J', '18000'],
  ['energy', 'kilojoules', ['a/stock/scene/energy/board/load'], '83.2 kJ', '83.16'],
  ['per_energy', '', ['a/stock/scene/frames//load', 'a/stock/scene/energy/board/load'], '792 frames/Wh', '792.207792207792'],
  ['per_energy', 'joule', ['a/stock/scene/frames//load', 'a/stock/scene/energy/board/load'], '0.220 frames/J', '0.22005772005772'],
  ['heat', '', ['a/stock/scene/flow/loop/load', 'a/stock/scene/temperature/out/load', 'a/stock/scene/temperature/in/load'], '306 W', '306.334781045333'],  // 1 L/min ÷ 60 · 998.206 kg/m³ · 4184.8 J/(kg·K) · 4.4 K ÷ 1000, at 20 °C
  ['heat', '', ['a/stock/scene/flow/loop/load', '=4.4 K', '=20 °C'], '306 W', '306.334781045333'],
  ['level_sum', '', ['=80.0 dB(A)', '=85.0 dB(A)'], '86.2 dB(A)', '86.19331'],
  ['without_background', '', [noise('b'), 'a/stock/scene/noise/room/load'], '37.5 dB(A)', '37.542425'], // 10 dB above: K1 is 0.46 dB
  ['without_background', '', [noise('b'), 'a/stock/scene/noise/quiet/load'], '38.0 dB(A)', '38'],
  ['approach', '', [logged], '40.0 s', '40'],
  ['approach', 'final', [logged], '60.0 °C', '60'],
  ['at_distance', '', [noise('a'), '=0.5m', '=1m'], '30 dB(A)', '29.9794'],
];

test('every kind of fact stands in the table', () => {
  expect([...new Set(table.map(([kind]) => kind))].sort()).toEqual([...factKinds].sort());
});

test.each(table)('%s %s of %j is %s', (kind, variant, operands, shown, value) => {
  const f = facts.derive(kind, operands, variant);
  if (!isFact(f)) throw new Error(f.why);
  expect(f.shown).toBe(shown);
  expect(f.value.toString()).toBe(value);
  expect(facts.get(f.id)).toBe(f);
});

test.each<[FactKind, string[], string]>([
  ['percent_change', ['a/stock/scene/temperature/core/load', 'a/stock//temperature/core/idle'], 'zero is arbitrary'],
  ['percent_of', ['a/stock/scene/temperature/core/load', '=105 °C'], 'zero is arbitrary'],
  ['ratio', ['a/stock/scene/temperature/core/load', 'a/stock//temperature/core/idle'], 'zero is arbitrary'],
  ['per_watt', ['a/stock/scene/temperature/core/load', 'a/stock/scene/power/board/load'], 'take its rise over the room'],
  ['per_watt', [rate('a'), rate('b')], 'the second must be a power'],
  ['per_price', [rate('a'), rate('b')], 'the second must be a price'],
  ['points', [rate('a'), rate('b')], 'between two percentages'],
  ['difference', [rate('a'), noise('a')], 'fps and dB(A) cannot be compared'],
  ['percent_of', ['a/low/scene/power/board/load', 'a/off/scene/power/board/load'], 'the whole is zero'],
  ['percent_change', ['a/low/scene/power/board/load', 'a/off/scene/power/board/load'], 'the base is zero'],
  ['per_watt', [rate('a'), 'a/off/scene/power/board/load'], 'division by zero'],
  ['approach', ['a/stock/scene/temperature/core/load'], 'is no mean of a log'],
  ['rank', [noise('a'), noise('b')], 'does not say which end'],
  ['mean', [rate('a'), noise('a')], 'cannot be averaged'],
  ['mean', ['x/stock/scene/rate/average/load'], 'no reading of x/stock/scene/rate/average/load'],
  ['raw', [`${rate('a')}#4`], 'no run 4'],
  ['mean', ['nonsense'], 'is not setup/setting/workload/measure/part/phase'],
  ['rise', [rate('a')], 'the value under load and the value at idle'],
  ['difference', [rate('a'), '=some W'], 'no number in'],
  ['count', [rate('a'), 'a/stock/scene/power/board/load', '=1 dB(A)'], 'cannot be compared'],
  ['energy', ['a/low/scene/power/board/load'], 'must be an energy'],
  ['energy', ['a/low/scene/power/board/load', noise('a')], 'a power and the time'],
  ['per_energy', [rate('a'), 'a/low/scene/power/board/load'], 'the second must be an energy'],
  ['per_energy', [rate('a'), 'a/stock/scene/energy/board/load'], 'for each watt it says what is done for each joule'],
  ['per_energy', [noise('a'), 'a/stock/scene/energy/board/load'], 'means nothing'],
  ['heat', ['a/stock/scene/flow/loop/load', 'a/stock/scene/temperature/out/load', '=300 °C'], 'from 5 to 60 °C'],
  ['heat', [rate('a'), 'a/stock/scene/temperature/out/load', '=30 °C'], 'the first must be a flow'],
  ['heat', ['a/stock/scene/flow/loop/load', '=5 K', '=5 K'], 'the warm side and that on the cold side'],
  ['level_sum', [noise('a'), rate('a')], 'sound levels are meant'],
  ['without_background', [noise('a'), '=32.0 dB(A)'], '36 dB(A) stands only 4 dB above its background; below 6 dB it cannot be corrected (ISO 3744) and is at most 35 dB(A)'],
  ['at_distance', [noise('a'), '=1m', '=0m'], 'above zero'],
  ['at_distance', [noise('a'), '=1m', '=1s'], 'must be distances'],
])('%s of %j: %s', (kind, operands, why) => {
  const f = facts.derive(kind, operands, kind === 'count' ? 'below' : '');
  expect(isFact(f) ? f.shown : f.why).toContain(why);
});

test.each(['', 'x', 'mean:', 'nope:a/b/c/d/e/f', 'mean:a/b', 'mean.:a/b/c/d/e/f', 'rise:a/b/c/d/e/f~x=1', 'rise:a/b/c/d/e/f~)', 'rise:(mean:a/b/c/d/e/f', 'mean.odd:a/stock/scene/power/board/load', 'rise:a/b/c/d/e/f~'])('"%s" is no fact, and nothing breaks', (id) => {
  expect(isFact(facts.get(id))).toBe(false);
});

describe('runs', () => {
  const mixed = episodeOf(`
a/stock/scene/voltage/core/load: 0.905 V
a/stock/scene/power/board/load: 247 248 300 W
b/stock/scene/power/board/load: 250 W
`.trim());
  mixed.readings.push({ ...mixed.readings[0]!, run: '2', quantity: episodeOf('a/stock/scene/voltage/core/load: 907 mV').readings[0]!.quantity });
  mixed.readings[3]!.aside = { reason: 'window was opened', place: mixed.place };
  mixed.readings[4]!.aside = { reason: 'wrong cable', place: mixed.place };
  const of = new Facts(mixed);

  test('given in V and in mV are averaged in the unit of the first', () => {
    const f = of.value('a/stock/scene/voltage/core/load');
    expect(isFact(f) && f.shown).toBe('0.906 V');
  });

  test('set aside are left out, and kept', () => {
    const f = of.value('a/stock/scene/power/board/load');
    expect(isFact(f) && f.shown).toBe('248 W');
    expect(of.readings('a/stock/scene/power/board/load')).toHaveLength(2);
    expect(of.readings('a/stock/scene/power/board/load', { aside: true })).toHaveLength(3);
    expect(of.value('b/stock/scene/power/board/load')).toEqual({ why: 'every run of b/stock/scene/power/board/load is set aside' });
  });

  test('given in units that do not mix are no mean', () => {
    const e = episodeOf('a/stock/scene/power/board/load: 247 248 W');
    e.readings[1]!.quantity = episodeOf('a/stock/scene/power/board/load: 248 V').readings[0]!.quantity;
    expect(new Facts(e).value('a/stock/scene/power/board/load')).toEqual({ why: 'a/stock/scene/power/board/load is given in W and in V' });
  });

  test('a constant stated twice is the first one', () => {
    const f = factsOf('a/stock//power/board/limit: = 250 260 W').value('a/stock//power/board/limit');
    expect(isFact(f) && [f.kind, f.shown]).toEqual(['constant', '250 W']);
  });

  test('have an exact spread (NIST StRD NumAcc3: standard deviation 0.1, which binary numbers miss)', () => {
    const e = episodeOf(`a/b/c/d/e/f: 1000000.2 ${Array.from({ length: 500 }, () => '1000000.1 1000000.3').join(' ')} W`);
    const f = new Facts(e).value('a/b/c/d/e/f');
    expect(isFact(f) && f.spread).toMatchObject({ sd: 0.1, runs: 1001 });
    expect(isFact(f) && f.value.toString()).toBe('1000000.2');
  });
});

test('the price of a setup is a constant of its own, though no key of the record', () => {
  const e = episodeOf(text.split('\n').filter((l) => !l.includes('price')).join('\n'));
  e.setups.set('a', { ...e.setups.get('a')!, price: { amount: episodeOf('a///price//: = 64 EUR').readings[0]!.quantity, place: e.place } });
  const of = new Facts(e);
  expect(of.priceOf('a')).toBe('a///price//');
  expect(of.priceOf('b')).toBeUndefined();
  expect(of.keys()).not.toContain('a///price//');
  const f = of.derive('per_price', [rate('a'), of.priceOf('a')!]);
  expect(isFact(f) && f.shown).toBe('1.50 fps/€');
});
