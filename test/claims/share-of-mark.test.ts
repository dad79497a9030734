// Shares of a mark that is named by no number; a plan with the noise of its room; verbs that use "up"; settings said by their number.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [
  ['shop-sheet', '', '', 'power', 'motor', 'limit', 80, 'W'], ['shop-sheet', '', '', 'noise', 'room', 'idle', 17.2, 'dB(A)'],
];
for (const [mill, w, n] of [['burrow', 20, 40.2], ['tarn', 36, 44.1], ['wisp', 60, 47.3]] as const) for (const [grind, k] of [['dial-30', 0], ['dial-50', 4], ['dial-90', 12]] as const) rows.push([mill, grind, 'beans', 'power', 'motor', 'load', w + k, 'W'], [mill, grind, 'beans', 'noise', 'hopper', 'load', n + k / 2, 'dB(A)']);
const names = `kind,id,spoken
setup,burrow,the Burrow
setup,tarn,the Tarn
setup,wisp,the Wisp
setup,shop-sheet,the sheet on the wall
setting,dial-30,thirty per cent;dial at thirty
setting,dial-50,fifty per cent;dial at fifty
setting,dial-90,ninety per cent
workload,beans,beans
part,motor,motor
part,hopper,hopper
part,room,room
measure,power,power
measure,noise,noise
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);
const led = 'With the dial at thirty per cent the motor of the Burrow draws 20 watts, that of the Tarn 36, and that of the Wisp 60.\n\n';

describe.each([
  ['uses up so much of the allowance', `${led}The Tarn uses up N percent of the allowance.`, '45', '54'],
  ['eats up so much of what is permitted', `${led}So the Wisp eats up N percent of what is permitted.`, '75', '57'],
  ['comes back down to', 'The Tarn draws 48 watts at ninety per cent. At fifty per cent the Wisp comes back down to N watts, which is 8 less than it had at ninety.', '64', '46'],
  ['moves so much of what another does', `${led}The Burrow is moving N percent of the Wisp's power at thirty per cent.`, '33', '53'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string | undefined => verdicts(text.replace('N', n)).find((v) => v.startsWith(`${n} `) || v.startsWith(`${n}:`));
  test('what is true is covered', () => expect(of(right)).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(of(wrong)).toMatch(/: disagrees$/));
  test('nothing else is wrong', () => expect(verdicts(text.replace('N', right)).filter((v) => v.endsWith(': disagrees'))).toEqual([]));
});

test.each(['Please do not run the Wisp at thirty, as it is loud.', 'Turn it down to thirty, and it still makes 47.3 decibels.', 'With the dial back on thirty, the Wisp is at 47.3 decibels.', 'The two laziest settings are left out.'])('"%s" says no wrong figure', (text) => {
  expect(verdicts(text).filter((v) => v.endsWith(': disagrees'))).toEqual([]);
});
