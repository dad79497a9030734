// Numbers that lean on the one right before them: the mark that it is measured from, what there is of it in all, the same of the
// next thing, the lowest and highest of its runs, the other of two. Each is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
for (const [id, hot, pull, most] of [['alder', 71.3, 43.9, 50], ['rowan', 62.8, 36.4, 45]] as const) {
  for (const [how, k] of [['dry', 0], ['wet', 1]] as const) rows.push([id, how, 'climb', 'temperature', 'gear', 'load', hot - k * (hot / 8), 'degC', 0.4], [id, how, 'climb', 'power', 'rope', 'load', pull - k * (pull / 6), 'W', 0.7]);
  rows.push([id, '', '', 'power', 'rope', 'rated', most, 'W'], [id, '', '', 'temperature', 'gear', 'idle', hot - most / 2, 'degC']);
}
rows.push(['tower', '', '', 'temperature', 'gear', 'limit', 80, 'degC']);
const names = `kind,id,spoken
setup,tower,the tower
setup,alder,the Alder winch;the Alder
setup,rowan,the Rowan winch;the Rowan
setting,dry,in the dry
setting,wet,in the wet
workload,climb,the climb
part,gear,gear
part,rope,rope
measure,temperature,temperature
measure,power,power
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.filter((m: Verdict) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

describe.each([
  ['the mark that a change is measured from', 'In the dry the gear of the Alder gets to 71.3 degrees, 8.7 below where it cuts out, which is N.', '80', '84'],
  ['in the same words', 'In the dry the gear of the Rowan gets to 62.8 degrees, 17.2 under the N it is built for.', '80', '86'],
  ['what there is of it', 'In the dry the rope of the Alder takes 43.9 watts out of N.', '50', '55'],
  ['the price of each', 'The gear of the Alder runs at 71.3 degrees in the dry and 62.4 in the wet.\nFor the Alder that difference is 8.9 degrees, for the Rowan N.', '7.9', '9.7'],
  ['over idle, which opens the sentence', 'In the dry the gear of the Alder gets to 71.3 degrees.\nOver idle, the Alder climbs 25 degrees and the Rowan N.', '22.5', '25.2'],
  ['the other of two', 'In the dry the rope of the Alder takes 43.9 watts, and the other machine is at N.', '36.4', '34.6'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string[] => verdicts(text.replace('N', n));
  test('what is true raises no alarm', () => expect(of(right).filter((v) => v.endsWith('disagrees'))).toEqual([]));
  test('it is covered', () => expect(of(right).filter((v) => v.startsWith(right)).at(-1)).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(of(wrong).filter((v) => v.startsWith(wrong))).toEqual([expect.stringMatching(/: disagrees$/)]));
});

test('as a factor', () => {
  expect(verdicts('In the dry the rope takes 43.9 watts with the Alder and 36.4 with the Rowan.\nAs a factor, that is 1.21.').at(-1)).toBe('1.21: agrees');
});

test.each([['The worst run was 43.2, the best 44.6.'], ['Slowest pass 43.2, quickest 44.6.']])('single runs: %s', (text) => {
  expect(verdicts(`In the dry the rope of the Alder takes 43.9 watts.\n${text}`).filter((v) => /^4[34]\.[26]/.test(v))).toEqual([expect.stringMatching(/: agrees$/), expect.stringMatching(/: agrees$/)]);
});
