// What the episode said wrong, and what is right.
import { correctionsOf, factName, type Facts, whereOf } from '../facts/index.js';
import { dateShown } from './places-of.js';

export interface CorrectionRow {
  where: string;
  said: string;
  what: string;
  about: string;
  right: string;
  reason: string;
  date: string;
  dateShown: string;
}

/** In the order of the record; one whose fact is not known is a finding, and no row. */
export function correctionRows(facts: Facts): CorrectionRow[] {
  return correctionsOf(facts).map(({ correction: c, fact }) => ({
    where: placeShown(c.where), said: c.said.replace(/[.!]+$/, ''), what: factName(facts.about, fact), about: whereOf(facts, fact), right: fact.shown,
    reason: c.reason ? capital(c.reason.replace(/([^.!?])$/, '$1.')) : '', date: c.date ?? '', dateShown: c.date ? dateShown(c.date) : '',
  }));
}

function placeShown(where: string): string {
  return /^\d/.test(where) ? `At ${where}` : capital(where);
}

function capital(text: string): string {
  return text.replace(/^\p{Ll}/u, (first) => first.toUpperCase());
}
