// What is proposed for a file is a piece of a record that reads that very file.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importFile } from '../../pipeline/records/index.js';
import { readHeading } from '../../pipeline/records/heading-words.js';
import { readEpisode } from './reading.js';

const bytes = (text: string) => new Uint8Array(Buffer.from(text));
const shown = (path: string, content: Uint8Array) => {
  const yaml = importFile(path, content, { setup: 'bench' }).value!;
  const { episode, findings } = readEpisode(`title: T\n${yaml}`, { [path]: content });
  expect(findings.filter((f) => f.severity === 'error').map((f) => f.message), yaml).toEqual([]);
  return { yaml, keys: [...new Set(episode!.readings.map((r) => r.key.replace(/^bench\/\/\//, '')))], episode: episode! };
};

describe.each([
  ['one-card-two-boxes', 'logs/bench-stock-1.csv', ['temperature/core/load', 'temperature/hotspot/load', 'temperature/memory/load', 'power/board/load', 'frequency/core/load', 'fan_speed/fan/load']],
  ['one-card-two-boxes', 'logs/case-stock-1.csv', ['temperature/core/load', 'temperature/hotspot/load', 'temperature/memory/load', 'power/card/load', 'frequency/core/load', 'fan_speed/fan/load']],
  ['measured-card', 'logs/steady-half-run1.csv', ['temperature/core/load', 'temperature/memory/load', 'frequency/core/load', 'frequency/memory/load', 'power//load']],
  ['measured-card', 'logs/steady-half-run1-frames.csv', ['frame_rate/average/load', 'frame_rate/low/load']],
])('%s %s', (id, path, expected) => {
  const content = readFileSync(join(import.meta.dirname, '../../data', id, path));
  test('reads the file that it was made from', () => {
    expect(shown(path, content).keys).toEqual(expect.arrayContaining(expected));
  });
  test('is the same each time', () => {
    expect(importFile(path, content)).toEqual(importFile(path, content));
  });
});

describe('logs of other layouts', () => {
  test('a preamble, semicolons, decimal commas, ISO times, N/A, a limit that the log repeats', () => {
    const rows = Array.from({ length: 8 }, (_, i) => `2026-03-14 10:00:0${i};65,${i};${i === 3 ? 'N/A' : '80'};250;OK`);
    const { yaml, episode } = shown('x.csv', bytes(`Logger v1\nDevice 3\nTime;Package Power [W];Hot Spot Temperature [°C];Power Limit [W];Status\n${rows.join('\n')}\n`));
    for (const line of ['skip: 2', 'delimiter: ";"', 'decimal: comma', 'unit: iso', 'missing: ["N/A"]']) expect(yaml).toContain(line);
    expect(episode.readings.map((r) => `${r.key}#${r.run} ${r.quantity.value.toString()}`)).toEqual(['bench///power/package/load#1 65.35', 'bench///temperature/hotspot/load#1 80', 'bench///power//limit# 250']);
  });

  test('UTF-16 without a byte order mark, tabs', () => {
    const text = `time_ms\tcore_temp_c\n${Array.from({ length: 30 }, (_, i) => `${i * 100}\t${40 + (i % 3)}`).join('\n')}\n`;
    const { yaml, keys } = shown('y.csv', new Uint8Array(Buffer.from(text, 'utf16le')));
    expect(yaml).toContain('encoding: utf-16le');
    expect(yaml).toContain('delimiter: tab');
    expect(keys).toEqual(['temperature/core/load']);
  });

  test('no headings', () => {
    const yaml = importFile('z.csv', bytes(Array.from({ length: 10 }, (_, i) => `10:00:0${i},5${i},text`).join('\n'))).value!;
    expect(yaml).toContain('header: false');
    expect(yaml).toContain('time: {column: 1, unit: clock}');
  });
});

describe('tables', () => {
  test('a tidy one is named', () => {
    expect(importFile('r.csv', bytes('setup,setting,workload,measure,part,phase,run,value,unit\na,,,power,board,load,1,1,W\n')).value).toBe('tables: [r.csv]\n');
    expect(importFile('r.csv', bytes('setup;setting;workload;measure;part;phase;run;value;unit\na;;;power;board;load;1;1,5;W\n')).value).toBe('tables:\n  - {file: r.csv, delimiter: ";", decimal: comma}\n');
  });

  test('a wide one becomes readings, runs in order, what is unknown marked', () => {
    const wide = importFile('wide.csv', bytes('Cooler,Run,Core temp (°C),Fan Speed [rpm],Noise idle (dBA),Price ($),Weird,Remark\nVarrow 12,1,67.5,1200,36.4,49,3,a\nVarrow 12,2,67.9,1210,36.5,49,3,b\nTessick,1,71,900,,39,4,c\n')).value!;
    const { episode, findings } = readEpisode(`title: T\n${wide}`);
    expect(findings.map((f) => f.message), wide).toEqual([]);
    expect(episode!.readings.map((r) => `${r.key}#${r.run} ${r.quantity.value.toString()} ${r.quantity.unit.id}`)).toEqual([
      'varrow-12///price//# 49 USD', 'tessick///price//# 39 USD',
      'varrow-12///temperature/core/load#1 67.5 degC', 'varrow-12///temperature/core/load#2 67.9 degC',
      'varrow-12///fan_speed/fan/load#1 1200 rpm', 'varrow-12///fan_speed/fan/load#2 1210 rpm',
      'varrow-12///noise//idle#1 36.4 dB(A)', 'varrow-12///noise//idle#2 36.5 dB(A)',
      'tessick///temperature/core/load#1 71 degC', 'tessick///fan_speed/fan/load#1 900 rpm',
    ]);
    expect(wide).toContain('# unknown/weird/load: 3 3 # ? from "Weird": what it measures');
    expect(wide).toContain('the column "Remark" holds text');
  });

  test('nothing comes of nothing', () => {
    expect(importFile('e.csv', bytes('')).findings.map((f) => f.code)).toEqual(['table-empty']);
  });
});

describe('headings', () => {
  test.each<[string, string, string, string]>([
    ['core_temp_c', 'temperature', 'core', 'degC'],
    ['Core Temperature (°C)', 'temperature', 'core', 'degC'],
    ['Hot Spot Temperature [°C]', 'temperature', 'hotspot', 'degC'],
    ['board_power_w', 'power', 'board', 'W'],
    ['Package Power [W]', 'power', 'package', 'W'],
    ['CoreClock MHz', 'frequency', 'core', 'MHz'],
    ['fan_rpm', 'fan_speed', 'fan', 'rpm'],
    ['Lüfter 1/min', 'fan_speed', 'fan', 'rpm'],
    ['noise dB(A)', 'noise', '', 'dB(A)'],
    ['vcore (V)', 'voltage', '', 'V'],
    ['coolant_flow L/min', 'flow', 'coolant', 'L/min'],
    ['utilisation_pct', 'utilisation', '', '%'],
    ['fps', 'frame_rate', '', 'fps'],
    ['room °C', 'temperature', 'room', 'degC'],
  ])('%s', (heading, measure, part, unit) => {
    const guess = readHeading(heading);
    expect([guess.measure, guess.part, guess.unit?.id]).toEqual([measure, part, unit]);
  });

  test.each(['Weird', 'x', 'Column 7', ''])('"%s" says nothing', (heading) => {
    const { measure, unit } = readHeading(heading);
    expect([measure, unit]).toEqual([undefined, undefined]);
  });
});
