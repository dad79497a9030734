// Frame logs: frames over time, and each definition of a low against published or computed values (oracles/README of the tables: "C", computed from the definition).
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readLow } from '../../pipeline/records/layouts.js';
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

test('how the figures are defined stands with the measure, in the record\'s own words where it has some', () => {
  const layout = '{column: frame_ms, average: frame_rate/average, low: {frame_rate/low: slowest 1 %, frame_rate/p1: p1 frame rate}}';
  const definition = (more: string) => readEpisode(record(layout) + more, { 'log.csv': log(times) }).episode!.measures.get('frame_rate')!.definition;
  expect(definition('')).toBe('average: frames over time; low: mean rate of the slowest 1 % of frames; p1: 1st percentile of frame rates (type 7)');
  expect(definition('measures: {frame_rate: {definition: as usual}}\n')).toBe('as usual');
});

test('microseconds and seconds, and frames passed over as a warm-up', () => {
  expect(rate('{column: frame_ms, unit: us, average: frame_rate}', [10000, 30000])).toEqual([50]);
  expect(rate('{column: frame_ms, unit: s, average: frame_rate}', [0.01, 0.03])).toEqual([50]);
  expect(rate('{column: frame_ms, average: frame_rate, skip: 1}', [500, 10, 10])).toEqual([100]);
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

test.each(['the slowest', 'slowest 0 %', 'slowest 100 %', 'p99', 'p99 frame time type 0', '1 % low', 'slowest 1'])('"%s" defines nothing', (text) => {
  expect(readLow(text)).toBeUndefined();
});
