// The order in which things are told: as the record names them.
import { type Key, type KeyField, keyFields, splitKey } from '../records/index.js';
import type { About } from './facts.js';

const lists = { setup: 'setups', setting: 'settings', workload: 'workloads', measure: 'measures', part: 'parts', phase: 'phases' } as const;

/** Compares keys by setup, setting, workload, measure, part and phase, each in the order of the record's own lists. */
export function inOrderOfNames(about: About): (a: Key, b: Key) => number {
  const places = Object.fromEntries(keyFields.map((f) => [f, new Map([...about[lists[f]].keys()].map((id, i) => [id, i + 1]))])) as Record<KeyField, Map<string, number>>;
  const place = (f: KeyField, id: string) => (id === '' ? 0 : places[f].get(id) ?? places[f].size + 1);
  return (a, b) => {
    const [x, y] = [splitKey(a), splitKey(b)];
    if (!x || !y) return 0;
    for (const f of keyFields) {
      const d = place(f, x[f]) - place(f, y[f]);
      if (d) return d;
    }
    return 0;
  };
}
