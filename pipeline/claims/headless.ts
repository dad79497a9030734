// "12 with the old valve and 15 with the new": an adjective alone stands for the thing that it tells from its like.
import type { Token } from '../script/index.js';
import type { Lexicon, Name } from './lexicon.js';

const ends = /^(?:|[.,;:!?)]|and|but|while|or|so)$/;
const leads = /^(?:with|on|in|at|for|than|to|from|under|of|and|against|versus|as)$/;

/** Adjectives without their noun, where two or more things are called by that noun and the sentence has named one of them. */
export function headless(t: readonly Token[], names: readonly Name[], lex: Lexicon): Name[] {
  const out: Name[] = [];
  for (let k = 2; k < t.length; k++) {
    if (t[k]!.kind !== 'word' || t[k - 1]!.low !== 'the' || !leads.test(t[k - 2]!.low) || !ends.test(t[k + 1]?.low ?? '')) continue;
    const meaning = lex.places.get(t[k]!.low);
    if (!meaning || /^(?:first|second|third|last)$|est$/.test(t[k]!.low) || names.some((n) => n.from <= k && k < n.to)) continue;
    if (names.some((n) => n.to < k && n.meanings.some((x) => x.own && x.slots.some((s) => meaning.slots.some((m) => m.slot === s.slot && m.value !== s.value))))) out.push({ from: k, to: k + 1, meanings: [meaning] });
  }
  // "the old and the new valve", "the left or right lamp": the noun of the one is that of the other.
  for (const n of names) {
    if (n.to - n.from !== 2) continue;
    let k = n.from - 1;
    if (t[k]?.low === 'the') k--;
    if (!/^(?:and|or|to|versus|against)$/.test(t[k]?.low ?? '')) continue;
    const meaning = lex.places.get(t[k - 1]?.low ?? '');
    if (meaning && !names.some((o) => o.from <= k - 1 && k - 1 < o.to) && n.meanings.some((x) => x.own && x.slots.some((s) => meaning.slots.some((m) => m.slot === s.slot && m.value !== s.value)))) out.push({ from: k - 1, to: k, meanings: [meaning] });
  }
  return out;
}
