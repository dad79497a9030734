// An alarm says that a number is a slip of what the record gives. A number that is nowhere near it, and is just right for
// something else that the record has of the same thing, is no slip: the words were misread.
//   "The Larch takes 11.3"                   no power of 242 watts told wrong, where its time to switch is 11.3
//   "1.8 times as fast as the other"          no ratio of 0.58
import type { Mention } from '../script/index.js';
import { constantOf, type Cell, type Grid } from './grid.js';
import type { Candidate, Context } from './context.js';
import { siblingsOf } from './siblings.js';
import { fit } from './decide.js';
import { givesJust } from './gives-just.js';
import { factOf } from './doubt.js';
import { inSaidUnit } from '../wording/index.js';
import { nowhereNear } from './nowhere-near.js';
import { contradicts, wayOf } from './said-outright.js';

/** A slip of the tongue or of a digit rarely takes a number further than this; common practice, no published source. */
export const near = { low: 0.6, high: 1.67 } as const;

/** More pairs than this are not tried. */
const most = 20000;

/** What the number is right for, of the same thing; undefined where it is near what the record gives, or right for nothing. */
export function farOff(c: Context, index: number, x: Candidate): string | undefined {
  const m = c.parsed.said[index]!.mention;
  const own = inSaidUnit(x.fact, m);
  // A unit says what kind of thing is meant: then the number is wrong, however far off.
  if (!own || own.sign() === 0 || !x.subject || (m.unit && !['share', 'points', 'ratio'].includes(m.unit.dimension))) return undefined;
  if (digitsSwapped(m, x) || digitOff(m, x)) return undefined;
  const factor = Math.abs(m.value.over(own).toNumber());
  if (factor >= near.low && factor <= near.high) return undefined;
  const same = ofTheSame(c.grid, x.subject);
  if (!x.base) {
    for (const a of same) {
      if (givesJust(c.facts, a, m, x)) return a.key;
    }
    return undefined;
  }
  // A percentage is of the whole, or of what changed.
  const kinds = (x.kind.startsWith('percent_') ? ['percent_change', 'percent_of'] : [x.kind]).map((kind) => ({ kind, off: nowhereNear(c.facts, m, kind, { in: x.fact.unit, of: x.subject!.unit }) }));
  const denied = contradicts(c, index, x);
  let tried = 0;
  for (const a of same) {
    if (a.fixed) continue;
    for (const b of against(c, a)) {
      if (tried++ > most) return undefined;
      if (denied(a, b)) continue;
      if (kinds.some(({ kind, off }) => !off?.(a, b) && compares(c, index, { ...x, kind }, a, b))) return `${a.key} against ${b.key}`;
    }
  }
  return undefined;
}

const bySetup = new WeakMap<Grid, Map<string, Cell[]>>();

/** All readings of the setup that a cell is of. */
function ofTheSame(g: Grid, cell: Cell): readonly Cell[] {
  const nameOf = (a: Cell): string => g.of.setup.map((i) => a.at[i]).join();
  let groups = bySetup.get(g);
  if (!groups) {
    bySetup.set(g, (groups = new Map()));
    for (const a of g.cells) {
      const group = groups.get(nameOf(a));
      if (group) group.push(a);
      else groups.set(nameOf(a), [a]);
    }
  }
  return groups.get(nameOf(cell)) ?? [];
}

/** Digits that have changed places take a number far, and are a slip all the same. */
export function digitsSwapped(m: Mention, x: Candidate): boolean {
  return digitsOf(m.value.toString()) === digitsOf(x.fact.shown);
}

/** "2.4" for 1.4: one digit is one too high or too low. */
export function digitOff(m: Mention, x: Candidate): boolean {
  const [a, b] = [m.value.abs().toString(), x.fact.shown.replace(/[^\d.]/g, '')];
  if (a.length !== b.length || a.length < 3) return false;
  const off = [...a].flatMap((c, k) => (c === b[k] ? [] : [Number(c) - Number(b[k])]));
  return off.length === 1 && Math.abs(off[0]!) === 1;
}

function digitsOf(text: string): string {
  return text.replace(/\D/g, '').split('').sort().join('');
}

/** What it may be compared with: the same of other things, settings, work, phases, and what is set for it. */
export function* against(c: Context, a: Cell): Generator<Cell> {
  const g = c.grid;
  for (const field of ['setup', 'setting', 'workload', 'phase', 'part'] as const) for (const b of siblingsOf(g, a, g.of[field])) if (b !== a) yield b;
  for (const role of ['limit', 'target', 'rated'] as const) { const b = constantOf(g, a, role); if (b) yield b; }
}

function compares(c: Context, index: number, x: Candidate, a: Cell, b: Cell): boolean {
  const m = c.parsed.said[index]!.mention;
  // A share of degrees means nothing.
  if (a.unit.dimension === 'temperature' && x.kind !== 'difference' && x.kind !== 'rise') return false;
  const fact = factOf(c, x, a, b);
  return fact !== undefined && fit(m, { ...x, sign: wayOf(c, index, x, a, b), fact });
}
