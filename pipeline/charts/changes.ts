// Logs worth a picture over time: those in which something happens.
import type { Facts, Trace } from '../facts/index.js';

const slices = 24;
/** How many times its noise, or its sensor's step, a log must move to be more than noise; common practice, no published source. */
const clear = 4;
/** And at least this share of its size: a line that climbs by less says nothing. */
const least = 0.05;

/** Whether a log moves well beyond its noise: the medians of its slices against the usual width of a slice. */
export function changes(values: readonly number[]): boolean {
  const finite = values.filter(Number.isFinite);
  if (finite.length < 2 * slices) return false;
  const parts = Array.from({ length: slices }, (_, i) => sorted(finite.slice(Math.floor((i * finite.length) / slices), Math.floor(((i + 1) * finite.length) / slices))));
  const middles = sorted(parts.map(median));
  const moved = middles.at(-1)! - middles[0]!;
  const noise = median(sorted(parts.map((p) => p.at(-1)! - p[0]!)));
  const all = sorted(finite);
  const step = all.reduce((small, v, i) => (i > 0 && v > all[i - 1]! ? Math.min(small, v - all[i - 1]!) : small), Infinity);
  const size = Math.max(Math.abs(all[0]!), Math.abs(all.at(-1)!));
  return Number.isFinite(step) && moved >= clear * noise && moved >= clear * step && moved >= least * size;
}

/** Logs that change, of the first measure that has one (those with a better end first): one a thing, other setups before other settings. */
export function changingLogs(facts: Facts, most: number): Trace[] {
  const { measures, parts, setups, settings, workloads } = facts.about;
  const order = { measure: [...measures.keys()], part: [...parts.keys()], setup: [...setups.keys()], setting: [...settings.keys()], workload: [...workloads.keys()] };
  const neither = (t: Trace): number => (measures.get(t.measure)?.better === 'neither' ? 1 : 0);
  const before = (a: Trace, b: Trace): number => neither(a) - neither(b) || (['measure', 'part', 'setting', 'workload', 'setup'] as const).reduce((sum, f) => sum || order[f].indexOf(a[f]) - order[f].indexOf(b[f]), 0);
  const things = new Map<string, Trace>();
  for (const t of facts.traces) {
    const thing = [t.measure, t.part, t.setup, t.setting, t.workload].join('/');
    if (!things.has(thing)) things.set(thing, t);
  }
  const chosen: Trace[] = [];
  for (const t of [...things.values()].sort(before)) {
    if (chosen.length === most) break;
    if (chosen[0] && (t.measure !== chosen[0].measure || t.part !== chosen[0].part)) break;
    if (changes(t.values)) chosen.push(t);
  }
  return chosen;
}

function sorted(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

function median(ordered: readonly number[]): number {
  const half = ordered.length / 2;
  return (ordered[Math.floor(half)]! + ordered[Math.ceil(half) - 1]!) / 2;
}
