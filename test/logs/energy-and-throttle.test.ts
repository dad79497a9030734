// Energy and throttled time from a log, by hand: areas of trapezoids, and seconds counted on the fingers.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { integral } from '../../pipeline/statistics/index.js';
import { readEpisode, spanOf } from '../records/reading.js';

const record = (layout: string, more = '') => `title: T
setups: {bench: {}}
settings: {stock: {limit: {power/board: 300 W}}, low: {limit: {power/board: 200 W}}}
${more}layouts:
  log: {time: {column: t}, phases: {column: phase}, columns: {p: power/board W, c: frequency/core MHz, h: temperature/hotspot °C}, ${layout}}
logs:
  - {files: log.csv, layout: log, for: {setup: bench, setting: stock}}
`;
const log = (rows: readonly (readonly [t: number, phase: string, p: number | '', c?: number, h?: number])[]) => `t,phase,p,c,h\n${rows.map(([t, phase, p, c = 2000, h = 60]) => `${t},${phase},${p},${c},${h}`).join('\n')}\n`;
const read = (layout: string, text: string, more = '') => {
  const { episode, findings } = readEpisode(record(layout, more), { 'log.csv': text });
  const values = episode?.readings.filter((r) => /energy|throttled/.test(r.key)).map((r) => `${r.key.replace('bench/stock//', '')} ${r.quantity.value.toString()} ${r.quantity.unit.id}`);
  return { episode, values, findings: findings.map((f) => `${spanOf(f)} ${f.code} ${f.severity}`), messages: findings.map((f) => f.message) };
};

describe('energy', () => {
  // 100 W for 1 s, then rising to 300 W within 2 s: 100 + 2 · 200 = 500 J.
  const rows = [[0, 'idle', 20], [1, 'idle', 20], [2, 'load', 100], [3, 'load', 100], [5, 'load', 300], [6, 'over', 50]] as const;
  test.each([
    ['energy: {power/board: energy/board J}', ['energy/board/load 500 J']],
    ['energy: {power/board: energy/board kJ}', ['energy/board/load 0.5 kJ']],
    ['energy: {power/board: energy}', ['energy//load 0.1388889 Wh']],
    ['windows: {load: last 1 s}, energy: {power/board: energy/board J}', ['energy/board/load 500 J']],
  ])('of the whole phase: %s', (layout, expected) => {
    const { values, findings } = read(layout, log(rows.filter(([, phase]) => phase !== 'over')));
    expect(findings).toEqual([]);
    expect(values).toEqual(expected);
  });

  test.each([['phase: load, windows: {load: last 2 s}', '500 J'], ['windows: {load: 3 s to 6 s}', '400 J']])('of all of the log that is one phase, else of the window: %s', (layout, joules) => {
    const text = record('energy: {power/board: energy/board J}').replace('phases: {column: phase}', layout);
    const { episode } = readEpisode(text, { 'log.csv': log([[2, 'x', 100], [3, 'x', 100], [5, 'x', 300]]) });
    expect(episode!.readings.filter((r) => r.key.includes('energy')).map((r) => `${r.quantity.value.toString()} ${r.quantity.unit.id}`)).toEqual([joules]);
  });

  test('of idle only where the log has nothing else', () => {
    expect(read('energy: {power/board: energy/board J}', log([[0, 'idle', 20], [10, 'idle', 20]])).values).toEqual(['energy/board/idle 200 J']);
  });

  test('of a phase in two stretches leaves out what lies between them', () => {
    expect(read('energy: {power/board: energy/board J}', log([[0, 'load', 100], [2, 'load', 100], [3, 'idle', 20], [60, 'load', 200], [61, 'load', 200]])).values).toEqual(['energy/board/load 400 J']);
  });

  const even = (n: number, hole: (i: number) => boolean) => Array.from({ length: n }, (_, i) => [i / 10, 'load', hole(i) ? '' : 100] as const);
  test('empty cells are passed over: nothing is lost', () => {
    const { values, findings } = read('energy: {power/board: energy/board J}', log(even(101, (i) => i % 3 === 2)));
    expect(findings).toEqual([]);
    expect(values).toEqual(['energy/board/load 1000 J']);
  });

  test('a gap is bridged by a straight line, and told', () => {
    const { values, findings, messages, episode } = read('energy: {power/board: energy/board J}', log(even(1001, (i) => i > 200 && i < 230)));
    expect(values).toEqual(['energy/board/load 10000 J']);
    // At the first line behind the gap; the mean of the power leaves it out too.
    expect(findings).toEqual(['data/example/log.csv:232:1-20 log-energy-gap warning', 'data/example/log.csv:232:1-20 log-gap warning']);
    expect(messages[0]).toContain('3.0 s of the 100 s of load have no "p" (1 gap); for the energy a straight line was drawn across');
    expect(episode!.readings.find((r) => r.key.includes('energy'))!.log!.how).toBe('power summed by trapezoids over 100 s; 3.0 s of them bridged by straight lines');
  });

  test('gaps of more than a twentieth leave no energy', () => {
    const { values, findings } = read('energy: {power/board: energy/board J}', log(even(1001, (i) => i > 200 && i < 260)));
    expect(values).toEqual([]);
    expect(findings).toEqual(['data/example/log.csv:262:1-20 log-energy-gap error', 'data/example/log.csv:262:1-20 log-gap warning']);
  });

  test.each([
    ['of a clock', 'energy: {frequency/core: energy}', 'record-form'],
    ['in watts', 'energy: {power/board: energy W}', 'unit-unknown'],
    ['of a column that is not there', 'energy: {power/card: energy}', 'unknown-name'],
  ])('%s there is none', (_, layout, code) => expect(read(layout, log(rows)).findings.some((f) => f.includes(code))).toBe(true));

  // The area under a straight line is the mean of its ends times its length, however it is cut.
  test('the trapezoids under a straight line are its area, wherever it is sampled', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 40 }), fc.integer({ min: -5, max: 5 }), (steps, slope) => {
      let t = 0;
      const times = [0, ...steps.map((s) => (t += s))];
      const { area, time } = integral(times, times.map((x) => 7 + slope * x), [[0, times.length]]);
      expect(time).toBe(t);
      expect(area).toBeCloseTo(7 * t + (slope * t * t) / 2, 3);
    }));
  });
});

describe('throttled time', () => {
  const layout = 'throttle: {clock: frequency/core, limits: [power/board, temperature/hotspot], time: throttled_time/core, share: throttled_share/core}';
  const hot = 'constants: {temperature/hotspot/limit: 105 °C}\n';
  // Held back at 3, 4 and 5 s: from half-way between 2 and 3 to half-way between 5 and 6, 3 s of 8.
  const power = [[0, 'load', 295], [1, 'load', 295], [2, 'load', 295], [3, 'load', 295, 1900], [4, 'load', 298, 1900], [5, 'load', 291, 1900], [6, 'load', 250, 1900], [7, 'load', 299, 1965], [8, 'load', 299]] as const;
  test('counts while the power is at its limit and the clock below its highest', () => {
    const { values, findings, episode } = read(layout, log(power), hot);
    expect(findings).toEqual([]);
    expect(values).toEqual(['throttled_time/core/load 3 s', 'throttled_share/core/load 37.5 %']);
    expect(episode!.readings.find((r) => r.key.includes('throttled_time'))!.log!.how).toBe('time with the clock more than 2 % below 2000 MHz and p or h at the limit (from 97 %, within 1 K), over 8.0 s');
  });
  test('or while a temperature is', () => {
    expect(read(layout, log([[0, 'load', 200], [1, 'load', 200, 1500, 104], [2, 'load', 200, 1500, 105], [3, 'load', 200, 1500, 103]]), hot).values).toEqual(['throttled_time/core/load 2 s', 'throttled_share/core/load 66.667 %']);
  });
  test('against the target of the record, where it has one', () => {
    expect(read(layout, log(power), `${hot.trimEnd().slice(0, -1)}, frequency/core/target: 2100 MHz}\n`).values).toEqual(['throttled_time/core/load 7 s', 'throttled_share/core/load 87.5 %']);
  });
  // Held back for ten samples of every fifty, at ten a second: a second of five, less half a step where the log begins.
  test.each([1000, 40_000])('of %d samples, in a long log as in a short one, however short it is held back', (n) => {
    const bursts = log(Array.from({ length: n }, (_, i) => [i / 10, 'load', i % 50 < 10 ? 299.5 : 250, i % 50 < 10 ? 1800 : 2500] as const));
    expect(read(layout, bursts, hot).values![0]).toBe(`throttled_time/core/load ${n / 50 - 0.05} s`);
    // With a clock that is not told on every seventh line: as well as can be, from the others.
    const holes = log(Array.from({ length: n }, (_, i) => [i / 10, 'load', i % 7 ? (i % 50 < 10 ? 299.5 : 250) : '', i % 50 < 10 ? 1800 : 2500, 60] as const)).replace(/,60$/gm, ',');
    const seconds = Number(/ ([\d.]+) s/.exec(read(layout, holes, hot).values![0]!)![1]);
    expect(Math.abs(seconds / (n / 50) - 1)).toBeLessThan(0.02);
  });
  test('from other shares, where the layout says so', () => {
    expect(read(layout.replace('share:', 'at: 80 %, below: 1 %, share:'), log(power), hot).values).toEqual(['throttled_time/core/load 5 s', 'throttled_share/core/load 62.5 %']);
  });
  // At its limit and below its highest on every line but the first hundred; lines 301 to 330, or 301 to 400, are not there.
  const cut = (missing: number) => log(Array.from({ length: 1001 }, (_, i) => [i / 10, 'load', 298, i < 100 ? 2000 : 1900] as const).filter((_, i) => i <= 300 || i > 300 + missing));
  test('across a gap the clock is taken to go on as it was, and that is told', () => {
    const { values, findings, messages, episode } = read(layout, cut(30), hot);
    expect(values![0]).toBe('throttled_time/core/load 90.05 s');
    expect(findings).toContain('data/example/log.csv:303:1-22 log-throttle-gap warning');
    expect(messages.find((m) => m.includes('throttled'))).toBe('3.1 s of the 100 s of load have no "c", or nothing that limits it (1 gap); for the throttled time half of each gap counts as what was before it and half as what was behind it');
    expect(episode!.readings.find((r) => r.key.includes('throttled_time'))!.log!.how).toMatch(/, over 100 s; 3\.1 s of them bridged$/);
  });
  test('across more than a twentieth of the phase nothing is given', () => {
    const { values, findings } = read(layout, cut(100), hot);
    expect(values).toEqual([]);
    expect(findings).toContain('data/example/log.csv:303:1-22 log-throttle-gap error');
  });
  test('a limit that nothing states is told, and the others count', () => {
    const { values, findings } = read(layout, log(power));
    expect(values).toEqual(['throttled_time/core/load 3 s', 'throttled_share/core/load 37.5 %']);
    expect(findings.map((f) => f.split(' ').slice(1).join(' '))).toEqual(['log-limit-missing warning']);
  });
  test.each([
    ['a power for a clock', layout.replace('frequency/core', 'power/board'), 'record-form'],
    ['a clock for a limit', layout.replace('temperature/hotspot', 'frequency/core'), 'record-form'],
    ['no share', layout.replace('share:', 'at: much, share:'), 'value-form'],
    ['nowhere to go', layout.replace(/, time.*/, '}'), 'record-missing'],
    ['a column of another name', layout.replace('temperature/hotspot', 'temperature/hotpsot'), 'unknown-name'],
  ])('%s', (_, wrong, code) => expect(read(wrong, log(power), hot).findings.some((f) => f.includes(code))).toBe(true));
});
