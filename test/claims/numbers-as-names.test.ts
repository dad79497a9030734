// Settings that are called by what they are set to, said by the number alone or by where they lie; marks taken up again without a name.
// Each text is true; with its number changed it is not.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const at = (setting: string, measure: string, part: string, value: number, unit: string, workload = 'sanding', phase = 'load'): Row => ['orrel-mill', setting, workload, measure, part, phase, value, unit, 0.1];
const mill = factsOf([
  ...([30, 45, 60] as const).map((v): Row => ['orrel-mill', `volt-${v}`, '', 'voltage', 'motor', 'limit', v, 'V']),
  at('volt-30', 'noise', 'bench', 51.3, 'dB(A)'), at('volt-45', 'noise', 'bench', 57.8, 'dB(A)'), at('volt-60', 'noise', 'bench', 66.2, 'dB(A)'),
  at('volt-30', 'temperature', 'winding', 41.6, 'degC'), at('volt-45', 'temperature', 'winding', 53.9, 'degC'), at('volt-60', 'temperature', 'winding', 72.4, 'degC'),
  at('volt-30', 'power', 'wall', 88.4, 'W'), at('volt-45', 'power', 'wall', 141.7, 'W'), at('volt-60', 'power', 'wall', 233.1, 'W'),
  ['orrel-mill', '', '', 'temperature', 'winding', 'limit', 65, 'degC'],
  ['orrel-mill', '', 'priming', 'duration', 'pump', 'dry-to-wet', 14, 'min'], ['orrel-mill', '', 'priming', 'duration', 'pump', 'dry-to-60', 9, 'min'],
], `kind,id,spoken
setup,orrel-mill,Orrel;the mill
setting,volt-30,30 volts;thirty volts;the gentle step
setting,volt-45,45 volts;forty-five volts;the middle step
setting,volt-60,60 volts;sixty volts;the top step
workload,sanding,sanding
workload,priming,priming
measure,noise,noise;decibels
measure,temperature,temperature
measure,power,power;watts
measure,duration,time;minutes
part,winding,winding
part,bench,bench
part,wall,at the wall
`);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), mill).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

const cases: [what: string, before: string, text: string, wrong: string][] = [
  ['a label', '## Noise at the bench\n', 'Sixty: 66.2 decibels.', 'Sixty: 67.2 decibels.'],
  ['what does something', '## Power at the wall\n\nThirty volts draws 88.4 watts.', 'Forty-five adds 53.3.', 'Forty-five adds 55.3.'],
  ['figures, each at its setting', 'How warm does the winding get?', '41.6 degrees at thirty volts, 53.9 at forty-five, 72.4 at sixty.', '41.6 degrees at thirty volts, 59.3 at forty-five, 72.4 at sixty.'],
  ['settings, each with its figure', '## Power at the wall\n', 'At 30 it takes 88.4 watts, at 45 141.7.', 'At 30 it takes 84.8 watts, at 45 141.7.'],
  ['the top of the scale', '## Noise at the bench\n', 'It makes 51.3 decibels at the bottom end and 66.2 at the top.', 'It makes 51.3 decibels at the bottom end and 62.6 at the top.'],
  ['a mark in other words, and over it', '', 'For the winding I draw the line at 65 degrees. The top step is over by 7.4.', 'For the winding I draw the line at 65 degrees. The top step is over by 9.4.'],
  ['a mark that is cleared', '', 'For the winding I draw the line at 65 degrees. The middle step clears it by 11.1.', 'For the winding I draw the line at 65 degrees. The middle step clears it by 12.9.'],
  ['what is spare', '## The winding at sixty volts\n\nIts limit is 65 degrees.', 'On the gentle step it is at 41.6, so 23.4 spare.', 'On the gentle step it is at 41.6, so 32.4 spare.'],
  ['those that pass', '', 'For the winding I draw the line at 65 degrees. Two of the three pass.', 'For the winding I draw the line at 65 degrees. One of the three pass.'],
  ['a stretch by where it ends', '## Priming\n', 'It takes 9 minutes to sixty, and 14 to wet.', 'It takes 9 minutes to sixty, and 17 to wet.'],
];

describe('numbers as names', () => {
  test.each(cases)('%s', (_, before, text, wrong) => {
    expect(verdicts(`${before}\n${text}`).join()).not.toMatch(/disagrees|untied/);
    expect(verdicts(`${before}\n${text}`).at(-1)).toMatch(/agrees$/);
    expect(verdicts(`${before}\n${wrong}`).join()).toMatch(/: disagrees/);
  });
});
