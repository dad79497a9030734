// Sensor logs of any layout to per-run values and traces, and every fault of a log at its line.
import { describe, expect, test } from 'vitest';
import { energyMean } from '../../pipeline/statistics/index.js';
import { readEpisode, spanOf } from '../records/reading.js';

const record = (layout: string, files = 'log.csv') => `title: T
layouts:
  sensors: ${layout}
logs:
  - {files: "${files}", layout: sensors, for: {setup: bench}}
`;
const plain = '{time: {column: t}, phases: {column: phase}, columns: {c: temperature/core °C}}';

function values(layout: string, log: string | Uint8Array): string[] {
  const { episode, findings } = readEpisode(record(layout), { 'log.csv': log });
  expect(findings.map((f) => f.message)).toEqual([]);
  return episode!.readings.map((r) => `${r.key.replace('bench///', '')}#${r.run} ${r.quantity.value.toString()} ${r.quantity.unit.id}${r.log ? ` lines ${r.log.firstLine}-${r.log.lastLine}, ${r.log.samples}` : ''}`);
}

const rows = (n: number, row: (i: number) => string) => Array.from({ length: n }, (_, i) => row(i)).join('\n');

describe('any layout', () => {
  test.each<[string, string, string | Uint8Array, string[]]>([
    ['phases by a column', plain, 't,phase,c\n0,idle,30\n1,idle,31\n2,load,60\n3,load,61\n4,load,63\n',
      ['temperature/core/idle#1 30.5 degC lines 2-3, 2', 'temperature/core/load#1 61.33 degC lines 4-6, 3']],
    ['phases by a map, the rest left out', '{time: {column: t}, phases: {column: stage, map: {wait: idle, run: load}}, columns: {c: temperature/core °C}}',
      't,stage,c\n0,wait,30\n1,run,60\n2,over,50\n', ['temperature/core/idle#1 30 degC lines 2-2, 1', 'temperature/core/load#1 60 degC lines 3-3, 1']],
    ['windows by time', '{time: {column: t}, windows: {idle: 0 s to 2 s, load: 3 s to 5 s}, columns: {c: temperature/core °C}}',
      `t,c\n${rows(6, (i) => `${i},${30 + i}`)}\n`, ['temperature/core/idle#1 30.5 degC lines 2-3, 2', 'temperature/core/load#1 33.5 degC lines 5-6, 2']],
    ['the last part of a phase', '{time: {column: t}, phases: {column: phase}, windows: {load: last 2 s}, columns: {c: temperature/core °C}}',
      `t,phase,c\n0,idle,20\n${rows(5, (i) => `${i + 1},load,${30 + i}`)}\n`, ['temperature/core/idle#1 20 degC lines 2-2, 1', 'temperature/core/load#1 33.5 degC lines 6-7, 2']],
    ['the first minute of a phase, besides all of it', '{time: {column: t, unit: min}, phases: {column: phase}, windows: {first-minute: first 60 s of load, load: from 0 s}, columns: {c: temperature/core °C}}',
      't,phase,c\n0,load,40\n0.5,load,50\n1,load,60\n1.5,load,70\n', ['temperature/core/first-minute#1 45 degC lines 2-3, 2', 'temperature/core/load#1 55 degC lines 2-5, 4']],
    ['clock times over midnight', '{time: {column: at, unit: clock}, windows: {load: 0:02 to 0:04}, columns: {c: temperature/core °C}}',
      'at,c\n23:59:58,30\n23:59:59,31\n00:00:00,40\n00:00:01,42\n00:00:02,50\n', ['temperature/core/load#1 41 degC lines 4-5, 2']],
    ['ISO times with a zone', '{time: {column: at, unit: iso}, windows: {load: 1 s to 3 s}, columns: {c: temperature/core °C}}',
      'at,c\n2026-03-14T10:00:00Z,30\n2026-03-14T11:00:01.0+01:00,40\n2026-03-14T10:00:02Z,42\n', ['temperature/core/load#1 41 degC lines 3-4, 2']],
    ['milliseconds', '{time: {column: ms, unit: ms}, windows: {load: 1 s to 2 s}, columns: {c: temperature/core °C}}',
      'ms,c\n0,30\n500,31\n1000,40\n1500,42\n', ['temperature/core/load#1 41 degC lines 4-5, 2']],
    ['a sample rate instead of times', '{time: {rate: 2 Hz}, windows: {load: 1 s to 2 s}, columns: {c: temperature/core °C}}',
      'c\n30\n31\n40\n42\n', ['temperature/core/load#1 41 degC lines 4-5, 2']],
    ['no headings, columns by number', '{header: false, time: {every: 250 ms}, phase: load, columns: {2: temperature/core °C}}',
      'x,40\ny,42\n', ['temperature/core/load#1 41 degC lines 1-2, 2']],
    ['semicolons, decimal commas, a preamble and comments, Latin-1',
      '{encoding: latin-1, delimiter: ";", decimal: comma, skip: 2, comment: "//", time: {column: Zeit}, phase: load, columns: {Lüfter °C: temperature/core °C}}',
      Buffer.from('Logger\n1.1\nZeit;Lüfter °C\n// warm\n0;40,5\n1;41,5\n', 'latin1'), ['temperature/core/load#1 41 degC lines 5-6, 2']],
    ['tabs and UTF-16', '{delimiter: tab, time: {column: t}, phase: load, columns: {c: temperature/core °C}}',
      Buffer.from('\ufefft\tc\r\n0\t40\r\n1\t42\r\n', 'utf16le'), ['temperature/core/load#1 41 degC lines 2-3, 2']],
    ['cells that say "no value"', '{missing: [N/A, "-"], time: {column: t}, phase: load, columns: {c: temperature/core °C}}',
      't,c\n0,40\n1,N/A\n2,-\n3,\n4,42\n', ['temperature/core/load#1 41 degC lines 2-6, 2']],
    ['largest, smallest, last, and what a counter grew by', '{time: {column: t}, phase: load, columns: {a: {reads: power/a W, take: max}, b: {reads: power/b W, take: min}, c: {reads: power/c W, take: last}, e: {reads: energy/board Wh, take: increase}}}',
      't,a,b,c,e\n0,5,5,5,100.5\n1,9,1,4,101\n2,7,3,6,102.25\n', ['power/a/load#1 9 W lines 2-4, 3', 'power/b/load#1 1 W lines 2-4, 3', 'power/c/load#1 6 W lines 2-4, 3', 'energy/board/load#1 1.75 Wh lines 2-4, 3']],
    ['a line of units under the headings, and a delimiter at the end of each line', '{under: 1, time: {column: t}, phase: load, columns: {c: temperature/core °C}}',
      't,c\ns,°C\n0,40,\n1,42,\n', ['temperature/core/load#1 41 degC lines 3-4, 2']],
    ['headings that end with a delimiter', '{time: {column: t}, phase: load, columns: {c: temperature/core °C}}',
      't,c,\n0,40\n1,42\n', ['temperature/core/load#1 41 degC lines 2-3, 2']],
    ['a constant that the log repeats', '{time: {column: t}, phase: load, columns: {p: power/board W, l: power/board/limit W}}',
      't,p,l\n0,240,250.00\n1,242,250.00\n', ['power/board/load#1 241 W lines 2-3, 2', 'power/board/limit# 250 W']],
  ])('%s', (_, layout, log, expected) => expect(values(layout, log)).toEqual(expected));

  test('several logs by a pattern, in the order of their numbers', () => {
    const log = (c: number) => `t,phase,c\n0,load,${c}\n1,load,${c}\n`;
    const { episode, findings } = readEpisode(record(plain, 'logs/{setting}-run{run}.csv'), {
      'logs/stock-run10.csv': log(50), 'logs/stock-run2.csv': log(42), 'logs/limit-80-run1.csv': log(31), 'logs/stock-run2-frames.csv': 'x\n', 'logs/notes.txt': 'no log',
    });
    expect(findings).toEqual([]);
    expect(episode!.readings.map((r) => `${r.key}#${r.run} ${r.quantity.value.toString()}`)).toEqual([
      'bench/limit-80//temperature/core/load#1 31', 'bench/stock//temperature/core/load#2 42', 'bench/stock//temperature/core/load#10 50',
    ]);
    expect(episode!.traces.map((t) => t.id)).toEqual(['bench/limit-80//temperature/core#1', 'bench/stock//temperature/core#2', 'bench/stock//temperature/core#10']);
    expect(episode!.readings.every((r) => episode!.traces.some((t) => t.id === r.log!.trace))).toBe(true);
  });

  describe('ids with hyphens in the names of files', () => {
    const log = 't,phase,c\n0,load,40\n1,load,41\n';
    const read = (sections: string, ...paths: string[]) => {
      const { episode, findings } = readEpisode(`title: T\n${sections}layouts:\n  sensors: ${plain}\nlogs:\n  - {files: "logs/{setup}-{setting}-{run}.csv", layout: sensors}\n`, Object.fromEntries(paths.map((p) => [`logs/${p}.csv`, log])));
      return { keys: [...new Set(episode!.readings.map((r) => `${r.key.split('/').slice(0, 2).join(' at ')}, run ${r.run}`))], told: findings.map((f) => `${f.severity} ${f.code} ${f.message}`) };
    };
    const towers = 'setups: {tall: {}, tall-tower: {}, loop: {}}\n';

    test.each<[string, string, string, string]>([
      ['both are known, the longer one is meant', `${towers}settings: {stock: {}, limit-75: {}}\n`, 'tall-tower-limit-75-1', 'tall-tower at limit-75, run 1'],
      ['the shorter one is meant', `${towers}settings: {stock: {}, limit-75: {}}\n`, 'tall-stock-2', 'tall at stock, run 2'],
      ['only the setups are known', towers, 'tall-tower-fan-curve-2-3', 'tall-tower at fan-curve-2, run 3'],
      ['only the settings are known', 'settings: {stock: {}, power-limit: {}}\n', 'low-box-power-limit-1', 'low-box at power-limit, run 1'],
      ['an id with a point', 'setups: {v1.2: {}, v1x2: {}}\n', 'v1.2-stock-1', 'v1.2 at stock, run 1'],
    ])('%s', (_, sections, path, expected) => expect(read(sections, path)).toEqual({ keys: [expected], told: [] }));

    test('one that is unknown is named whole', () => {
      expect(read(`${towers}settings: {stock: {}}\n`, 'short-tower-stock-1').told).toEqual([expect.stringMatching(/^error unknown-name Unknown setup "short-tower" in the name of logs\/short-tower-stock-1\.csv/)]);
    });

    test('a name that can be read in two ways is told', () => {
      const { keys, told } = read('setups: {tall: {}, tall-tower: {}}\nsettings: {stock: {}, tower-stock: {}}\n', 'tall-tower-stock-1');
      expect(keys).toEqual(['tall-tower at stock, run 1']);
      expect(told).toEqual([expect.stringMatching(/^warning log-name-ambiguous .*setup tall-tower, setting stock, run 1, which is taken, or as setup tall, setting tower-stock, run 1/)]);
    });
  });

  test('a trace has gaps where cells are empty, and its windows', () => {
    const { episode } = readEpisode(record(plain), { 'log.csv': 't,phase,c\n0.5,idle,30\n1,load,\n1.5,load,60\n' });
    expect(episode!.traces[0]).toMatchObject({
      times: [0.5, 1, 1.5], values: [30, NaN, 60], unit: { id: 'degC' }, run: '1',
      windows: [{ phase: 'idle', start: 0.5, end: 0.5 }, { phase: 'load', start: 1, end: 1.5 }],
    });
  });
});

describe('means', () => {
  test('are exact in decimals: a hundred times 0.1 is 0.1', () => {
    expect(values(plain, `t,phase,c\n${rows(100, (i) => `${i},load,0.1`)}\n`)).toEqual(['temperature/core/load#1 0.1 degC lines 2-101, 100']);
  });

  test('are kept to two decimals more than the samples have, half away from zero', () => {
    // (60 + 61 + 61 + …) of 8 samples: 485 / 8 = 60.625
    expect(values(plain, `t,phase,c\n${[60, 61, 61, 60, 61, 61, 60, 61].map((c, i) => `${i},load,${c}`).join('\n')}\n`)).toEqual(['temperature/core/load#1 60.63 degC lines 2-9, 8']);
  });

  // A mean of whole degrees over ten samples resolves a third of a degree at best; one decimal is all that can be meant.
  test.each<[string, string[], string, string]>([
    ['whole steps, few samples', ['60', '61', '61', '60', '61', '61', '60', '61'], '60.63', '61'],
    ['whole steps, ten samples', ['60', '61', '61', '60', '61', '61', '60', '61', '60', '61'], '60.6', '60.6'],
    ['whole steps written with zeros', ['60.000', '61.000', '61.000', '60.000', '61.000', '61.000', '60.000', '61.000', '60.000', '61.000', '61.000'], '60.63636', '60.6'],
    ['steps of a tenth', Array.from({ length: 20 }, (_, i) => (i % 2 ? '72.3' : '72.4')), '72.35', '72.4'],
    ['steps of a thousandth', Array.from({ length: 20 }, (_, i) => (i % 2 ? '0.903' : '0.904')), '0.9035', '0.904'],
    ['steps of a hundredth, large', Array.from({ length: 20 }, (_, i) => (i % 2 ? '613.27' : '613.28')), '613.275', '613.3'],
    ['four digits before the point', Array.from({ length: 20 }, (_, i) => (i % 2 ? '1598' : '1599')), '1598.5', '1599'],
  ])('%s: kept exact, shown no finer than the sensor steps', (_, cells, kept, shown) => {
    const { episode } = readEpisode(record(plain), { 'log.csv': `t,phase,c\n${cells.map((c, i) => `${i},load,${c}`).join('\n')}\n` });
    const { value, decimals } = episode!.readings[0]!.quantity;
    expect([value.toString(), value.toFixed(decimals)]).toEqual([kept, shown]);
  });

  test('of sound levels are energy means (38.2, 38.9, 37.6 dB is 38.27 dB: oracles/sound_levels.csv)', () => {
    const [value] = values('{time: {column: t}, phase: load, columns: {n: noise/case dB(A)}}', 't,n\n0,38.2\n1,38.9\n2,37.6\n');
    expect(Number(value!.split(' ')[1])).toBeCloseTo(38.27, 2);
    expect(Number(value!.split(' ')[1])).toBeCloseTo(energyMean([38.2, 38.9, 37.6]), 3);
  });
});

type Fault = [what: string, layout: string, log: string, code: string, place: string, words: string];
const at = (place: string) => `data/example/log.csv:${place}`;

describe('a bad log', () => {
  test.each<Fault>([
    ['empty', plain, '', 'log-empty', at('1:1-1'), 'empty'],
    ['only headings', plain, 't,phase,c\n', 'log-empty', at('1:1-10'), 'no samples'],
    ['a column that is not there', '{columns: {core: temperature/core °C}, time: {column: t}, phase: load}', 't,cores\n0,1\n', 'log-column', 'data/example/episode.yaml:3:23-27', 'has no column "core"; did you mean "cores"?'],
    ['stops within a line', plain, 't,phase,c\n0,load,40\n1,load,41\n2,lo', 'log-cut-off', at('4:1-5'), 'the last line has 2 cells of 3'],
    ['stops within the first cell of a line', plain, 't,phase,c\n0,load,40\n1', 'log-cut-off', at('3:1-2'), 'the last line has 1 cell of 3'],
    ['stops within a quoted cell', plain, 't,phase,c\n0,load,40\n1,"lo', 'log-cut-off', at('3:3-4'), 'never closed'],
    ['a short line in the middle', plain, 't,phase,c\n0,load,40\n1,load\n2,load,42\n', 'log-ragged', at('3:1-7'), '2 cells'],
    ['a long line in the middle', plain, 't,phase,c\n0,load,40\n1,load,41,9\n2,load,42\n', 'log-ragged', at('3:1-12'), '4 cells'],
    ['not a number', plain, 't,phase,c\n0,load,40\n1,load,warm\n', 'log-value', at('3:8-12'), 'not a number'],
    ['a decimal comma between columns separated by commas', plain, 't,phase,c\n0,load,40,5\n1,load,41,5\n', 'log-ragged', at('2:1-12'), 'a decimal comma splits a number'],
    ['a decimal comma unannounced', plain, 't,phase,c\n0,load,"40,5"\n1,load,41\n', 'log-value', at('2:8-14'), 'decimal: comma'],
    ['nan', plain, 't,phase,c\n0,load,40\n1,load,nan\n', 'log-not-finite', at('3:8-11'), 'missing: [nan]'],
    ['infinity', plain, 't,phase,c\n0,load,-Inf\n1,load,3\n', 'log-not-finite', at('2:8-12'), 'finite'],
    ['a number too large for any', plain, 't,phase,c\n0,load,1e999\n1,load,3\n', 'log-value', at('2:8-13'), 'not a number'],
    ['a hexadecimal number', plain, 't,phase,c\n0,load,0x1F\n1,load,3\n', 'log-value', at('2:8-12'), 'not a number'],
    ['a column of text', plain, 't,phase,c\n0,load,N/A\n1,load,N/A\n', 'log-text-column', at('2:1-11'), 'no number in 2 lines'],
    ['a time that is none', plain, 't,phase,c\n0,load,40\nsoon,load,41\n', 'log-time', at('3:1-5'), 'not a time'],
    ['time that goes back', plain, 't,phase,c\n0,load,40\n5,load,41\n3,load,41\n', 'log-time-order', at('4:1-2'), 'goes back'],
    ['the same time twice', plain, 't,phase,c\n0,load,40\n1,load,41\n1,load,41\n', 'log-time-twice', at('4:1-2'), 'before too'],
    ['a phase that is not there', '{time: {column: t}, phases: {column: phase, map: {idel: idle}}, columns: {c: temperature/core °C}}', 't,phase,c\n0,idle,40\n', 'log-phase-missing', 'data/example/episode.yaml:3:32-38', 'did you mean "idle"?'],
    ['ends before its window', '{time: {column: t}, windows: {load: 0 s to 60 s}, columns: {c: temperature/core °C}}', `t,c\n${rows(30, (i) => `${i},40`)}\n`, 'log-short', at('31:1-6'), 'ends here after 30 s'],
    ['a phase shorter than what counts of it', '{time: {column: t}, phases: {column: phase}, windows: {load: last 60 s}, columns: {c: temperature/core °C}}', `t,phase,c\n${rows(20, (i) => `${i},load,40`)}\n`, 'log-short', at('21:1-11'), 'load'],
    ['a counter averaged', plain.replace('temperature/core °C', 'energy/board Wh'), `t,phase,c\n${rows(30, (i) => `${i},load,${i * 7}`)}\n`, 'log-counter', at('2:1-9'), 'take: increase'],
    ['a constant that changes', '{time: {column: t}, phase: load, columns: {c: power/board/limit W}}', 't,c\n0,250\n1,250\n2,225\n', 'log-constant-changes', at('4:1-6'), 'from 250 to 225'],
    ['a stray quote', plain, 't,phase,c\n0,load,4"0\n1,load,41\n', 'log-form', at('2:9-10'), 'quote'],
    ['a window of a phase that the column does not have', '{time: {column: t}, phases: {column: phase}, windows: {laod: last 2 s}, columns: {c: temperature/core °C}}', 't,phase,c\n0,load,40\n1,load,41\n', 'log-phase-missing', 'data/example/episode.yaml:3:73-81', 'did you mean load?'],
    ['a stretch without samples', plain, `t,phase,c\n${rows(20, (i) => `${i < 10 ? i : i + 60},load,${40 + (i % 3)}`)}\n`, 'log-gap', at('12:1-11'), 'No sample for 61 s'],
    ['a column that is mostly empty', plain, `t,phase,c\n${rows(20, (i) => `${i},load,${i % 5 ? '' : 40}`)}\n`, 'log-holes', at('2:1-10'), 'only 4 of the 20 lines'],
    ['a phase that is no id', plain, 't,phase,c\n0,full load,40\n', 'log-phase', at('2:3-12'), 'full load'],
  ])('%s', (_, layout, log, code, place, words) => {
    const { findings } = readEpisode(record(layout), { 'log.csv': log });
    const told = findings.map((f) => `${spanOf(f)} ${f.code} ${f.message}`).join('\n');
    const hit = findings.find((f) => f.code === code);
    expect(hit && spanOf(hit), told).toBe(place);
    expect(hit!.message).toContain(words);
    expect(findings.length, told).toBe(1);
  });

  test('a column with a fault on every line is one finding', () => {
    const { findings } = readEpisode(record(plain), { 'log.csv': `t,phase,c\n0,load,40\n${rows(500, (i) => `${i + 1},load,?`)}\n` });
    expect(findings.map((f) => [f.code, f.place.line])).toEqual([['log-value', 3]]);
    expect(findings[0]!.message).toContain('499 more lines');
  });

  test('a column that every log of a pattern lacks is one finding', () => {
    const { findings } = readEpisode(record(plain, 'run{run}.csv'), { 'run1.csv': 't,phase,x\n0,load,1\n', 'run2.csv': 't,phase,x\n0,load,1\n', 'run3.csv': 't,phase,x\n0,load,1\n' });
    expect(findings.map((f) => f.code)).toEqual(['log-column']);
    expect(findings[0]!.message).toContain('2 more files');
  });

  test('how long the phase had lasted at the end of its window is kept', () => {
    const last = '{time: {column: t}, phases: {column: phase}, windows: {load: last 10 s}, columns: {c: temperature/core °C}}';
    const log = (n: number) => `t,phase,c\n0,idle,30\n1,idle,30\n${rows(n, (i) => `${i + 2},load,40`)}\n`;
    const { episode, findings } = readEpisode(record(last, 'run{run}.csv'), { 'run1.csv': log(60), 'run2.csv': log(30) });
    expect(findings).toEqual([]);
    expect(episode!.readings.filter((r) => r.key.endsWith('load')).map((r) => r.log!.lasted)).toEqual([{ window: 9, phase: 59 }, { window: 9, phase: 29 }]);
    expect(episode!.readings.filter((r) => r.key.endsWith('idle')).map((r) => r.log!.lasted)).toEqual([{ window: 1, phase: 1 }, { window: 1, phase: 1 }]);
  });

  test('a column that is empty throughout gives a trace of gaps and no reading', () => {
    const { episode, findings } = readEpisode(record(plain), { 'log.csv': 't,phase,c\n0,load,\n1,load,\n' });
    expect(findings).toEqual([]);
    expect(episode!.readings).toEqual([]);
    expect(episode!.traces.map((t) => t.values)).toEqual([[NaN, NaN]]);
  });
});
