// "The other press is still at 67": where two things are tested, the one that was not spoken of.
import { countedNouns } from './counted-words.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

const things = countedNouns.filter(([what]) => what === 'setups');

export function otherOfTwo(g: Grid, p: Parsed, hits: readonly Hit[], state: State): Pick<Hit, 'slot' | 'value' | 'from' | 'to'>[] {
  const [slot, ...more] = g.of.setup;
  const at = p.low.findIndex((w, k) => w === 'the' && p.low[k + 1] === 'other' && (standsAlone(p.low, k) || !/^(?:one|thing)(?:'s)?$/.test(p.low[k + 2] ?? '') && (things.some(([, , re]) => re.has((p.low[k + 2] ?? '').replace(/'s$/, ''))) || state.title.includes((p.low[k + 2] ?? '').replace(/'s$/, '')))));
  const alone = at >= 0 && standsAlone(p.low, at);
  if (at < 0 || slot === undefined || more.length || (!alone && /s$/.test(p.low[at + 2]!.replace(/'s$/, ''))) || p.low.slice(0, at).includes('one')) return [];
  const tested = [...g.values[slot]!.keys()].filter((v) => !g.holders.has(v) && !g.repeats.has(v));
  if (tested.length !== 2) return [];
  const before = [...new Set(hits.filter((h) => h.slot === slot && h.to <= at && !g.holders.has(h.value)).map((h) => h.value))];
  const spoken = before.length === 1 ? before[0] : before.length === 0 && state.together[slot] === 1 && state.ages[slot]! <= 2 ? state.topics[slot]![0] : undefined;
  const other = spoken === undefined ? undefined : tested.find((v) => v !== spoken);
  if (alone && before.length !== 1) return [];
  return other === undefined || !tested.includes(spoken!) ? [] : [{ slot, value: other, from: at, to: at + 3 }];
}

/** "31 for the Garrow and 4 less for the other one": led to, and nothing after it that it could be of. */
function standsAlone(low: readonly string[], k: number): boolean {
  const next = low[k + 2] === 'one' ? k + 3 : k + 2;
  return /^(?:for|on|in|with|from|at|than|to|of)$/.test(low[k - 1] ?? '') && /^(?:[.,;:!?)]|and|but|so|which|it's|it|is|was)?$/.test(low[next] ?? '');
}
