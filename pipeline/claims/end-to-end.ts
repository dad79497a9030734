// "Between the quickest and the slowest there are 41 seconds": both ends of a field, and how far they lie apart.
import { type Mention, superlatives, stretch } from '../script/index.js';
import type { Name } from './lexicon.js';

const ends = [...superlatives.keys(), 'first', 'last', 'top', 'bottom', 'front', 'back'].join('|');
/** Between the verb and the number stands nothing but what softens it. */
const softening = 'only|just|about|around|roughly|nearly|almost|still|now|a|some|another|no|more|than|not|over|under|well';
const pattern = new RegExp(String.raw`\b(?:between|from) (?:the )?(?:very )?(?:${ends})(?: of (?:the|that|this|my|our) \S+| \S+)? (?:and|to) (?:the )?(?:very )?(?:${ends})(?: \S+){0,5}? (?:is|was|are|were|be|been|lies?|lay|it's|that's|there's|makes?|made|find|found|see|saw|measured?)(?: (?:${softening}))*$`);

/** Whether such words lead to the number at `at`. */
export function fromEndToEnd(low: readonly string[], at: number): boolean {
  const since = Math.max(0, at - 16);
  return low.slice(since, at).some((w) => w === 'between' || w === 'from') && pattern.test(stretch(low, since, at));
}

/** "From quickest to slowest: the Ashlar 61, …": the order in which they are read out, and nothing that lies between. */
export function toldInOrder(low: readonly string[], from: number, at: number, named: (k: number) => boolean): boolean {
  return low.slice(from, at).includes(':') && named(at - 1);
}

const after = new RegExp(String.raw`^(?:from )?(?:one end(?: of (?:the|that|this|my|our|its) \S+)? to the other|(?:the )?(?:${ends}) to (?:the )?(?:${ends})|between (?:the )?(?:very )?(?:${ends}) and (?:the )?(?:very )?(?:${ends})|end to end|one (?:side|extreme) to the other)\b`);

const opening: ReadonlySet<string> = new Set(['from', 'one', 'the', 'between', 'end', ...ends.split('|')]);

/** "That's 12 watts from one end to the other", "12 watts from best to worst": the same, said after the number. */
export function endToEndAfter(low: readonly string[], from: number): boolean {
  return opening.has(low[from] ?? '') && after.test(stretch(low, from, from + 9));
}

/** "going from the smallest tray to the largest": in which order a row is told, and no place of anybody's. */
export function endOfOrder(low: readonly string[], m: Mention, all: readonly Mention[], names: readonly Name[]): boolean {
  return all.some((x) => {
    if (x === m || x.type !== 'superlative') return false;
    const [a, b] = x.from < m.from ? [x, m] : [m, x];
    const lead = stretch(low, Math.max(0, a.from - 3), a.from);
    if (b.from - a.to > 3 || !/^(?:\p{L}+ )?to(?: the)?$/u.test(stretch(low, a.to, b.from)) || !/\b(?:going|running|read|told|listed|ordered|sorted|ranked|order|respectively|goes|go|,) from(?: the)?$/.test(lead)) return false;
    return !names.some((n) => n.from >= a.to && n.from <= b.to + 1 && n.meanings.some((y) => y.own && y.fields.some((f) => f === 'setup' || f === 'setting')));
  });
}

const bare = /^(?:top|bottom|front|back|start|finish|first|last|best|worst)$/;

/** "the spread from top to bottom", where one setting is called "the top": no name, unless the other end is one too. */
export function endsOfField(low: readonly string[], n: Name, names: readonly Name[]): boolean {
  if (n.to - n.from > 1 || !bare.test(low[n.from]!)) return false;
  const other = low[n.from - 1] === 'from' && low[n.to] === 'to' ? n.to + 1 : low[n.from - 1] === 'to' && low[n.from - 3] === 'from' ? n.from - 2 : -1;
  return other >= 0 && bare.test(low[other] ?? '') && !names.some((o) => o.from <= other && other < o.to);
}

/** "a second between first and last", "from first to last": both ends of a field, and nobody's place. */
export function isEndOfField(low: readonly string[], m: Mention): boolean {
  const lead = stretch(low, Math.max(0, m.from - 4), m.from);
  return /(?:^| )(?:between|from)(?: the)?$/.test(lead) ? /^(?:and|to) (?:the )?(?:last|first)\b/.test(stretch(low, m.to, m.to + 3)) : /(?:^| )(?:between|from) (?:the )?(?:first|last) (?:and|to)(?: the)?$/.test(stretch(low, Math.max(0, m.from - 6), m.from));
}
