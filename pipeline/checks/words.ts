// Counts, lists and readings in plain words, as messages name them.
import type { Fact } from '../facts/index.js';
import type { Finding, Place } from '../places/index.js';
import { showNumber } from '../quantities/index.js';
import type { Reading } from '../records/index.js';

export { nameOf } from '../facts/index.js';
export { tell, tellDifference, what } from '../slips/index.js';

export function runsOf(readings: readonly Reading[]): string {
  return readings.map((r) => showNumber(r.quantity.value, r.quantity.decimals)).join(', ');
}

/** "one run", "three runs". */
export function count(n: number, one: string, many = `${one}s`): string {
  const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
  return `${words[n] ?? n} ${n === 1 ? one : many}`;
}

export function listed(items: readonly string[], word = 'and'): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)}`;
}

/** Where the readings of a fact stand, each line once. */
export function readingPlaces(readings: readonly Reading[], label: (r: Reading) => string = (r) => (r.constant ? 'the constant' : `run ${r.run}`)): NonNullable<Finding['related']> {
  const seen = new Set<string>();
  const places: { place: Place; label: string }[] = [];
  for (const r of readings) {
    const at = `${r.place.file}:${r.place.line}`;
    if (seen.has(at)) continue;
    seen.add(at);
    places.push({ place: r.place, label: label(r) });
  }
  return places;
}

export function derivation(fact: Fact): string {
  return `${fact.formula} = ${fact.shown}`;
}
