// Figures in the wrong order, and words of direction that say the other way: each number may be right for something else. Values are
// worked out by hand from the rows below: four invented radios at two distances.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const values: Record<string, [number, number, number, number]> = {
  // rate in Mbit/s, shell in °C, power in W, and mass in g, which has no distance
  'larch/near': [812, 41.5, 7.2, 420], 'larch/far': [336, 44.0, 8.9, 420],
  'rowan/near': [745, 38.2, 6.4, 355], 'rowan/far': [402, 40.1, 7.7, 355],
  'hazel/near': [690, 47.3, 9.5, 610], 'hazel/far': [288, 49.9, 11.8, 610],
  'alder/near': [903, 52.6, 12.1, 548], 'alder/far': [451, 55.4, 14.6, 548],
  'juniper/near': [580, 43.1, 5.8, 300], 'juniper/far': [214, 45.0, 6.7, 300],
};
const rows: Row[] = Object.entries(values).flatMap(([at, [rate, shell, power, mass]]): Row[] => {
  const [setup, setting] = at.split('/') as [string, string];
  return [[setup, setting, 'stream', 'rate', 'link', 'load', rate, 'Mbit/s', 2], [setup, setting, 'stream', 'temperature', 'shell', 'load', shell, 'degC', 0.1], [setup, setting, 'stream', 'power', 'wall', 'load', power, 'W', 0.1], ...(setting === 'near' ? [[setup, '', '', 'mass', 'box', 'weighed', mass, 'g'] as Row] : [])];
});
const facts = factsOf(rows, `kind,id,spoken
setup,larch,the Larch
setup,rowan,the Rowan
setup,hazel,the Hazel
setup,alder,the Alder
setup,juniper,the Juniper
setting,near,near;next to it
setting,far,far;in the far room
workload,stream,the stream
measure,rate,rate;megabits
measure,temperature,temperature;degrees
measure,power,power;watts
measure,mass,mass;grams
part,shell,shell
part,wall,wall
`);
export const said = (text: string): Verdict[] => proof(new Source('script.md', text), facts).mentions;

const near = 'Everything in this part was done next to it, with the stream running.\n';
const cases: [what: string, before: string, right: string, wrong: string][] = [
  ['a verb before what is changed', near, 'Going far lowers the rate of the Larch from 812 to 336 megabits per second.', 'Going far lowers the rate of the Larch from 336 to 812 megabits per second.'],
  ['the way said after the two ends', near, 'In the far room the Larch goes from 7.2 to 8.9 watts, up by 24 percent.', 'In the far room the Larch goes from 8.9 to 7.2 watts, up by 24 percent.'],
  ['the two ends after the change', near, 'In the far room the shell of the Rowan is 1.9 degrees warmer, 40.1 after 38.2.', 'In the far room the shell of the Rowan is 1.9 degrees cooler, 40.1 after 38.2.'],
  ['each right for the other', near, 'The Larch draws 7.2 watts and the Juniper 5.8.', 'The Larch draws 5.8 watts and the Juniper 7.2.'],
  ['each right for the other, beside places', near, 'By rate, first is the Alder, with 903 megabits per second. Second, the Larch, with 812, and third, the Rowan, with 745.', 'By rate, first is the Alder, with 903 megabits per second. Second, the Larch, with 745, and third, the Rowan, with 812.'],
  ['one against the other of the comparison before', near, 'The Alder draws 4.9 watts more than the Larch. In the far room it is 14.6 against 8.9.', 'The Alder draws 4.9 watts more than the Larch. In the far room it is 8.9 against 14.6.'],
  ['the same step goes on', near, 'In the far room the shell of the Hazel is 2.6 degrees warmer than near, and its power goes up by 2.3 watts.', 'In the far room the shell of the Hazel is 2.6 degrees warmer than near, and its power goes down by 2.3 watts.'],
  ['against the figure just given', near, 'The Hazel weighs 610 grams, and the Alder is 62 grams lighter.', 'The Hazel weighs 610 grams, and the Alder is 62 grams heavier.'],
  ['which way lies the median', near, 'The median power is 7.2 watts, and the Rowan stays 0.8 below it.', 'The median power is 7.2 watts, and the Rowan stays 0.8 above it.'],
];

describe('order and direction', () => {
  test.each(cases)('%s', (_, before, right, wrong) => {
    expect(said(before + right).filter((m) => m.verdict === 'disagrees').map((m) => `${m.text}: ${m.why}`)).toEqual([]);
    expect(said(before + right).filter((m) => m.verdict === 'agrees').length).toBeGreaterThan(0);
    expect(said(before + wrong).map((m) => m.verdict)).toContain('disagrees');
  });
});
