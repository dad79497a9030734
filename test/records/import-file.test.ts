// What is proposed for a file is a piece of a record that reads that very file.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { Source } from '../../pipeline/places/index.js';
import { addToRecord, importFile, newRecord, outline } from '../../pipeline/records/index.js';
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

test('energy and throttling are proposed as comments that hold when they are taken away', () => {
  const path = 'logs/steady-full-run1.csv';
  const content = readFileSync(join(import.meta.dirname, '../../data/measured-card', path));
  const yaml = importFile(path, content, { setup: 'bench' }).value!.replace(/^( +)# (energy|throttle):/gm, '$1$2:');
  const { episode, findings } = readEpisode(`title: T\n${yaml}`, { [path]: content });
  expect(findings.filter((f) => f.severity === 'error').map((f) => f.message), yaml).toEqual([]);
  expect(episode!.readings.map((r) => r.key)).toEqual(expect.arrayContaining(['bench///energy//load', 'bench///throttled_time/core/load', 'bench///throttled_share/core/load']));
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

describe('into a record that is there', () => {
  const log = (columns: string, cells: string) => bytes(`${columns}\n${Array.from({ length: 40 }, (_, i) => `${i},${cells}`).join('\n')}\n`);
  const sensors = log('Time,GPU Temp (°C),GPU Memory Temp (°C),GPU Power (W),Fan (rpm)', '67,71,250.5,1200');
  const scope = { setup: 'open-bench', setting: 'stock', workload: 'test-scene' };
  const put = (record: string, path: string, content: Uint8Array, given = {}) => {
    const { value } = importFile(path, content, given, outline(new Source('episode.yaml', record), 'x').value);
    const result = addToRecord(record, value!);
    if ('clash' in result) throw new Error(result.clash.join());
    return { value: value!, record: result.text };
  };
  const check = (record: string, files: Record<string, Uint8Array>) => {
    const { episode, findings } = readEpisode(record, files);
    expect(findings.map((f) => f.message), record).toEqual([]);
    return [...new Set(episode!.readings.map((r) => `${r.key}#${r.run}`))];
  };

  test('what is proposed for a new record is a record without a finding', () => {
    const { value, record } = put(newRecord({ title: 'T' }), 'logs/bench-stock-1.csv', sensors, scope);
    expect(value).toMatch(/^parts:\n {2}memory: .*\n {2}fan: /m);
    expect(check(record, { 'logs/bench-stock-1.csv': sensors })).toEqual(['temperature/core', 'temperature/memory', 'power/board', 'fan_speed/fan'].map((q) => `open-bench/stock/test-scene/${q}/load#1`));
  });

  test('two devices in one log keep their names', () => {
    const yaml = importFile('x.csv', log('Time,GPU Temp (°C),CPU Temp (°C)', '60,50')).value!;
    expect(yaml).toMatch(/temperature\/gpu °C[^]*temperature\/cpu °C/);
  });

  test('a second log of one layout is a line, and no line where a pattern reads it', () => {
    const one = put(newRecord({ title: 'T' }), 'logs/stock-1.csv', sensors, scope).record;
    expect(one).toContain('"logs/stock-{run}.csv"');
    expect(importFile('logs/stock-2.csv', sensors, scope, outline(new Source('episode.yaml', one), 'x').value).value).toMatch(/^# logs\/stock-2\.csv is read already, by files: "logs\/stock-\{run\}\.csv" in line \d+ of the record\.\n$/);
    const { value, record } = put(one, 'logs/limit.csv', sensors, { ...scope, run: '7' });
    expect(value).not.toContain('layouts:');
    expect(check(record, { 'logs/stock-1.csv': sensors, 'logs/limit.csv': sensors }).filter((k) => k.includes('core'))).toEqual(['open-bench/stock/test-scene/temperature/core/load#1', 'open-bench/stock/test-scene/temperature/core/load#7']);
  });

  test('beside a line for one run stands one for the next, of the same test, with the pattern for all', () => {
    const one = put(newRecord({ title: 'T' }), 'logs/stock-1.csv', sensors, { ...scope, run: '1' }).record;
    const { value, record } = put(one, 'logs/stock-2.csv', sensors);
    expect(value).toContain('"logs/stock-{run}.csv"');
    expect(check(record, { 'logs/stock-1.csv': sensors, 'logs/stock-2.csv': sensors }).filter((k) => k.includes('core'))).toEqual(['open-bench/stock/test-scene/temperature/core/load#1', 'open-bench/stock/test-scene/temperature/core/load#2']);
  });

  test('a log of another layout gets a layout of another name', () => {
    const one = put(newRecord({ title: 'T' }), 'a/log.csv', sensors, { ...scope, run: '1' }).record;
    const { record } = put(one, 'b/log.csv', log('elapsed,core °C', '60'), { ...scope, run: '2' });
    expect(record).toMatch(/^ {2}log:$[^]*^ {2}log-2:$/m);
  });
});

describe('what is neither table nor log', () => {
  test.each<[string, string | Uint8Array, string]>([
    ['nothing', '', 'The file is empty'],
    ['bytes', Uint8Array.from({ length: 3000 }, (_, i) => (i * 7919 + (i >> 3) * 31) % 256), 'no text'],
    ['a picture’s head', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]), 'no text'],
    ['Markdown', '# A title\n\nSome words, and more of them.\n\n- one, two, three\n- four\n\nThe end, at last, of it.\n', 'neither a table'],
    ['prose', 'Nothing here is measured.\nIt is told.\n', 'no column of numbers'],
    ['a table of words', 'a,b\nred,green\nblue,white\n', 'no column of numbers'],
  ])('%s', (_, content, words) => {
    const { value, findings } = importFile('x.csv', typeof content === 'string' ? bytes(content) : content);
    expect([value, findings.map((f) => f.severity)]).toEqual([undefined, ['error']]);
    expect(findings[0]!.message).toContain(words);
  });
});

describe('headings', () => {
  test.each<[string, string, string]>([
    ['GPU Temp (°C)', 'temperature', 'core'], ['CPU Clock [MHz]', 'frequency', 'core'], ['GPU Power [W]', 'power', 'board'], ['CPU Power [W]', 'power', 'package'], ['GPU Memory Temp [°C]', 'temperature', 'memory'], ['gpu_fan_rpm', 'fan_speed', 'fan'],
  ])('%s, of the one device of a log', (heading, measure, part) => expect(readHeading(heading)).toMatchObject({ measure, part }));

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
