// Figures that people in the trade know by heart: common practice, no published source. The right ones pass, the usual wrong ones are named.
import { expect, test } from 'vitest';
import { runChecks } from '../../pipeline/checks/index.js';
import { yaml } from '../../pipeline/checks/check.js';
import { readRecord } from './read-example.js';

const load = 'bench/stock/scene/temperature/core/load, bench/stock//temperature/core/idle';
const limit = (setting: string) => `bench/${setting}/scene/power/board/load, "///power/board/limit"`;
const power = 'bench/low/scene/power/board/load, bench/stock/scene/power/board/load';
const more = 'bench/even/scene/power/board/load, bench/top/scene/power/board/load';
const fps = (setting: string) => `bench/${setting}/scene/frame_rate/average/load, bench/stock/scene/frame_rate/average/load`;

const cases: [stated: string, is: string, code: string | undefined, slip?: RegExp][] = [
  [`rise: [${load}]`, '21 K', undefined],
  [`rise: [${load}]`, '21 °C', undefined],
  [`rise: [${load}]`, '20 K', 'stated-value'],
  ['rise: [bench/low/scene/temperature/core/load, bench/low//temperature/core/idle]', '20 K', undefined],
  [`percent_of: [${limit('stock')}]`, '92 %', undefined],
  [`percent_of: [${limit('low')}]`, '79 %', undefined],
  [`percent_of: [${limit('top')}]`, '93 %', undefined],
  [`percent_of: [${limit('stock')}]`, '93 %', 'stated-value'],
  [`difference: [${power}]`, '-60 W', undefined],
  [`percent_change: [${power}]`, '-14 %', undefined],
  [`percent_change: [${power}]`, '-17 %', 'wrong-base', /taken of Low instead of Stock/],
  [`percent_change: [${power}]`, '-13 %', 'percent-or-points', /points of Limit/i],
  [`difference: [${more}]`, '-65 W', undefined],
  [`percent_change: [${more}]`, '-15 %', undefined],
  [`percent_change: [${fps('low')}]`, '-2 %', undefined],
  [`percent_change: [${fps('even')}]`, '-3 %', undefined],
  ['mean: [bench/stock/scene/voltage/core/load]', '0.9 mV', 'stated-unit'],
  ['mean: [bench/stock/scene/voltage/core/load]', '0.90 V', undefined],
];

test.each(cases)('%s is %s: %s', (stated, is, code, slip) => {
  const { episode, facts } = readRecord(yaml(`
    title: Figures known by heart
    room: 21 °C
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock}, low: {name: Low}, even: {name: Even}, top: {name: Top}}
    workloads: {scene: {name: Test scene}}
    constants: {power/board/limit: 450 W}
    readings:
      - {for: {setup: bench, setting: stock}, temperature/core: {idle: 28 28 28 °C}}
      - {for: {setup: bench, setting: low}, temperature/core: {idle: 33 33 33 °C}}
      - {for: {setup: bench, setting: stock, workload: scene}, temperature/core: {load: 49 49 49 °C}, power/board: {load: 415 415 415 W}, frame_rate/average: {load: 99 99 99 fps}, voltage/core: {load: 0.90 0.90 0.90 V}}
      - {for: {setup: bench, setting: low, workload: scene}, temperature/core: {load: 53 53 53 °C}, power/board: {load: 355 355 355 W}, frame_rate/average: {load: 97 97 97 fps}}
      - {for: {setup: bench, setting: even, workload: scene}, power/board: {load: 355 355 355 W}, frame_rate/average: {load: 96 96 96 fps}}
      - {for: {setup: bench, setting: top, workload: scene}, power/board: {load: 420 420 420 W}}
    stated:
      - {${stated}, is: ${is}}
  `));
  const [first, ...rest] = runChecks(episode, facts).filter((f) => f.place.line === 15);
  expect(rest).toEqual([]);
  expect(first?.code).toBe(code);
  if (slip) expect(first?.slip).toMatch(slip);
  if (code) expect(first).toMatchObject({ said: expect.stringMatching(/\d/), recorded: expect.stringMatching(/\d/), derivation: expect.stringMatching(/=/), related: expect.arrayContaining([expect.objectContaining({ place: expect.objectContaining({ file: 'data/example/episode.yaml' }) })]) });
});

test('an undervolt target is 0.90 to 0.95 V, never millivolts', () => {
  const { episode, facts } = readRecord(yaml(`
    title: Wrong unit
    setups: {bench: {name: Open bench}}
    settings: {uv: {name: Undervolt, kind: undervolt, target: {voltage/core: 0.95 mV}}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: uv, workload: scene}, power/board: {load: 355 W}}
  `));
  expect(runChecks(episode, facts)).toMatchObject([{ code: 'unit-unlikely', severity: 'error', suggest: '0.95 V', slip: 'mV written for V' }]);
});
