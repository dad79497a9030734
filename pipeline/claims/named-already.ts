// A name that is two things, where what it would be of the one kind was named otherwise before: the other kind is meant.
//   "on slow it is 80 percent of its limit of 200"      where another setting is called "the limit"
//   "with the long wash, the drum under load is 41"      where another work is called "the load"
//   "the lowest wave height is 0.4"                      where the mean one is called just "wave height"
import type { Grid } from './grid.js';
import type { Meaning, Name } from './lexicon.js';
import type { Parsed } from './parse.js';

const marks = /^(?:limit|target|rated)$/;

/** That the name is no setting, no work, or no part, in spite of this meaning. */
export function namedAlready(g: Grid, p: Parsed, n: Name, m: Meaning): boolean {
  if (m.fields.length !== 1) return false;
  const [field] = m.fields;
  if (field === 'part') return n.meanings.some((x) => x !== m && x.fields.includes('measure')) && p.names.some((o) => o.to === n.from && isOther(o, m));
  if (n.to - n.from > 1) return false;
  const kind = field === 'setting' ? g.of.setting : field === 'workload' ? g.of.workload : undefined;
  if (!kind || !(field === 'setting' ? ofSomething(p, n) && n.meanings.some((x) => x !== m && x.role && marks.test(x.role.role)) : p.low[n.from - 1] === 'under' && n.meanings.some((x) => x !== m && (x.role?.role === 'load' || x.fields.includes('phase'))))) return false;
  return p.names.some((o) => o.to <= n.from && isOther(o, m));
}

/** A name of another one of the same kind. */
function isOther(o: Name, m: Meaning): boolean {
  return o.meanings.some((x) => x.own && x.slots.some((s) => m.slots.some((t) => t.slot === s.slot && t.value !== s.value)));
}

/** "its limit", "the Larch's limit", "the limit of 200": a mark, told as somebody's own or with its number. */
function ofSomething(p: Parsed, n: Name): boolean {
  // "its 200 watt limit"
  const number = p.said.find((s) => s.mention.to === n.from)?.mention.from;
  const before = (number ?? n.from) - 1;
  return /^(?:its|their|his|her)$/.test(p.low[before] ?? '') || p.tokens[before]?.possessive === true || (p.low[n.to] === 'of' && p.said.some((s) => s.mention.from === n.to + 1));
}
