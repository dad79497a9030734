// The record's keys laid out by slot, so that a mention finds its readings without looking at all of them.
import type { Dimension, Unit } from '../quantities/index.js';
import { type Facts, type Key, type KeyField, roomParts, splitKey } from '../facts/index.js';
import { type Crossing, crossing } from './crossing.js';
import { constantRoles, type Role, roleOf } from './roles.js';
import { setElsewhere } from './set-elsewhere.js';

/** One axis of a key. A field whose ids are a full cross of two words each ("mains-desk", "battery-stand") is two slots. */
export interface Slot {
  name: string;
  field: KeyField;
  /** Which word of the id, or undefined for the whole id. */
  axis?: 0 | 1;
  /** Both words of each id. */
  halves?: Crossing;
}

export interface Cell {
  key: Key;
  /** Slot values in the order of `Grid.slots`. */
  at: readonly string[];
  unit: Unit;
  constant: boolean;
  role: Role;
  /** Set or promised, not measured: a limit, a target, a rating. */
  fixed: boolean;
  /** Order in the record. */
  index: number;
}

export interface Grid {
  slots: readonly Slot[];
  /** Positions of the slots by name of field. */
  of: Readonly<Record<KeyField, readonly number[]>>;
  cells: readonly Cell[];
  byKey: ReadonlyMap<Key, Cell>;
  /** All values of a slot in the order of the record, with how many cells have each. */
  values: readonly ReadonlyMap<string, number>[];
  /** Cells by measure, then part. */
  byMeasure: ReadonlyMap<string, readonly Cell[]>;
  holders: ReadonlySet<string>;
  /** Setups and settings that were measured a second time to see whether anything had moved: no further things tested. */
  repeats: ReadonlySet<string>;
  dimensions: ReadonlySet<Dimension>;
  /** Dimensions in which each measure is given. */
  measureUnits: ReadonlyMap<string, ReadonlySet<Dimension>>;
  /** By measure: the values that each slot has with it. */
  valuesWith: ReadonlyMap<string, readonly ReadonlySet<string>[]>;
  /** By measure: smallest and largest value, and the most decimals given. */
  scale: ReadonlyMap<string, { low: number; high: number; decimals: number }>;
  /** Measures that have nothing but constants. */
  onlyConstant: ReadonlySet<string>;
  /** The role of each phase. */
  roles: ReadonlyMap<string, Role>;
  /** Slots in the order in which the tree decides them. */
  order: readonly number[];
  tree: Branch;
}

/** Cells by slot value, in the order in which slots are decided. */
export interface Branch {
  next: Map<string, Branch>;
  cell?: Cell;
}

/** The dimension, with multiples (a contrast of 1350 to 1) told from percentages. */
export function kindOf(u: Unit): Dimension {
  return u.id === 'x' ? 'count' : u.dimension;
}

const fields: readonly KeyField[] = ['setup', 'setting', 'workload', 'measure', 'part', 'phase'];
/** Measure first: a unit nearly always tells it. */
export const decisionOrder: readonly KeyField[] = ['measure', 'part', 'phase', 'setup', 'setting', 'workload'];

export function grid(facts: Facts): Grid {
  const keys = facts.keys().filter((k) => facts.readings(k).length > 0);
  const parts = keys.map((k) => splitKey(k)!);
  const slots: Slot[] = [];
  for (const field of fields) {
    const ids = new Set(parts.map((p) => p[field]).filter(Boolean));
    const axes = field === 'setup' || field === 'setting' ? crossing([...ids]) : undefined;
    if (axes) for (const axis of [0, 1] as const) slots.push({ name: `${field}.${axis}`, field, axis, halves: axes });
    else slots.push({ name: field, field });
  }
  const of = Object.fromEntries(fields.map((f) => [f, slots.flatMap((s, i) => (s.field === f ? [i] : []))])) as unknown as Grid['of'];
  const values = slots.map(() => new Map<string, number>());
  const cells: Cell[] = [];
  const byMeasure = new Map<string, Cell[]>();
  const order = decisionOrder.flatMap((f) => of[f]);
  const tree: Branch = { next: new Map() };
  keys.forEach((key, index) => {
    const p = parts[index]!;
    const at = slots.map((s) => (s.axis === undefined ? p[s.field] : s.halves!.get(p[s.field])?.[s.axis] ?? ''));
    const readings = facts.readings(key);
    const cell: Cell = { key, at, unit: readings[0]!.quantity.unit, constant: readings.every((r) => r.constant), role: roleOf(p.phase), fixed: constantRoles.includes(roleOf(p.phase)), index };
    cells.push(cell);
    at.forEach((v, i) => { if (v) values[i]!.set(v, (values[i]!.get(v) ?? 0) + 1); });
    const list = byMeasure.get(p.measure);
    if (list) list.push(cell);
    else byMeasure.set(p.measure, [cell]);
    let branch = tree;
    for (const i of order) {
      let child = branch.next.get(at[i]!);
      if (!child) branch.next.set(at[i]!, (child = { next: new Map() }));
      branch = child;
    }
    branch.cell = cell;
  });
  const measureUnits = new Map<string, Set<Dimension>>();
  for (const [m, list] of byMeasure) measureUnits.set(m, new Set(list.map((c) => kindOf(c.unit))));
  const valuesWith = new Map([...byMeasure].map(([m, list]) => [m, slots.map((_, i) => new Set(list.map((c) => c.at[i]!)))]));
  const scale = new Map([...byMeasure].map(([m, list]) => {
    const all = list.flatMap((c) => facts.readings(c.key).map((r) => ({ v: Math.abs(r.quantity.value.toNumber()), d: r.quantity.decimals })));
    return [m, { low: Math.min(...all.map((x) => x.v)), high: Math.max(...all.map((x) => x.v)), decimals: Math.max(...all.map((x) => x.d)) }];
  }));
  const onlyConstant = new Set([...byMeasure].filter(([, list]) => list.every((c) => c.fixed)).map(([m]) => m));
  return {
    slots, of, cells, values, byMeasure, tree, order, dimensions: new Set(cells.map((c) => kindOf(c.unit))), measureUnits, onlyConstant, valuesWith, scale,
    roles: new Map([...values[of.phase[0]!]!.keys()].map((v) => [v, roleOf(v)])), holders: new Set(facts.holders()), repeats: repeatsOf([...of.setup, ...of.setting].flatMap((i) => [...values[i]!.keys()])),
    byKey: new Map(cells.map((c) => [c.key, c])),
  };
}

const again = /-(?:again|repeat|repeated|retest|recheck|check|control|second-time)$/;

function repeatsOf(ids: readonly string[]): ReadonlySet<string> {
  return new Set(ids.filter((id) => again.test(id) && ids.includes(id.replace(again, ''))));
}

/** Cells of things tested, repeats of one left out. */
export function firstTime(g: Grid, cells: readonly Cell[]): Cell[] {
  return g.repeats.size === 0 ? [...cells] : cells.filter((x) => !x.at.some((v) => g.repeats.has(v)));
}

/** The cell that differs from `cell` in the given slots only; for a change to or from idle or a constant the fields that such cells lack are left open. */
export function moved(g: Grid, cell: Cell, change: ReadonlyMap<number, string>): Cell | undefined {
  if (change.size === 1) for (const [i, v] of change) return movedTo(g, cell, i, v);
  return movedBy(g, cell, change);
}

const steps = new WeakMap<Cell, Map<string, Cell | undefined>[]>();

/** The same for one slot, kept for each cell. */
export function movedTo(g: Grid, cell: Cell, slot: number, value: string): Cell | undefined {
  let bySlot = steps.get(cell);
  if (!bySlot) steps.set(cell, (bySlot = g.slots.map(() => new Map<string, Cell | undefined>())));
  const known = bySlot[slot]!;
  const found = known.get(value);
  if (found || known.has(value)) return found;
  const other = movedBy(g, cell, new Map([[slot, value]]));
  known.set(value, other);
  return other;
}

function cellAt(g: Grid, at: readonly string[]): Cell | undefined {
  let branch: Branch | undefined = g.tree;
  for (let k = 0; k < g.order.length && branch; k++) branch = branch.next.get(at[g.order[k]!]!);
  return branch?.cell;
}

function movedBy(g: Grid, cell: Cell, change: ReadonlyMap<number, string>): Cell | undefined {
  const at = [...cell.at];
  for (const [i, v] of change) at[i] = v;
  const exact = cellAt(g, at);
  if (exact) return exact;
  let known = loose.get(g);
  if (!known) loose.set(g, (known = new Map()));
  const id = `${at.join('\u0000')}\u0001${[...change.keys()].join()}`;
  if (!known.has(id)) known.set(id, loosened(g, at, change));
  return known.get(id);
}

const loose = new WeakMap<Grid, Map<string, Cell | undefined>>();

function loosened(g: Grid, at: readonly string[], change: ReadonlyMap<number, string>): Cell | undefined {
  const measure = at[g.of.measure[0]!]!;
  let best: Cell | undefined;
  let least = 3;
  for (const c of g.byMeasure.get(measure) ?? []) {
    let open = 0;
    for (let i = 0; i < at.length && open < least; i++) {
      if (c.at[i] === at[i]) continue;
      const field = g.slots[i]!.field;
      // A setup change that crosses axes may lack a workload; an idle reading has none.
      if (!change.has(i) && (c.at[i] === '' || at[i] === '') && (field === 'workload' || field === 'setting' || (c.fixed && field === 'setup'))) open++;
      else if (!change.has(i) && c.fixed && field === 'setup' && g.holders.has(c.at[i]!)) open++;
      else open = 99;
    }
    if (open < least) { least = open; best = c; }
  }
  return best ?? onlyOne(g, at, change);
}

/** "Tuned, the new one draws less than the old one", which was run in one setting: that is meant. */
function onlyOne(g: Grid, at: readonly string[], change: ReadonlyMap<number, string>): Cell | undefined {
  if (!g.of.setup.some((i) => change.has(i)) || g.of.setting.some((i) => change.has(i))) return undefined;
  const like = (g.byMeasure.get(at[g.of.measure[0]!]!) ?? []).filter((c) => !c.fixed && c.at.every((v, i) => v === at[i] || g.of.setting.includes(i)));
  const settings = new Set((g.byMeasure.get(at[g.of.measure[0]!]!) ?? []).filter((c) => g.of.setup.every((i) => c.at[i] === at[i])).map((c) => g.of.setting.map((i) => c.at[i]).join()));
  return like.length === 1 && settings.size === 1 ? like[0] : undefined;
}

const constants = new WeakMap<Cell, Map<Role, Cell | undefined>>();

/** The constant of a role that holds for a cell: same measure and part, the most specific first. */
export function constantOf(g: Grid, cell: Cell, role: Role): Cell | undefined {
  let known = constants.get(cell);
  if (!known) constants.set(cell, (known = new Map()));
  if (!known.has(role)) known.set(role, findConstant(g, cell, role));
  return known.get(role);
}

const byRole = new WeakMap<Grid, Map<string, Map<Role, readonly Cell[]>>>();

/** The readings of a measure that play a role, in the order of the record. */
function ofRole(g: Grid, measure: string, role: Role): readonly Cell[] {
  let measures = byRole.get(g);
  if (!measures) byRole.set(g, (measures = new Map()));
  let roles = measures.get(measure);
  if (!roles) measures.set(measure, (roles = new Map()));
  let found = roles.get(role);
  if (!found) roles.set(role, (found = (g.byMeasure.get(measure) ?? []).filter((c) => c.role === role)));
  return found;
}

function findConstant(g: Grid, cell: Cell, role: Role): Cell | undefined {
  let best: Cell | undefined;
  let most = -1;
  for (const c of ofRole(g, cell.at[g.of.measure[0]!]!, role)) {
    let fits = 0;
    for (let i = 0; i < c.at.length; i++) {
      const field = g.slots[i]!.field;
      if (field === 'phase') continue;
      if (c.at[i] === cell.at[i]) fits += c.at[i] ? 2 : 1;
      else if (c.at[i] === '' || (field === 'setup' && (g.holders.has(c.at[i]!))) || cell.at[i] === '') continue;
      // "the port gives 7.5 watts", where nothing was measured of a port: it holds for what is measured instead.
      else if (field === 'part') { fits -= 1; if (role !== 'rated' && (roomParts.includes(c.at[i]!) || measuredPart(g, c, i))) fits = -99; }
      else fits = -99;
    }
    if (fits > most) { most = fits; best = c; }
  }
  return best ?? setElsewhere(g, cell, ofRole(g, cell.at[g.of.measure[0]!]!, role));
}

/** Whether anything was measured of the part that a mark was set for. */
function measuredPart(g: Grid, mark: Cell, slot: number): boolean {
  return g.byMeasure.get(mark.at[g.of.measure[0]!]!)!.some((x) => !x.fixed && x.at[slot] === mark.at[slot]);
}

export { constantRoles };
