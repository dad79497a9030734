// Things that had figures side by side, in the order in which they were told: "The base reads 37.2 and the lid 41.0". Sentences
// that follow go through them again without naming them: "With the fan on it's 34 and 36".
import type { Context } from './context.js';
import type { Cell, Grid } from './grid.js';
import { pairWith } from './read-value.js';
import { firstCell } from './terms.js';

export interface ToldRow {
  slot: number;
  values: readonly string[];
  /** How much each changed was told, and not what it is. */
  changes?: true;
  /** One of the readings that were told. */
  of: string;
  /** How many sentences ago. */
  age: number;
}

/** So many are kept, and for so many sentences. */
const [most, oldest] = [6, 10];

/** The rows at hand after a sentence with these figures, the latest first. */
export function rowsAfter(c: Context): readonly ToldRow[] | undefined {
  const { grid: g } = c;
  const before = c.before.rows;
  const own = rowsOf(c);
  if (!own.length && !before?.length) return before;
  const older = (before ?? []).flatMap((r) => (r.age < oldest && !own.some((o) => alike(g, o, r)) ? [{ ...r, age: r.age + 1 }] : []));
  const out = [...own, ...older].slice(0, most);
  return out.length ? out : undefined;
}

/** The rows that this sentence tells. */
function rowsOf(c: Context): readonly ToldRow[] {
  const { grid: g, done } = c;
  const now: Cell[] = [];
  // "from 41 to 38" are two ends of one thing, and no things side by side.
  for (let k = 0; k < done.length; k++) { const d = done[k]; if (d?.subject && d.term.kind === 'mean' && !d.subject.fixed && !pairWith(c, k)) now.push(d.subject); }
  const inside = rowsIn(g, now);
  // "The lid is at 41. The base is at 37.": over two sentences.
  const then = now.length ? toldBefore(c, now) : none;
  const across = then.length ? rowsIn(g, [...then, ...now]).filter((r) => now.some((x) => x.key === r.last) && !inside.some((o) => o.slot === r.slot && o.values.length === r.values.length)) : none;
  const compared = done.flatMap((d) => (d?.subject && d.base && (d.term.kind === 'difference' || d.term.kind === 'rise') ? [d.subject] : []));
  const changed = rowsIn(g, compared).map((r) => ({ ...r, changes: true as const }));
  return inside.length || across.length || changed.length ? [...inside, ...across, ...changed].map(({ last: _last, ...r }) => r) : none;
}

const none: readonly never[] = [];

/** What the figures of the sentence before were of. */
function toldBefore({ grid: g, before }: Context, now: readonly Cell[]): readonly Cell[] {
  if (before.figureAge > 1) return none;
  const out: Cell[] = [];
  for (const t of before.said) {
    const x = t.kind === 'mean' ? firstCell(g, t) : undefined;
    if (x && !x.fixed && !now.includes(x)) out.unshift(x);
  }
  return out;
}

/** The later row of the same quantity and the same things stands for both. */
function alike(g: Grid, a: ToldRow, b: ToldRow): boolean {
  const measure = g.of.measure[0]!;
  return a.slot === b.slot && a.changes === b.changes && a.values.length === b.values.length && a.values.every((v) => b.values.includes(v)) && g.byKey.get(a.of)?.at[measure] === g.byKey.get(b.of)?.at[measure];
}

function rowsIn(g: Grid, cells: readonly Cell[]): readonly (ToldRow & { last: string })[] {
  if (cells.length < 2) return none;
  const out: (ToldRow & { last: string })[] = [];
  for (let i = 0; i + 1 < cells.length; i++) {
    const slot = turning(g, cells[i]!, cells[i + 1]!);
    if (slot === undefined) continue;
    const values = [cells[i]!.at[slot]!];
    let k = i + 1;
    for (; k < cells.length && turning(g, cells[i]!, cells[k]!) === slot && !values.includes(cells[k]!.at[slot]!); k++) values.push(cells[k]!.at[slot]!);
    out.unshift({ slot, values, of: cells[i]!.key, age: 0, last: cells[k - 1]!.key });
    i = k - 1;
  }
  return out;
}

const turned: ReadonlySet<string> = new Set(['setup', 'setting', 'workload', 'part']);

/** The one slot in which two readings differ, where it is a thing, a setting, a work or a part. */
export function turning(g: Grid, a: Cell, b: Cell): number | undefined {
  let slot = -1;
  for (let i = 0; i < g.slots.length; i++) {
    if (a.at[i] === b.at[i]) continue;
    if (slot >= 0 || !turned.has(g.slots[i]!.field)) return undefined;
    slot = i;
  }
  return slot < 0 ? undefined : slot;
}
