// Small records out of nothing: invented products, or two places with settings, and what is measured on them.
import fc from 'fast-check';
import { Facts, isFact } from '../../../pipeline/facts/index.js';
import { Source } from '../../../pipeline/places/index.js';
import type { Exact } from '../../../pipeline/quantities/index.js';
import { bareEpisode, readNames, readReadings } from '../../../pipeline/records/index.js';

/** What is measured, with the words of the trade for it. */
export interface Quantity {
  measure: string;
  part: string;
  noun: string;
  unit: string;
  symbol: string;
  words: string;
  decimals: number;
  low: number;
  high: number;
  more: string;
  less: string;
  /** Superlatives, where an adjective speaks of this quantity alone. */
  most?: string;
  least?: string;
  idle?: true;
  /** The number and its unit alone tell the quantity. */
  sole?: true;
}

const q = (x: Quantity): Quantity => x;
export const quantities = {
  core: q({ measure: 'temperature', part: 'core', noun: 'core temperature', unit: 'degC', symbol: ' °C', words: 'degrees', decimals: 0, low: 55, high: 79, more: 'higher', less: 'lower', idle: true }),
  hotspot: q({ measure: 'temperature', part: 'hotspot', noun: 'hotspot temperature', unit: 'degC', symbol: ' °C', words: 'degrees', decimals: 0, low: 80, high: 99, more: 'higher', less: 'lower', idle: true }),
  power: q({ measure: 'power', part: 'board', noun: 'board power', unit: 'W', symbol: ' W', words: 'watts', decimals: 1, low: 140, high: 280, more: 'higher', less: 'lower', sole: true }),
  noise: q({ measure: 'noise', part: 'card', noun: 'noise', unit: 'dB(A)', symbol: ' dB(A)', words: 'decibels', decimals: 1, low: 30, high: 48, more: 'louder', less: 'quieter', most: 'loudest', least: 'quietest', sole: true }),
  rate: q({ measure: 'frame_rate', part: 'average', noun: 'average frame rate', unit: 'fps', symbol: ' fps', words: 'frames per second', decimals: 1, low: 60, high: 140, more: 'faster', less: 'slower', sole: true }),
  clock: q({ measure: 'frequency', part: 'core', noun: 'core clock', unit: 'MHz', symbol: ' MHz', words: 'megahertz', decimals: 0, low: 1900, high: 2900, more: 'higher', less: 'lower', sole: true }),
  fan: q({ measure: 'fan_speed', part: 'fan', noun: 'fan speed', unit: 'rpm', symbol: ' rpm', words: 'rpm', decimals: 0, low: 800, high: 3000, more: 'higher', less: 'lower', sole: true }),
  voltage: q({ measure: 'voltage', part: 'core', noun: 'core voltage', unit: 'V', symbol: ' V', words: 'volts', decimals: 3, low: 0.8, high: 1.15, more: 'higher', less: 'lower', sole: true }),
  duty: q({ measure: 'ratio', part: 'fan-duty', noun: 'fan duty', unit: '%', symbol: ' %', words: 'percent', decimals: 0, low: 30, high: 95, more: 'higher', less: 'lower' }),
} as const;

export interface Thing {
  id: string;
  name: string;
  /** "with the undervolt", "on the Varnel". */
  with: string;
}

export interface World {
  facts: Facts;
  kind: 'products' | 'settings';
  /** Where the things stand, in a record of settings: "on the bench". */
  places: readonly { id: string; in: string; name: string }[];
  things: readonly Thing[];
  measured: readonly Quantity[];
  limit: number;
  /** Readings of the room, one a thing. */
  room: boolean;
  /** Temperatures at idle too, so that one without "under load" may be either. */
  idle: boolean;
}

const syllable = fc.tuple(fc.constantFrom('b', 'd', 'f', 'k', 'l', 'm', 'n', 'p', 'r', 't', 'v', 'z', 'br', 'dr', 'tr'), fc.constantFrom('a', 'e', 'i', 'o', 'u'), fc.constantFrom('l', 'n', 'r', 'sk', 'x', 'v', 'm')).map((s) => s.join(''));
const name = fc.array(syllable, { minLength: 2, maxLength: 2 }).map((s) => s.join('')).map((s) => s[0]!.toUpperCase() + s.slice(1));
const settings: Thing[] = [{ id: 'stock', name: 'stock', with: 'at stock' }, { id: 'undervolt', name: 'the undervolt', with: 'with the undervolt' }, { id: 'overclock', name: 'the overclock', with: 'with the overclock' }, { id: 'eco', name: 'the eco mode', with: 'in the eco mode' }];
const places = [{ id: 'open-bench', in: 'on the open bench', name: 'the open bench' }, { id: 'closed-case', in: 'in the closed case', name: 'the closed case' }];

export const world: fc.Arbitrary<World> = fc.record({
  products: fc.boolean(),
  names: fc.uniqueArray(name, { minLength: 6, maxLength: 6, selector: (n) => n.slice(0, 3) }),
  size: fc.nat(4),
  kept: fc.shuffledSubarray(Object.keys(quantities) as (keyof typeof quantities)[], { minLength: 3, maxLength: 7 }),
  factor: fc.constantFrom(2, 3, 0.5),
  room: fc.boolean(),
  idle: fc.boolean(),
  levels: fc.array(fc.noBias(fc.integer({ min: 0, max: 9999 })), { minLength: 160, maxLength: 160 }),
}).map(({ products, names, size, kept, factor, room, idle, levels }) => {
  const things: Thing[] = products ? names.slice(0, 2 + size).map((n) => ({ id: n.toLowerCase(), name: `the ${n}`, with: `with the ${n}` })) : settings.slice(0, 2 + (size % 3));
  const measured = kept.map((k) => quantities[k] as Quantity);
  let drawn = 0;
  const level = (): number => levels[drawn++ % levels.length]! / 10_000;
  const rows: string[] = [];
  const limit = 10 * Math.ceil((measured.find((m) => m.measure === 'power')?.high ?? 280) / 10 + level() * 4);
  for (const place of products ? [undefined] : places) {
    let first: number | undefined;
    for (const thing of things) {
      const at = place ? `${place.id},${thing.id},scene` : `${thing.id},,scene`;
      for (const m of measured) {
        let middle = m.low + level() * (m.high - m.low);
        if (m.measure === 'fan_speed') { if (first === undefined) first = middle; else if (thing === things[1]) middle = first * factor; }
        const step = 10 ** -m.decimals;
        for (let run = 1; run <= 3; run++) rows.push(`${at},${m.measure},${m.part},load,${run},${(middle + (run - 2) * step * (level() < 0.5 ? 0 : 1)).toFixed(m.decimals)},${m.unit}`);
        if (idle && m.idle) for (let run = 1; run <= 2; run++) rows.push(`${place ? `${place.id},${thing.id},` : `${thing.id},,`},${m.measure},${m.part},idle,${run},${(middle - 25 - level() * 8).toFixed(m.decimals)},${m.unit}`);
      }
      if (room && measured.some((m) => m.idle)) rows.push(`${at},temperature,room,load,,${(20 + level() * 4).toFixed(1)},degC`);
    }
    if (measured.some((m) => m.measure === 'power')) for (const t of place ? [place] : things) rows.push(`${t.id},,,power,board,limit,,${limit},W`);
  }
  const rowsOfNames = [
    'workload,scene,the test scene', 'phase,idle,at idle', 'phase,load,under load', 'part,core,core;the core', 'part,hotspot,hotspot;the hotspot', 'part,board,board;board power', 'part,card,noise;the meter', 'part,average,average frame rate', 'part,fan,fan;fans', 'part,fan-duty,fan duty', 'part,room,room;the room',
    'measure,temperature,temperature;degrees', 'measure,power,power;draws;watts', 'measure,noise,noise;decibels', 'measure,frame_rate,frame rate;frames per second', 'measure,frequency,clock;core clock;megahertz', 'measure,fan_speed,fan speed;rpm', 'measure,voltage,voltage;volts', 'measure,ratio,duty;percent',
    ...things.map((t) => (products ? `setup,${t.id},${t.name};${t.name.slice(4)}` : `setting,${t.id},${t.name};${t.with}`)),
    ...(products ? [] : ['setup,open-bench,the open bench;the bench', 'setup,closed-case,the closed case;the case']),
  ];
  const table = new Source('readings.csv', `setup,setting,workload,measure,part,phase,run,value,unit\n${rows.join('\n')}\n`);
  const names_ = new Source('names.csv', `kind,id,spoken\n${rowsOfNames.join('\n')}\n`);
  const facts = new Facts(bareEpisode(readReadings(table).value!, readNames(names_).value!, table.place(0)));
  return { facts, kind: products ? 'products' : 'settings', places: products ? [] : places, things, measured, limit, room, idle } as World;
});

export function valueAt(w: World, place: string | undefined, t: Thing, m: Quantity, phase = 'load'): Exact {
  const key = `${place ? `${place}/${t.id}` : `${t.id}/`}/${phase === 'idle' ? '' : 'scene'}/${m.measure}/${m.part}/${phase}`;
  const fact = w.facts.value(key);
  if (!isFact(fact)) throw new Error(`${key}: ${fact.why}`);
  return fact.value;
}
