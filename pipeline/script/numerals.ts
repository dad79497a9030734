// The words that numbers are made of, as data.

function numbered(words: string, from: number, step = 1): [string, number][] {
  return words.split(' ').map((w, i) => [w, from + i * step]);
}

export const ones = new Map<string, number>([...numbered('zero one two three four five six seven eight nine', 0), ['nought', 0], ['naught', 0], ['oh', 0]]);
export const teens = new Map<string, number>(numbered('ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen', 10));
export const tens = new Map<string, number>([...numbered('twenty thirty forty fifty sixty seventy eighty ninety', 20, 10), ['fourty', 40]]);
export const scales = new Map<string, number>([['thousand', 1e3], ['million', 1e6], ['billion', 1e9]]);

export const ordinals = new Map<string, number>([
  ...numbered('first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth', 1),
]);

/** Denominators; the singular ones that are ordinals too count as fractions only after "a", "one" or before "of". */
export const parts = new Map<string, number>([
  ['half', 2], ['halves', 2], ['third', 3], ['thirds', 3], ['quarter', 4], ['quarters', 4], ['fourths', 4], ['fifth', 5], ['fifths', 5], ['sixth', 6], ['sixths', 6],
  ['seventh', 7], ['sevenths', 7], ['eighth', 8], ['eighths', 8], ['ninth', 9], ['ninths', 9], ['tenth', 10], ['tenths', 10],
]);

/** Words that multiply by themselves. */
export const multipliers = new Map<string, number>([
  ['twice', 2], ['double', 2], ['doubles', 2], ['doubled', 2], ['doubling', 2], ['thrice', 3], ['triple', 3], ['triples', 3], ['tripled', 3], ['treble', 3], ['quadruple', 4], ['quadrupled', 4],
]);
/** Verbs that make something a half. */
export const halvers = new Set(['halves', 'halved', 'halving']);
