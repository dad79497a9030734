// What refers back: a claim taken back, the former and the latter, a place that it has now, what it used before. Each true
// sentence must agree throughout, and with its one word or number turned it must not.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

// Plate °C, fan dB(A), wall W on the boil, in spring and in autumn.
const plates: [string, [number, number, number], [number, number, number], number][] = [
  ['ostrel', [61.2, 41.3, 310], [64.4, 43.7, 341], 400], ['bramwick', [66.5, 44.6, 355], [63.1, 45.1, 340], 400],
  ['caddow', [70.1, 36.9, 402], [71, 37.2, 411], 450], ['dunlin', [75.8, 39, 428], [79.9, 39.8, 465], 500],
];
const rows: Row[] = plates.flatMap(([id, spring, autumn, limit]): Row[] => [
  ...([['spring', spring], ['autumn', autumn]] as const).flatMap(([season, [t, n, w]]): Row[] => [
    [id, season, 'boil', 'temperature', 'plate', 'load', t, 'degC'], [id, season, 'boil', 'noise', 'fan', 'load', n, 'dB(A)'], [id, season, 'boil', 'power', 'wall', 'load', w, 'W'],
  ]),
  [id, '', '', 'power', 'wall', 'limit', limit, 'W'],
]);
const names = `kind,id,spoken
setup,ostrel,the Ostrel
setup,bramwick,the Bramwick
setup,caddow,the Caddow
setup,dunlin,the Dunlin
setting,spring,in spring;spring
setting,autumn,in autumn;autumn
workload,boil,the boil
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,power,power;watts;draw
part,plate,the plate
part,fan,the fan
part,wall,the wall
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', `# Hotplates\n\n${text}\n`), facts).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

const cases: [what: string, text: string, right: string, wrong: string][] = [
  ['one figure and its percentage', 'On the boil, the Ostrel went from 310 to 341 watts, a rise of N or 10 percent.', '31', '34'],
  ['its percentage', 'On the boil, the Dunlin is up from 428 to 465 watts, which is 37 watts or just over N percent.', '8.6', '11'],
  ['the former and the latter, in percent', 'On the boil, the Dunlin went from 428 to 465 watts and the Ostrel from 310 to 341 watts. As a percentage that is N for the former and 10 for the latter.', '8.6', '12.6'],
  ['from end to end', 'On the boil in autumn, between the coolest and the hottest there are N degrees.', '16.8', '19.8'],
  ['what goes on, whatever was hoped', 'I hoped that the Dunlin would be cooler in autumn on the boil; instead it has gone from N to 79.9 degrees.', '75.8', '71.8'],
];

describe('what refers back', () => {
  test.each(cases)('%s', (_, text, right, wrong) => {
    expect(verdicts(text.replace('N', right)).filter((v) => !v.endsWith(': agrees'))).toEqual([]);
    expect(verdicts(text.replace('N', wrong)).join()).toContain('disagrees');
  });

  test.each([
    'On the boil in autumn, last time I said that the Dunlin was 3 degrees behind the Caddow. It was not; I had copied the wrong row.',
    'On the boil in autumn, the box promised that the Caddow draws 300 watts. That is not true.',
    'On the boil in autumn, I guessed that the Ostrel would be loudest with 50 decibels. Wrong.',
  ])('what is taken back claims nothing: %s', (text) => expect(verdicts(text)).toEqual([]));

  test.each([
    ['a place that is had now', 'On the boil in autumn, the Ostrel, whose lead was 5.3 degrees in spring, is second at 64.4 degrees.', 'lowest of 4'],
    ['it, and not what is named after', 'On the boil in autumn, the Dunlin draws 465 watts. It was the thirstiest in spring, and the thriftiest, the Bramwick, drew 340 in autumn.', 'highest of 4'],
  ])('%s', (_, text, why) => {
    const found = proof(new Source('script.md', text), facts).mentions;
    expect(found.find((m) => m.kind === 'rank')?.why).toBe(why);
    expect(found.map((m) => m.verdict)).not.toContain('disagrees');
  });

  test('the same share of another', () => {
    expect(verdicts('On the boil, the Dunlin sat at 86 percent of its 500 watt limit in spring, in autumn it is at 93, so that is 7 points more.').filter((v) => !v.endsWith(': agrees'))).toEqual([]);
  });

  test.each([
    ['a step like the one before, neither end named', 'On the boil the Ostrel draws 310 watts in spring and 341 in autumn, 31 more. The Dunlin goes from 428 to 465.'],
    ['what it was becomes what it is', 'On the boil the Ostrel draws 310 watts in spring and 341 in autumn. The Dunlin draws 428 watts in spring. The Caddow was at 402 watts, which became 411 watts.'],
    ['a multiple of a change that was said again in percent', 'On the boil the Dunlin gains 37 watts from spring to autumn, or 8.6 percent, four times what the Caddow gained.'],
    ['how far two lie apart, of which one is not known', 'On the boil in autumn the Caddow makes 37.2 decibels, and between that and the windy one there are 11.4 decibels.'],
  ])('no alarm at %s', (_, text) => expect(verdicts(text).join()).not.toContain('disagrees'));

  test('no such multiple', () => {
    expect(verdicts('On the boil the Dunlin gains 37 watts from spring to autumn, or 8.6 percent, nine times what the Caddow gained.')).toContain('nine times: disagrees');
  });

  test('what is only denied is still a claim', () => {
    expect(verdicts('On the boil in autumn, the Dunlin is at 75 degrees. It is not quiet at 39.8 decibels.')).toContain('75 degrees: disagrees');
  });

  test('what people take off a thing is what that thing loses', () => {
    expect(verdicts('On the boil, autumn takes 15 watts off the Bramwick’s draw.')).toEqual(['15 watts: agrees']);
    expect(verdicts('On the boil, autumn takes 25 watts off the Bramwick’s draw.')).toEqual(['25 watts: disagrees']);
  });
});
