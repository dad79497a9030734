// Multiples and fractions: of two figures that stand beside them, of a figure beside them, and of changes. Worked out by hand
// from the table below.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const names = `kind,id,spoken
setup,heron,the Heron
setup,plover,the Plover
setting,gentle,gentle;on gentle
setting,middle,middle;on middle
setting,full,full blast;on full blast
workload,orchard,the orchard run
part,coil,coil
part,case,case
part,wall,wall
part,fan,fan
part,tank,tank
measure,temperature,temperature;degrees
measure,power,power;watts
measure,noise,noise;decibels
measure,flow,flow
measure,duration,time
phase,load,under load
phase,idle,at idle
`;
//                        gentle middle full
const table: Record<string, Record<string, [number, number, number]>> = {
  heron: { power: [12, 18, 36], coil: [62, 52, 48], case: [40, 38.5, 37.5], noise: [26, 31, 40], flow: [1.1, 1.6, 2.53], time: [300, 240, 150] },
  plover: { power: [10, 15, 24], coil: [70, 60, 54], case: [41, 39.5, 37], noise: [28, 34, 41], flow: [0.9, 1.5, 1.98], time: [420, 330, 300] },
};
const units: Record<string, [measure: string, part: string, unit: string, spread: number]> = { power: ['power', 'wall', 'W', 0.1], coil: ['temperature', 'coil', 'degC', 0.1], case: ['temperature', 'case', 'degC', 0.1], noise: ['noise', 'fan', 'dB(A)', 0.1], flow: ['flow', 'tank', 'L/min', 0.01], time: ['duration', 'tank', 's', 1] };
const rows: Row[] = [];
for (const [setup, measures] of Object.entries(table)) {
  for (const [m, values] of Object.entries(measures)) ['gentle', 'middle', 'full'].forEach((s, k) => rows.push([setup, s, 'orchard', units[m]![0], units[m]![1], 'load', values[k]!, units[m]![2], units[m]![3]]));
  rows.push([setup, 'gentle', '', 'temperature', 'coil', 'idle', setup === 'heron' ? 32 : 30, 'degC', 0.1]);
  rows.push([setup, 'gentle', '', 'power', 'wall', 'idle', setup === 'heron' ? 2 : 5, 'W', 0.01]);
}
const facts = factsOf(rows, names);

/** The verdict on the last number of the script that is a multiple or a fraction of the words given. */
function verdict(script: string, words: string): string {
  const all = proof(new Source('script.md', script), facts).mentions;
  return all.filter((x) => x.text === words).at(-1)?.verdict ?? 'unseen';
}

/** Each with what makes it false in the place of the multiple. */
function each(list: readonly [script: string, words: string, wrong: string][]): void {
  test.each(list)('%s [%s, not %s]', (script, words, wrong) => {
    const at = script.lastIndexOf(words);
    expect([verdict(script, words), verdict(script.slice(0, at) + wrong + script.slice(at + words.length), wrong)]).toEqual(['agrees', 'disagrees']);
  });
}

describe('of two figures that stand beside it', () => {
  each([
    ['On gentle the Heron draws 12 watts at the wall, and on full blast 36, basically triple.', 'triple', 'double'],
    ['The Heron draws 36 watts on full blast and the Plover 24, so it takes one and a half times as much.', 'one and a half times', 'two and a half times'],
    ['On middle the fan in the Plover makes 34 decibels. On gentle the flow of the Plover is 0.9 litres a minute and on full blast 1.98, a ratio of 2.2.', '2.2', '2.6'],
    ['Flow in the Heron goes from 1.1 to 2.53 litres per minute, a factor of 2.3.', '2.3', '2.8'],
    ['The Heron took 300 seconds on gentle. 150 on full blast. Half of that.', 'Half', 'A third'],
    ['At idle the Plover pulls 5 watts, the Heron 2. 2.5 times as much.', '2.5 times', '3.5 times'],
    ['Three times the power, 36 watts instead of 12, halves the time of the Heron.', 'Three times', 'Four times'],
    ['From gentle to middle the coil of the Heron drops 10 degrees. From middle to full blast it drops another 4. So the first step is worth 2.5 times the second one.', '2.5 times', '3.5 times'],
    ['On gentle the Plover takes 420 seconds. The Heron saves 150 seconds between gentle and full blast. The Plover saves only 120, so the Heron gains 1.25 times as much.', '1.25 times', '1.6 times'],
  ]);
});

describe('of the figure beside it', () => {
  each([
    ['On full blast the Heron draws 36 watts, 1.5 times what the Plover pulls at the wall.', '1.5 times', '1.3 times'],
    ['On middle it is the turn of the Plover. It takes 330 seconds, or 1.38 times what the Heron needs.', '1.38 times', '1.6 times'],
    ['On full blast the flow in the Plover is 1.98 litres a minute, about four fifths of what the Heron manages.', 'four fifths', 'three fifths'],
  ]);
});

describe('of changes', () => {
  each([
    // 62 − 32 = 30 over 58 − … : (62 − 32) ÷ (70 − 30) = 0.75; (70 − 30) ÷ (62 − 32) = 1.33.
    ['On gentle the coil of the Plover climbs 1.33 times as far from idle as that of the Heron does.', '1.33 times', '1.66 times'],
    ['For the coil of the Heron, going from gentle to middle does 2.5 times as much as going from middle to full blast.', '2.5 times', '3.5 times'],
  ]);
  test.each([
    ['Against gentle, the Plover gains 1.08 litres of flow on full blast. The Heron gains 1.32 times as much as the Plover.', '1.32 times'],
  ])('%s', (script, words) => expect(verdict(script, words)).toBe('agrees'));
});

describe('multiplied', () => {
  each([
    ['Going from gentle to full blast multiplies the flow of the Heron by 2.3.', '2.3', '2.7'],
  ]);
});

describe('of what was given last', () => {
  each([
    // 5 ÷ 2 = 2.5
    ['At idle the Heron draws 2 watts at the wall and the Plover 5. So the Plover takes 2.5 times as much as the Heron for sitting about.', '2.5 times', '3.5 times'],
    // 1.08 of flow against 1.43: 0.76; the Heron's gain is 1.32 times the Plover's.
    ['Against gentle, the Plover gains 1.08 litres of flow on full blast. The Heron gains 1.32 times as much flow as the Plover.', '1.32 times', '1.8 times'],
  ]);
});

describe('of the quantity that the words name', () => {
  each([
    ['## On gentle\nThe Heron takes 300 seconds.\nThe Plover takes 1.4 times as long as the Heron.', '1.4 times', '2.1 times'],
    ['From gentle to full blast, the Heron makes 1.43 litres a minute more. That is three times the power for 2.3 times the flow.', '2.3 times', '3.3 times'],
  ]);
});

test.each([
  // 31 and 40 decibels; 0.6 and 0.5 litres.
  ['The fan in the Heron makes 31 decibels on middle and 40 on full blast, nearly three times as loud.', 'three times'],
  ['On gentle the Heron draws 12 watts and on full blast 36, and the flow is 2.3 times as high.', '2.3 times'],
  ['The Plover takes 420 seconds on gentle, 330 on middle and 300 on full blast, five sevenths of the first.', 'five sevenths'],
  ['From gentle to middle the Plover gains 0.6 litres per minute, and the Heron 0.5, so the Plover gains a fifth more.', 'a fifth'],
])('%s: no multiple of the numbers', (script, words) => expect(verdict(script, words)).not.toBe('disagrees'));

test('each of two multiples has its own quantity', () => expect(verdict('From gentle to full blast, the Heron makes 1.43 litres a minute more. That is three times the power for 2.3 times the flow.', 'three times')).toBe('agrees'));

describe('doubled', () => {
  each([
    ['Going from gentle to full blast triples the power of the Heron.', 'triples', 'doubles'],
    ['The power of the Heron doubles from middle to full blast.', 'doubles', 'triples'],
  ]);
});
