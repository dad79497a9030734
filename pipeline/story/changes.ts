// What changed most: every comparable pair against its base, weighed by what matters in that measure or by what the runs can tell apart.
import { type Fact, type Facts, isFact, isMeasured, type Key, type KeyParts, nameOf, quantityName, roomParts, splitKey, tooClose, uncertaintyOf } from '../facts/index.js';
import { convert, differenceUnit } from '../quantities/index.js';
import type { Observation } from './observation.js';

/** The least step that means something to a viewer, whatever the runs can tell: a share of the base, or one kelvin, one decibel; common practice, no published source. */
const least = { share: 0.02, degrees: 1 } as const;

export interface Pair {
  /** After, and what it is held against. */
  key: Key;
  base: Key;
  field: 'setup' | 'setting';
  after: Fact;
  before: Fact;
  difference: Fact;
}

/** Pairs that differ in their setup or their setting alone, each measured against the first setup or against stock, in the order of the record. */
export function pairs(facts: Facts): Pair[] {
  return facts.keys().filter((key) => counts(facts, key)).flatMap((key) => (['setup', 'setting'] as const).flatMap((field): Pair[] => {
    const base = baseOf(facts, key, field);
    if (base === undefined) return [];
    const [after, before, difference] = [facts.value(key), facts.value(base), facts.derive('difference', [key, base])];
    return isFact(after) && isFact(before) && isFact(difference) ? [{ key, base, field, after, before, difference }] : [];
  }));
}

/** The clear ones, each measure and part once: first those of measures of which the record says what matters, the heaviest before the others. `field`: only those between setups, or between settings. */
export function changed(facts: Facts, field?: Pair['field']): Observation[] {
  const seen = new Set<string>();
  const clear = pairs(facts).filter((p) => (!field || p.field === field) && atTheBase(facts, p) && stands(facts, p));
  return clear.map((pair) => ({ pair, weight: weightOf(facts, pair), said: facts.about.measures.get(splitKey(pair.key)!.measure)?.matters ? 1 : 0 })).sort((a, b) => b.said - a.said || b.weight - a.weight).flatMap(({ pair, weight }) => {
    const at = splitKey(pair.key)!;
    const what = `${at.measure}/${at.part}`;
    if (seen.has(what)) return [];
    seen.add(what);
    return [{ about: 'changed' as const, measure: at.measure, part: at.part, fact: pair.difference, weight, why: `${quantityName(facts.about, at.measure, at.part)} changes from ${pair.before.shown} to ${pair.after.shown} ${between(facts, pair)}` }];
  });
}

/** Whether it may be told. That runs were not repeated is for the picture to say; it may still be what the episode is about. */
function stands(facts: Facts, { after, before }: Pair): boolean {
  const close = tooClose(facts, after, before);
  return close === undefined || close === 'single';
}

/** "between Open bench and Closed case" */
export function between(facts: Facts, { key, base, field }: Pair): string {
  const [a, b] = [splitKey(base)!, splitKey(key)!];
  return `between ${nameOf(facts.about, field, a[field])} and ${nameOf(facts.about, field, b[field])}`;
}

/** How many of the smallest steps that mean something in it. */
function weightOf(facts: Facts, { difference, before, key }: Pair): number {
  const matters = facts.about.measures.get(splitKey(key)!.measure)?.matters;
  const known = matters && convert(matters.value, matters.unit, differenceUnit(before.unit))?.toNumber();
  const floor = hasRatios(before) ? Math.abs(before.value.toNumber()) * least.share : least.degrees;
  const step = Math.max(known ?? floor, uncertaintyOf(facts, difference)?.half95 ?? 0);
  return step > 0 ? Math.abs(difference.value.toNumber()) / step : 0;
}

/** Percents of temperatures and of levels mean nothing. */
export function hasRatios(fact: Fact): boolean {
  return !['temperature', 'sound-level'].includes(fact.unit.dimension);
}

/** Settings are compared in the first setup that has the pair, setups at the first setting. */
function atTheBase(facts: Facts, { key, field }: Pair): boolean {
  const at = splitKey(key)!;
  const order = { setup: [...facts.about.setups.keys()], setting: [...facts.about.settings.keys()] };
  const other = field === 'setup' ? 'setting' : 'setup';
  const rank = (k: Key): number => order[other].indexOf(splitKey(k)![other]);
  return facts.sameBut(key, other).filter((k) => counts(facts, k) && baseOf(facts, k, field) !== undefined).every((k) => rank(k) >= order[other].indexOf(at[other]));
}

/** The same at stock, or at the first setting; the same of the first setup. Undefined for the base itself. */
function baseOf(facts: Facts, key: Key, field: 'setup' | 'setting'): Key | undefined {
  const others = facts.sameBut(key, field).filter((k) => isMeasured(facts, k));
  const order = [...facts.about[field === 'setup' ? 'setups' : 'settings'].keys()];
  const stock = (k: Key): number => (field === 'setting' && facts.about.settings.get(splitKey(k)!.setting)?.kind === 'stock' ? -1 : order.indexOf(splitKey(k)![field]));
  const first = [key, ...others].sort((a, b) => stock(a) - stock(b))[0];
  return first === key ? undefined : first;
}

/** Measured under load, of a measure with a better end, and not the room itself. */
export function counts(facts: Facts, key: Key): boolean {
  const p: KeyParts | undefined = splitKey(key);
  return p !== undefined && p.phase !== '' && p.phase !== 'idle' && !roomParts.includes(p.part) && facts.about.measures.get(p.measure)?.better !== 'neither' && isMeasured(facts, key);
}
