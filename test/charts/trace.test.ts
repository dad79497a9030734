// Logs over time: what was averaged is marked, and marked legibly.
import { describe, expect, test } from 'vitest';
import { prepareChart } from '../../pipeline/charts/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { unit } from '../../pipeline/quantities/index.js';
import type { Trace } from '../../pipeline/records/index.js';
import { textBoxes } from '../../pipeline/theme/index.js';
import { expectWellSet } from './boxes.js';
import { place, sample } from './sample.js';
import { colours, wide } from '../theme/stages.js';

function logged(windows: Trace['windows'], seconds: number, values: (t: number) => number = (t) => 40 + t / seconds, runs = 1): Facts {
  const times = Array.from({ length: 601 }, (_, i) => (i * seconds) / 600);
  const traces = Array.from({ length: runs }, (_, i): Trace => ({
    id: `a/s/scene/temperature/core#${i + 1}`, setup: 'a', setting: 's', workload: 'scene', measure: 'temperature', part: 'core', run: `${i + 1}`, unit: unit('degC'), times, values: times.map(values), windows, place,
  }));
  return new Facts(sample({
    setups: { a: 'Alder' }, settings: { s: 'Stock' }, measures: { temperature: ['Temperature', 'lower'] }, parts: { core: 'Core' },
    phases: Object.fromEntries(windows.map((w) => [w.phase, w.phase.toUpperCase()])), traces,
    readings: Object.fromEntries(windows.map((w, i) => [`a/s/scene/temperature/core/${w.phase}`, `${40 + i}.5 ${41 + i}.0 ${42 + i}.0 °C`])),
  }));
}
const steady = { by: 'temperature/core', since: 0, until: 300 };
const request = { kind: 'trace', name: 'log', measure: 'temperature', place };

describe('windows', () => {
  test('say how they were found: by a rule, never, or by hand beside a rule', async () => {
    const windows = [
      { phase: 'idle', start: 20, end: 60, steady: { ...steady, rule: 'at most 1 K in 15 s', finds: true, start: 20 } },
      { phase: 'load', start: 240, end: 300, steady: { ...steady, rule: 'at most 1 K in 60 s', finds: true } },
      { phase: 'after', start: 100, end: 150, steady: { ...steady, rule: 'at most 1 K in 15 s', finds: false, start: 84 } },
    ];
    const { value, findings } = prepareChart(request, logged(windows, 300), wide);
    expect(findings).toEqual([]);
    expect(value!.alt).toContain('averaged from 0:20 to 1:00, steady from 0:20 on (at most 1 K in 15 s)');
    expect(value!.alt).toContain('averaged from 4:00 to 5:00, never steady (at most 1 K in 60 s)');
    expect(value!.table!.head.at(-1)).toBe('Steady');
    expect(value!.table!.rows.map((r) => r.at(-1))).toEqual(['steady from 0:20 on (at most 1 K in 15 s)', 'never steady (at most 1 K in 60 s)', 'steady from 1:24 on (at most 1 K in 15 s)']);
    const texts = expectWellSet((await value!.draw()).svg).map((b) => b.text).join(' ');
    expect(texts).toContain('Shaded: averaged · steady: at most 1 K in 15 s; at most 1 K in 60 s');
    expect(texts).toContain('never steady: load');
  });

  test.each([
    ['apart', [{ phase: 'idle', start: 20, end: 60 }, { phase: 'load', start: 200, end: 300 }], 300],
    ['next to each other and short', [{ phase: 'idle', start: 10, end: 12 }, { phase: 'load', start: 13, end: 15 }, { phase: 'after', start: 16, end: 18 }], 300],
    ['at the very end', [{ phase: 'load', start: 298, end: 300 }], 300],
    ['of a long log, in minutes', [{ phase: 'load', start: 3000, end: 3600 }], 3600],
  ])('%s: each is shaded, each named with the figure of the run drawn', async (_what, windows, seconds) => {
    const { value, findings } = prepareChart(request, logged(windows, seconds), wide);
    expect(findings).toEqual([]);
    const { svg } = await value!.draw();
    const texts = expectWellSet(svg).map((b) => b.text.replaceAll('\u202f', ' '));
    windows.forEach((w, i) => expect(texts).toContain(`${w.phase.toUpperCase()} ${40 + i}.5 °C`));
    expect(svg.match(new RegExp(`fill="${colours.band}"`, 'g'))).toHaveLength(windows.length);
    expect(value!.facts.filter((id) => id.startsWith('raw:'))).toHaveLength(windows.length);
    if (seconds > 600) expect(texts).toContain('20:00');
  });

  test('more than have room are a finding', () => {
    const windows = Array.from({ length: 16 }, (_, i) => ({ phase: `phase-${i}`, start: i * 15, end: i * 15 + 10 }));
    expect(prepareChart(request, logged(windows, 300), wide).findings.map((f) => f.code)).toContain('label-too-long');
  });
});

test('three runs at most, the first on top and each wider than the one above it, so that runs on each other are all seen', async () => {
  const { value } = prepareChart(request, logged([{ phase: 'load', start: 100, end: 200 }], 300, undefined, 5), wide);
  const { svg } = await value!.draw();
  const lines = [...svg.matchAll(/stroke="(#\w+)" stroke-width="(\d+)" stroke-linejoin/g)].map((m) => [m[1], Number(m[2])] as const);
  expect(lines.map(([colour]) => colour)).toEqual([colours.muted, colours.plain, colours.highlight]);
  // At 640 px, a third of the size, at least a pixel of each shows on either side.
  lines.slice(1).forEach(([, width], i) => expect((lines[i]![1] - width) / 2).toBeGreaterThanOrEqual(3));
  expect(textBoxes(svg).map((b) => b.text)).toEqual(expect.arrayContaining(['run 1', 'run 2', 'run 3']));
});

test.each([[300, 'Time in s', '300'], [3000, 'Time in min:s', '40:00'], [7200, 'Time in h:min:s', '1:30:00']])('%d s: the scale of time has a name and no unit hangs on its figures', async (seconds, name, tick) => {
  const { svg } = await prepareChart(request, logged([], seconds), wide).value!.draw();
  const texts = expectWellSet(svg).map((b) => b.text);
  expect(texts).toEqual(expect.arrayContaining([name, tick]));
});

test('a gap stays a gap', async () => {
  const { value } = prepareChart(request, logged([], 300, (t) => (t > 100 && t < 150 ? Number.NaN : 40 + t / 100)), wide);
  const { svg } = await value!.draw();
  const line = new RegExp(`d="([^"]+)"[^>]*stroke="${colours.highlight}"`).exec(svg)![1]!;
  expect(line.match(/M/g)).toHaveLength(2);
});

test('nothing but gaps is a finding', () => {
  expect(prepareChart(request, logged([], 300, () => Number.NaN), wide).findings.map((f) => f.code)).toEqual(['picture-empty']);
});
