// Everything that a record can express arrives in the episode: one record with every field, field by field.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { factKinds } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { outline, readReadings, statedKinds, writeReadings } from '../../pipeline/records/index.js';
import { readEpisode } from './reading.js';

const text = readFileSync(new URL('./sound.yaml', import.meta.url), 'utf8');
const { episode: read } = readEpisode(text, {
  'readings.csv': 'setup,setting,workload,measure,part,phase,run,value,unit\nbench,stock,scene,power,board,load,1,247.5,W\n',
  'logs/stock-run1.csv': 't,phase,c\n0,idle,30\n1,load,60\n2,load,61\n3,load,62\n',
  'logs/stock-run1-frames.csv': 'ms\n10\n10\n20\n',
  'script.md': '# One\nWords.', 'description.md': 'More words.',
});
const episode = read!;
const q = (x: { value: { toString(): string }; unit: { id: string } } | undefined) => x && `${x.value.toString()} ${x.unit.id}`;
const value = (key: string, run = '') => q(episode.readings.find((r) => r.key === key && r.run === run)?.quantity);

test('what it says about itself', () => {
  expect(episode).toMatchObject({
    id: 'example', title: 'A card, tested', date: '2026-03-14', summary: 'What was found.',
    disclosures: [{ text: 'The card was lent.' }], method: [{ text: 'Each figure is the mean of three runs.' }], cautions: [{ text: 'The radiator has sharp edges.' }],
    versions: [{ name: 'driver', version: '81.4' }, { name: 'firmware', version: '1.20' }],
    system: [{ name: 'Pump' }, { name: 'Radiator', detail: '360 mm', obtained: 'own' }],
    thresholds: [{ name: 'runs-disagree', value: '3 %' }], severities: [{ code: 'room-missing', severity: 'note' }],
    accept: [{ code: 'runs-disagree', subject: 'bench/limit-80/scene/frame_rate/average/load', reason: 'known' }],
  });
  expect(episode.instruments.map((i) => [i.name, i.measures, q(i.resolution), i.accuracy])).toEqual([['wall meter', ['power/board', 'energy'], '0.1 W', '±1 %']]);
});

test('a product keeps its proper name when it is spoken', () => {
  const { episode } = readEpisode("title: T\nsetups:\n  a: {name: Alpha, kind: product, obtained: bought}\n  b: {name: Open bench}\n");
  expect([...episode!.setups.values()].map((s) => s.spoken)).toEqual([['the Alpha', 'Alpha'], ['the open bench', 'open bench']]);
});

test('names, shown and spoken, with sensible ones where the record gives none', () => {
  const names = (m: Map<string, { name: string; spoken: string[] }>) => [...m].map(([id, n]) => [id, n.name, n.spoken]);
  expect(names(episode.setups)).toEqual([
    ['bench', 'Open bench', ['the open bench', 'the bench']], ['card-a', 'Varrow 12', ['the Varrow 12', 'Varrow 12']], ['case', 'Case', ['the case', 'case']],
  ]);
  expect(names(episode.settings)).toEqual([
    ['stock', 'Stock', ['stock', 'at stock']], ['limit-80', 'Power limit 80 %', ['the power limit 80 %', 'power limit 80 %']], ['undervolt', 'Undervolt', ['the undervolt', 'undervolt']],
  ]);
  expect(names(episode.phases).slice(0, 3)).toEqual([['idle', 'Idle', ['at idle', 'idle']], ['load', 'Load', ['under load', 'loaded']], ['first-minute', 'First minute', ['first minute']]]);
  expect(episode.setups.get('card-a')).toMatchObject({ kind: 'product', sample: '2', obtained: 'lent', price: { date: '2026-03-01' } });
  expect(episode.setups.get('bench')).toMatchObject({ kind: 'arrangement' });
});

test('which end is better, the least difference that matters, units and definitions', () => {
  expect([...episode.measures].map(([id, m]) => [id, m.better, q(m.matters), m.unit?.id, m.definition])).toEqual(expect.arrayContaining([
    ['temperature', 'lower', '1 K', undefined, undefined], ['frame_rate', 'higher', undefined, undefined, 'frames over time'],
    ['stiffness', 'higher', undefined, '1', undefined], ['power', 'neither', undefined, undefined, undefined], ['noise', 'lower', undefined, undefined, undefined],
  ]));
});

test('settings with their parameters, as constants that hold for every setup', () => {
  expect(episode.settings.get('undervolt')).toMatchObject({ kind: 'undervolt', parameters: ['/undervolt//voltage/core/target', '/undervolt//frequency/core/target', '/undervolt//voltage/core/offset', '/undervolt//fan_speed/fan/set'] });
  expect(value('/limit-80//power/board/limit')).toBe('200 W');
  expect(value('/undervolt//voltage/core/target')).toBe('0.9 V');
  expect(value('/undervolt//voltage/core/offset')).toBe('-100 mV');
  expect(value('/undervolt//fan_speed/fan/set')).toBe('40 %');
});

test('constants, prices and the room', () => {
  expect(value('///temperature/hotspot/limit')).toBe('105 degC');
  expect(value('///temperature/hotspot/target')).toBe('90 degC');
  expect(value('bench///power/board/limit')).toBe('250 W');
  expect(value('case///power/board/limit')).toBe('250 W');
  expect(value('bench///power/board/rated')).toBe('300 W');
  expect(value('card-a///price//')).toBe('499 USD');
  expect(value('///temperature/room/')).toBe('21 degC');
  expect(value('bench/limit-80/scene/temperature/room/', '2')).toBe('21.5 degC');
});

test('readings by hand, from a table, and from logs', () => {
  expect(value('bench/limit-80//temperature/core/idle', '3')).toBe('39 degC');
  expect(value('bench/limit-80/scene/power/board/load', '2')).toBe('248.3 W');
  expect(value('bench/limit-80/scene/frame_rate/average/first-minute', '1')).toBe('97 fps');
  expect(value('case/undervolt//temperature/core/load', '3')).toBe('72 degC');
  expect(value('case/undervolt//temperature/core/load', '2')).toBeUndefined();
  expect(value('bench/stock/scene/power/board/load', '1')).toBe('247.5 W');
  expect(value('bench/stock/scene/temperature/core/load', '1')).toBe('61.5 degC');
  expect(value('bench/stock/scene/frame_rate/average/load', '1')).toBe('75 fps');
  expect(value('bench/stock/scene/frame_rate/low/load', '1')).toBe('50 fps');
  expect(episode.traces.map((t) => t.id)).toEqual(['bench/stock/scene/temperature/core#1']);
});

test('runs set aside are kept, with their reason', () => {
  expect(episode.readings.filter((r) => r.aside).map((r) => [r.key, r.run, r.aside!.reason])).toEqual([
    ['bench/limit-80/scene/power/board/load', '2', 'window was opened'], ['case/undervolt//temperature/core/load', '1', 'a fan stood still'],
  ]);
});

test('stated values: whole keys, keys with fields left out, the idle of a rise', () => {
  expect(episode.stated.map((s) => [s.kind, s.operands, q(s.quantity), s.where])).toEqual([
    ['rise', ['bench/limit-80/scene/temperature/core/load', 'bench/limit-80//temperature/core/idle'], '29 K', 'thumbnail'],
    ['percent_of', ['bench/limit-80/scene/power/board/load', 'bench///power/board/limit'], '83 %', undefined],
    ['rank.lowest', ['bench/limit-80/scene/temperature/core/load', 'case/undervolt//temperature/core/load'], '1 1', undefined],
  ]);
});

test('quotes, curves, pictures, texts, second units', () => {
  expect(episode.quotes.map((x) => [x.episode, x.fact, x.as, q(x.was)])).toEqual([['earlier', 'mean:bench/stock/scene/noise//load', 'card-a/stock/scene/noise//load', '36 dB(A)']]);
  expect(episode.curves.map((c) => [c.id, c.name, c.of.label, c.of.unit.id, c.against.label, c.against.unit.id, c.points.map((p) => `${q(p.at)}: ${q(p.value)}`)])).toEqual([
    ['quiet', 'Quiet', 'Fan duty', '%', 'Core', 'degC', ['40 degC: 30 %', '60 degC: 45 %', '80 degC: 70 %']],
  ]);
  expect(episode.pictures).toMatchObject([
    { kind: 'bars', medium: 'chart', name: 'bars-temperature-core', measure: 'temperature', part: 'core', setups: ['bench', 'case'] },
    { kind: 'figure', medium: 'graphic', name: 'figure', text: 'So warm', facts: ['rise:bench/limit-80/scene/temperature/core/load~workload=,phase=idle'] },
  ]);
  expect(episode.texts.map((t) => [t.role, t.text, t.place.file, t.place.line])).toEqual([
    ['title', 'A card, tested', 'data/example/episode.yaml', 2], ['thumbnail', '29 degrees', 'data/example/episode.yaml', 68], ['chapters', '0:00 Start', 'data/example/episode.yaml', 70],
    ['script', '# One\nWords.', 'data/example/script.md', 1], ['description', 'More words.', 'data/example/description.md', 1],
  ]);
  expect([...episode.secondUnits]).toEqual(expect.arrayContaining([['degC', 'degF'], ['K', 'delta-degF'], ['L/min', 'gal/min'], ['L/h', 'gal/min'], ['mm', 'in']]));
});

test('the files that it wants, none of them outside its folder', () => {
  const { value: outlined } = outline(new Source('data/example/episode.yaml', text), 'example');
  expect(outlined!.wants.map((w) => [w.path, w.as, w.pattern !== undefined])).toEqual([
    ['readings.csv', 'table', false], ['logs/{setting}-run{run}.csv', 'log', true], ['logs/{setting}-run{run}-frames.csv', 'log', true], ['script.md', 'text', false], ['description.md', 'text', false],
  ]);
});

test('a stated value may be of every kind of fact there is', () => {
  expect([...statedKinds].sort()).toEqual([...factKinds].sort());
});

describe('readings written out', () => {
  const of = (readings: typeof episode.readings) => ({
    keys: () => [...new Set(readings.map((r) => r.key))],
    readings: (key: string, options?: { aside?: boolean }) => readings.filter((r) => r.key === key && (options?.aside || !r.aside)),
  });

  test('are read again as they were, those set aside with a note', () => {
    const csv = writeReadings(of(episode.readings));
    const again = readReadings(new Source('readings.csv', csv));
    expect(again.findings).toEqual([]);
    const plain = (r: (typeof episode.readings)[number]) => `${r.key}#${r.run} ${q(r.quantity)}`;
    expect(again.value!.map(plain).sort()).toEqual(episode.readings.map(plain).sort());
    expect(csv.split('\r\n').filter((l) => l.includes('set aside'))).toHaveLength(2);
  });
});
