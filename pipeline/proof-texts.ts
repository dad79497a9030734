// Every text that belongs to an episode, proofed against its facts.
import { type Finding, type Place, Source } from './places/index.js';
import type { Facts } from './facts/index.js';
import type { Episode } from './records/index.js';

export interface Proofed {
  findings: Finding[];
  mentions: number;
  agreed: number;
  claimed: string[];
}

/** A text inside the record is proofed where it stands there. */
export async function proofTexts(episode: Episode, sources: readonly Source[], facts: Facts): Promise<Proofed> {
  const result: Proofed = { findings: [], mentions: 0, agreed: 0, claimed: [] };
  if (episode.texts.length === 0) return result;
  const { proofScript } = await import('./proof.js');
  for (const text of episode.texts) {
    const whole = sources.find((s) => s.file === text.place.file && s.text === text.text);
    const { findings, mentions } = await proofScript(whole ?? new Source(text.place.file, text.text), facts);
    const claims = mentions.filter((m) => m.verdict !== 'not-a-claim');
    result.mentions += claims.length;
    result.agreed += claims.filter((m) => m.verdict === 'agrees').length;
    result.claimed.push(...claims.flatMap((m) => m.facts));
    result.findings.push(...(whole ? findings : findings.map((f) => ({ ...f, place: within(f.place, text.place) }))));
  }
  return { ...result, claimed: [...new Set(result.claimed)].sort() };
}

/** A place in a text of its own, as a place in the record around it; exact for a text on one line. */
function within(inner: Place, outer: Place): Place {
  if (outer.line !== outer.endLine) return outer;
  return { ...outer, column: Math.min(outer.column + inner.column - 1, outer.endColumn), endColumn: Math.min(outer.column + inner.endColumn - 1, outer.endColumn) };
}
