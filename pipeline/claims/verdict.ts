// What is found about one mention, for reports, editors and tests.
import type { Place } from '../places/index.js';
import type { Key } from '../facts/index.js';
import type { Mention } from '../script/index.js';
import type { VerdictWord } from './decide.js';

export interface Considered {
  kind: string;
  fact: string;
  shown: string;
  fits: boolean;
  /** 0: just what the words say; from 1 on: asks for something unsaid. */
  cost: number;
  why: string;
}

export interface Verdict {
  place: Place;
  text: string;
  verdict: VerdictWord;
  /** raw, mean, rise, difference, percent_change, percent_of, ratio, rank, count, constant, range; empty for no claim. */
  kind: string;
  /** The readings that it rests on. */
  from: Key[];
  /** Ids of the facts. */
  facts: string[];
  /** The number as it was said. */
  said: string;
  /** What the record gives, as shown. */
  recorded?: string;
  derivation?: string;
  why: string;
  slip?: string;
  /** What to write instead of `text`. */
  suggest?: string;
  /** Where the number is right and its direction is not: the word that says which way, and the one for the other way. */
  turn?: { place: Place; text: string; suggest: string };
  candidates: Considered[];
  /** The number as it was read. */
  mention: Mention;
}
