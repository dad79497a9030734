// Invented episodes, built by hand so that the pictures are tested apart from the reader of records.
import type { Place } from '../../pipeline/places/index.js';
import { Exact, readQuantity, unit } from '../../pipeline/quantities/index.js';
import { bareEpisode, type Episode, type Measure, type Reading, type Trace } from '../../pipeline/records/index.js';
import { Facts } from '../../pipeline/facts/index.js';

export const place: Place = { file: 'data/sample/episode.yaml', line: 1, column: 1, endLine: 1, endColumn: 1 };

type Names = Record<string, string>;

export interface SampleInput {
  title?: string;
  setups: Names;
  settings: Names;
  workloads?: Names;
  measures: Record<string, [name: string, better: Measure['better']]>;
  parts: Names;
  phases?: Names;
  /** Key to runs, as people write them: "38 38 39 °C"; one value with a trailing "!" is a constant. */
  readings: Record<string, string>;
  traces?: Trace[];
}

export function sample(input: SampleInput): Episode {
  const readings: Reading[] = Object.entries(input.readings).flatMap(([key, text]) => {
    const [, numbers, symbol] = /^(-?[\d.]+(?:\s+-?[\d.]+)*)\s*(.*?)!?$/.exec(text)!;
    const constant = text.endsWith('!');
    return numbers!.trim().split(/\s+/).map((n, i) => {
      const q = readQuantity(symbol ? `${n} ${symbol}` : n, unit('1'));
      if ('why' in q) throw new Error(`${key}: ${q.why}`);
      return { key, run: constant ? '' : `${i + 1}`, quantity: q.quantity, constant, place };
    });
  });
  const named = (list: Names = {}): Map<string, { id: string; name: string; spoken: string[]; place: Place }> =>
    new Map(Object.entries(list).map(([id, name]) => [id, { id, name, spoken: [name], place }]));
  return {
    ...bareEpisode(readings, [], place),
    id: 'sample', title: input.title ?? 'One card, two boxes', date: '2026-03-14', traces: input.traces ?? [],
    setups: new Map([...named(input.setups)].map(([id, n]) => [id, { ...n, kind: 'product' }])),
    settings: new Map([...named(input.settings)].map(([id, n]) => [id, { ...n, parameters: [] }])),
    workloads: named(input.workloads ?? { scene: 'Test scene' }),
    measures: new Map(Object.entries(input.measures).map(([id, [name, better]]) => [id, { id, name, spoken: [name], better, place }])),
    parts: named(input.parts), phases: named(input.phases ?? { idle: 'Idle', load: 'Load' }),
  };
}

const boxes = ['open-bench', 'closed-case'];
const settings = { stock: 'Stock', 'limit-75': 'Power limit 75 %', undervolt: 'Undervolt', overclock: 'Overclock' };
const table: Record<string, string[]> = {
  'temperature/core/idle °C': ['31 31 32', '31 31 31', '30 31 31', '32 32 32', '38 39 38', '38 38 38', '38 38 39', '39 39 39'],
  'temperature/core/load °C': ['66 67 66', '58 58 59', '60 61 60', '71 70 71', '75 76 75', '66 66 67', '68 69 69', '81 80 81'],
  'power/board/load W': ['297.4 298.1 297.9', '224.2 224.0 224.6', '251.3 250.8 251.9', '328.0 327.1 328.4', '296.8 297.2 297.0', '223.9 224.4 224.1', '253.0 252.1 252.6', '327.7 327.9 328.2'],
  'frame_rate/average/load fps': ['98.9 99.4 99.1', '93.1 93.0 93.4', '98.6 98.2 98.9', '103.4 103.0 103.1', '97.8 98.0 97.6', '92.2 92.0 92.6', '97.9 97.6 97.4', '101.0 100.4 100.9'],
};

/** A made-up log: 60 s idle, a climb, a plateau that wavers; one sample a second. */
function log(run: number): Trace {
  const times = Array.from({ length: 361 }, (_, t) => t);
  const values = times.map((t) => {
    const load = t < 60 ? 0 : 1 - Math.exp(-(t - 60) / 45);
    return Math.round((31 + run * 0.4 + 35 * load + Math.sin(t / 7 + run) * (t < 60 ? 0.3 : 1)) * 10) / 10;
  });
  values[200] = Number.NaN;
  return {
    id: `open-bench/stock/scene/temperature/core#${run}`, setup: 'open-bench', setting: 'stock', workload: 'scene', measure: 'temperature', part: 'core', run: `${run}`,
    unit: unit('degC'), times, values, windows: [{ phase: 'idle', start: 20, end: 60 }, { phase: 'load', start: 240, end: 360 }], place,
  };
}

/** One card in two boxes at four settings. */
export function card(): Episode {
  const readings: Record<string, string> = {};
  for (const [what, rows] of Object.entries(table)) {
    const [, path, phase, symbol] = /^(.+)\/(\w+) (.+)$/.exec(what)!;
    rows.forEach((runs, i) => {
      const setting = Object.keys(settings)[i % 4]!;
      readings[`${boxes[Math.floor(i / 4)]}/${setting}/${phase === 'idle' ? '' : 'scene'}/${path}/${phase}`] = `${runs} ${symbol}`;
    });
  }
  for (const b of boxes) readings[`${b}///temperature/room/load`] = b === 'open-bench' ? '21.0 21.1 21.0 °C' : '21.6 21.8 21.7 °C';
  for (const [s, limit] of [['stock', 300], ['limit-75', 225], ['undervolt', 300], ['overclock', 330]]) readings[`/${s}//power/board/limit`] = `${limit} W!`;
  return sample({
    setups: { 'open-bench': 'Open bench', 'closed-case': 'Closed case' }, settings,
    measures: { temperature: ['Temperature', 'lower'], power: ['Power', 'lower'], frame_rate: ['Frame rate', 'higher'] },
    parts: { core: 'Core', board: 'Board', average: 'Average', room: 'Room' }, readings, traces: [1, 2, 3].map(log),
  });
}

/** Six pumps, each at two speeds. */
export function pumps(): Episode {
  const ids = { orlo: 'Orlo 3', pennick: 'Pennick S', quarrow: 'Quarrow 40', tessick: 'Tessick', umbry: 'Umbry D', wexcomb: 'Wexcomb' };
  const full = ['3.62 3.60 3.65', '3.41 3.44 3.40', '4.02 4.00 4.05', '3.88 3.71 3.90', '4.31 4.30 4.29', '2.95 2.97 2.96'];
  const matched = ['2.61 2.60 2.64', '2.70 2.72 2.69', '2.88 2.86 2.90', '2.40 2.41 2.44', '3.05 3.02 3.06', '2.12 2.10 2.15'];
  const noise = ['38.1 38.4 38.2', '39.0 38.8 39.3', '41.2 41.0 41.6', '36.9 37.2 37.0', '42.5 42.2 42.4', '35.1 35.3 35.0'];
  const readings: Record<string, string> = {};
  Object.keys(ids).forEach((id, i) => {
    readings[`${id}/full/heater/flow/loop/load`] = `${full[i]} L/min`;
    readings[`${id}/matched/heater/flow/loop/load`] = `${matched[i]} L/min`;
    readings[`${id}/full/heater/noise/pump/load`] = `${noise[i]} dB(A)`;
  });
  return sample({
    title: 'Six small pumps', setups: ids, settings: { full: 'Full speed', matched: 'Matched noise' }, workloads: { heater: '250 W heater' },
    measures: { flow: ['Flow', 'higher'], noise: ['Noise', 'lower'] }, parts: { loop: 'Loop', pump: 'Pump' }, readings,
  });
}

export const cardFacts = (): Facts => new Facts(card());
export const pumpFacts = (): Facts => new Facts(pumps());

/** With a fan curve of four points. */
export function withCurve(): Facts {
  const whole = (n: number, id: string) => ({ value: Exact.of(n), unit: unit(id), decimals: 0 });
  return new Facts({
    ...card(),
    curves: [{
      id: 'fans', name: 'Fans against core temperature', place, of: { label: 'Fan speed', unit: unit('rpm') }, against: { label: 'core', unit: unit('degC') },
      points: [[30, 600], [50, 900], [70, 1400], [80, 2000]].map(([at, value]) => ({ at: whole(at!, 'degC'), value: whole(value!, 'rpm') })),
    }],
  });
}
