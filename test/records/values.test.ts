// Values as people write them, in every form that the record takes.
import { describe, expect, test } from 'vitest';
import { readEpisode } from './reading.js';

function runs(written: string, key = 'power/board/load'): string[] {
  const { episode, findings } = readEpisode(`title: T\nreadings:\n  - for: {}\n    ${key}: ${written}\n`);
  expect(findings.map((f) => f.message)).toEqual([]);
  return episode!.readings.map((r) => `${r.run}:${r.quantity.value.toFixed(r.quantity.decimals)} ${r.quantity.unit.id}`);
}

describe('runs', () => {
  test.each<[string, string[]]>([
    ['67 W', ['1:67 W']],
    ['67', ['1:67 W']],
    ['1.50', ['1:1.50 W']],
    ['67 67 68 W', ['1:67 W', '2:67 W', '3:68 W']],
    ['67 67 68', ['1:67 W', '2:67 W', '3:68 W']],
    ['67.0, 67.5, 68.0 W', ['1:67.0 W', '2:67.5 W', '3:68.0 W']],
    ['67 W, 67 W, 68 W', ['1:67 W', '2:67 W', '3:68 W']],
    ['67 W 67 W 68 W', ['1:67 W', '2:67 W', '3:68 W']],
    ['67; 68 mW', ['1:67 mW', '2:68 mW']],
    ['67 x 68 W', ['1:67 W', '3:68 W']],
    ['"67 x 68 W"', ['1:67 W', '3:68 W']],
    ['[67, 67, 68]', ['1:67 W', '2:67 W', '3:68 W']],
    ['[67, 67, 68 kW]', ['1:67 kW', '2:67 kW', '3:68 kW']],
    ['[247.6 W, 248.3 W, 248.1 W]', ['1:247.6 W', '2:248.3 W', '3:248.1 W']],
    ['[67, x, 68]', ['1:67 W', '3:68 W']],
    ['{1: 67 W, 3: 68 W}', ['1:67 W', '3:68 W']],
    ['1,234.5 W', ['1:1234.5 W']],
    ['1e3 W', ['1:1000 W']],
    ['−3 −4 W', ['1:-3 W', '2:-4 W']],
    ['-7 W', ['1:-7 W']],
    ['+5 W', ['1:5 W']],
    ['610 615 612 W', ['1:610 W', '2:615 W', '3:612 W']],
    ['0.5 mW 0.6', ['1:0.5 mW', '2:0.6 mW']],
  ])('%s', (written, expected) => expect(runs(written)).toEqual(expected));

  test.each<[string, string, string[]]>([
    ['noise/case/load', '36.4 36.5 dB(A)', ['1:36.4 dB(A)', '2:36.5 dB(A)']],
    ['airflow/fan/load', '36 37 ft3/min', ['1:36 ft3/min', '2:37 ft3/min']],
    ['duration/render/load', '1:30 1:31 1:29.5', ['1:90 s', '2:91 s', '3:89.5 s']],
    ['duration/render/load', '12:30', ['1:750 s']],
    ['price/card/rated', '$499', [':499 USD']],
    ['ratio/duty/load', '83 %', ['1:83 %']],
    ['temperature/core/load', '61 °C', ['1:61 degC']],
    ['temperature/core/load', '142 143 °F', ['1:142 degF', '2:143 degF']],
    ['frequency/core/load', '2.4 2.5 GHz', ['1:2.4 GHz', '2:2.5 GHz']],
  ])('%s: %s', (key, written, expected) => expect(runs(written, key)).toEqual(expected));

  test('by phase, by phase and run, and as limits', () => {
    const { episode, findings } = readEpisode(`
title: T
readings:
  - for: {setup: bench, setting: stock, workload: scene}
    room: 21.4 °C
    temperature/core: {idle: 38 39 °C, load: {1: 67 °C, 2: 68 °C}, limit: 105 °C}
    noise/case: 36.4 dB(A)
`);
    expect(findings).toEqual([]);
    expect(episode!.readings.map((r) => `${r.key}#${r.run}${r.constant ? ' constant' : ''}`)).toEqual([
      'bench/stock/scene/temperature/room/# constant',
      'bench/stock//temperature/core/idle#1', 'bench/stock//temperature/core/idle#2',
      'bench/stock/scene/temperature/core/load#1', 'bench/stock/scene/temperature/core/load#2',
      'bench/stock/scene/temperature/core/limit# constant',
      'bench/stock/scene/noise/case/#1',
    ]);
  });

  test('the least difference that matters is a difference, however it is written', () => {
    for (const written of ['1', '1 K', '1 °C']) {
      const { episode } = readEpisode(`title: T\nmeasures: {temperature: {matters: ${written}}}\nreadings: [{temperature: 1 °C}]\n`);
      expect(episode!.measures.get('temperature')!.matters).toMatchObject({ unit: { id: 'K' }, decimals: 0 });
    }
  });

  test('each run stands at its own place', () => {
    const { episode } = readEpisode('title: T\nreadings:\n  - power/board: {load: 247 248 251 W}\n');
    expect(episode!.readings.map((r) => `${r.place.line}:${r.place.column}-${r.place.endColumn}`)).toEqual(['3:25-28', '3:29-32', '3:33-38']);
  });
});
