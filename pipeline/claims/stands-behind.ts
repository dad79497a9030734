// "at 910 behind the grille and 640 rpm behind the mesh": words of place that might be words of lagging.
import type { Mention } from '../script/index.js';
import type { Name } from './lexicon.js';

/** "34.6 under the full task", "428 seconds over the task": while it does that, and nothing that it is compared with. */
export function duringWork(low: readonly string[], at: number, m: Mention, names: readonly Name[]): boolean {
  const work = names.find((n) => n.from > at && n.from <= at + 2 && n.meanings.some((x) => x.own && x.fields.includes('workload')));
  return work !== undefined && (low[at] === 'under' || (low[at] === 'over' && m.unit?.dimension === 'duration'));
}

const places = /^(?:behind|beneath|inside|below|above)$/;

/** The number says what is reached there: "at" leads to it, or it goes on from one that "at" led to, behind the same word. */
export function standsBehind(low: readonly string[], m: Mention): boolean {
  const word = low[m.to] ?? '';
  // "4 grams behind at the low flame": where it lags, and not what it is compared with.
  if (/^(?:behind|ahead|below|above)$/.test(word) && /^(?:at|in|on|during)$/.test(low[m.to + 1] ?? '')) return true;
  if (!places.test(word) || (m.value.toNumber() < 100 && word !== 'behind')) return false;
  if (low[m.from - 1] === 'at') return word === 'behind' || m.value.toNumber() >= 100;
  const before = low.lastIndexOf(word, m.from - 1);
  return low[m.from - 1] === 'and' && before > 1 && m.from - before <= 5 && /^\d/.test(low[before - 1]!) && low[before - 2] === 'at';
}
