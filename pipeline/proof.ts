// One script against the facts: read as it stands, or filled in first where it is a template.
import { proof, type ProofOptions, type ProofResult, type Verdict } from './claims/index.js';
import type { Facts } from './facts/index.js';
import { nothingSaid } from './nothing-to-tell.js';
import { type Finding, type Place, Source } from './places/index.js';

export interface Proofed extends ProofResult {
  /** The text that was proofed: the script, or what a template makes of it. */
  spoken: Source;
  bound: boolean;
}

/** Whether a script is a template whose numbers come from facts. */
export function isBound(script: Source): boolean {
  return script.file.endsWith('.hbs') || /\{\{[~!]?\s*(?:[a-z-]|--)/i.test(script.text);
}

export async function proofScript(script: Source, facts: Facts, options: ProofOptions = {}): Promise<Proofed> {
  const empty = nothingSaid(script);
  if (empty.length > 0) return { mentions: [], findings: empty, spoken: script, bound: false };
  if (!isBound(script)) return { ...proof(script, facts, options), spoken: script, bound: false };
  const { boundParts } = await import('./narration/bound.js');
  const { value: parts, findings } = boundParts(script, facts);
  if (!parts) return { mentions: [], findings, spoken: script, bound: true };
  const spoken = new Source(script.file, parts.map((p) => p.text).join(''));
  const result = proof(spoken, facts, options);
  const starts: number[] = [];
  let at = 0;
  for (const p of parts) { starts.push(at); at += p.text.length; }
  const back = (place: Place): { place: Place; exact: boolean } => {
    const from = spoken.offset(place.line, place.column);
    const to = Math.max(from, spoken.offset(place.endLine, place.endColumn));
    const first = partAt(starts, from);
    const last = partAt(starts, Math.max(from, to - 1));
    const [a, b] = [parts[first]!, parts[last]!];
    return {
      place: script.place(a.filled ? a.start : a.start + from - starts[first]!, b.filled ? b.end : b.start + to - starts[last]!),
      exact: parts.slice(first, last + 1).every((p) => !p.filled),
    };
  };
  // What stands in a part that was filled in is put right in the record, not here.
  const turnedTo = (turn: Finding['turn']): { turn?: NonNullable<Finding['turn']> } => {
    const at = turn && back(turn.place);
    return at?.exact ? { turn: { ...turn!, place: at.place } } : {};
  };
  const moved = (m: Verdict): Verdict => {
    const { place, exact } = back(m.place);
    const { suggest, turn, ...rest } = m;
    return { ...rest, place, ...turnedTo(turn), ...(exact && suggest !== undefined && { suggest }) };
  };
  const found = (f: Finding): Finding => {
    if (f.place.file !== script.file) return f;
    const { place, exact } = back(f.place);
    const { suggest, turn, ...rest } = f;
    return { ...rest, place, ...turnedTo(turn), ...(exact && suggest !== undefined && { suggest }) };
  };
  return { mentions: result.mentions.map(moved), findings: result.findings.map(found), spoken, bound: true };
}

function partAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The JSON form: lines and columns from 1 in UTF-16 units, ends exclusive. */
export function proofJson({ mentions, findings }: ProofResult): object {
  return {
    mentions: mentions.map((m) => ({
      line: m.place.line, column: m.place.column, endLine: m.place.endLine, endColumn: m.place.endColumn, text: m.text, verdict: m.verdict, kind: m.kind, from: m.from, facts: m.facts,
      said: m.said, recorded: m.recorded ?? null, derivation: m.derivation ?? null, why: m.why, slip: m.slip ?? null, suggest: m.suggest ?? null, turn: m.turn ? told(m.turn) : null,
    })),
    findings: findings.map(({ place, related, turn, ...f }) => ({ ...f, ...place, ...(turn && { turn: told(turn) }), ...(related && { related: related.map((r) => ({ label: r.label, ...r.place })) }) })),
  };
}

function told({ place: { line, column, endColumn }, text, suggest }: NonNullable<Finding['turn']>): object {
  return { line, column, endColumn, text, suggest };
}
