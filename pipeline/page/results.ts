// The results: one table a measure, a row for each thing tested, columns by part and phase.
import { constantPhases, type Fact, type Facts, isFact, isIdle, type Key, type KeyParts, nameOf, roomParts, splitKey } from '../facts/index.js';
import { Exact, showNumber, type Unit } from '../quantities/index.js';
import { namesOf } from './places-of.js';

export interface Cell {
  value: string;
  /** "± 0.6", empty for a single run. */
  spread: string;
  /** "n = 2" where the table's runs differ. */
  runs: string;
  /** The same in the second unit system. */
  second: string;
  best: boolean;
}

export interface ResultTable {
  id: string;
  caption: string;
  unit: string;
  note: string;
  groups: { name: string; span: number }[];
  columns: { name: string; first: boolean }[];
  rows: { name: string; detail: string; opens: boolean; cells: (Cell | null)[] }[];
}

interface Column {
  part: string;
  phase: string;
  kind: 'value' | 'rise';
}

interface Row {
  parts: KeyParts;
  /** Key by `part/phase`. */
  keys: Map<string, Key>;
}

const parameters: ReadonlySet<string> = new Set(constantPhases);

export function resultTables(facts: Facts): { tables: ResultTable[]; shown: Fact[] } {
  const measures = new Map<string, Row[]>();
  for (const key of facts.keys()) {
    const parts = splitKey(key);
    if (!parts || !isResult(facts, key, parts)) continue;
    const rows = measures.get(parts.measure) ?? [];
    measures.set(parts.measure, rows);
    const same = (r: Row) => r.parts.setup === parts.setup && r.parts.setting === parts.setting && r.parts.workload === parts.workload;
    const row = rows.find(same) ?? { parts, keys: new Map<string, Key>() };
    if (row.keys.size === 0) rows.push(row);
    row.keys.set(`${parts.part}/${parts.phase}`, key);
  }
  const shown: Fact[] = [];
  const tables = [...measures].flatMap(([measure, rows]) => tableOf(facts, measure, rows, shown) ?? []);
  return { tables, shown };
}

function isResult(facts: Facts, key: Key, parts: KeyParts): boolean {
  const counted = facts.readings(key);
  if (counted.length === 0 || parts.measure === 'price') return false;
  if (parts.measure === 'temperature' && roomParts.includes(parts.part)) return false;
  return !(counted.every((r) => r.constant) && parameters.has(parts.phase));
}

function tableOf(facts: Facts, measure: string, all: Row[], shown: Fact[]): ResultTable | undefined {
  const rows = withIdle(facts, all);
  const columns = columnsOf(rows);
  const facts_ = rows.map((row) => columns.map((c) => factOf(facts, row, c)));
  const found = facts_.flat().filter((f) => f !== undefined);
  if (found.length === 0) return undefined;
  shown.push(...found);
  const units = new Set(found.filter((f) => f.kind !== 'rise').map((f) => f.unit.symbol));
  const runs = new Set(found.filter((f) => f.kind === 'mean').map((f) => f.readings.length));
  const oneUnit = units.size === 1 ? found.find((f) => f.kind !== 'rise')!.unit : undefined;
  const best = bestCells(facts, measure, columns, facts_);
  const everywhere = common(facts);
  const fields = rowFields.filter((f) => !everywhere.has(f));
  let setup: string | undefined;
  return {
    id: `results-${slug(measure)}`,
    caption: capital(nameOf(facts.about, 'measure', measure)),
    unit: oneUnit?.symbol ?? '',
    note: noteOf(facts, measure, runs),
    groups: groupsOf(facts, columns),
    columns: columns.map((c, i) => ({ name: c.kind === 'rise' ? 'Rise' : capital(nameOf(facts.about, 'phase', c.phase)) || 'Value', first: i === 0 || columns[i - 1]!.part !== c.part })),
    rows: rows.map((row, r) => {
      const [name = 'All', ...rest] = namesOf(facts, row.parts, fields);
      const opens = row.parts.setup !== setup;
      setup = row.parts.setup;
      return { name, detail: rest.join(', '), opens, cells: facts_[r]!.map((f, c) => (f ? cellOf(f, oneUnit, runs.size > 1, best.has(`${r}/${c}`)) : null)) };
    }),
  };
}

const rowFields = ['setup', 'setting', 'workload'] as const;

/** What there is only one of is said once and not in every row. */
function common(facts: Facts): Map<(typeof rowFields)[number], string> {
  const results = facts.keys().flatMap((key) => {
    const parts = splitKey(key);
    return parts && isResult(facts, key, parts) ? [parts] : [];
  });
  const only = rowFields.map((f) => [f, new Set(results.map((p) => p[f]).filter(Boolean))] as const).filter(([, ids]) => ids.size === 1);
  return new Map(only.map(([f, ids]) => [f, [...ids][0]!]));
}

/** "Open bench, Harbour loop": what holds for every row of every table; empty where nothing does. */
export function commonWords(facts: Facts): string {
  return [...common(facts)].map(([field, id]) => nameOf(facts.about, field, id)).join(', ');
}

/** Idle rows without a workload are shown in the rows of the workloads that they belong to. */
function withIdle(facts: Facts, rows: Row[]): Row[] {
  const used = new Set<Key>();
  for (const row of rows) {
    for (const key of [...row.keys.values()]) {
      const idle = facts.idleOf(key);
      const parts = idle === undefined ? undefined : splitKey(idle);
      if (!parts || idle === undefined) continue;
      row.keys.set(`${parts.part}/${parts.phase}`, idle);
      if (parts.workload !== row.parts.workload) used.add(idle);
    }
  }
  return rows.filter((row) => [...row.keys.values()].some((key) => !used.has(key)) || row.parts.workload !== '');
}

function columnsOf(rows: Row[]): Column[] {
  const parts = new Map<string, string[]>();
  for (const id of rows.flatMap((r) => [...r.keys.keys()])) {
    const [part, phase] = id.split('/') as [string, string];
    const phases = parts.get(part) ?? [];
    parts.set(part, phases);
    if (!phases.includes(phase)) phases.push(phase);
  }
  return [...parts].flatMap(([part, phases]) => {
    const ordered = [...phases.filter(isIdle), ...phases.filter((p) => !isIdle(p))];
    const values = ordered.map((phase): Column => ({ part, phase, kind: 'value' }));
    return ordered.length === 2 && isIdle(ordered[0]!) ? [...values, { part, phase: ordered[1]!, kind: 'rise' as const }] : values;
  });
}

function groupsOf(facts: Facts, columns: Column[]): { name: string; span: number }[] {
  const groups: { part: string; name: string; span: number }[] = [];
  for (const { part } of columns) {
    const last = groups.at(-1);
    if (last?.part === part) last.span++;
    else groups.push({ part, name: part ? capital(nameOf(facts.about, 'part', part)) : 'All', span: 1 });
  }
  return groups;
}

function factOf(facts: Facts, row: Row, column: Column): Fact | undefined {
  const key = row.keys.get(`${column.part}/${column.phase}`);
  if (key === undefined) return undefined;
  const idle = column.kind === 'rise' ? facts.idleOf(key) : undefined;
  const fact = column.kind === 'value' ? facts.value(key) : idle === undefined ? undefined : facts.derive('rise', [key, idle]);
  return isFact(fact) ? fact : undefined;
}

function cellOf(f: Fact, common: Unit | undefined, tellRuns: boolean, best: boolean): Cell {
  const sd = f.spread?.sd;
  return {
    value: common ? showNumber(f.value, f.decimals) : f.shown,
    spread: sd === undefined ? '' : `± ${showNumber(Exact.fromNumber(sd), f.decimals + 1)}`,
    runs: tellRuns && f.kind === 'mean' ? `n = ${f.readings.length}` : '',
    second: f.second?.shown ?? '',
    best,
  };
}

/** The best of a column, where the record says which end is better and no other's runs overlap with it. */
function bestCells(facts: Facts, measure: string, columns: Column[], rows: (Fact | undefined)[][]): Set<string> {
  const better = facts.about.measures.get(measure)?.better ?? 'neither';
  const best = new Set<string>();
  if (better === 'neither') return best;
  columns.forEach((column, c) => {
    if (column.kind === 'rise' || isIdle(column.phase)) return;
    const entries = rows.flatMap((cells, r) => (cells[c] ? [{ r, f: cells[c] }] : []));
    entries.sort((a, b) => (better === 'lower' ? 1 : -1) * a.f.value.compare(b.f.value));
    const [first, second] = entries;
    if (first && second && first.f.unit.id === second.f.unit.id && !overlap(first.f, second.f)) best.add(`${first.r}/${c}`);
  });
  return best;
}

function overlap(a: Fact, b: Fact): boolean {
  if (a.value.equals(b.value)) return true;
  return !!a.spread && !!b.spread && a.spread.min.compare(b.spread.max) <= 0 && b.spread.min.compare(a.spread.max) <= 0;
}

function noteOf(facts: Facts, measure: string, runs: ReadonlySet<number>): string {
  const about = facts.about.measures.get(measure);
  const [n] = runs;
  const means = runs.size === 0 ? [] : runs.size === 1 && n === 1 ? ['single runs'] : [`mean ± standard deviation over runs${runs.size === 1 ? `, n = ${n}` : ''}`];
  return [...means, ...(about && about.better !== 'neither' ? [`${about.better} is better`] : []), ...(about?.definition ? [about.definition] : [])].join('; ');
}

function slug(id: string): string {
  return id.toLowerCase().replace(/[^a-z0-9]+/g, '-');
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
