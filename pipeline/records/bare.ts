// An episode made of nothing but the two tables, for proofing a script without a record.
import type { Place } from '../places/index.js';
import type { Episode, Measure, Named, Reading, Setting, Setup } from './episode.js';
import { splitKey } from './key.js';
import type { NameKind } from './tables.js';

/** Ids that no name row speaks of get themselves (with spaces for dashes) as their spoken form. */
export function bareEpisode(readings: Reading[], names: (Named & { kind: NameKind })[], place: Place): Episode {
  const maps: Record<NameKind, Map<string, Named>> = { setup: new Map(), setting: new Map(), workload: new Map(), measure: new Map(), part: new Map(), phase: new Map() };
  for (const { kind, ...n } of names) maps[kind]?.set(n.id, n);
  for (const r of readings) {
    for (const [field, id] of Object.entries(splitKey(r.key)!) as [NameKind, string][]) {
      if (id && !maps[field].has(id)) maps[field].set(id, { id, name: id.replace(/[-_]/g, ' '), spoken: [id.replace(/[-_]/g, ' ')], place: r.place });
    }
  }
  return {
    id: '', title: '', place,
    disclosures: [], method: [], cautions: [], versions: [], instruments: [], system: [], curves: [], traces: [], stated: [], corrections: [], quotes: [],
    pictures: [], accept: [], thresholds: [], severities: [], texts: [], secondUnits: new Map(),
    setups: new Map([...maps.setup].map(([id, n]) => [id, { ...n, kind: 'product' } satisfies Setup])),
    settings: new Map([...maps.setting].map(([id, n]) => [id, { ...n, parameters: [] } satisfies Setting])),
    measures: new Map([...maps.measure].map(([id, n]) => [id, { ...n, better: 'neither' } satisfies Measure])),
    workloads: maps.workload, parts: maps.part, phases: maps.phase,
    readings,
  };
}
