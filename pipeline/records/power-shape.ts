// What a sensor log tells about power and limits: energy, and how long a clock was held back.
import type { LogColumn, LogEnergy, LogThrottle } from '../logs/index.js';
import { findUnit, readQuantity, type Unit, unit } from '../quantities/index.js';
import { nearest } from '../places/index.js';
import type { Context } from './context.js';
import { measurePath } from './plain-shapes.js';
import { type Entry, fields, list, mapOf, type Read, type Written, written } from './shape.js';
import { unknownUnit } from './tables.js';

const path = (says: string) => written('measure/part', says, measurePath(2), { type: 'string' });
const share = (says: string) => written('a share in percent', says, undefined, { type: 'string' });

export const energy = mapOf(written('measure/part and unit (energy/board Wh)', 'Where the energy goes, in Wh where no unit is said: energy/board kJ', undefined, { type: 'string' }), 'energies by the measure/part of a power column', measurePath(2),
  'Energy from a power column, by trapezoids over the actual times of each whole phase but idle (not of the window that is averaged): {power/board: energy/board}. Gaps are bridged by straight lines and told; beyond 5 % of a phase there is no energy.');

export const throttle = fields({
  clock: path('The clock that is held back: frequency/core'),
  limits: list(path('A power or a temperature.'), 'What may stand at its limit: [power/board, temperature/hotspot]. The limit is a column of the log, or what the record states (constants, or with the setting).', true),
  time: path('Where the seconds go: throttled_time/core'),
  share: path('Where their share of the phase goes: throttled_share/core'),
  at: share('From this share of its limit on, power is at it; 97 % where nothing is said. A temperature is from 1 K below.'),
  below: share('By this share the clock stands below its target, its rating or else its highest in the log; 2 % where nothing is said.'),
}, { expects: 'a map of clock, limits, time, share, at, below', required: ['clock', 'limits'], says: 'Tells how long a clock was held back: it stands below where it could, while a power or a temperature is at its limit.' });

export function readEnergies(ctx: Context, entries: readonly Entry<Written>[], columns: readonly LogColumn[]): LogEnergy[] {
  const { reader } = ctx;
  return entries.flatMap(({ key, value }): LogEnergy[] => {
    const column = columnOf(ctx, key, columns);
    if (column && column.unit.dimension !== 'power') {
      reader.fail(key.place, 'record-form', `${key.text} is read in ${column.unit.symbol}; energy comes of a power`, { said: key.text });
      return [];
    }
    const m = /^(\S+)(?:\s+(.+))?$/s.exec(value.text.trim())!;
    const u: Unit | undefined = m[2] ? findUnit(m[2]) : unit('Wh');
    if (!u) reader.findings.push(unknownUnit('unit-unknown', value.place, m[2]!));
    else if (u.dimension !== 'energy') reader.fail(value.place, 'unit-unknown', `"${m[2]}" is no unit of energy; expected Wh, kWh, J or kJ`, { said: m[2]! });
    const known = named(ctx, { ...value, text: m[1]! });
    return column && known && u?.dimension === 'energy' ? [{ of: pathOf(column), as: m[1]!, unit: u }] : [];
  });
}

export function readThrottle(ctx: Context, { fields: f, place }: Read<typeof throttle>, columns: readonly LogColumn[]): LogThrottle | undefined {
  const { reader } = ctx;
  if (!f.time && !f.share) reader.fail({ ...place, endLine: place.line }, 'record-missing', 'throttle needs "time", "share" or both, to say where they go');
  const clock = f.clock && columnOf(ctx, f.clock, columns);
  if (clock && clock.unit.dimension !== 'frequency') reader.fail(f.clock!.place, 'record-form', `${f.clock!.text} is read in ${clock.unit.symbol}; a clock is meant`, { said: f.clock!.text });
  const limits = (f.limits ?? []).flatMap((w) => {
    const column = columnOf(ctx, w, columns);
    if (column && !['power', 'temperature'].includes(column.unit.dimension)) reader.fail(w.place, 'record-form', `${w.text} is read in ${column.unit.symbol}; a power or a temperature is meant`, { said: w.text });
    return column ? [pathOf(column)] : [];
  });
  const shareOf = (w: Written | undefined, usual: number): number => {
    const q = w && readQuantity(w.text, unit('%'));
    if (!q) return usual;
    const x = 'quantity' in q && q.quantity.unit.id === '%' ? q.quantity.value.toNumber() / 100 : NaN;
    if (!(x > 0 && x <= 1)) reader.fail(w.place, 'value-form', `"${w.text}" is no share; write it like 97 %`, { said: w.text });
    return x > 0 && x <= 1 ? x : usual;
  };
  const [at, below] = [shareOf(f.at, 0.97), shareOf(f.below, 0.02)];
  const [time, part] = [f.time && named(ctx, f.time) ? f.time.text : undefined, f.share && named(ctx, f.share) ? f.share.text : undefined];
  return clock && limits.length ? { clock: pathOf(clock), limits, at, below, place, ...(time && { time }), ...(part && { share: part }) } : undefined;
}

function named(ctx: Context, w: Written): boolean {
  const [measure = '', part = ''] = w.text.split('/');
  return ctx.names.use('measure', measure, w.place) && ctx.names.use('part', part, w.place);
}

function pathOf({ measure, part }: LogColumn): string {
  return `${measure}/${part}`;
}

/** The column of this layout that is read as `measure/part`. */
export function columnOf({ reader }: Context, w: Written, columns: readonly LogColumn[]): LogColumn | undefined {
  const [measure = '', part = ''] = w.text.split('/');
  const found = columns.find((c) => c.phase === undefined && c.measure === measure && c.part === part);
  if (found) return found;
  const all = columns.filter((c) => c.phase === undefined).map((c) => (c.part ? pathOf(c) : c.measure));
  const near = nearest(w.text, all);
  reader.fail(w.place, 'unknown-name', `no column of this layout is read as ${w.text}${near ? `; did you mean ${near}?` : all.length ? `; there are ${all.join(', ')}` : ''}`, { said: w.text, ...(near && { suggest: near }) });
  return undefined;
}
