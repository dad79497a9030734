// "8.3 watts with the heatsink and 7.9 without": the one setting that is called by what it lacks.
import type { Token } from '../script/index.js';
import type { Lexicon, Meaning, Name, Node } from './lexicon.js';

/** What "without" alone can stand for: the setting whose name begins so, where it is one. */
export function lacking(root: Node): Meaning | undefined {
  const found: Meaning[] = [];
  const gather = (node: Node | undefined): void => {
    if (!node) return;
    found.push(...(node.meanings ?? []).filter((m) => m.own));
    for (const next of node.next.values()) gather(next);
  };
  gather(root.next.get('without'));
  const [first] = found;
  return first && first.fields.every((f) => f === 'setting') && found.every((m) => m.slots.length === 1 && m.slots[0]!.slot === first.slots[0]!.slot && m.slots[0]!.value === first.slots[0]!.value) ? first : undefined;
}

const ends = /^(?:|[.,;:!?)]|and|but|while|or|so)$/;

/** The word by itself, at the end of its clause. */
export function withoutAlone(t: readonly Token[], names: readonly Name[], lex: Lexicon): Name[] {
  const meaning = lex.lacking;
  if (!meaning) return [];
  return t.flatMap((w, k) => (w.low === 'without' && k > 0 && ends.test(t[k + 1]?.low ?? '') && !names.some((n) => n.from <= k && k < n.to) ? [{ from: k, to: k + 1, meanings: [meaning] }] : []));
}
