// Idle and load of logs that do not say them: found by a quantity that is low in the one and high in the other.
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { levelBorder } from '../../pipeline/statistics/index.js';
import { marked, readEpisode } from '../records/reading.js';
import { random } from '../statistics/random.js';

const record = (layout: string): string => `title: T\nlayouts:\n  s: {time: {column: t}, columns: {p: power/board W, u: "utilisation/card %", c: temperature/core °C}, ${layout}}\nlogs:\n  - {files: log.csv, layout: s, for: {setup: bench}}\n`;

/** Power over time, one sample a second; utilisation and temperature go with it. */
function log(power: number[], seed = 4): string {
  const { normal } = random(seed);
  return `t,p,u,c\n${power.map((p, t) => `${t},${(p + 2 * normal()).toFixed(1)},${p > 100 ? 100 - Math.round(Math.abs(normal())) : Math.round(Math.abs(normal()))},${p > 100 ? 70 : 35}`).join('\n')}\n`;
}
const stretch = (seconds: number, power: number): number[] => Array.from({ length: seconds }, () => power);

/** "idle 2-61": the lines of each phase. */
function phases(layout: string, csv: string): string[] {
  const { episode, findings } = readEpisode(record(layout), { 'log.csv': csv });
  expect(findings.map((f) => f.message)).toEqual([]);
  return episode!.readings.filter((r) => /temperature/.test(r.key)).map((r) => `${r.key.split('/')[5]} ${r.log!.firstLine}-${r.log!.lastLine}`);
}

describe('phases by a quantity', () => {
  test.each<[string, number[], string[]]>([
    ['idle, load, cool-down', [...stretch(60, 40), ...stretch(200, 250), ...stretch(30, 45)], ['idle 2-61', 'load 62-261']],
    ['a short load after a long idle', [...stretch(600, 40), ...stretch(60, 250)], ['idle 2-601', 'load 602-661']],
    ['a load that drops to a lower level', [...stretch(60, 40), ...stretch(150, 280), ...stretch(150, 180)], ['idle 2-61', 'load 62-361']],
    ['jerks at idle, a breath under load', [...stretch(30, 40), ...stretch(3, 200), ...stretch(40, 40), ...stretch(90, 250), ...stretch(4, 60), ...stretch(90, 250)], ['idle 2-74', 'load 75-258']],
    ['several loads: the longest, and the idle before it', [...stretch(20, 40), ...stretch(50, 250), ...stretch(40, 40), ...stretch(90, 250), ...stretch(90, 40)], ['idle 72-111', 'load 112-201']],
    ['load first, then idle', [...stretch(100, 250), ...stretch(60, 40)], ['load 2-101', 'idle 102-161']],
  ])('%s', (_, power, expected) => {
    expect(phases('phases: {by: power/board}', log(power)).sort()).toEqual([...expected].sort());
    expect(phases('phases: {by: utilisation/card}', log(power)).sort()).toEqual([...expected].sort());
  });

  test('with windows cut from them, given or found', () => {
    const csv = log([...stretch(60, 40), ...stretch(200, 250)]);
    expect(phases('phases: {by: power/board}, windows: {idle: last 15 s, load: steady to 1 K in 60 s}', csv)).toEqual(['idle 47-61', 'load 62-261']);
  });

  test('a quantity that stands on one level, or drifts, tells nothing', () => {
    for (const power of [stretch(300, 250), Array.from({ length: 300 }, (_, i) => 40 + i)]) {
      const { findings } = readEpisode(record('phases: {by: power/board}'), { 'log.csv': log(power) });
      expect(findings.map((f) => `${f.code} ${f.message}`)).toEqual([expect.stringMatching(/^log-phase-missing Idle and load cannot be told apart by "p": its values do not stand on two levels/)]);
    }
  });

  test.each([
    ['‹phases›: {}', 'hases needs "column" or "by", and not both'],
    ['‹phases›: {column: u, by: power/board}', 'hases needs "column" or "by", and not both'],
    ['windows: {load: ‹steady›}', 'the layout has to say the phases'],
    ['phases: {by: ‹power/bord›}', 'did you mean power/board'],
  ])('%s', (layout, message) => {
    const { text, spans } = marked(record(layout));
    const { findings } = readEpisode(text, { 'log.csv': log(stretch(10, 40)) });
    expect(findings.map((f) => f.message).join('\n')).toContain(message);
    expect(findings.map((f) => `${f.place.file}:${f.place.line}:${f.place.column}-${f.place.endColumn}`)).toContain(spans[0]);
  });
});

test('the border lies halfway between two levels, as ratios between their logarithms', () => {
  expect(levelBorder([1, 1, 1, 9, 9], false)).toBeCloseTo(5, 10);
  expect(levelBorder([10, 10, 10, 1000, 1000], true)).toBeCloseTo(100, 8);
  expect(levelBorder([5, 5, 5], false)).toBeUndefined();
  expect(levelBorder([], true)).toBeUndefined();
  expect(levelBorder([NaN, 3], false)).toBeUndefined();
});

// What the logger itself wrote into the phase column of nine logs of a real card; power and utilisation follow within a second, the clock's own ramp.
test('of nine measured logs the phases found by power are those that their own column says', () => {
  const folder = resolve(import.meta.dirname, '../../data/measured-card/logs');
  for (const name of readdirSync(folder).filter((n) => /run\d\.csv$/.test(n)).sort()) {
    const csv = readFileSync(join(folder, name), 'utf8');
    const lines = csv.trimEnd().split('\n').map((l) => l.split(',')[1]);
    const { episode, findings } = readEpisode('title: T\nlayouts:\n  s: {time: {column: elapsed_s}, phases: {by: power/board}, columns: {power_w: power/board W}}\nlogs:\n  - {files: log.csv, layout: s, for: {setup: bench}}\n', { 'log.csv': csv });
    expect(findings).toEqual([]);
    const found = Object.fromEntries(episode!.readings.map((r) => [r.key.split('/')[5]!, r.log!]));
    for (const [phase, first, last] of [['idle', lines.indexOf('idle') + 1, lines.lastIndexOf('idle') + 1], ['load', lines.indexOf('load') + 1, lines.lastIndexOf('load') + 1]] as const) {
      expect(Math.abs(found[phase]!.firstLine - first), `${name} ${phase} begins`).toBeLessThanOrEqual(4);
      expect(Math.abs(found[phase]!.lastLine - last), `${name} ${phase} ends`).toBeLessThanOrEqual(4);
    }
  }
});
