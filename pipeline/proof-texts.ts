// Every text that belongs to an episode, proofed against its facts.
import { type Finding, type Lines, type Place, Source } from './places/index.js';
import type { Facts } from './facts/index.js';
import type { Episode } from './records/index.js';

export interface Proofed {
  findings: Finding[];
  mentions: number;
  agreed: number;
  claimed: string[];
  /** Facts of the script with their places there, each where it is first said. */
  said: [id: string, at: number][];
}

/** A text inside the record is proofed where it stands there. While `unread` holds something, readings may be missing, and all that is told is that no number was judged, if there is one. */
export async function proofTexts(episode: Episode, sources: readonly Lines[], facts: Facts, unread: readonly Finding[] = []): Promise<Proofed> {
  const result: Proofed = { findings: [], mentions: 0, agreed: 0, claimed: [], said: [] };
  const said = new Map<string, number>();
  if (episode.texts.length === 0) return result;
  const { proofScript } = await import('./proof.js');
  for (const text of episode.texts) {
    const whole = sources.find((s): s is Source => s instanceof Source && s.file === text.place.file && s.text === text.text);
    const { findings, mentions } = await proofScript(whole ?? new Source(text.place.file, text.text), facts);
    const claims = mentions.filter((m) => m.verdict !== 'not-a-claim');
    result.mentions += claims.length;
    result.agreed += claims.filter((m) => m.verdict === 'agrees').length;
    result.claimed.push(...claims.flatMap((m) => m.facts));
    if (text.role === 'script') for (const m of claims) for (const id of m.facts) if (!said.has(id)) said.set(id, placeInScript(m.place));
    result.findings.push(...(whole ? findings : findings.map((f) => ({ ...f, place: within(f.place, text.place) }))));
  }
  if (unread.length > 0) return { findings: result.mentions > 0 ? [notProofed(unread, episode.id)] : [], mentions: 0, agreed: 0, claimed: [], said: [] };
  return { ...result, claimed: [...new Set(result.claimed)].sort(), said: [...said] };
}

/** A number that rises from the begin of a text to its end. */
export function placeInScript({ line, column }: { line: number; column: number }): number {
  return line * 100_000 + Math.min(column, 99_999);
}

/** What keeps readings from being known: errors of the record, its tables and logs, that it does not accept. */
export function unreadable(findings: readonly Finding[]): Finding[] {
  return findings.filter((f) => f.severity === 'error' && !f.accepted);
}

/** A claim about a reading that is missing would be tied to another one, and found false though it is true. */
export function notProofed(unread: readonly Finding[], subject: string): Finding {
  const { place } = unread[0]!;
  return {
    code: 'texts-not-proofed', severity: 'note', place, subject,
    message: `What is said is not proofed: ${unread.length === 1 ? 'an error stands' : `${unread.length} errors stand`} in the record, so readings may be missing; put ${unread.length === 1 ? 'it' : 'them'} right first`,
  };
}

/** The episode as it is judged while its texts are not proofed: what it accepts in them cannot be looked for. */
export function withoutTexts(episode: Episode): Episode {
  return { ...episode, accept: episode.accept.filter((a) => !/^(?:claim|pin|self|bound)-/.test(a.code)) };
}

/** A place in a text of its own, as a place in the record around it; exact for a text on one line. */
function within(inner: Place, outer: Place): Place {
  if (outer.line !== outer.endLine) return outer;
  return { ...outer, column: Math.min(outer.column + inner.column - 1, outer.endColumn), endColumn: Math.min(outer.column + inner.endColumn - 1, outer.endColumn) };
}
