// The shape of a check of a script against itself: what cannot be, whatever the record says.
import type { Sentence } from '../script/index.js';
import { keptOf } from './kept-of.js';
import type { Parsed } from './parse.js';

export interface SelfSentence {
  sentence: Sentence;
  parsed: Parsed;
  /** Counts headings: what stands under another heading may speak of another thing. */
  section: number;
}

export interface SelfFault {
  code: string;
  /** A whole sentence without its full stop. */
  message: string;
  /** Offsets into the script of what is wrong. */
  start: number;
  end: number;
  /** Spans of the other numbers it contradicts. */
  against: { start: number; end: number; label: string }[];
  suggest?: string;
  /** Rounding before subtracting could explain it. */
  byRounding?: true;
  /** The words contradict each other whatever each number is right for. */
  certain?: true;
}

export interface SelfCheck {
  code: string;
  says: string;
  help: string;
  /** Scripts that are in order. */
  right: readonly string[];
  /** Scripts that cannot be, with the words found. */
  wrong: readonly (readonly [script: string, words: string])[];
  run(all: readonly SelfSentence[]): SelfFault[];
}

/** For a check that looks at one sentence with a number at a time; what a sentence gave is kept for as long as it is. */
export function eachSentence(look: (p: Parsed) => SelfFault[]): (all: readonly SelfSentence[]) => SelfFault[] {
  const faults = keptOf(look);
  return (all) => {
    const out: SelfFault[] = [];
    for (const { sentence, parsed } of all) {
      if (parsed.said.length === 0) continue;
      const by = sentence.start;
      for (const f of faults(parsed)) out.push({ ...f, start: f.start + by, end: f.end + by, against: f.against.map((a) => ({ ...a, start: a.start + by, end: a.end + by })) });
    }
    return out;
  };
}
