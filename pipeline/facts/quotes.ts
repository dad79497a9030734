// Results of other episodes, taken by fact id and not by copy: they come to stand among this episode's readings.
import type { Finding } from '../places/index.js';
import { convertQuantity, show } from '../quantities/index.js';
import type { Episode, Quote, Reading } from '../records/index.js';
import { type Fact, runsOf, wasRead } from './fact.js';

/** What became of a quote: the fact, or why there is none. Plain `undefined` is an unknown fact. */
export type Quoted = Fact | { missing: 'episode' | 'fact' | 'cycle'; nearest?: string } | undefined;

/** Each quote that can be followed becomes a constant under the key it is given; each that cannot, or has changed, a finding. `uncertain` tells how well the fact is known there. */
export function withQuotes(
  episode: Episode, lookup: (episodeId: string, factId: string) => Quoted, uncertain: (episodeId: string, fact: Fact) => Reading['uncertain'] = () => undefined,
): { episode: Episode; findings: Finding[] } {
  const findings: Finding[] = [];
  const taken: Reading[] = [];
  const own = new Set(episode.readings.map((r) => r.key));
  for (const quote of episode.quotes) {
    const found = quote.episode === episode.id ? { missing: 'cycle' as const } : lookup(quote.episode, quote.fact);
    if (!found || 'missing' in found) {
      findings.push(lost(episode, quote, found));
      continue;
    }
    if (own.has(quote.as)) {
      findings.push({ code: 'quote-twice', severity: 'error', place: quote.place, subject: quote.as, message: `${quote.as} is quoted from ${quote.episode}, but it has a value already; give the quote a key of its own` });
      continue;
    }
    own.add(quote.as);
    taken.push({ key: quote.as, run: '', quantity: { value: found.value, unit: found.unit, decimals: found.decimals }, constant: true, place: quote.place, ...read(found), ...known(uncertain(quote.episode, found)) });
    const changed = tellChange(quote, found);
    if (changed) findings.push(changed);
  }
  return { episode: taken.length ? { ...episode, readings: [...episode.readings, ...taken] } : episode, findings };
}

function known(uncertain: Reading['uncertain']): Pick<Reading, 'uncertain'> {
  return uncertain ? { uncertain } : {};
}

/** A difference, a ratio and the like are one value here, however many runs they rest on there. */
function read(found: Fact): Pick<Reading, 'runs'> {
  if (!wasRead(found)) return {};
  return { runs: found.kind === 'mean' || found.kind === 'constant' ? runsOf(found) : 1 };
}

function lost(episode: Episode, quote: Quote, found: Exclude<Quoted, Fact>): Finding {
  const at = { severity: 'error' as const, place: quote.place, subject: quote.as };
  const meant = found?.nearest ? `; did you mean "${found.nearest}"?` : '';
  const suggest = found?.nearest ? { suggest: found.nearest } : {};
  if (found?.missing === 'cycle') return { ...at, code: 'quote-cycle', said: quote.episode, message: `${episode.id} quotes ${quote.episode}, which ${quote.episode === episode.id ? 'is itself' : `itself quotes ${episode.id}`}; one of them must hold the reading` };
  if (found?.missing === 'episode') return { ...at, ...suggest, code: 'quote-unknown-episode', said: quote.episode, message: `there is no episode "${quote.episode}" to quote from${meant}` };
  return { ...at, ...suggest, code: 'quote-unknown-fact', said: quote.fact, message: `${quote.episode} has no fact "${quote.fact}"${meant}` };
}

/** Compared as it was written: rounded to the decimals of `was`. */
function tellChange(quote: Quote, now: Fact): Finding | undefined {
  const { was } = quote;
  if (!was) return undefined;
  const current = convertQuantity({ value: now.value, unit: now.unit, decimals: now.decimals }, was.unit);
  const said = show(was.value, was.unit, was.decimals);
  const recorded = current ? show(current.value, was.unit, was.decimals) : now.shown;
  if (said === recorded) return undefined;
  return {
    code: 'quote-changed', severity: 'warning', place: quote.place, subject: quote.as, said, recorded, derivation: now.formula,
    message: `${quote.fact} of ${quote.episode} was ${said} when it was quoted; it is now ${recorded}`,
    related: now.readings.slice(0, 3).map((r) => ({ place: r.place, label: `run ${r.run || '(constant)'}` })),
  };
}
