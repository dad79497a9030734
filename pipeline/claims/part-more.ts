// A fraction that is added or taken away: "a third more", "a quarter fewer", "half as much again".
import { Exact } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { addsTo } from './ratio-words.js';

const up = /^(?:more|extra|higher|longer|heavier|brighter|bigger|larger|again)$/;
const down = /^(?:less|fewer|lower|shorter|lighter|smaller)$/;

/** The multiple that the words make; several where they leave it open, as "a third faster" may be said of a time or a rate. */
export function partMore(low: readonly string[], m: Mention): { as: readonly Mention[]; sure: boolean } | undefined {
  const told = addsTo(low, m) || low.slice(Math.max(0, m.from - 3), m.from).includes('by');
  if (m.type !== 'fraction' || m.unit || !told || m.value.compare(Exact.of(1)) >= 0) return undefined;
  const one = Exact.of(1);
  const by = (value: Exact): Mention => ({ ...m, type: 'multiplier', value });
  const more = by(one.plus(m.value));
  const less = by(one.minus(m.value));
  const word = low.slice(m.to, m.to + 4).find((w) => up.test(w) || down.test(w));
  // "lighter than the other by a third"
  const lead = low.slice(Math.max(0, m.from - 10), m.from);
  const before = lead.at(-1) === 'by' || /^by (?:about|around|roughly|nearly|almost|over|just|some)$/.test(lead.slice(-2).join(' ')) ? lead.find((w) => up.test(w) || down.test(w)) : undefined;
  if (before) return { as: [down.test(before) ? less : more], sure: true };
  if (low[m.to] === word || word === 'again') return { as: [down.test(word!) ? less : more], sure: true };
  if (!addsTo(low, m)) return undefined;
  return { as: [more, less, by(one.over(more.value)), by(one.over(less.value))], sure: false };
}
