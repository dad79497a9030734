// The readings of one measure laid out: which things tested become rows, which parts, settings and phases columns.
import { constantPhases, type Facts, inOrderOfNames, isIdle, type Key, type KeyParts, roomParts, splitKey } from '../facts/index.js';

export interface Column {
  /** Empty unless settings stand side by side. */
  setting: string;
  part: string;
  phase: string;
  kind: 'value' | 'rise';
}

export interface Row {
  parts: KeyParts;
  keys: Map<string, Key>;
}

export interface Grid {
  measure: string;
  rows: Row[];
  columns: Column[];
}

export const rowFields = ['setup', 'setting', 'workload'] as const;

const parameters: ReadonlySet<string> = new Set(constantPhases);

/** One grid a measure, in the order in which the record names its measures. Three setups or more are compared down the rows, setting beside setting. */
export function grids(facts: Facts): Grid[] {
  const results = resultKeys(facts);
  const several = (f: 'setup' | 'setting') => new Set(results.map((r) => r.parts[f]).filter(Boolean)).size;
  const sideBySide = several('setup') > 2 && several('setting') > 1;
  const measures = new Map<string, Row[]>();
  for (const { key, parts } of results) {
    const rows = measures.get(parts.measure) ?? [];
    measures.set(parts.measure, rows);
    const same = (r: Row) => r.parts.setup === parts.setup && r.parts.workload === parts.workload && (sideBySide || r.parts.setting === parts.setting);
    const row = rows.find(same) ?? { parts: sideBySide ? { ...parts, setting: '' } : parts, keys: new Map<string, Key>() };
    if (row.keys.size === 0) rows.push(row);
    row.keys.set(columnId(parts, sideBySide), key);
  }
  const order = [...facts.about.measures.keys()];
  const listed = [...measures].sort(([a], [b]) => order.indexOf(a) - order.indexOf(b));
  return listed.map(([measure, all]) => {
    const rows = withIdle(facts, all, sideBySide);
    return { measure, rows, columns: columnsOf(rows) };
  });
}

export function keyAt(row: Row, { setting, part, phase }: Column): Key | undefined {
  return row.keys.get(`${setting}/${part}/${phase}`);
}

/** What there is only one of is said once and not in every row. */
export function common(facts: Facts): Map<(typeof rowFields)[number], string> {
  const results = resultKeys(facts);
  const only = rowFields.map((f) => [f, new Set(results.map((r) => r.parts[f]).filter(Boolean))] as const).filter(([, ids]) => ids.size === 1);
  return new Map(only.map(([f, ids]) => [f, [...ids][0]!]));
}

/** Keys of results: no limits or targets, no prices, not the room. */
function resultKeys(facts: Facts): { key: Key; parts: KeyParts }[] {
  return facts.keys().sort(inOrderOfNames(facts.about)).flatMap((key) => {
    const parts = splitKey(key);
    const counted = facts.readings(key);
    if (!parts || counted.length === 0 || parts.measure === 'price') return [];
    if (parts.measure === 'temperature' && roomParts.includes(parts.part)) return [];
    return counted.every((r) => r.constant) && parameters.has(parts.phase) ? [] : [{ key, parts }];
  });
}

function columnId(parts: KeyParts, sideBySide: boolean): string {
  return `${sideBySide ? parts.setting : ''}/${parts.part}/${parts.phase}`;
}

/** Idle readings without a workload are shown in the rows of the workloads that they belong to. */
function withIdle(facts: Facts, rows: Row[], sideBySide: boolean): Row[] {
  const used = new Set<Key>();
  for (const row of rows) {
    for (const key of [...row.keys.values()]) {
      const idle = facts.idleOf(key);
      const parts = idle === undefined ? undefined : splitKey(idle);
      if (!parts || idle === undefined) continue;
      row.keys.set(columnId(parts, sideBySide), idle);
      if (parts.workload !== row.parts.workload) used.add(idle);
    }
  }
  return rows.filter((row) => [...row.keys.values()].some((key) => !used.has(key)) || row.parts.workload !== '');
}

/** Setting by setting, part by part: idle, the other phases, and the rise where there is just one to rise to. */
function columnsOf(rows: Row[]): Column[] {
  const groups = new Map<string, string[]>();
  for (const id of rows.flatMap((r) => [...r.keys.keys()])) {
    const cut = id.lastIndexOf('/');
    const phases = groups.get(id.slice(0, cut)) ?? [];
    groups.set(id.slice(0, cut), phases);
    if (!phases.includes(id.slice(cut + 1))) phases.push(id.slice(cut + 1));
  }
  return [...groups].flatMap(([group, phases]) => {
    const [setting, part] = group.split('/') as [string, string];
    const ordered = [...phases.filter(isIdle), ...phases.filter((p) => !isIdle(p))];
    const values = ordered.map((phase): Column => ({ setting, part, phase, kind: 'value' }));
    return ordered.length === 2 && isIdle(ordered[0]!) ? [...values, { setting, part, phase: ordered[1]!, kind: 'rise' as const }] : values;
  });
}
