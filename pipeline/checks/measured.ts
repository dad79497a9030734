// The keys that were measured, taken apart once for all checks.
import { type Fact, type Facts, isFact, isIdle, roomParts } from '../facts/index.js';
import { type Key, type KeyParts, makeKey, type Reading, splitKey } from '../records/index.js';

export interface Measured {
  key: Key;
  at: KeyParts;
  /** The runs that count, in order. */
  readings: Reading[];
  /** Their mean; undefined where they have no common unit. */
  mean: Fact | undefined;
}

const kept = new WeakMap<Facts, Measured[]>();

/** Every key with at least one run that counts, in the order of the record. */
export function measured(facts: Facts): Measured[] {
  let all = kept.get(facts);
  if (!all) {
    all = facts.keys().flatMap((key) => {
      const at = splitKey(key);
      const readings = facts.readings(key).filter((r) => !r.constant);
      if (!at || readings.length === 0) return [];
      const mean = facts.value(key);
      return [{ key, at, readings, mean: isFact(mean) ? mean : undefined }];
    });
    kept.set(facts, all);
  }
  return all;
}

/** Groups in the order of their first member. */
export function grouped<T>(items: Iterable<T>, by: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const list = groups.get(by(item));
    if (list) list.push(item);
    else groups.set(by(item), [item]);
  }
  return groups;
}

export function isRoom(at: KeyParts): boolean {
  return roomParts.includes(at.part);
}

/** A temperature of a thing: neither the room's nor one that is told over the room. */
export function isHot({ at, mean }: Measured): boolean {
  return mean?.unit.dimension === 'temperature' && !isRoom(at) && !/over|delta|difference|rise/.test(at.part);
}

/** Idle is one phase; every other phase of a key with a workload counts as load. */
export function isLoad(at: KeyParts): boolean {
  return at.workload !== '' && !isIdle(at.phase);
}

/** Setup, setting and workload as a subject of a finding: "closed-case", "closed-case/stock". */
export function testOf(at: Pick<KeyParts, 'setup' | 'setting' | 'workload'>): string {
  return [at.setup, at.setting, at.workload].join('/').replace(/\/+$/, '');
}

/** What was read, without where: measure, part and phase. */
export function quantityOf(at: KeyParts): Key {
  return makeKey({ measure: at.measure, part: at.part, phase: at.phase });
}
