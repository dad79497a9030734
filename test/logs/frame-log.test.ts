// Frame logs: frames over time, and each definition of a low against published or computed values (oracles/README of the tables: "C", computed from the definition).
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readLow, readStutter, readTimes } from '../../pipeline/records/frames-shape.js';
import { readEpisode, spanOf } from '../records/reading.js';

const record = (frames: string) => `title: T
layouts:
  steps: {frames: ${frames}}
logs:
  - {files: log.csv, layout: steps}
`;
const times = [...Array<number>(98).fill(10), 20, 40];
const log = (list: readonly (number | string)[]) => `frame_ms\n${list.join('\n')}\n`;

function rate(frames: string, list: readonly (number | string)[]): number[] {
  const { episode, findings } = readEpisode(record(frames), { 'log.csv': log(list) });
  expect(findings.map((f) => f.message)).toEqual([]);
  return episode!.readings.map((r) => r.quantity.value.toNumber());
}

const oracle = readFileSync(new URL('../oracles/frame_percentiles.csv', import.meta.url), 'utf8').trim().split('\n').slice(1)
  .map((line) => /^98x10_1x20_1x40,(?:"([^"]*)"|([^,]*)),([^,]*),([^,]*)$/.exec(line)!)
  .map((m) => [m[1] ?? m[2]!, Number(m[4])] as const);

const asWritten: Record<string, string> = {
  'p99 frame time, type 7': 'p99 frame time, type 7',
  'p99 frame time, type 1 (nearest rank)': 'p99 frame time (type 1)',
  'mean of slowest 1% (1 frame)': 'mean of slowest 1%',
  'mean of slowest 2% (2 frames)': 'slowest 2 %',
  'p1 of 1000/t, type 7': 'p1 frame rate',
  'p50 frame time': 'p50 frame time',
};

describe('98 frames of 10 ms, one of 20, one of 40 (oracles/frame_percentiles.csv)', () => {
  test.each(oracle)('%s', (definition, expected) => {
    const [value] = rate(`{column: frame_ms, low: {frame_rate/low: "${asWritten[definition]}"}}`, times);
    expect(value!).toBeCloseTo(expected, 3);
  });
});

const means = readFileSync(new URL('../oracles/frame_rate_means.csv', import.meta.url), 'utf8').trim().split('\n').slice(1).map((line) => line.split(','));
test.each(means.map((m) => [m[0]!, m[1]!, Number(m[2])] as const))('%s: the mean rate is frames over time (oracles/frame_rate_means.csv)', (_, list, expected) => {
  const frames = list.split(';').flatMap((t) => (t.includes('*') ? Array<string>(Number(t.split('*')[0])).fill(t.split('*')[1]!) : [t]));
  const [value] = rate('{column: frame_ms, average: frame_rate/average}', frames);
  expect(value!).toBeCloseTo(expected, 3);
});

describe('each low of its own definition, on 95 frames of 10 ms, three of 30 and two of 50 (by hand)', () => {
  // 1,140 ms in all. A hundredth of the frames is one of 50 ms; of the time, 11.4 ms of a frame of 50 ms: 0.228 frames.
  const some = [...Array<number>(95).fill(10), 30, 50, 30, 50, 30];
  test.each([
    ['slowest 1 %', 20],
    ['slowest 1 % of frames', 20],
    ['slowest 5 %', 5000 / 190], // 50 + 50 + 30 + 30 + 30 ms
    ['slowest 1 % of time', 20],
    ['slowest 10 % of time', (2 + 14 / 30) / 0.114], // 114 ms: 50 + 50 and 14 of 30
    ['p99 frame time', 20], // (n − 1) · 0.99 + 1 = 99.01: the 99th and 100th frame both last 50 ms
    ['p96 frame time', 1000 / 30], // place 96.04, between the 96th and the 97th, of 30 ms both
    ['p1 frame rate', 20],
  ])('%s', (definition, expected) => {
    expect(rate(`{column: frame_ms, low: {frame_rate/low: "${definition}"}}`, some)[0]!).toBeCloseTo(expected, 3);
  });
});

describe('frame times and stutters (by hand)', () => {
  const even = Array<number>(100).fill(10);
  const late = even.map((d, i) => (i === 30 ? 26 : i === 70 ? 24 : d));
  test.each<[string, readonly number[], number[]]>([
    ['times: {frame_time/p99: p99, frame_time/top: longest}', times, [20.2, 40]],
    ['times: {frame_time/p99: "p99, type 1"}', times, [20]],
    ['stutter: {stutters: over 2.5 × running median}', late, [1]],
    ['stutter: {stutters: over 2.3 x running median, stutters/time: share over 2.3 times running median}', late, [2, 4.8543]], // 26 + 24 of 1,030 ms
    ['count: frames', even, [100]],
  ])('%s', (asked, list, expected) => {
    const got = rate(`{column: frame_ms, ${asked}}`, list);
    got.forEach((v, i) => expect(v).toBeCloseTo(expected[i]!, 3));
    expect(got.length).toBe(expected.length);
  });

  test('frames that grow longer slowly do not stutter, a single late one among long ones does', () => {
    const slower = Array.from({ length: 600 }, (_, i) => 5 + i / 20);
    expect(rate('{column: frame_ms, stutter: {stutters: over 2 × running median of 31 frames}}', slower)).toEqual([0]);
    expect(rate('{column: frame_ms, stutter: {stutters: over 2 × running median of 31 frames}}', slower.map((d, i) => (i === 500 ? 2.2 * d : d)))).toEqual([1]);
    // The median of all is 20 ms: over 1.5 times that lie the frames of more than 30 ms, the last hundred, and none of them stutters.
    expect(slower.filter((d) => d > 30)).toHaveLength(99);
  });
});

test('how the figures are defined stands with the measure, in the record\'s own words where it has some', () => {
  const layout = '{column: frame_ms, average: frame_rate/average, low: {frame_rate/low: slowest 1 %, frame_rate/p1: p1 frame rate}}';
  const definition = (more: string) => readEpisode(record(layout) + more, { 'log.csv': log(times) }).episode!.measures.get('frame_rate')!.definition;
  const more = readEpisode(record('{column: frame_ms, times: {frame_time/p99: p99}, stutter: {stutters: over 2 × running median, stutters/time: share over 2 × running median of 31 frames}}'), { 'log.csv': log(times) }).episode!.measures;
  expect(more.get('frame_time')!.definition).toBe('p99: 99th percentile of frame times (type 7)');
  expect(more.get('stutters')!.definition).toBe('frames longer than 2 times the median of the 61 frames around them; time: share of the time spent in frames longer than 2 times the median of the 31 frames around them');
  expect(definition('')).toBe('average: frames over time; low: mean rate of the slowest 1 % of frames; p1: 1st percentile of frame rates (type 7)');
  expect(definition('measures: {frame_rate: {definition: as usual}}\n')).toBe('as usual');
});

test('microseconds and seconds, and frames passed over as a warm-up', () => {
  expect(rate('{column: frame_ms, unit: us, average: frame_rate}', [10000, 30000])).toEqual([50]);
  expect(rate('{column: frame_ms, unit: s, average: frame_rate}', [0.01, 0.03])).toEqual([50]);
  expect(rate('{column: frame_ms, average: frame_rate, skip: 1}', [500, 10, 10])).toEqual([100]);
  expect(rate('{column: frame_ms, average: frame_rate, skip: 25 ms}', [20, 10, 5, 5])).toEqual([200]);
});

describe('a warm-up', () => {
  const log = [130, ...Array.from({ length: 200 }, (_, i) => 10 + (i % 3))];
  const read = (skip: string, list: readonly number[]) => readEpisode(record(`{column: frame_ms, average: frame_rate${skip}}`), { 'log.csv': `frame_ms\n${list.join('\n')}\n` });
  test('counts unless a rule says otherwise, and then that is told', () => {
    const { findings } = read('', log);
    expect(findings.map((f) => `${spanOf(f)} ${f.code} ${f.severity}`)).toEqual(['data/example/log.csv:2:1-4 log-warm-up warning']);
    expect(findings[0]!.message).toContain('The first frame took up to 130.0 ms where half of the others take 11.0 ms or less');
  });
  test.each([[', skip: 0', 201], [', skip: 1', 200], [', skip: warm-up', 200], [', skip: 0.13 s', 200]])('%s', (skip, samples) => {
    const { episode, findings } = read(skip, log);
    expect(findings).toEqual([]);
    expect(episode!.readings[0]!.log!.samples).toBe(samples);
  });
  test('is nothing that a slow scene, a short log or even frames have', () => {
    for (const list of [log.slice(1), [130, 10, 10], [30, ...Array.from({ length: 200 }, (_, i) => 10 + (i % 20))]]) expect(read('', list).findings).toEqual([]);
  });
});

test('each frame may be kept as a trace, at the moment at which it is done', () => {
  const { episode } = readEpisode(record('{column: frame_ms, each: frame_time/render}'), { 'log.csv': log([10, 30]) });
  expect(episode!.traces[0]).toMatchObject({ id: '///frame_time/render#1', times: [0.01, 0.04], values: [10, 30], windows: [{ phase: 'load', start: 0, end: 0.04 }] });
  expect(episode!.readings.map((r) => `${r.key} ${r.quantity.value.toString()} ${r.quantity.unit.id}`)).toEqual(['///frame_time/render/load 20 ms']);
});

test.each<[string, readonly (number | string)[], string, string]>([
  ['a frame that takes no time', [10, 0, 10], 'log-value', '3:1-2'],
  ['a negative frame', [10, -1], 'log-value', '3:1-3'],
  ['a frame that is no number', [10, 'lost'], 'log-value', '3:1-5'],
  ['no frame beyond the warm-up', [10], 'log-empty', '1:1-9'],
])('%s', (_, list, code, place) => {
  const { findings } = readEpisode(record('{column: frame_ms, average: frame_rate, skip: 1}'), { 'log.csv': log(list) });
  expect(findings.map((f) => `${spanOf(f)} ${f.code}`)).toEqual([`data/example/log.csv:${place} ${code}`]);
});

test.each(['the slowest', 'slowest 0 %', 'slowest 100 %', 'p99', 'p99 frame time type 0', '1 % low', 'slowest 1', 'slowest 1 % of runs'])('"%s" defines nothing', (text) => {
  expect(readLow(text)).toBeUndefined();
});

test.each(['2 × running median', 'over 1 × running median', 'over 2 × running median of 30 frames', 'over 2 ms', ''])('"%s" is no stutter', (text) => {
  expect(readStutter(text)).toBeUndefined();
});

test.each(['99', 'p100', 'p99 type 0', 'slowest'])('"%s" is no frame time', (text) => {
  expect(readTimes(text)).toBeUndefined();
});

test('each figure says by which definition it was made, whatever the record says of its measure, and what was passed over', () => {
  const frames = `{column: ms, average: r/average, low: {r/frames: slowest 1 %, r/time: slowest 1 % of time, r/p99: p99 frame time, r/p1: p1 frame rate}, times: {t/p50: p50}, stutter: {s/count: "over 2.5 × running median"}, count: n, SKIP}`;
  const how = (skip: string): string[] => readEpisode(`measures: {r: {definition: as in the trade}, t: {}, s: {}, n: {}}\n${record(frames.replace('SKIP', skip))}`, { 'log.csv': log([50, ...times]).replace('frame_ms', 'ms') }).episode!.readings.map((r) => `${r.key.split('/').slice(3, 5).join('/')}: ${r.log!.how}`);
  expect(how('skip: 0')).toEqual([
    'r/average: frames over time', 'r/frames: mean rate of the slowest 1 % of frames', 'r/time: mean rate over the slowest 1 % of the time', 'r/p99: rate at the 99th percentile of frame times (type 7)',
    'r/p1: 1st percentile of frame rates (type 7)', 't/p50: 50th percentile of frame times (type 7)', expect.stringMatching(/^s\/count: frames longer than 2\.5 times the median of the \d+ frames around them$/), 'n/: frames counted',
  ]);
  expect(how('skip: 2')[0]).toBe('r/average: frames over time; the first 2 frames passed over');
  expect(how('skip: warm-up')[0]).toBe('r/average: frames over time; the first frame passed over as a warm-up');
});
