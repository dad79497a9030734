// Finds numbers in a row of tokens: digits, words, mixtures, fractions, ordinals, multipliers.
import { Exact } from '../quantities/index.js';
import { halvers, multipliers, ones, ordinals, parts, scales, teens, tens } from './numerals.js';
import type { Token } from './tokens.js';

export interface NumberSpan {
  /** Token indices, the end exclusive. */
  from: number;
  to: number;
  value: Exact;
  /** Decimals said; a number said to the half or quarter carries its step in `step`. */
  decimals: number;
  /** The step of the last place said, where it is not a power of ten by `decimals`: 1/2 for "and a half", 100 for "eighteen hundred". */
  step?: Exact;
  form: 'digits' | 'words';
  type: 'cardinal' | 'ordinal' | 'fraction' | 'multiplier';
}

const whole = (n: number): Exact => Exact.of(n);

/** Examples: "2,480", "two thousand four hundred and eighty", "point eight five", "twenty-four eighty", "2 and a quarter", "two thirds", "twice". */
export function findNumbers(t: readonly Token[]): NumberSpan[] {
  const out: NumberSpan[] = [];
  for (let i = 0; i < t.length;) {
    const span = numberAt(t, i);
    if (span) out.push(span);
    i = span ? span.to : i + 1;
  }
  return out;
}

/** Words that a number can begin with; those in "-ieth" besides. */
const starters = new Set(['minus', 'negative', 'half', 'a', 'an', 'point', 'dozen', ...[multipliers, parts, tens, teens, ones, ordinals].flatMap((m) => [...m.keys()]), ...halvers]);

function numberAt(t: readonly Token[], i: number): NumberSpan | undefined {
  const at = t[i]!;
  if (at.kind === 'number') return digitsAt(t, i);
  if (at.kind === 'mark') {
    const next = t[i + 1];
    const before = t[i - 1];
    if (/[-−–]/.test(at.low) && next?.kind === 'number' && next.tight && !(at.tight && before)) return negative(digitsAt(t, i + 1), i);
    return undefined;
  }
  if (at.kind !== 'word') return undefined;
  const w = at.low;
  if (!starters.has(w) && !w.endsWith('ieth')) return undefined;
  if (w === 'minus' || w === 'negative') return negative(t[i + 1] ? numberAt(t, i + 1) : undefined, i);
  if (multipliers.has(w)) return { from: i, to: i + 1, value: whole(multipliers.get(w)!), decimals: 0, form: 'words', type: 'multiplier' };
  if (halvers.has(w) && !(t[i - 1] && smallAt(t, i - 1))) return { from: i, to: i + 1, value: Exact.of(1, 2), decimals: 0, form: 'words', type: 'multiplier' };
  return fractionAt(t, i) ?? (tens.has(w) ? ordinalAt(t, i) : undefined) ?? wordsAt(t, i) ?? ordinalAt(t, i);
}

function negative(span: NumberSpan | undefined, from: number): NumberSpan | undefined {
  return span && span.type === 'cardinal' ? { ...span, from, value: span.value.negated() } : undefined;
}

function digitsAt(t: readonly Token[], i: number): NumberSpan | undefined {
  const at = t[i]!;
  let value = Exact.parse(at.text.replace(/,/g, ''))!;
  let decimals = /\.(\d+)/.exec(at.text)?.[1]?.length ?? 0;
  let to = i + 1;
  const next = t[to];
  if (next?.tight && next.kind === 'word' && /^(?:st|nd|rd|th)$/.test(next.low)) return { from: i, to: to + 1, value, decimals: 0, form: 'digits', type: 'ordinal' };
  if (next?.tight && next.kind === 'word' && /^k$/.test(next.text)) return { from: i, to: to + 1, value: value.times(whole(1000)), decimals: decimals - 3, form: 'digits', type: 'cardinal' };
  if (next?.low === 'point' && t[to + 1] && (t[to + 1]!.kind === 'number' || digitWord(t[to + 1]!))) {
    const tail = decimalsAt(t, to + 1);
    if (tail) { value = value.plus(tail.value); decimals = tail.decimals; to = tail.to; }
  }
  if (next && next.kind === 'word' && (scales.has(next.low) || next.low === 'hundred')) {
    const scale = scales.get(next.low) ?? 100;
    return { from: i, to: to + 1, value: value.times(whole(scale)), decimals: decimals - Math.round(Math.log10(scale)), form: 'digits', type: 'cardinal' };
  }
  // 1/2, 3/4
  if (next?.low === '/' && next.tight && t[to + 1]?.kind === 'number' && t[to + 1]!.tight && !at.text.includes('.') && /^[2-9]$|^1[06]$/.test(t[to + 1]!.text)) {
    return { from: i, to: to + 2, value: value.over(Exact.parse(t[to + 1]!.text)!), decimals: 0, form: 'digits', type: 'fraction' };
  }
  const denominator = fractionWord(t, to);
  if (denominator && decimals === 0) return { from: i, to: denominator.to, value: value.over(whole(denominator.of)), decimals: 0, form: 'digits', type: 'fraction', ...tenths(denominator.of) };
  return mixed(t, { from: i, to, value, decimals, form: 'digits', type: 'cardinal' });
}

/** "two thirds", "three-quarters": the denominator after a number. */
function fractionWord(t: readonly Token[], i: number): { of: number; to: number } | undefined {
  const j = t[i]?.low === '-' ? i + 1 : i;
  const w = t[j];
  if (!w || w.kind !== 'word' || !parts.has(w.low) || w.low === 'half') return undefined;
  const plural = w.low.endsWith('s');
  return plural ? { of: parts.get(w.low)!, to: j + 1 } : undefined;
}

function tenths(of: number): { step?: Exact; decimals?: number } {
  return of === 10 ? { decimals: 1 } : {};
}

/** "half", "a third", "one quarter of", "three quarters". */
function fractionAt(t: readonly Token[], i: number): NumberSpan | undefined {
  const w = t[i]!.low;
  const make = (to: number, n: number, of: number): NumberSpan => ({ from: i, to, value: Exact.of(n, of), decimals: 0, form: 'words', type: 'fraction', ...(of === 2 ? { step: Exact.of(1, 2) } : tenths(of)) });
  if (w === 'half') return make(i + 1, 1, 2);
  if (w === 'quarter' && t[i + 1]?.low === 'of') return make(i + 1, 1, 4);
  const article = w === 'a' || w === 'an' || w === 'one';
  const next = t[i + 1]?.low === '-' ? t[i + 2] : t[i + 1];
  const after = t[i + 1]?.low === '-' ? i + 3 : i + 2;
  if (article && next?.kind === 'word' && parts.has(next.low) && !next.low.endsWith('s')) {
    const of = parts.get(next.low)!;
    // "a second radiator" is an ordinal; "a third" may be one too, when a noun follows.
    const follows = t[after];
    const nominal = !follows || follows.kind !== 'word' || /^(?:of|more|less|fewer|higher|lower|as|again|off|the|and|up|down|better|worse|faster|slower|below|above|under|over|to|than|gone|lighter|heavier|quieter|louder|cooler|warmer|hotter|longer|shorter|in|on|with|at|when|while|but|so)$/.test(follows.low);
    if (of === 2 || of === 4 || nominal) return make(after, 1, of);
  }
  if (!article && parts.has(w) && !w.endsWith('s') && ordinals.has(w) && t[i + 1]?.low === 'of' && /^(?:the|its|his|her|their|our|my|that|what)$/.test(t[i + 2]?.low ?? '')) {
    const determined = /^(?:the|its|in|this|that|my|our)$/.test(t[i - 1]?.low ?? '');
    if (!determined) return make(i + 1, 1, parts.get(w)!);
  }
  const small = smallAt(t, i);
  if (small && small.value > 0 && small.value < 20) {
    const d = fractionWord(t, small.to);
    if (d) return make(d.to, small.value, d.of);
  }
  return undefined;
}

function ordinalAt(t: readonly Token[], i: number): NumberSpan | undefined {
  const w = t[i]!.low;
  let n = ordinals.get(w);
  let to = i + 1;
  if (n === undefined && tens.has(w)) {
    const j = t[to]?.low === '-' ? to + 1 : to;
    const unit = ordinals.get(t[j]?.low ?? '');
    if (unit !== undefined && unit < 10) { n = tens.get(w)! + unit; to = j + 1; }
  }
  if (n === undefined && w.length > 3 && w.endsWith('ieth') && tens.has(w.slice(0, -4) + 'y')) n = tens.get(w.slice(0, -4) + 'y')!;
  return n === undefined ? undefined : { from: i, to, value: whole(n), decimals: 0, form: 'words', type: 'ordinal' };
}

/** Up to ninety-nine. */
function smallAt(t: readonly Token[], i: number): { value: number; to: number } | undefined {
  const w = t[i];
  if (!w || w.kind !== 'word') return undefined;
  if (tens.has(w.low)) {
    const j = t[i + 1]?.low === '-' ? i + 2 : i + 1;
    const unit = ones.get(t[j]?.low ?? '');
    if (unit !== undefined && unit > 0) return { value: tens.get(w.low)! + unit, to: j + 1 };
    return { value: tens.get(w.low)!, to: i + 1 };
  }
  const n = teens.get(w.low) ?? ones.get(w.low);
  return n === undefined ? undefined : { value: n, to: i + 1 };
}

function wordsAt(t: readonly Token[], i: number): NumberSpan | undefined {
  const first = t[i]!;
  if (first.low === 'point' && t[i + 1] && digitWord(t[i + 1]!)) {
    const tail = decimalsAt(t, i + 1);
    return tail && { from: i, to: tail.to, value: tail.value, decimals: tail.decimals, form: 'words', type: 'cardinal' };
  }
  const article = first.low === 'a' || first.low === 'an';
  if (article) {
    const next = t[i + 1]?.low;
    if (next === 'dozen') return { from: i, to: i + 2, value: whole(12), decimals: 0, form: 'words', type: 'cardinal' };
    if (next !== 'hundred' && next !== 'thousand') return undefined;
  } else if (first.low === 'dozen') {
    return { from: i, to: i + 1, value: whole(12), decimals: 0, form: 'words', type: 'cardinal' };
  }
  if (first.low === 'oh' && t[i + 1]?.low !== 'point') return undefined;
  if (!article && !smallAt(t, i)) return undefined;
  let at = article ? i + 1 : i;
  let total = 0;
  let group = article ? 1 : 0;
  let said = article;
  let scale = Infinity;
  let hundreds = false;
  let step: Exact | undefined;
  for (;;) {
    let j = at;
    if (said && t[j]?.low === 'and' && (hundreds || total > 0) && smallAt(t, j + 1)) j++;
    if (said && t[j]?.low === '-' && t[j]!.tight && (t[j + 1]?.low === 'hundred' || scales.has(t[j + 1]?.low ?? ''))) j++;
    const w = t[j];
    if (!w || w.kind !== 'word') break;
    if (w.low === 'hundred' && said && group > 0 && group < 100) {
      if (group >= 10) step = whole(100);
      group *= 100;
      hundreds = true;
      at = j + 1;
      continue;
    }
    const big = scales.get(w.low);
    if (big && said && big < scale) {
      total += (group || 1) * big;
      group = 0;
      scale = big;
      hundreds = false;
      step = undefined;
      at = j + 1;
      continue;
    }
    const small = smallAt(t, j);
    if (!small) break;
    if (!said) {
      group = small.value;
    } else if (hundreds && group % 100 === 0 && small.value > 0) {
      group += small.value;
      step = undefined;
    } else if (total > 0 && group === 0) {
      group = small.value;
    } else if (j === at && total === 0 && !hundreds && paired(group, small.value, t, j)) {
      // "twenty-four eighty", "one ninety-eight", "one oh five"
      if (small.value === 0) {
        const last = smallAt(t, small.to);
        if (!last || last.value > 9) break;
        group = group * 100 + last.value;
        at = last.to;
        said = true;
        hundreds = true;
        continue;
      }
      group = group * 100 + small.value;
      hundreds = true;
    } else break;
    said = true;
    at = small.to;
  }
  if (!said) return undefined;
  let value = whole(total + group);
  let decimals = 0;
  if (t[at]?.low === 'point' && t[at + 1]) {
    const tail = decimalsAt(t, at + 1);
    if (tail) {
      value = value.plus(tail.value); decimals = tail.decimals; at = tail.to; step = undefined;
      // "one point two million"
      const big = scales.get(t[at]?.low ?? '');
      if (big) { value = value.times(whole(big)); decimals -= Math.round(Math.log10(big)); at++; }
    }
  }
  return mixed(t, { from: i, to: at, value, decimals, form: 'words', type: 'cardinal', ...(step && { step }) });
}

function paired(group: number, next: number, t: readonly Token[], j: number): boolean {
  if (t[j - 1]?.kind === 'mark' && t[j - 1]!.low !== '-') return false;
  if (group < 1 || group > 99) return false;
  if (next === 0) return group < 10 && t[j]!.low === 'oh';
  return next >= 10;
}

function digitWord(w: Token): boolean {
  return w.kind === 'word' && (ones.has(w.low) || teens.has(w.low) || tens.has(w.low));
}

/** What follows "point": digit words or digits one by one, or one two-digit word ("point eighty-five"). */
function decimalsAt(t: readonly Token[], i: number): { value: Exact; decimals: number; to: number } | undefined {
  let digits = '';
  let at = i;
  while (t[at]) {
    const w = t[at]!;
    if (w.kind === 'number' && /^\d+$/.test(w.text)) digits += w.text;
    else if (w.kind === 'word' && ones.has(w.low)) digits += ones.get(w.low);
    else if (digits === '' && w.kind === 'word' && (tens.has(w.low) || teens.has(w.low))) {
      const small = smallAt(t, at)!;
      digits = String(small.value);
      at = small.to;
      break;
    } else break;
    at++;
  }
  return digits ? { value: Exact.parse(`0.${digits}`)!, decimals: digits.length, to: at } : undefined;
}

/** "… and a half", "… and three quarters". */
function mixed(t: readonly Token[], span: NumberSpan): NumberSpan {
  let j = span.to;
  if (t[j]?.low === '-' && t[j + 1]?.low === 'and') j++;
  if (t[j]?.low !== 'and' || span.decimals !== 0) return span;
  const after = t[j + 1]?.low === '-' ? j + 2 : j + 1;
  const f = t[after] && fractionAt(t, after);
  if (!f || f.value.compare(whole(1)) >= 0) return span;
  const bare = t[after]!.low === 'half' || t[after]!.low === 'a' || t[after]!.low === 'an' || t[after]!.low === 'one' || smallAt(t, after);
  if (!bare || t[f.to]?.low === 'of') return span;
  return { ...span, to: f.to, value: span.value.plus(f.value), step: Exact.of(1n, f.value.d), form: span.form };
}
