// "at half and at full throttle", "from slow to brisk speed": the noun of one name is that of another beside it; so is "at half",
// where "full throttle" is named elsewhere in the sentence.
import { findNumbers, type Token } from '../script/index.js';
import { type Lexicon, meaningsOf, type Name } from './lexicon.js';
import { atoms } from './name-keys.js';

const leads: ReadonlySet<string> = new Set(['at', 'on', 'in', 'to', 'from', 'under', 'with', 'between', 'than']);
const follows: ReadonlySet<string> = new Set(['', ...'.,;:!?)', ...'and but or to while so it it\'s that that\'s we you they i the is was than against versus'.split(' ')]);
/** A name's own words before the noun. */
const longest = 3;

export function sharedHeads(t: readonly Token[], names: readonly Name[], lex: Lexicon): Name[] {
  const heads = names.filter((n) => n.to - n.from > 1 && n.to - n.from <= longest + 1 && n.meanings.some((x) => x.own && x.fields.every((f) => f === 'setting' || f === 'workload')) && t[n.to - 1]!.kind === 'word');
  const out: Name[] = [];
  if (!heads.length) return out;
  const taken = (list: readonly Name[], from: number, to: number): boolean => list.some((n) => n.from < to && n.to > from);
  for (let k = 0; k < t.length; k++) {
    if (!leads.has(t[k]!.low)) continue;
    const from = t[k + 1]?.low === 'the' ? k + 2 : k + 1;
    if (taken(names, from, from + 1)) continue;
    for (let to = Math.min(t.length, from + longest); to > from; to--) {
      if (!follows.has(t[to]?.low ?? '') || taken(names, from, to) || taken(out, from, to)) continue;
      const found = heads.find((n) => named(t, from, to, n, lex));
      if (!found) continue;
      out.push({ from, to, meanings: named(t, from, to, found, lex)! });
      break;
    }
  }
  return out;
}

/** What the words are called with that noun behind them, where it is another of the same kind. */
function named(t: readonly Token[], from: number, to: number, head: Name, lex: Lexicon): Name['meanings'] | undefined {
  const own = t.slice(from, to);
  // "from thirty to ninety percent": bare numbers are short for such names by rules of their own.
  if (own[0]!.low !== 'half' && atoms(own, findNumbers(own)).every((a) => a.key.startsWith('#'))) return undefined;
  const keys = [...atoms(own, findNumbers(own)), ...atoms([t[head.to - 1]!], [])].map((a) => a.key);
  const meanings = meaningsOf(lex, keys)?.filter((m) => m.own && m.slots.length > 0 && head.meanings.some((x) => x.own && x.slots.some((s) => m.slots.some((o) => o.slot === s.slot && o.value !== s.value))));
  return meanings?.length ? meanings : undefined;
}
