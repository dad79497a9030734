// "It fills 7.4 gigs": short for gigahertz beside a chip, and for gigabytes where the record measures data and no clock.
import { type Unit, unit } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import type { Lexicon } from './lexicon.js';

const data: Readonly<Record<string, string>> = { GHz: 'GB', MHz: 'MB' };

/** Sets the unit of such mentions, in place. */
export function gigs(all: readonly Mention[], low: readonly string[], lex: Lexicon): void {
  for (const m of all) {
    const meant = m.unit && data[m.unit.id];
    if (!meant || !/^(?:gigs?|megs?)$/.test(low[m.to - 1] ?? '')) continue;
    const dimensions = new Set([...lex.unitOf.values()].map((u: Unit) => u.dimension));
    if (dimensions.has('data') && !dimensions.has(m.unit!.dimension)) Object.assign(m, { unit: unit(meant) });
  }
}
