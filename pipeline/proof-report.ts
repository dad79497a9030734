// What the proof of a script says in the end, for a person.
import { nearFacts, pinFor, type Verdict } from './claims/index.js';
import type { Facts } from './facts/index.js';
import { type Finding, type PrintOptions, printFinding, worstLast } from './places/index.js';

export interface Report {
  findings: readonly Finding[];
  mentions: readonly Verdict[];
  /** Undefined where the record cannot be read. */
  facts: Facts | undefined;
  /** Whether the script is WebVTT, where a pin stands in a note. */
  cues: boolean;
  /** With no record there is nothing to tie a number to. */
  alone: boolean;
}

/** Lines for a person: every finding with its line, for what cannot be tied the nearest facts ready to copy, and the counts. */
export function proofReport(report: Report, print: PrintOptions, failing: number): string[] {
  const { ink } = print;
  const untied = new Map(report.mentions.filter((m) => m.verdict === 'untied').map((m) => [`${m.place.line}:${m.place.column}`, m]));
  const lines = worstLast(report.findings).flatMap((f) => {
    const m = f.code === 'claim-untied' ? untied.get(`${f.place.line}:${f.place.column}`) : undefined;
    return [...printFinding(f, print), ...(m ? pins(m, report, print) : []), ''];
  });
  const verdict = failing > 0
    ? ink('error', `${failing} ${failing === 1 ? 'finding counts as an error' : 'findings count as errors'}.`)
    : ink('good', report.findings.length === 0 ? 'Nothing found.' : 'Nothing found that counts as an error.');
  return [...lines, ...(report.facts ? [counts(report)] : []), verdict];
}

function pins(m: Verdict, { facts, mentions, cues }: Report, { ink }: PrintOptions): string[] {
  const same = mentions.filter((o) => o.place.line === m.place.line && o.text === m.text);
  const nth = same.length > 1 ? same.indexOf(m) + 1 : undefined;
  const near = facts ? nearFacts(m, facts) : [];
  const form = (fact?: string): string => pinFor(m.text, { fact, nth, cues });
  const width = Math.max(...near.map((n) => n.shown.length), 'no claim'.length);
  // Not wrapped: each is to be copied whole onto the line above.
  return [`  ${ink('faint', 'pin it with one of these on the line above:')}`, ...near.map((n) => `  ${n.shown.padStart(width)}  ${form(n.fact)}`), `  ${'no claim'.padStart(width)}  ${form()}`];
}

function counts({ mentions, alone }: Report): string {
  const of = (verdict: Verdict['verdict']): number => mentions.filter((m) => m.verdict === verdict).length;
  const all = mentions.length;
  if (all === 0) return 'No number is said.';
  if (alone) return `${number(all)} read, against nothing but the script itself; ${of('disagrees')} cannot be.`;
  return `${number(all)} said: ${of('agrees')} ${of('agrees') === 1 ? 'agrees' : 'agree'}, ${of('disagrees')} ${of('disagrees') === 1 ? 'disagrees' : 'disagree'}, ${of('untied')} untied, ${of('not-a-claim')} no claim.`;
}

function number(n: number): string {
  return `${n} number${n === 1 ? '' : 's'}`;
}
