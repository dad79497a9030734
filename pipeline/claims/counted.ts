// What a number counts: by the noun after it, or as the size of a set.
import { superlatives, stretch } from '../script/index.js';
import { Exact } from '../quantities/index.js';
import type { Facts } from '../facts/index.js';
import type { Context } from './context.js';
import { type Counted, countedNouns, phraseEnds, plainCount } from './counted-words.js';

export type { Counted } from './counted-words.js';

/** What a number counts, by the noun after it; `sure` where the noun can hardly mean anything else. */
export function countedBy(c: Context, index: number): { what: Counted[]; sure: boolean } | undefined {
  const { mention } = c.parsed.said[index]!;
  const { low, tokens } = c.parsed;
  for (let i = mention.to; i < Math.min(low.length, mention.to + 4); i++) {
    if (tokens[i]!.kind === 'mark' && low[i] !== '-') break;
    if (phraseEnds.has(low[i]!)) break;
    // "the two quietest modes": some of them.
    if (i > mention.to && (superlatives.has(low[i - 1]!) || /^\p{L}{2,}iest$/u.test(low[i - 1]!))) break;
    // "that's three routers inside one volt": as many as are so near.
    if (/^(?:inside|within)$/.test(low[i + 1] ?? '')) break;
    // "Four pumps were bought, two were lent": how they were come by is not on record.
    if (/^(?:was|were|got|been) (?:bought|lent|sent|borrowed|given|paid|loaned|supplied|donated)$/.test(stretch(low, i + 1, i + 3))) break;
    const called = calledSo(c, low[i]!);
    if (called) return { what: [called], sure: i <= mention.to + 1 };
    // "Three kilns, five speeds": what the title speaks of is what was tested, but where the noun is one of what was varied.
    if (c.before.title.includes(singular(low[i]!)) && /s$/.test(low[i]!) && !countedNouns.some(([w, sure, re]) => w !== 'setups' && !sure && re.has(low[i]!))) return { what: ['setups'], sure: i <= mention.to + 2 && (mention.from === 0 || /^(?:the|these|those|all|our|my|of|other|both)$/.test(low[mention.from - 1] ?? '')) };
    // "part 9 repeats all this": what it does, and nothing counted.
    if (/^(?:runs|repeats|passes)$/.test(low[i]!) && /^(?:all|this|that|these|those|them|everything)$/.test(low[i + 1] ?? '')) break;
    // "seven runs of the sixteen broke it": of those that are counted behind, and not how often one was repeated.
    if (/^(?:runs?|passes)$/.test(low[i]!) && /^of (?:the|all|our|my|these|those)$/.test(stretch(low, i + 1, i + 3)) && c.parsed.said[index + 1]?.mention.from === i + 3) break;
    // "the thirty-two goes to …", "of the four goes up": nobody repeats it so often, and "goes" is done by them.
    const often = mention.value.compare(Exact.of(12)) > 0 || (low[i] === 'goes' && low[mention.from - 1] === 'the');
    const found = countedNouns.filter(([w, , re]) => re.has(low[i]!) && !(often && w === 'runs'));
    if (found.length && !found.some(([, sure]) => sure) && !/^(?:the|all|these|those|our|my|of|other)$/.test(low[mention.from - 1] ?? '') && !plainCount.has(low[i]!) && !nameWord(c, low[i]!)) return undefined;
    if (found.length) return { what: found.map(([w]) => w), sure: found.some(([, sure]) => sure) && (i === mention.to || i === mention.to + 1) };
  }
  return undefined;
}

export function singular(noun: string): string {
  return noun.replace(/ies$/, 'y').replace(/s$/, '');
}

/** The noun is how the things tested, or the settings and loads, are called in the record. */
function nameWord(c: Context, noun: string): boolean {
  const stem = noun.replace(/s$/, '');
  const { setups, settings, workloads } = c.facts.about;
  return [setups, settings, workloads].some((map) => [...map.values()].filter((n) => !c.grid.holders.has(n.id)).some((n) => [n.id.replace(/[-_]/g, ' '), n.name, ...n.spoken].some((s) => new RegExp(`\\b${stem}s?\\b`, 'i').test(s))));
}

const nounsOf = new WeakMap<Facts, ReadonlyMap<string, Counted>>();

/** "two enclosures", where the settings are called "the plastic enclosure" and "the alloy enclosure": the noun that all of a kind share, and nothing of another kind has. */
function calledSo(c: Context, noun: string): Counted | undefined {
  if (!noun.endsWith('s')) return undefined;
  let known = nounsOf.get(c.facts);
  if (!known) nounsOf.set(c.facts, (known = sharedNouns(c)));
  return known.get(singular(noun));
}

function sharedNouns(c: Context): ReadonlyMap<string, Counted> {
  const { setups, settings, workloads } = c.facts.about;
  const out = new Map<string, Counted>();
  const kinds = ([['setups', setups], ['settings', settings], ['workloads', workloads]] as const).map(([what, map]) => [what, [...map.values()].filter((n) => !c.grid.holders.has(n.id)).map((n) => new Set(n.spoken.map((s) => singular(s.toLowerCase().split(' ').at(-1)!))))] as const);
  for (const [what, names] of kinds) for (const noun of names[0] ?? []) {
    if (names.length < 2 || !/^\p{L}{3,}$/u.test(noun) || !names.every((n) => n.has(noun)) || kinds.some(([other, list]) => other !== what && list.some((n) => n.has(noun)))) continue;
    out.set(noun, what);
  }
  return out;
}

/** "two of the four", "all six", "the other 6". */
export function setSize(c: Context, index: number): boolean {
  const { mention } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const before = stretch(low, Math.max(0, mention.from - 3), mention.from);
  if (/(?:^| )(?:all|the other|other|all the|all of the|the remaining|remaining)$/.test(before)) return true;
  if (/^(?:(?:and|but|so) )?of (?:the|all|our|my|these|those)$/.test(stretch(low, Math.max(0, mention.from - 3), mention.from).replace(/^.*[,;:] ?/, '')) && low.slice(mention.to, mention.to + 8).includes(',')) return true;
  if (index > 0 && outOf(c, index - 1)) return true;
  const previous = c.parsed.said[index - 1];
  return previous !== undefined && previous.mention.type !== 'fraction' && previous.mention.type !== 'multiplier' && !previous.mention.unit && /(?:of the|of all|of our|of these|of those|of all the)$/.test(before) && mention.from - previous.mention.to <= 4;
}

/** "5 out of 6", "three out of our four": a count, and of how many. */
export function outOf(c: Context, index: number): boolean {
  const [a, b] = [c.parsed.said[index]!.mention, c.parsed.said[index + 1]?.mention];
  if (!b || a.unit || b.unit || a.type !== 'cardinal' || b.type !== 'cardinal' || a.decimals > 0 || b.decimals > 0) return false;
  return /^out of(?: the| all| our| my| these| those| all the)?$/.test(stretch(c.parsed.low, a.to, b.from));
}

/** "Of the six rounds on the hill, the Cobble takes 4 and the Garth 2": how many of those counted at the head of the sentence go to each. */
export function wonOf(c: Context, index: number): boolean {
  const { said, low } = c.parsed;
  const { mention: m } = said[index]!;
  const small = (n: typeof m): boolean => n.type === 'cardinal' && !n.unit && n.decimals <= 0;
  const whole = said.findIndex((s, k) => k < index && small(s.mention) && /^(?:of|out of)(?: (?:the|all|our|my|these|those|all the))?$/.test(stretch(low, Math.max(0, s.mention.from - 3), s.mention.from).replace(/^.*[\]:,] ?/, '')) && !['that', 'which'].includes(low[s.mention.to] ?? ''));
  return whole >= 0 && small(m) && m.value.compare(said[whole]!.mention.value) <= 0 && low.slice(said[whole]!.mention.to, m.from).some((w) => /^(?:takes?|took|wins?|won|gets?|got|claims?|claimed|goes?|went|has|had|loses|lost|leads?|led)$/.test(w));
}
