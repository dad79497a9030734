// What a list, an aside or an order carries over: what two changes are compared with, whose figure comes next, how far a row
// reaches. Each is a true script and one with a mistake.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [['rules', '', '', 'temperature', 'bath', 'target', 60, 'degC'], ['still', 'eased', '', 'voltage', 'coil', 'offset', 70, 'mV'], ['elder', '', '', 'flow', 'condenser', 'rated', 14, 'L/h']];
const stills: [string, number, number, number, number, number][] = [['elder', 310, 52.4, 24.1, 12.6, 31.6], ['hazel', 575, 58.7, 33.8, 9.3, 36.2], ['rush', 880, 71.9, 41.5, 4.4, 43.7]];
for (const [id, grams, hot, room, flow, noise] of stills) for (const [how, k] of [['plain', 0], ['eased', 1]] as const) {
  rows.push([id, how, 'mash', 'temperature', 'bath', 'load', hot - k * grams / 100, 'degC', 0.1], [id, how, 'mash', 'temperature', 'room', 'load', room - 10 - grams / 100, 'degC', 0.1], [id, how, 'mash', 'flow', 'condenser', 'load', flow + k, 'L/h', 0.1], [id, how, 'mash', 'noise', 'still', 'load', noise - 2.2 * k, 'dB(A)', 0.1], [id, how, 'mash', 'voltage', 'coil', 'load', 1.3 + grams / 1000 - 0.064 * k, 'V', 0.001]);
}
for (const [id, grams] of stills) rows.push([id, '', '', 'mass', 'pot', 'weighed', grams, 'g']);
const facts = factsOf(rows, `kind,id,spoken
setup,elder,the Elder
setup,hazel,the Hazel
setup,rush,the Rush
setup,rules,my mark
setting,plain,plain
setting,eased,eased
workload,mash,the mash
part,bath,the bath
part,condenser,the condenser
part,still,still
part,coil,the coil
part,pot,the pot
part,room,the room
measure,temperature,temperature;degrees
measure,flow,flow
measure,noise,noise;decibels
measure,voltage,voltage;volts
measure,mass,weight;grams
`);
const heard = (text: string): Verdict[] => proof(new Source('script.md', text), facts).mentions.filter((m) => m.verdict !== 'not-a-claim');
const mash = '## The mash, plain\n\nThe Elder holds the bath at 52.4 degrees, the Hazel at 58.7 and the Rush at 71.9.\n\n';
const cases: [what: string, text: string, wrong: string][] = [
  ['what two changes are compared with', 'The Elder is 6.3 degrees cooler and 4.6 decibels quieter than the Hazel.', 'The Elder is 8.3 degrees cooler and 4.6 decibels quieter than the Hazel.'],
  ['nearly a whole multiple', 'The pot of the Rush has nearly three times the weight of the Elder.', 'The pot of the Rush has nearly four times the weight of the Elder.'],
  ['a row in an order that another quantity gives', 'In noise they come to 31.6, 36.2 and 43.7 decibels, going from the lightest pot to the heaviest.', 'In noise they come to 31.6, 32.6 and 43.7 decibels, going from the lightest pot to the heaviest.'],
  ['behind an aside', 'Eased, the Rush has a flow of 5.4 litres per hour, which is 23 percent more than before, and the Hazel 10.3.', 'Eased, the Rush has a flow of 5.4 litres per hour, which is 23 percent more than before, and the Hazel 13.0.'],
  ['what is written somewhere', 'The Elder has a flow of 12.6 litres per hour, fine until you look at the leaflet, where it says 14; that is 90 percent of a promise.', 'The Elder has a flow of 12.6 litres per hour, fine until you look at the leaflet, where it says 14; that is 95 percent of a promise.'],
  ['a step that was set', 'I eased them: the coil was turned down by seventy millivolts. The Elder makes 29.4 decibels so.', 'I eased them: the coil was turned down by seventy millivolts. The Elder makes 24.9 decibels so.'],
];

describe('what is carried over', () => {
  test.each(cases)('%#: %s', (_, text, wrong) => {
    expect(heard(mash + text).map((m) => `${m.text}: ${m.verdict}`).filter((v) => !v.endsWith(': agrees'))).toEqual([]);
    expect(heard(mash + wrong).map((m) => m.verdict)).toContain('disagrees');
  });

  test.each([
    'The mark stands 45 centimetres from the pot, and the noise is 31.6 decibels for the Elder.',
    'Once eased, the Rush drops the most, 8.8 degrees.',
    'Of all six combinations only one goes past 70 degrees.',
    'Seventy degrees is the most I put up with, and two of the three stay under it, the Elder and the Hazel.',
  ])('no alarm: %s', (text) => {
    expect(heard(mash + text).map((m) => m.verdict)).not.toContain('disagrees');
  });
});
