// Proper names that a transcript got slightly wrong: "pelican" for "Pellick". Only long words near one name alone.
import { distance } from '../places/index.js';
import type { Token } from '../script/index.js';
import type { Lexicon, Name } from './lexicon.js';

export function misheard(t: readonly Token[], names: readonly Name[], lex: Lexicon): Name[] {
  const out = [...names];
  for (let i = 0; i < t.length; i++) {
    const w = t[i]!;
    if (w.kind !== 'word' || w.low.length < 6 || common.has(w.low) || names.some((n) => n.from <= i && i < n.to)) continue;
    // A name in its own right stands with a capital inside a sentence or after "the".
    if (!/^\p{Lu}/u.test(w.text) && t[i - 1]?.low !== 'the') continue;
    const near = [...lex.heard].filter(([name]) => name[0] === w.low[0] && distance(name, w.low, 3) <= 2 && Math.abs(name.length - w.low.length) <= 1);
    if (near.length === 1) out.push({ from: i, to: i + 1, meanings: near[0]![1] });
  }
  return out.length === names.length ? out : out.sort((a, b) => a.from - b.from);
}
const common = new Set(['before', 'second', 'number', 'better', 'bottom', 'middle', 'heavier', 'lighter', 'quieter', 'louder', 'bigger', 'smaller', 'faster', 'slower', 'higher', 'lowest', 'highest', 'fastest', 'loudest', 'coolest', 'warmest', 'hottest']);
