// Sentences with N for a number: with the right one it is covered and nothing is flagged, with another it is caught.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import type { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';

/** "9 degrees: agrees" for each number of a text. */
export function verdicts(facts: Facts, text: string): string[] {
  return proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);
}

/** The verdict on the number told as `n`, with its unit or without. */
export function verdictOn(facts: Facts, text: string, n: string): string | undefined {
  return verdicts(facts, text).find((v) => v.startsWith(`${n} `) || v.startsWith(`${n}:`))?.split(': ').at(-1);
}

export type Told = readonly [what: string, text: string, right: string, wrong: string, /** Where the words leave more than one reading open, a wrong number is not said to be right. */ open?: 'open'];

export function rightAndWrong(facts: Facts, told: readonly Told[]): void {
  describe.each(told.map((x) => [...x]))('%s', (_, text, right, wrong, open) => {
    const on = (n: string): string | undefined => verdictOn(facts, text!.replace('N', n), n);
    test('what is true is covered', () => expect(on(right!)).toBe('agrees'));
    test('what is false is caught', () => (open ? expect(on(wrong!)).not.toBe('agrees') : expect(on(wrong!)).toBe('disagrees')));
    test('nothing true is wrong', () => expect(verdicts(facts, text!.replace('N', right!)).filter((v) => v.endsWith(': disagrees'))).toEqual([]));
  });
}
