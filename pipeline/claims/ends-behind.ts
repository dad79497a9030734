// "All you get is 2.8 frames: 118.9 against 116.1": how far two figures lie apart that are told right behind it.
import { stretch } from '../script/index.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import type { Cell } from './grid.js';
import { fit } from './decide.js';
import { push, readValue } from './read-value.js';
import { siblingsOf } from './siblings.js';
import { valueOf } from './terms.js';

const opens = /^(?:[:,(–—-] ?|, (?:so|from|with|at) )?$/;
const against = /^(?:\S+ )?(?:against|versus|vs|instead of|rather than|compared (?:with|to)|and not|not|where it was|down from|up from)(?: (?:the|just|only|about))?$/;

/** What lies between two is smaller than either; a figure that is not was one itself. */
const part = 1.5;

export function endsBehind(c: Context, index: number): Candidate[] {
  const { said, low } = c.parsed;
  const [m, a, b] = [said[index]!.mention, said[index + 1]?.mention, said[index + 2]?.mention];
  const out: Candidate[] = [];
  if (m.type !== 'cardinal' || a?.type !== 'cardinal' || b?.type !== 'cardinal' || said[index]!.cue.op === 'share' || said[index + 1]!.named || said[index + 2]!.named) return out;
  const joint = stretch(low, m.to, a.from);
  if (!joint || !opens.test(joint) || !against.test(stretch(low, a.to, b.from))) return out;
  const percent = m.unit?.id === '%';
  if (!percent && m.value.abs().toNumber() * part > Math.min(Math.abs(a.value.toNumber()), Math.abs(b.value.toNumber()))) return out;
  const x = told(c, index + 1);
  const y = x && (told(c, index + 2, x) ?? beside(c, index + 2, x));
  if (!x || !y || x === y || x.unit.id !== y.unit.id || x.at[c.grid.of.measure[0]!] !== y.at[c.grid.of.measure[0]!] || (m.unit && !percent && m.unit.dimension !== x.unit.dimension && !(m.loose && x.unit.dimension.startsWith('temperature')))) return out;
  const kind = percent ? 'percent_change' : 'difference';
  push(out, c, { kind, args: [x.key, y.key] }, kind, 0, x, 'between the two told behind it', { base: y, firm: true, change: sameCellExcept(c.grid, x, y).map((i) => [i, y.at[i]!] as const) });
  return out;
}

/** The reading that a figure gives, where what its words say best, or about as well, is right. */
function told(c: Context, index: number, but?: Cell): Cell | undefined {
  const { mention } = c.parsed.said[index]!;
  const near = readValue(c, index).filter((x) => x.term.kind === 'mean' && x.cost <= 1).sort((p, q) => p.cost - q.cost);
  return near.find((x) => x.subject !== but && fit(mention, x))?.subject;
}

/** The one reading of the same quantity that the figure gives, in another setting or setup. */
function beside(c: Context, index: number, x: Cell): Cell | undefined {
  const { mention } = c.parsed.said[index]!;
  for (const slots of [c.grid.of.setting, c.grid.of.setup, c.grid.of.workload]) {
    const out: Candidate[] = [];
    for (const y of siblingsOf(c.grid, x, slots)) if (y !== x) push(out, c, valueOf(y.key), 'mean', 0, y, '');
    const right = out.filter((y) => fit(mention, y));
    if (right.length === 1) return right[0]!.subject;
  }
  return undefined;
}
