// Which cautions an episode calls for, the author's own among them.
import type { Facts } from '../facts/index.js';
import { evidence } from './evidence.js';
import { cautionRules } from './rules.js';

export interface Caution {
  /** A rule's code, or `author` for a caution that the record states itself. */
  code: string;
  /** Whole sentences, ready to be shown or said. */
  text: string;
  /** In one sentence; the author's own as it stands. */
  brief: string;
  /** What it is about, in a few words; empty for the author's own. */
  subject: string;
  /** What in the record calls for it. */
  because: string;
}

/** In the order of the rules, the author's own last. */
export function cautionsFor(facts: Facts): Caution[] {
  const called = cautionRules.flatMap(({ code, text, brief, subject, signs }): Caution[] => {
    for (const sign of signs) {
      const because = evidence(facts, sign);
      if (because) return [{ code, text, brief, subject, because }];
    }
    return [];
  });
  return [...called, ...facts.about.cautions.map((c) => ({ code: 'author', text: c.text, brief: c.text, subject: '', because: 'the record says so' }))];
}
