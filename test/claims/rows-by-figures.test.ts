// Rows of figures without names, two shares in one clause, and how far two lie apart whose places were just told. Each pair is
// a true script and one with a mistake.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [['tidy', '', '', 'power', 'motor', 'limit', 60, 'W']];
const mills: [string, number, number, number, number][] = [['wicken', 18.2, 41.7, 30.6, 112], ['thorley', 33.9, 55.1, 36.9, 171], ['ashby', 51.6, 48.8, 42.3, 208]];
for (const [id, watts, hot, noise, rate] of mills) for (const [how, k] of [['coarse', 0], ['fine', 1]] as const) {
  rows.push([id, how, 'rye', 'power', 'motor', 'load', watts + 4.3 * k, 'W', 0.1], [id, how, 'rye', 'temperature', 'stones', 'load', hot + 7.9 * k, 'degC', 0.1], [id, how, 'rye', 'noise', 'mill', 'load', noise + 2.6 * k, 'dB(A)', 0.1], [id, how, 'rye', 'output', 'flour', 'load', rate - 37 * k, 'g', 1]);
}
const names = `kind,id,spoken
setup,wicken,the Wicken
setup,thorley,the Thorley
setup,ashby,the Ashby
setting,coarse,coarse
setting,fine,fine
workload,rye,rye
part,motor,the motor
part,stones,the stones
part,mill,mill
part,flour,flour
measure,power,power;watts
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,output,output;grams
`;
const facts = factsOf(rows, names);
const heard = (text: string): Verdict[] => proof(new Source('script.md', text), facts).mentions.filter((m) => m.verdict !== 'not-a-claim');
const coarse = '## Coarse rye\n\nThe Wicken draws 18.2 watts, the Thorley 33.9 and the Ashby 51.6.\n\n';
const cases: [what: string, text: string, wrong: string][] = [
  ['a row after a noun alone', 'Then the noise. 30.6, 36.9, 42.3.', 'Then the noise. 30.6, 39.6, 42.3.'],
  ['two of a row that have changed places', 'The stones: 41.7, 55.1, 48.8 degrees.', 'The stones: 55.1, 41.7, 48.8 degrees.'],
  ['a row by size', 'The stones from the hottest down, 55.1, 48.8 and 41.7 degrees.', 'The stones from the hottest down, 55.1, 48.8 and 47.1 degrees.'],
  ['a row in another setting', 'Now set it to fine. Noise? 33.2, 39.5 and 44.9 decibels.', 'Now set it to fine. Noise? 33.2, 39.5 and 49.4 decibels.'],
  ['two shares in one clause', 'On coarse the Wicken gives 54 percent of the Ashby\'s output on 35 percent of its power.', 'On coarse the Wicken gives 54 percent of the Ashby\'s output on 53 percent of its power.'],
  ['a share, and where it is', 'On the Ashby power stands at 86 percent of its 60 watt limit in coarse and it stands at 93 in fine.', 'On the Ashby power stands at 86 percent of its 60 watt limit in coarse and it stands at 97 in fine.'],
  ['between two whose places were told', 'Loudest is the Ashby on fine, quietest the Wicken on coarse, and there are 14.3 decibels between those.', 'Loudest is the Ashby on fine, quietest the Wicken on coarse, and there are 17.3 decibels between those.'],
];

describe('rows by their figures', () => {
  test.each(cases)('%#: %s', (_, text, wrong) => {
    expect(heard(coarse + text).map((m) => `${m.text}: ${m.verdict}`).filter((v) => !v.endsWith(': agrees'))).toEqual([]);
    expect(heard(coarse + wrong).map((m) => m.verdict)).toContain('disagrees');
  });
});
