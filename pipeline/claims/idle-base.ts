// A change counted from idle: where the words for idle end, and what follows says what it is that changes.
//   "rose 32 kelvin from idle to load with the tall one in the shed"   the tall one in the shed is what rose
//   "rose 32 kelvin from idle with the tall one in the shed"           the same
import type { Mention } from '../script/index.js';
import type { Segment } from './clauses.js';
import type { Name } from './lexicon.js';

const joins = /^(?:with|on|in|at|inside|under|using|for)$/;

/** The end of what is compared with, from the word behind "from" on; undefined where more belongs to it. */
export function endOfIdle(low: readonly string[], from: number, m: Mention, seg: Segment, names: readonly Name[]): number | undefined {
  const idle = names.find((n) => n.from >= from && n.from <= from + 1 && n.meanings.some((x) => x.role && /^(?:idle|start)$/.test(x.role.role)));
  if (!idle) return undefined;
  if (low[idle.to] === 'to') return idle.to;
  const places = (n: Name): boolean => n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting'));
  // "In the shed it is 12 up from idle on the porch": what it is compared with stands elsewhere.
  return joins.test(low[idle.to] ?? '') && !names.some((n) => n.to <= m.from && n.from >= seg.from && places(n)) && names.some((n) => n.from > idle.to && places(n)) ? idle.to : undefined;
}
