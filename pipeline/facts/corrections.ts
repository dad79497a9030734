// What the record corrects of a published episode, with the fact that is right.
import { type Correction, type KeyParts, splitKey } from '../records/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact, type Underivable } from './facts.js';
import { nameOf } from './naming.js';

/** The fact that a correction names, by id or by key; undefined where it names none. */
export function rightOf(facts: Facts, { fact }: Correction): Fact | Underivable | undefined {
  return facts.get(fact) ?? (splitKey(fact) ? facts.value(facts.meant(fact)) : undefined);
}

/** The corrections that rest on a fact, in the order of the record. */
export function correctionsOf(facts: Facts): { correction: Correction; fact: Fact }[] {
  return facts.about.corrections.flatMap((correction) => {
    const fact = rightOf(facts, correction);
    return isFact(fact) ? [{ correction, fact }] : [];
  });
}

const circumstances = ['setup', 'setting', 'workload', 'phase'] as const;

/** "Fresh paste, Stock, Harbour loop, Load, against Old paste": where a fact is read, and what it is compared with. */
export function whereOf(facts: Facts, fact: Fact): string {
  const at = splitKey(fact.subject);
  if (!at) return '';
  const base = fact.kind === 'rise' ? undefined : splitKey(fact.against[0] ?? '');
  const names = (parts: KeyParts, fields: readonly (typeof circumstances)[number][]): string => fields.filter((f) => parts[f]).map((f) => nameOf(facts.about, f, parts[f])).join(', ');
  const against = base && names(base, circumstances.filter((f) => base[f] !== at[f]));
  return [names(at, circumstances), against && `against ${against}`].filter(Boolean).join(', ');
}
