// A log of frame durations as the record lays it out: what is asked of it, each figure with its definition in words.
import { type Defined, type FrameLayout, type FrameSkip, type LowDefinition, lowInWords, type StutterDefinition, stutterInWords, type TimeDefinition, timeInWords } from '../logs/index.js';
import { readQuantity, unit } from '../quantities/index.js';
import type { Context } from './context.js';
import type { Measure } from './episode.js';
import { column, measurePath, ref, text } from './plain-shapes.js';
import { type Entry, fields, mapOf, type Read, type Written, written } from './shape.js';
import { unitOf } from './values.js';

const path = (says: string) => written('measure/part', says, measurePath(2), { type: 'string' });
const defined = (says: string, expects: string, example: string) => mapOf(written('a definition', says, undefined, { type: 'string' }), expects, measurePath(2), example);

export const frames = fields({
  column, unit: text('ms where nothing is said.'),
  phase: ref('Phase of the frames; load where nothing is said.'),
  average: path('Where the mean rate goes, frames over time: frame_rate/average'),
  low: defined('slowest 1 % (mean rate of the slowest hundredth of the frames); slowest 1 % of time (mean rate over the slowest hundredth of the time); p99 frame time (the rate at that percentile); p1 frame rate (that percentile of the rates); percentiles of type 7 (Hyndman and Fan) where nothing is said: p99 frame time, type 6',
    'definitions by measure/part', 'Low figures with their definition, since one name stands for several: {frame_rate/low: slowest 1 %}'),
  times: defined('p99, a percentile of the frame times (type 7 where nothing is said: p99, type 1); longest', 'definitions by measure/part', 'Frame times with their definition: {frame_time/p99: p99, frame_time/longest: longest}'),
  stutter: defined('over 2.5 × running median (frames longer than that: how many); share over 2.5 × running median (how much of the time they take); of 61 frames where nothing is said: over 2 × running median of 31 frames',
    'definitions by measure/part', 'Stutters with their definition: {stutters: over 2.5 × running median}'),
  count: path('Where the number of frames goes: frames'),
  each: path('Keeps every frame as a trace: frame_time'),
  skip: written('a number of frames, a time, or warm-up', 'Frames at the beginning that do not count: 1 (frames); 5 s; warm-up (leading frames longer than 1.5 times the 99th percentile of the others). 0 counts all.', undefined, { type: ['integer', 'string'] }),
}, { expects: 'a map of column, unit, phase, average, low, times, stutter, count, each, skip', required: ['column'], says: 'A log of frame durations, one a line.' });

export function readFrames(ctx: Context, { fields: f, place }: Read<typeof frames>): FrameLayout {
  const { reader, names } = ctx;
  const u = f.unit ? unitOf(f.unit, reader) : unit('ms');
  if (f.unit && u && u.dimension !== 'duration') reader.fail(f.unit.place, 'unit-unknown', `"${f.unit.text}" is no unit of time; expected ms, us or s`, { said: f.unit.text });
  const named = (w: Written | undefined): w is Written => {
    if (!w) return false;
    const [measure = '', part = ''] = w.text.split('/');
    return names.use('measure', measure, w.place) && names.use('part', part, w.place);
  };
  if (!f.average && !f.low && !f.each && !f.times && !f.stutter && !f.count) reader.fail({ ...place, endLine: place.line }, 'record-missing', 'frames need "average", "low", "times", "stutter", "count" or "each"');
  const phase = f.phase?.text ?? 'load';
  names.use('phase', phase, f.phase?.place ?? place);
  const all = <T>(entries: readonly Entry<Written>[] | undefined, read: (text: string) => T | undefined, wrong: string): Defined<T>[] => (entries ?? []).flatMap(({ key, value }) => {
    const known = named(key);
    const definition = known ? read(value.text) : undefined;
    if (known && !definition) reader.fail(value.place, 'record-form', `"${value.text}" ${wrong}`, { said: value.text });
    return definition ? [{ as: key.text, definition, place: value.place }] : [];
  });
  const lows = all(f.low, readLow, 'defines no low figure; write slowest 1 %, slowest 1 % of time, p99 frame time, or p1 frame rate');
  const times = all(f.times, readTimes, 'defines no frame time; write p99, p50, p99 (type 1), or longest');
  const stutters = all(f.stutter, readStutter, 'defines no stutter; write over 2.5 × running median, or share over 2.5 × running median of 31 frames');
  define(ctx, [
    ...(f.average ? [[f.average.text, 'frames over time'] as const] : []),
    ...lows.map((l) => [l.as, lowInWords(l.definition)] as const), ...times.map((t) => [t.as, timeInWords(t.definition)] as const), ...stutters.map((s) => [s.as, stutterInWords(s.definition)] as const),
  ]);
  const skip = f.skip && readSkip(f.skip.text);
  if (f.skip && !skip) reader.fail(f.skip.place, 'record-form', `"${f.skip.text}" says not which frames to pass over; write a whole number of frames (1), a time (5 s), or warm-up`, { said: f.skip.text });
  return {
    at: { name: f.column!.text, place: f.column!.place }, unit: u ?? unit('ms'), phase, lows, times, stutters,
    ...(named(f.average) && { average: f.average.text }), ...(named(f.count) && { count: f.count.text }), ...(named(f.each) && { each: f.each.text }),
    ...(skip && { skip }),
  };
}

/** How the figures of a frame log are defined stands with their measure, unless the record says it in its own words. */
function define(ctx: Context, said: (readonly [as: string, words: string])[]): void {
  for (const [as, words] of said) {
    const [id = '', part = ''] = as.split('/');
    const measure = ctx.names.map('measure').get(id) as Measure | undefined;
    if (!measure || ctx.fields.measures?.some((e) => e.key.text === id && e.value.fields.definition)) continue;
    const one = part ? `${part}: ${words}` : words;
    if (!measure.definition?.split('; ').includes(one)) measure.definition = measure.definition ? `${measure.definition}; ${one}` : one;
  }
}

const type = String.raw`(?:,? \(?type ([1-9])\)?)?`;

/** Percentiles are of type 7 (Hyndman and Fan 1996) unless another is named. */
export function readLow(said: string): LowDefinition | undefined {
  const slowest = /^(?:mean (?:rate )?(?:of|over) (?:the )?)?slowest (\d+(?:\.\d+)?)\s*(?:%|percent)( of (?:the )?(?:time|frames))?$/.exec(said.trim());
  if (slowest) return percent(slowest[1]!, (p) => ({ kind: slowest[2]?.endsWith('time') ? 'slowest-time' : 'slowest', percent: p }));
  const p = new RegExp(`^p(\\d+(?:\\.\\d+)?) frame (time|rate)${type}$`).exec(said.trim());
  return p ? percent(p[1]!, (n) => ({ kind: p[2] === 'time' ? 'frame-time-percentile' : 'rate-percentile', percent: n, type: Number(p[3] ?? 7) })) : undefined;
}

export function readTimes(said: string): TimeDefinition | undefined {
  if (said.trim() === 'longest') return { kind: 'longest' };
  const p = new RegExp(`^p(\\d+(?:\\.\\d+)?)${type}$`).exec(said.trim());
  return p ? percent(p[1]!, (n) => ({ kind: 'percentile', percent: n, type: Number(p[2] ?? 7) })) : undefined;
}

const usualSpan = 61;

export function readStutter(said: string): StutterDefinition | undefined {
  const m = /^(share )?over (\d+(?:\.\d+)?)\s*(?:×|x|times) (?:the )?running median(?: of (\d+) frames)?$/.exec(said.trim());
  const [times, span] = [Number(m?.[2]), Number(m?.[3] ?? usualSpan)];
  return m && times > 1 && span >= 3 && span <= 10001 && span % 2 === 1 ? { gives: m[1] ? 'share' : 'count', times, span } : undefined;
}

function readSkip(said: string): FrameSkip | undefined {
  if (said === 'warm-up') return { kind: 'warm-up' };
  if (/^\d{1,6}$/.test(said)) return { kind: 'frames', frames: Number(said) };
  const q = readQuantity(said);
  return 'quantity' in q && q.quantity.unit.dimension === 'duration' && q.quantity.value.sign() >= 0 ? { kind: 'seconds', seconds: q.quantity.value.times(q.quantity.unit.factor).toNumber() } : undefined;
}

function percent<T>(p: string, make: (p: number) => T): T | undefined {
  const n = Number(p);
  return n > 0 && n < 100 ? make(n) : undefined;
}
