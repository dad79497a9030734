// Something wrong or doubtful at a place: the one shape every room reports in.
import type { Place } from './place.js';

export type Severity = 'error' | 'warning' | 'note';

export interface Finding {
  /** Kebab-case, e.g. `stated-value`; checks name theirs in pipeline/checks/list.ts. */
  code: string;
  severity: Severity;
  place: Place;
  /** A whole sentence. Mould: "says 14 K, the record gives 12.3 K (61.4 − 49.1)". */
  message: string;
  /** What it is about: a reading's key, a fact's id or a name; `accept` in a record names a finding by code and subject. */
  subject?: string;
  /** What stands there, as written. */
  said?: string;
  /** What the record gives, as shown. */
  recorded?: string;
  /** How the record comes to it. */
  derivation?: string;
  /** The likeliest slip, in plain words. */
  slip?: string;
  /** The right words, where there is just one way to put it right. */
  suggest?: string;
  /** Where something else in the same line puts it right as well: the words there, and what to write instead of them. */
  turn?: { place: Place; text: string; suggest: string };
  /** Where the readings that it rests on stand, and anything else worth a look. */
  related?: { place: Place; label: string }[];
  /** Set when the record accepts this finding at this place; an accepted finding never stops a build. */
  accepted?: { reason: string; place: Place };
}

/** What a stage hands on: its value, and what it found on the way. A value of undefined means nothing could be made. */
export interface Outcome<T> {
  value: T | undefined;
  findings: Finding[];
}
