// Where and when, in the words shown: "Open bench", "Stock", "Harbour loop", "load".
import { type Facts, type KeyParts, nameOf } from '../facts/index.js';

export function namesOf(facts: Facts, parts: KeyParts, fields: readonly (keyof KeyParts)[]): string[] {
  return fields.filter((f) => parts[f]).map((f) => nameOf(facts.about, f, parts[f]));
}

/** "Open bench, stock, harbour loop, load". */
export function whereShown(facts: Facts, parts: KeyParts): string {
  return namesOf(facts, parts, ['setup', 'setting', 'workload', 'phase']).join(', ');
}

/** "2026-03-14" as "14 March 2026"; anything else as it is. */
export function dateShown(date: string): string {
  const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const month = m && months[Number(m[2]) - 1];
  return month ? `${Number(m[3])} ${month} ${m[1]}` : date;
}

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
