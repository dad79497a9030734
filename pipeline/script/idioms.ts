// Numbers that state nothing measured: chapter numbers, dates, prices, resolutions, idioms. One rule a line, with its reason.
import { lowAt, startsNumber } from './around.js';
import type { NumberSpan } from './numbers.js';
import { isSlope } from './slopes.js';
import type { Token } from './tokens.js';
import type { UnitSpan } from './unit-words.js';

/** Nouns that a number follows as its label: "part 14", "run two", "camera 2". */
const labelled = new Set('part chapter episode section step number no nr camera cam slide figure fig table test round take volume version session day week page level track scene option method stage phase act item point batch build revision rev mark mk type class grade gen generation pin socket slot port channel bay unit sample series season video bench'.split(' '));
const months = new Set('january february march april may june july august september october november december jan feb mar apr jun jul aug sep sept oct nov dec'.split(' '));
const idioms = new Set([
  'first of all', 'at first', 'first off', 'first things first', 'first time', 'first thing', 'in the first place', 'for the first', 'second thought', 'second thoughts', 'second nature', 'second hand', 'seconds later', 'third party', 'one thing', 'one more thing', 'one of those', 'one or two', 'one by one', 'number one', 'zero sum', 'zero chance', 'in one go', 'half the battle', 'half the fun', 'half the story', 'half asleep', 'half way', 'halfway', 'better half', 'think twice', 'look twice', 'once or twice', 'twice about', 'double check', 'double checked', 'double edged', 'double click', 'two cents', 'one way or another', 'one day', 'one another', 'no one', 'four letter', 'on all fours', 'at sixes', 'nine to five', 'ten out of ten', 'hundred percent sure', 'hundred percent certain', 'hundred percent agree', '100 percent sure', '110 percent sure', 'give 110 percent', 'gives 110 percent', 'gave 110 percent', 'giving 110 percent', 'a thousand words', 'a thousand times', 'a million times', 'two things', 'three things', 'in two minds', 'one last', 'one final', 'one question', 'two questions', 'one word', 'two words', 'back to square one', 'first and foremost', 'first glance', 'first look', 'first impression', 'split second', 'just a second', 'give it a second', 'wait a second', 'in a second', 'one second', 'one minute', 'a couple', 'last but not least', 'half hour', 'half a dozen', 'half decent', 'half of you', 'half of us', 'quarter turn', 'second opinion', 'second guess', 'two sides', 'both sides', 'second to none', 'third time lucky',
]);
const openings = new Set([...idioms].map((p) => p.split(' ')[0]!));
const offers = /^(?:code|discount|voucher|coupon|rebate|cashback)$/;
/** Things whose size is said behind them: "a charger of 30 watts", "a tank of two litres". */
const sized = /^(?:charger|supply|adapter|adaptor|plug|heater|bulb|lamp|kettle|transformer|inverter|generator|tank|bottle|jug|bucket|screen|display|cable|hose|tube|motor)$/;
const longest = 4;

/** Why the number is no claim, or undefined. */
export function idle(t: readonly Token[], n: NumberSpan, unit: UnitSpan | undefined): string | undefined {
  const before = t[n.from - 1];
  const after = t[unit ? unit.to : n.to];
  const next = t[n.to];
  if (before && labelled.has(before.low.replace(/s$/, '')) && before.kind === 'word' && n.type !== 'multiplier' && n.type !== 'ordinal' && n.decimals === 0 && !unit && !/^(?:the|a)$/.test(before.low) && !(next?.low === 'of' && /^(?:the|a|my|our)$/.test(t[n.from - 2]?.low ?? '')) && !(before.low === 'takes' && /^\p{L}/u.test(t[n.from - 2]?.low ?? '') && !/^(?:the|our|my|in|of|all|both|between)$/.test(t[n.from - 2]!.low))) return 'a label';
  if (before && /^(?:and|,|or|to)$/.test(before.low) && !unit && n.decimals === 0 && t[n.from - 2]?.kind === 'number' && labelled.has((t[n.from - 3]?.low ?? '').replace(/s$/, '')) && /s$/.test(t[n.from - 3]!.low)) return 'a label';
  if (before && /^[#№]$/.test(before.low)) return 'a label';
  if (unit && before?.low === 'of' && sized.test(t[n.from - 2]?.low ?? '')) return 'the size of a thing';
  // "Not one of the three gets there", "not a single one of them": none does.
  if (!unit && n.to - n.from === 1 && t[n.from]!.low === 'one' && next?.low === 'of' && /(?:^| )not(?: a single| even| a)?$/.test(lowAt(t, n.from - 3, 3).trim())) return 'none of them';
  // "a gap of 3.3 decibels, and then one of 3.5": that which was named.
  if (!unit && n.to - n.from === 1 && t[n.from]!.low === 'one' && next?.low === 'of' && t[n.to + 1]?.kind === 'number' && (/\d\.\d/.test(t[n.to + 1]!.text) || Number(t[n.to + 1]!.text) > 20)) return 'it stands for a noun';
  // "an ashtray, 140 wide and 30 deep": in whatever the trade measures it by.
  if (!unit && /^(?:long|thick|wide|deep|tall|across)$/.test(next?.low ?? '') && (!t[n.to + 1] || t[n.to + 1]!.kind === 'mark' || /^(?:and|by|but|with)$/.test(t[n.to + 1]!.low)) && before?.low !== 'by') return 'the size of a thing';
  if (months.has(before?.low ?? '') && before!.low !== 'may' && n.value.toNumber() < 2200) return 'a date';
  if (!unit && next && months.has(next.low) && (next.low !== 'may' || /^M/.test(next.text))) return 'a date';
  if (!unit && next?.low === 'of' && months.has(t[n.to + 1]?.low ?? '')) return 'a date';
  if (n.type === 'ordinal' && n.form === 'digits' && (before?.low === 'the' || before?.low === 'on') && (!after || after.kind === 'mark')) return 'a date';
  if (n.form === 'digits' && !unit && n.decimals === 0 && /^(?:19|20)\d\d$/.test(t[n.from]!.text) && /^(?:in|since|from|of|by|until|before|after|early|late|mid)$/.test(before?.low ?? '')) return 'a year';
  if (/^[$€£]$/.test(before?.low ?? '')) return 'a price';
  // "misses the 20 by 1.4": a mark, and how far it is passed.
  const passed = (k: number): boolean => t[k - 1]?.low === 'the' && /^(?:bust|busts|break|breaks|broke|miss|misses|missed|beat|beats|pass|passes|passed|exceed|exceeds|over|past|above|below|under|clear|clears|undercut|undercuts|top|tops)$/.test(t[k - 2]?.low ?? '');
  if (by(t, n.to) && startsNumber(t, n.to + 1) && !unit && !/\d[.,]\d/.test(t[n.to + 1]!.text) && !(t[n.to]!.low === 'by' && /^(?:of|all) /.test(lowAt(t, n.from - 2, 2)) && before?.low === 'the')) return passed(n.from) ? undefined : 'a resolution or a size';
  if (before?.low === 'by' && passed(n.from - 2)) return undefined;
  if (before && (before.low === 'by' || before.low === 'x' || before.low === '×') && startsNumber(t, n.from - 2, true) && !isPercent(unit) && n.decimals <= 0 && !(before.low === 'by' && /^(?:the|all)$/.test(t[n.from - 3]?.low ?? ''))) return 'a resolution or a size';
  if (next?.tight && /^(?:p|i)$/.test(next.text) && n.form === 'digits' && n.value.toNumber() >= 240) return 'a resolution';
  if (after && /^(?:pixels?|px)$/.test(after.low)) return 'a resolution';
  if (next?.low === ':' && next.tight && t[n.to + 1]?.kind === 'number' && t[n.to + 1]!.tight) return 'a time or a ratio';
  if (before?.low === ':' && before.tight && t[n.from - 2]?.kind === 'number') return 'a time or a ratio';
  if (next?.low === '/' && next.tight && t[n.to + 1]?.kind === 'number' && n.type !== 'fraction') return 'an idiom';
  if (before?.low === '/' && before.tight && t[n.from - 2]?.kind === 'number') return 'an idiom';
  if (isPercent(unit) && t[unit!.to]?.low === 'load') return 'a load';
  // "15 percent off with the code in the description": what a shop lets one have.
  if (isPercent(unit) && (offers.test(t[unit!.to]?.low ?? '') || (t[unit!.to]?.low === 'off' && t.some((w) => offers.test(w.low) || /^(?:order|checkout|coupons?|code)$/.test(w.low))))) return 'an offer';
  if (!unit && /^(?:to|and|or|,)$/.test(next?.low ?? '')) {
    // "from twenty to fifty percent load"
    const rest = t.slice(n.to + 1, n.to + 6).map((w) => w.low);
    const percent = rest.findIndex((w) => w === 'percent' || w === '%');
    if (percent > 0 && rest[percent + 1] === 'load') return 'a load';
  }
  if (/^(?:take|minus)$/.test(before?.low ?? '') && t[n.from - 2]?.low === 'or' && /^(?:give|plus)$/.test(t[n.from - 3]?.low ?? '')) return 'a tolerance';
  if (before?.low === '±') return 'a tolerance';
  if (isSlope(t, n, unit)) return 'a slope';
  if (doneFirst(t, n)) return 'what was done first';
  if (isIdiom(t, n)) return 'an idiom';
  return undefined;
}

/** "Let's talk about noise first", "I ran them all at full speed first": what is done before the rest, and no place. */
function doneFirst(t: readonly Token[], n: NumberSpan): boolean {
  if (t[n.from]!.low !== 'first' || n.to - n.from > 1 || (t[n.to] && t[n.to]!.kind !== 'mark')) return false;
  const clause = t.slice(t.findLastIndex((w, k) => k < n.from && w.kind === 'mark') + 1, n.from).map((w) => w.low);
  return clause.some((w) => /^(?:let's|let|i|we|you|i'll|we'll|i've|we've|i'd|we'd)$/.test(w)) && !clause.some((w) => /^(?:is|are|was|were|be|been|it's|comes?|came|coming|finish(?:es|ed)?|ranks?|ranked|places?|placed|puts?|put|takes?|took|ends?|ended|lands?|landed|stays?|stayed|in|the|its?)$/.test(w));
}

function by(t: readonly Token[], i: number): boolean {
  return /^(?:by|x|×)$/.test(t[i]?.low ?? '');
}

function isPercent(u: UnitSpan | undefined): boolean {
  return u?.unit.id === '%' || u?.unit.id === 'points';
}

function isIdiom(t: readonly Token[], n: NumberSpan): boolean {
  for (let from = Math.max(0, n.from - longest + 1); from <= n.from; from++) {
    const first = t[from]!.low === '-' ? t[from + 1] : t[from];
    if (!first || (first.low !== '-' && !openings.has(first.low))) continue;
    let phrase = '';
    for (let i = from; i < Math.min(t.length, from + longest + 1); i++) {
      phrase += (phrase ? ' ' : '') + (t[i]!.low === '-' ? '' : t[i]!.low);
      if (i >= n.from && idioms.has(phrase.replace(/ {2,}/g, ' '))) return true;
    }
  }
  return false;
}
