// The facts that a number which could not be tied may be meant to state, and the pin that ties it.
import { type Facts, isFact } from '../facts/index.js';
import { inSaidUnit } from '../wording/index.js';
import type { Verdict } from './verdict.js';

export interface NearFact {
  fact: string;
  shown: string;
}

/** Readings considered first, those that fit before the others; then plain values of the same kind of quantity, the nearest value first. */
export function nearFacts(m: Verdict, facts: Facts, most = 3): NearFact[] {
  const out = new Map<string, NearFact>();
  const considered = [...m.candidates].sort((a, b) => Number(b.fits) - Number(a.fits) || a.cost - b.cost);
  for (const c of considered.slice(0, most)) out.set(c.fact, { fact: c.fact, shown: c.shown });
  if (out.size < most && m.mention.type === 'cardinal') for (const n of nearValues(m, facts, most)) if (out.size < most) out.set(n.fact, n);
  return [...out.values()];
}

function nearValues({ mention: m }: Verdict, facts: Facts, most: number): NearFact[] {
  const said = m.value;
  const near: { fact: string; shown: string; off: number }[] = [];
  for (const key of facts.keys()) {
    const fact = facts.value(key);
    if (!isFact(fact)) continue;
    const own = m.unit ? inSaidUnit(fact, m) : fact.value;
    if (own) near.push({ fact: fact.id, shown: fact.shown, off: Math.abs(own.minus(said).toNumber()) });
  }
  near.sort((a, b) => a.off - b.off);
  // A value a quarter off is no likely meaning.
  return near.filter((n) => n.off <= Math.abs(said.toNumber()) / 4).slice(0, most).map(({ fact, shown }) => ({ fact, shown }));
}

/** Ready to be copied onto the line above. */
export function pinFor(words: string, options: { fact?: string | undefined; nth?: number | undefined; cues?: boolean }): string {
  const which = `"${words}"${options.nth === undefined ? '' : ` #${options.nth}`}`;
  const body = options.fact === undefined ? `no claim: ${which}` : `pin: ${which} = ${options.fact}`;
  return options.cues ? `NOTE ${body}` : `<!-- ${body} -->`;
}
