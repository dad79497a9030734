// Verdicts as findings: a number that the record contradicts is an error; one that cannot be tied to it is a note.
import type { Finding } from '../places/index.js';
import { type Fact, factName, type Facts, isFact, nameOf, splitKey } from '../facts/index.js';
import { ofTemperature } from './percent-of-heat.js';
import type { Verdict } from './verdict.js';

export function findingsOf(mentions: readonly Verdict[], facts: Facts): Finding[] {
  return mentions.flatMap((m) => (m.verdict === 'disagrees' ? [contradicted(m, facts)] : m.verdict === 'untied' ? [untied(m)] : []));
}

function contradicted(m: Verdict, facts: Facts): Finding {
  const fact = m.facts[0] === undefined ? undefined : facts.get(m.facts[0]);
  const known = isFact(fact) ? fact : undefined;
  const what = known ? `: ${uncapital(factName(facts.about, known))}${circumstances(facts, known)}` : '';
  const related = (known?.readings ?? []).map((r) => ({ place: r.place, label: r.run ? `run ${r.run}` : '' }));
  return {
    code: 'claim-disagrees', severity: 'error', place: m.place, said: m.text,
    message: `Says ${m.text}; the record gives ${m.recorded ?? 'another figure'}${what}.`,
    ...(m.facts[0] && { subject: m.facts[0] }), ...(m.recorded && { recorded: m.recorded }), ...(m.derivation && { derivation: `${m.derivation}, as ${m.facts[0]}` }),
    ...(m.slip && { slip: m.slip }), ...(m.suggest !== undefined && { suggest: m.suggest }), ...(m.turn && { turn: m.turn }), ...(related.length > 0 && { related }),
  };
}

/** " (Open bench, Stock, Idle)", and for a comparison what it is made with: " (Open bench, Stock against Undervolt)". */
function circumstances({ about }: Facts, fact: Fact): string {
  const at = splitKey(fact.subject);
  if (!at) return '';
  const fields = (['setup', 'setting', 'workload', 'phase'] as const);
  const own = fields.filter((f) => at[f]).map((f) => nameOf(about, f, at[f]));
  const base = splitKey(fact.against.length === 1 ? fact.keys[1] ?? '' : '');
  const other = base ? [...fields, 'part' as const, 'measure' as const].filter((f) => base[f] && base[f] !== at[f]).map((f) => nameOf(about, f, base[f])) : [];
  const text = `${own.join(', ')}${other.length ? ` against ${other.join(', ')}` : ''}`.trim();
  return text ? ` (${text})` : '';
}

function untied(m: Verdict): Finding {
  if (m.why === ofTemperature) return { code: 'percent-of-temperature', severity: 'warning', place: m.place, said: m.text, subject: m.text, message: `Says ${m.text} of a temperature: ${m.why}.` };
  return { code: 'claim-untied', severity: 'note', place: m.place, said: m.text, subject: m.text, message: `Cannot tell what ${m.text} speaks of: ${m.why}.` };
}

function uncapital(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}
