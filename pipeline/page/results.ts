// The results as tables: one a measure, each cell a mean with its spread.
import { type Fact, type Facts, isFact, isIdle, nameOf, quantityName, bestOf } from '../facts/index.js';
import { Exact, showNumber, type Unit } from '../quantities/index.js';
import { efficiencyTable } from './efficiency.js';
import { type Column, common, type Grid, grids, keyAt, type Row, rowFields } from './grid.js';
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

/** The tables, and the facts that they show. */
export function resultTables(facts: Facts): { tables: ResultTable[]; shown: Fact[] } {
  const shown: Fact[] = [];
  const tables = grids(facts).flatMap((grid) => tableOf(facts, grid, shown) ?? []);
  const efficiency = efficiencyTable(facts);
  return { tables: [...tables, ...(efficiency ? [efficiency.table] : [])], shown: [...shown, ...(efficiency?.shown ?? [])] };
}

/** "Open bench, Harbour loop": what holds for every row of every table; empty where nothing does. */
export function commonWords(facts: Facts): string {
  return [...common(facts)].map(([field, id]) => nameOf(facts.about, field, id)).join(', ');
}

function tableOf(facts: Facts, { measure, rows, columns }: Grid, shown: Fact[]): ResultTable | undefined {
  const cells = rows.map((row) => columns.map((c) => factOf(facts, row, c)));
  const found = cells.flat().filter((f) => f !== undefined);
  if (found.length === 0) return undefined;
  shown.push(...found);
  const units = new Set(found.filter((f) => f.kind !== 'rise').map((f) => f.unit.symbol));
  const unit = units.size === 1 ? found.find((f) => f.kind !== 'rise')!.unit : undefined;
  const runs = new Set(found.filter((f) => f.kind === 'mean').map((f) => f.readings.length));
  const best = bestCells(facts, measure, columns, rows, cells);
  const everywhere = common(facts);
  const fields = rowFields.filter((f) => !everywhere.has(f));
  const grouped = rows.some((r, i) => r.parts.setup === rows[i + 1]?.parts.setup);
  const parts = new Set(columns.map((c) => c.part));
  const places = columns.map((_, c) => spreadPlaces(cells.flatMap((line) => line[c] ?? [])));
  return {
    id: `results-${slug(measure)}`,
    caption: capital(parts.size === 1 ? quantityName(facts.about, measure, columns[0]!.part) : nameOf(facts.about, 'measure', measure)),
    unit: unit?.symbol ?? '',
    note: noteOf(facts, measure, runs, compared(rows)),
    groups: groupsOf(facts, columns, parts.size > 1),
    columns: columns.map((c, i) => ({ name: c.kind === 'rise' ? 'Rise' : capital(nameOf(facts.about, 'phase', c.phase)) || 'Value', first: i === 0 || !sameGroup(c, columns[i - 1]!) })),
    rows: rows.map((row, r) => {
      const [name = 'All', ...rest] = namesOf(facts, row.parts, fields);
      const line = cells[r]!.map((f, c) => (f ? cellOf(f, unit, places[c]!, runs.size > 1, best.has(`${r}/${c}`)) : null));
      return { name, detail: rest.join(', '), opens: grouped && r > 0 && row.parts.setup !== rows[r - 1]!.parts.setup, cells: line };
    }),
  };
}

function sameGroup(a: Column, b: Column): boolean {
  return a.part === b.part && a.setting === b.setting;
}

function groupsOf(facts: Facts, columns: Column[], manyParts: boolean): { name: string; span: number }[] {
  const groups: { column: Column; name: string; span: number }[] = [];
  for (const column of columns) {
    const last = groups.at(-1);
    if (last && sameGroup(last.column, column)) {
      last.span++;
      continue;
    }
    const part = column.part ? nameOf(facts.about, 'part', column.part) : '';
    const setting = column.setting ? nameOf(facts.about, 'setting', column.setting) : '';
    const name = setting ? [setting, ...(manyParts && part ? [part] : [])].join(', ') : part;
    groups.push({ column, name: capital(name) || 'All', span: 1 });
  }
  return groups.map(({ name, span }) => ({ name, span }));
}

function factOf(facts: Facts, row: Row, column: Column): Fact | undefined {
  const key = keyAt(row, column);
  if (key === undefined) return undefined;
  const idle = column.kind === 'rise' ? facts.idleOf(key) : undefined;
  const fact = column.kind === 'value' ? facts.value(key) : idle === undefined ? undefined : facts.derive('rise', [key, idle]);
  return isFact(fact) ? fact : undefined;
}

/**
 * Decimals of the deviations of a column, alike from top to bottom: those of its finest mean and at least one; one more where a
 * deviation would be rounded away.
 */
function spreadPlaces(column: readonly Fact[]): number {
  const places = Math.max(1, ...column.map((f) => f.decimals));
  const lost = column.some((f) => f.spread?.sd && Exact.fromNumber(f.spread.sd).round(places).sign() === 0);
  return lost ? places + 1 : places;
}

function cellOf(f: Fact, common: Unit | undefined, places: number, tellRuns: boolean, best: boolean): Cell {
  const sd = f.spread?.sd;
  return {
    value: common ? showNumber(f.value, f.decimals) : f.shown,
    spread: sd === undefined ? '' : `± ${showNumber(Exact.fromNumber(sd), places)}`,
    runs: tellRuns && f.kind === 'mean' ? `n = ${f.readings.length}` : '',
    second: f.second?.shown ?? '',
    best,
  };
}

/** The best of a column among those that did the same work, where it is not too close to call. */
function bestCells(facts: Facts, measure: string, columns: Column[], rows: Row[], cells: (Fact | undefined)[][]): Set<string> {
  const best = new Set<string>();
  for (const workload of new Set(rows.map((r) => r.parts.workload))) {
    columns.forEach((column, c) => {
      if (column.kind === 'rise' || isIdle(column.phase)) return;
      const entries = cells.flatMap((line, r) => (line[c] && rows[r]!.parts.workload === workload ? [{ r, f: line[c] }] : []));
      const won = bestOf(facts, measure, entries.map((e) => e.f)).fact;
      if (won) best.add(`${entries.find((e) => e.f === won)!.r}/${c}`);
    });
  }
  return best;
}

/** Whether any two rows did the same work: of different work neither is better. */
function compared(rows: readonly Row[]): boolean {
  return rows.length < 2 || new Set(rows.map((r) => r.parts.workload)).size < rows.length;
}

function noteOf(facts: Facts, measure: string, runs: ReadonlySet<number>, comparable: boolean): string {
  const about = facts.about.measures.get(measure);
  const [n] = runs;
  const means = runs.size === 0 ? [] : runs.size === 1 && n === 1 ? ['single runs'] : [`mean ± standard deviation over runs${runs.size === 1 ? `, n = ${n}` : ''}`];
  return [...means, ...(about && comparable && about.better !== 'neither' ? [`${about.better} is better`] : []), ...(about?.definition ? [about.definition] : [])].join('; ');
}

function slug(id: string): string {
  return id.toLowerCase().replace(/[^a-z0-9]+/g, '-');
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
