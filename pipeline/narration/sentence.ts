// A sentence ready to be read aloud, with the facts it says and the time it takes.
import type { Fact } from '../facts/index.js';
import { Exact } from '../quantities/index.js';
import type { Voice } from './voice.js';

export interface Sentence {
  /** Heading it stands under. */
  section: string;
  text: string;
  /** Ids of the facts whose numbers are said, in the order of the sentence; those of a comparison that says none included. */
  facts: string[];
  /** Estimated speaking time. */
  seconds: number;
  /** The measure that it is about, where it is about one. */
  measure?: string;
  result?: Result;
}

/** That a sentence sets things beside each other: the setups (or products), or the settings. */
export interface Result {
  between: 'setup' | 'setting';
  /** Whether the readings tell them apart. */
  decided: boolean;
  /** How far they lie apart, in the measure's unit. */
  size: number;
}

/** A sentence before its numbers have a form: the same words for the digit form and the spelled-out form. */
export interface Draft {
  section: string;
  facts: Fact[];
  text: (voice: Voice) => string;
  result?: Result;
}

/**
 * Common practice for clear narration, about 150 words a minute: the rate that speech clinics give for US English and
 * that audiobooks are read at (150 to 160); second-hand sources, from memory.
 */
export const wordsPerMinute = 150;

/** Seconds to read a text whose numbers are spelled out, to a tenth; a hyphenated number counts as its words. */
export function speakingTime(spelledOut: string): number {
  const words = spelledOut.match(/[\p{L}\p{N}]+(?:['’.,][\p{L}\p{N}]+)*/gu)?.length ?? 0;
  return Exact.of(words * 60, wordsPerMinute).round(1).toNumber();
}

/** Whole, with a capital letter first, a full stop last and single spaces. */
export function finish(text: string): string {
  const plain = text.replace(/\s+/g, ' ').replace(/ ([,.:;])/g, '$1').replace(/,+(?=[,.:;])/g, '').trim();
  const closed = /[.!?]$/.test(plain) ? plain : `${plain}.`;
  return capital(closed);
}

export function capital(text: string): string {
  return text.replace(/^\p{Ll}/u, (c) => c.toUpperCase());
}

/** "a", "a and b", "a, b and c". */
export function list(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
