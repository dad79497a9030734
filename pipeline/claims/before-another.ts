// "is done 85 seconds before the Garrow", "gives up 4 minutes after the other one": as much less, or more, than another took.
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';
import type { Name } from './lexicon.js';

export interface Earlier { way: 'up' | 'down'; because: string; base: { from: number; to: number } }

export function earlierThan(low: readonly string[], m: Mention, names: readonly Name[]): Earlier | undefined {
  const word = low[m.to] ?? '';
  if (m.unit?.dimension !== 'duration' || !/^(?:before|after)$/.test(word) || /^(?:after|for|in|within|about|every|last|first|until)$/.test(low[m.from - 1] ?? '')) return undefined;
  const by = names.find((n) => n.from > m.to && n.from <= m.to + 2 && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup')));
  const other = by ? by.to : /^the other(?: one)?(?: (?:is|was|does|did|has|quits|gives|gave|ends|stops|finishes))?\b/.test(stretch(low, m.to + 1, m.to + 5)) ? m.to + (low[m.to + 3] === 'one' ? 4 : 3) : 0;
  return other ? { way: word === 'before' ? 'down' : 'up', because: word, base: { from: m.to + 1, to: other } } : undefined;
}
