// Which measures and things a record has of a kind, worked out once for each record: every mention asks.
import type { Unit } from '../quantities/index.js';
import { type Grid, kindOf } from './grid.js';

interface Known {
  /** By measure: the values that each slot has in readings that were measured, not set. */
  measured: Map<string, readonly ReadonlySet<string>[]>;
  inUnits: WeakMap<readonly Unit[], Measures>;
}

/** Measures in the order of the record, and the same as a set. */
export interface Measures {
  list: readonly string[];
  set: ReadonlySet<string>;
}

const knownOf = new WeakMap<Grid, Known>();

function known(g: Grid): Known {
  let k = knownOf.get(g);
  if (!k) knownOf.set(g, (k = { measured: new Map(), inUnits: new WeakMap() }));
  return k;
}

/** The measures that are given in one of these units or another of its kind. */
export function measuresIn(g: Grid, units: readonly Unit[]): Measures {
  const { inUnits } = known(g);
  let found = inUnits.get(units);
  if (!found) {
    const list = [...g.measureUnits].filter(([, dims]) => units.some((u) => dims.has(kindOf(u)))).map(([m]) => m);
    inUnits.set(units, (found = { list, set: new Set(list) }));
  }
  return found;
}

/** Something was measured of it: it has more than a limit or a target. */
export function wasMeasured(g: Grid, measure: string, slot: number, value: string): boolean {
  const { measured } = known(g);
  let sets = measured.get(measure);
  if (!sets) {
    const own = (g.byMeasure.get(measure) ?? []).filter((x) => !x.fixed);
    measured.set(measure, (sets = g.slots.map((_, i) => new Set(own.map((x) => x.at[i]!)))));
  }
  return sets[slot]!.has(value);
}

/** Nothing of that part was measured: it has a limit or a target. */
export function onlySet(g: Grid, measure: string, slot: number, value: string): boolean {
  return g.valuesWith.get(measure)?.[slot]?.has(value) === true && !wasMeasured(g, measure, slot, value);
}
