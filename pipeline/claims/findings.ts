// Verdicts as findings: a number that the record contradicts is an error; one that cannot be tied to it is a note.
import type { Finding } from '../places/index.js';
import { factName, type Facts, isFact } from '../facts/index.js';
import type { Verdict } from './verdict.js';

export function findingsOf(mentions: readonly Verdict[], facts: Facts): Finding[] {
  return mentions.flatMap((m) => (m.verdict === 'disagrees' ? [contradicted(m, facts)] : m.verdict === 'untied' ? [untied(m)] : []));
}

function contradicted(m: Verdict, facts: Facts): Finding {
  const fact = m.facts[0] === undefined ? undefined : facts.get(m.facts[0]);
  const known = isFact(fact) ? fact : undefined;
  const what = known ? ` for ${uncapital(factName(facts.about, known))}` : '';
  const related = (known?.readings ?? []).map((r) => ({ place: r.place, label: known!.readings.length > 1 || r.run ? (r.run ? `run ${r.run}` : '') : '' }));
  return {
    code: 'claim-disagrees', severity: 'error', place: m.place, said: m.text,
    message: `Says ${m.text}; the record gives ${m.recorded ?? 'another figure'}${what}.`,
    ...(m.facts[0] && { subject: m.facts[0] }), ...(m.recorded && { recorded: m.recorded }), ...(m.derivation && { derivation: `${m.derivation}, as ${m.facts[0]}` }),
    ...(m.slip && { slip: m.slip }), ...(m.suggest !== undefined && { suggest: m.suggest }), ...(related.length > 0 && { related }),
  };
}

function untied(m: Verdict): Finding {
  return { code: 'claim-untied', severity: 'note', place: m.place, said: m.text, subject: m.text, message: `Cannot tell what ${m.text} speaks of: ${m.why}.` };
}

function uncapital(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}
