// A change of which the verb or the noun stands far from its number.
//   "most is saved by the Ashlar, 14 watts"                 whose change it is stands between
//   "the smallest gain is the Ashlar's, 3 megabytes"
//   "it took the biggest step, 90 millivolts, to reach 1.2"   the number is said after the noun, by itself
import { changeNouns, changeVerbs, comparatives, phraseAt, superlatives, type Way } from '../script/index.js';

const link = /^(?:by|is|was|belongs to|belonged to|goes to|went to|comes from|came from|falls to|fell to|of)$/;
/** Nouns that are as often a place or a span as a change. */
const vague = /^(?:heat|lead|edge|range|cut|change)$/;
const steps = /^(?:step|leap|move)$/;

interface Far { way: Way | undefined; because: string; before: true; /** The name between, of whatever it is that changes. */ whose?: { from: number; to: number } }

/** What is said of the number at `at`, and by which word; `named` tells whether a word is part of a name. */
export function farChange(low: readonly string[], at: number, named: (k: number) => boolean): Far | undefined {
  let k = at - 1;
  if (!/^(?:,|:|\(|with|at)$/.test(low[k] ?? '')) return undefined;
  const alone = low[k] === ',';
  if (low[k] === ':') {
    // "It draws less than the Ashlar: 3 watts"
    const clause = low.slice(0, k).findLastIndex((w) => /^[.,;:]$/.test(w)) + 1;
    const than = low.indexOf('than', clause);
    const more = than > clause && than < k ? low.slice(clause, than).findLast((w) => comparatives.has(w)) : undefined;
    if (more) return { way: comparatives.get(more)!.way, because: more, before: true };
  }
  while (k >= 0 && /^(?:,|:|\(|with|at)$/.test(low[k]!)) k--;
  if (alone) {
    const noun = nounAt(low, k);
    // "a bigger step, 90 millivolts": how big it is was said in a word before.
    if (noun && qualified(low, k)) return noun;
  }
  let begin = k;
  while (begin > 0 && named(begin - 1)) begin--;
  if (!named(k) || begin > k) return undefined;
  let j = begin - 1;
  while (j > 0 && /^(?:the|our|my|its)$/.test(low[j]!)) j--;
  const last = low[j] ?? '';
  const words = link.test(last) ? 1 : link.test(`${low[j - 1]} ${last}`) ? 2 : 0;
  if (!words) return undefined;
  const before = j - words;
  const whose = { from: begin, to: k + 1 };
  if (last === 'by') for (let i = before; i > 0; i--) {
    const verb = phraseAt(changeVerbs, low, i);
    if (verb && verb.words.length === 1 && low[i + 1] === 'by' && /^(?:is|was|are|were|gets|got|been|be)$/.test(low[i - 1]!)) return { way: verb.value, because: verb.words[0]!, before: true, whose };
    // "… and the least by the Ashlar, 4": the verb was said before.
    if (i === before && !superlatives.has(low[i]!)) return undefined;
  }
  // "is cooled the most by the lid, 8 degrees", "gained most from it, 5 watts": what does it stands between.
  if (/^(?:most|least)$/.test(low[before] ?? '') && /^(?:by|from)$/.test(last)) for (let i = before - 1; i >= Math.max(0, before - 3); i--) { const verb = phraseAt(changeVerbs, low, i); if (verb && verb.words.length === 1) return { way: verb.value, because: verb.words[0]!, before: true }; }
  // "…; the largest goes to the Ashlar, 6": the noun was said before.
  if (superlatives.has(low[before] ?? '')) for (let i = before - 1; i > 0; i--) { const said = nounAt(low, i); if (said && qualified(low, i)) return { ...said, whose }; }
  const noun = nounAt(low, before);
  return noun && qualified(low, before) ? { ...noun, whose } : undefined;
}

function nounAt(low: readonly string[], k: number): Far | undefined {
  const w = low[k] ?? '';
  if (steps.test(w)) return { way: undefined, because: w, before: true };
  const noun = phraseAt(changeNouns, low, k);
  return noun && noun.words.length === 1 && !vague.test(w) ? { way: noun.value, because: w, before: true } : undefined;
}

function qualified(low: readonly string[], k: number): boolean {
  return superlatives.has(low[k - 1] ?? '') || /^(?:bigger|larger|smaller|greater|higher|lower|longer|shorter|steeper|big|large|small|real|clear|decent|fair|modest|tiny|huge|whole|total)$/.test(low[k - 1] ?? '');
}
