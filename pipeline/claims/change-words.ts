// Words of change that lead to a number, looked for in front of it.
import { changeNouns, changeVerbs, comparatives, phraseAt, type Way, WordClass } from '../script/index.js';

const blockers = new Set(['to', 'at', 'is', 'are', 'was', 'were', 'reads', 'read', 'with', 'as', 'from', 'in', 'on', 'for', ':', ',', ';', 'be', 'shows', 'showed', 'reaches', 'reached', 'hits', 'hit', 'settles', 'settled', 'averages', 'averaged', 'draws', 'drew', 'measured', 'lands', 'sits', 'sat', 'of', 'it\'s', 'that\'s', 'than', 'and', 'but', 'so', 'which']);

/** "breaks the rule by 0.4": what is passed is a mark; without "by", "breaks 90" says where it is. */
export const passingVerbs = /^(?:break|breaks|broke|broken|breach|breaches|breached|bust|busts|busted|violates?|violated|overshoots?|overshot|oversteps?|overstepped|overruns?|overran)$/;

export function lastVerb(low: readonly string[], from: number, to: number): { way: Way; word: string } | undefined {
  for (let i = to - 1; i >= from; i--) {
    // "comes up short by 9": what the last word is part of says which way.
    const p = wholePhrase(low, Math.max(from, i - 2), i) ?? phraseAt(changeVerbs, low, i);
    if (p && i + p.words.length <= to) return { way: p.value, word: p.words.join(' ') };
    if (passingVerbs.test(low[i]!)) return { way: 'up', word: low[i]! };
    const c = comparatives.get(low[i]!);
    if (c) return { way: c.way, word: low[i]! };
    const n = phraseAt(changeNouns, low, i);
    // "cuts its climb by 40": what is cut is the noun, which way the verb says.
    const cuts = n && /^(?:its|the|their|his|her)$/.test(low[i - 1] ?? '') ? phraseAt(changeVerbs, low, i - 2) : undefined;
    if (cuts && cuts.words.length === 1) return { way: cuts.value, word: cuts.words[0]! };
    if (n) return { way: n.value, word: n.words.join(' ') };
  }
  return undefined;
}

/** The phrase of change that starts before a word and takes it in. */
function wholePhrase(low: readonly string[], from: number, at: number): ReturnType<typeof phraseAt<Way>> {
  for (let s = from; s < at; s++) {
    const p = phraseAt(changeVerbs, low, s);
    if (p && s + p.words.length > at + 1) return undefined;
    if (p && s + p.words.length === at + 1) return p;
  }
  return undefined;
}

export function nounEnding(low: readonly string[], from: number, at: number): { way: Way; word: string } | undefined {
  for (let i = Math.max(from, at - 1); i <= at; i++) {
    const n = phraseAt(changeNouns, low, i);
    if (n && i + n.words.length === at + 1) return { way: n.value, word: n.words.join(' ') };
  }
  return undefined;
}

export function nounIn(low: readonly string[], from: number, at: number): { way: Way; word: string } | undefined {
  for (let i = at; i >= from; i--) {
    const n = phraseAt(changeNouns, low, i);
    // A verb of the same form ("the core heats") does not count.
    if (n && /^(?:the|a|an|this|that|its|of|smallest|biggest|largest|total|,|:)$/.test(low[i - 1] ?? 'the')) return { way: n.value, word: n.words.join(' ') };
  }
  return undefined;
}

/** "eats up 61 percent of the allowance", "makes up half of it": with these verbs "up" says that it is used, and not that it grows. */
const usingUp = /^(?:us(?:e|es|ed|ing)|eat(?:s|en|ing)?|ate|tak(?:e|es|en|ing)|took|mak(?:e|es|ing)|made|burn(?:s|ed|t|ing)?|soak(?:s|ed|ing)?|suck(?:s|ed|ing)?|chew(?:s|ed|ing)?|gobbl(?:e|es|ed|ing)|swallow(?:s|ed|ing)?|fill(?:s|ed|ing)?|hog(?:s|ged|ging)?|tie[sd]?|tying|lap(?:s|ped|ping)?|mop(?:s|ped|ping)?)$/;

export const unsure = new Set(['change', 'changes', 'changed', 'move', 'moves', 'moved', 'gets', 'get us', 'cut', 'lead', 'top', 'tops', 'up', 'down', 'worth', 'slow', 'close', 'closes', 'closed', 'lower', 'cool', 'cools', 'heat', 'warm', 'win', 'won', 'led', 'apart', 'leads', 'loss', 'miss', 'ahead', 'behind', 'span', 'spans', 'gone', 'heated', 'warmed', 'cooled', 'lowered', 'raised', 'lowers', 'raise', 'raises']);

/** A verb of change before the number with nothing between that makes the number an end point. */
export function verbBefore(low: readonly string[], from: number, k: number): { way: Way; word: string } | undefined {
  for (let i = k; i >= from && i > k - 7; i--) {
    for (let s = Math.max(from, i - 1); s <= i; s++) {
      const p = phraseAt(changeVerbs, low, s);
      if (!p || s + p.words.length !== i + 1) continue;
      const word = p.words.join(' ');
      // "41.2 here beats 57.9 there": what is beaten, and not by how much.
      if ((unsure.has(word) && i < k - 1) || (i === k && /^(?:beat|top|exceed)/.test(word))) continue;
      // "You gain 2.3 degrees": what people gain is to the good; what a thing gains is more.
      if (/^gain/.test(word) && /^(?:you|we|i|they|who|to|and|also|can|would|could|will)$/.test(low[s - 1] ?? '')) return { way: 'better', word };
      if (word === 'up' && usingUp.test(low[s - 1] ?? '')) continue;
      if (word === 'up' && /^(?:ends?|ended|goes|went)$/.test(low[s - 1] ?? '') && /^ends?|ended$/.test(low[s - 1] ?? '')) continue;
      return { way: p.value, word };
    }
    if (blockers.has(low[i]!)) return undefined;
  }
  return undefined;
}

/** What a thing under test does with power: measured, and neither set nor a change. */
export const drawing = new WordClass(/^(?:draws?|drew|drawing|pulls?|pulled|pulling|sips?|sipped|sucks?|sucked|drinks?|drank|guzzles?|guzzled|burns?|burned|burnt|consumes?|consumed|uses?|used|demands?|demanded|fetch(?:es|ed)?|reads?)$/);
