// "The K9 is second again, the M5 second, the A3 third": two things in one place, where no word says that they share it.
import type { Parsed } from './parse.js';
import { eachSentence, type SelfCheck, type SelfFault } from './self-check.js';

export const selfPlaces: SelfCheck = {
  code: 'self-places',
  says: 'Two things are given the same place in one sentence',
  help: 'Say one of the two places otherwise, or that they share it.',
  right: [
    'The bench is first, the case second, and the shelf third.',
    'The bench and the case share second place, and the shelf is third.',
    'Stock first, and the forest first, because it is hard.',
    'The bench is second in noise, and the case is second in power.',
  ],
  wrong: [
    ['So the bench is second again, the case second, the shelf third, and the stove last.', 'second'],
    ['The bench at low speed comes third, and the case at high speed is third.', 'third'],
  ],
  run: eachSentence(look),
};

const shared = /^(?:joint|jointly|tied|tie|ties|shares?|shared|sharing|both|each|level|equal|same|also|too|twice|again|in|by|for|on)$/;

/** "Stock first, and the forest first" tells what comes when, and places nothing. */
const copula = /^(?:is|are|was|were|comes?|came|finish|finishes|finished|lands?|landed|ranks?|ranked|still)$/;

function look(p: Parsed): SelfFault[] {
  const places = p.said.flatMap(({ mention: m }, k) => (m.type === 'ordinal' && !m.superlative && alone(p, m.from, m.to) ? [{ m, k }] : []));
  for (const [n, b] of places.entries()) {
    const a = places[n - 1];
    if (!a || !a.m.value.equals(b.m.value) || b.k !== a.k + 1 || !copula.test(p.low[a.m.from - 1] ?? '')) continue;
    const gap = p.low.slice(a.m.to, b.m.from);
    // "second in noise, and second in power": not of one and the same order.
    if (gap.slice(1).some((w, i) => shared.test(w) && !(w === 'again' && i === 0)) && gap.some((w, i) => shared.test(w) && w !== 'again' && !thing(gap, i))) continue;
    if (shared.test(p.low[b.m.to] ?? '') && p.low[b.m.to] !== 'again') continue;
    if (!gap.some((w) => w === ',' || w === 'and' || w === ';') || gap.length < 3) continue;
    return [{ code: 'self-places', start: b.m.start, end: b.m.end, certain: true, message: `Two things cannot both be ${p.text.slice(b.m.start, b.m.end)}`, against: [{ start: a.m.start, end: a.m.end, label: 'said of another' }] }];
  }
  return [];
}

/** "in", "on" right after a name ("the case on the shelf is third") tell which thing; right after the place, which order. */
function thing(gap: readonly string[], i: number): boolean {
  return i > 2 && /^(?:in|by|for|on)$/.test(gap[i]!);
}

/** No noun follows, and a verb of being or a name stands before. */
function alone(p: Parsed, from: number, to: number): boolean {
  return (to >= p.low.length || p.tokens[to]!.kind === 'mark' || /^(?:again|and|place|with|at|by|in|overall|now|here)$/.test(p.low[to]!)) && !/^(?:the|a|an|this|that|every|each|,)$/.test(p.low[from - 1] ?? '');
}
