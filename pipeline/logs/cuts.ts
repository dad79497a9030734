// Where the windows of a layout cut through buckets of a long log, so that they are cut there.
import type { Buckets } from './buckets.js';
import type { LogLayout, LogWindow } from './layout.js';
import type { Samples } from './second-reading.js';

export interface Cut {
  bucket: number;
  /** The sample of the bucket (from 0) that the cut lies before. */
  at: number;
  samples: Samples;
}

/** Where a window begins and ends within its stretch of a log. `after` asks for times beyond `low`, not at it. */
export interface Bounds {
  low: number;
  after: boolean;
  high: number;
}

/** `origin` is what the window's times count from, `finish` the time of the last sample of its stretch. */
export function boundsOf(wanted: LogWindow, origin: number, finish: number): Bounds {
  if (wanted.last !== undefined) return { low: finish - wanted.last, after: true, high: Infinity };
  return { low: origin + (wanted.from ?? 0), after: false, high: wanted.to === undefined ? Infinity : origin + wanted.to };
}

/** One at a time, each to be made before the next is asked for. */
export function* cutTimes(layout: LogLayout, buckets: Buckets, runs: readonly string[], again: (bucket: number) => Samples): Generator<Cut> {
  for (const wanted of layout.windows) {
    const stretch = stretchOf(layout, wanted, buckets, runs);
    if (!stretch) continue;
    const [from, to] = stretch;
    const origin = from === 0 && to === buckets.count && !phaseOf(layout, wanted) && layout.time?.kind === 'elapsed' ? 0 : buckets.first[from]!;
    const { low, after, high } = boundsOf(wanted, origin, buckets.last[to - 1]!);
    for (const [time, beyond] of [[high, false], [low, after]] as const) {
      let b = from;
      const reached = (t: number): boolean => (beyond ? t > time : t >= time);
      while (b < to && !reached(buckets.last[b]!)) b++;
      if (b === to || buckets.rows[b] === 1 || reached(buckets.first[b]!)) continue;
      const samples = again(b);
      const at = samples.times.findIndex(reached);
      if (at > 0 && samples.times.length === buckets.rows[b]) yield { bucket: b, at, samples };
    }
  }
}

/** The phase that a window is cut from, if it is not cut from the whole log. */
function phaseOf(layout: LogLayout, wanted: LogWindow): string | undefined {
  return wanted.of ?? (layout.phaseColumn || layout.phase === wanted.phase ? wanted.phase : undefined);
}

/** Buckets [from, to) of the longest stretch of that phase. */
function stretchOf(layout: LogLayout, wanted: LogWindow, buckets: Buckets, runs: readonly string[]): [number, number] | undefined {
  const base = phaseOf(layout, wanted);
  if (base === undefined || !layout.phaseColumn) return buckets.count ? [0, buckets.count] : undefined;
  const { map } = layout.phaseColumn;
  let best: [number, number] | undefined;
  let most = 0;
  for (let from = 0; from < buckets.count;) {
    const run = buckets.runs[from]!;
    let samples = 0;
    let to = from;
    while (to < buckets.count && buckets.runs[to] === run) samples += buckets.rows[to++]!;
    const said = runs[run - 1]!;
    if ((map ? map.get(said) : said) === base && samples > most) {
      most = samples;
      best = [from, to];
    }
    from = to;
  }
  return best;
}
