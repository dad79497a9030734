// Shares of something and points between them, on a small record: what each is of is worked out by hand from shelf-record.ts.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';
import { shelf } from './shelf-record.js';

const percentages = (script: string) => proof(new Source('script.md', script), shelf).mentions.filter((m) => /percent|points/.test(m.text) || m.mention.unit?.id === '%' || /^percent_of/.test(m.facts[0] ?? '')).map((m) => m.verdict);

// Garrow: reads 212.4 with two drives, 348.0 with four, rated 360; writes 187.6 and 301.2. Lintel: 224.0 and 391.5, rated 400; 171.9 and 322.7.
const intro = 'Copying, then.\n';
const stated: [what: string, sentence: string, replace: [true_: string, wrong: string][]][] = [
  ['of a promise, of the figure just said', 'With four drives the Garrow reads 348.0 megabytes a second, and that is 97 percent of what it is built for.', [['97', '92']]],
  ['of a rating, as a sentence of its own', 'With two drives the Lintel reads 224.0 megabytes a second. That is 56 percent of its rating.', [['56', '61']]],
  ['of a number that is said', 'With two drives the Lintel reads 224.0 megabytes a second, and with four drives the Garrow makes 97 percent of its 360.', [['97', '93']]],
  ['of what was just said to be promised', 'The label of the Lintel says 400 megabytes a second for reading, so with four drives we are given 98 percent of what it promises.', [['98', '93']]],
  ['of the figure before', 'With four drives the Lintel gets 391.5 megabytes a second reading and 322.7 writing, or 82 percent of that.', [['82', '87']]],
  ['of the same in another part', 'With four drives the Garrow gets 301.2 megabytes a second writing, so 87 percent of its reads.', [['87', '81']]],
  ['measured against what is named first', 'Measured against the rating, reading with two drives, the Garrow delivers 59 percent and the Lintel 56, a gap of 3 percentage points.', [['59', '64'], ['56,', '51,'], ['3 percentage points', '3 percent']]],
  ['what is left after a loss', 'Against four drives, the Garrow loses 39 percent of its reading throughput with two drives, so it keeps 61 percent.', [['keeps 61', 'keeps 67']]],
  ['after a figure without a unit', 'With two drives the Garrow writes at 187.6, only 62 percent of what it does with four drives.', [['62', '67']]],
  ['out of a hundred', 'With two drives the Garrow reads 212.4 megabytes a second, so out of every hundred megabytes a second with four drives it keeps 61.', [['61', '67']]],
  ['the comparison just made, in another quantity', 'With two drives the Garrow draws 65 percent of what it does with four drives, and gets 61 percent of the reading throughput.', [['61', '67']]],
  ['a change just said, of itself', 'Going from two drives to four drives saves the Garrow 31 minutes, which is 38 percent of its time.', [['38', '33']]],
  ['of the same in another part, at which', 'With four drives the Lintel gets 322.7 megabytes a second writing, 82 percent of the rate at which it reads.', [['82', '88']]],
  ['of a figure measured elsewhere', 'With two drives the Garrow draws 24.8 watts, 65 percent of the 38.4 it needs with four drives.', [['65', '59']]],
  ['of another part than the one named', 'With four drives the Lintel writes at 82 percent of its reading rate, the Garrow at 87, so four points more.', [['82', '88'], ['87', '93'], ['four points', 'four percent']]],
  ['from an earlier share', 'The Lintel with four drives is at 98 percent of its rating for reading, up from 56 percent with two drives, so 42 points better.', [['56', '51'], ['42 points', '42 percent']]],
  ['the same of another, elsewhere', 'With two drives the Lintel reads 105 percent of what the Garrow does, where with four drives it had 113, so it has lost 7 points.', [['113', '118'], ['7 points', '7 percent']]],
];

describe('what a share is of is read from the words', () => {
  test.each(stated)('%s', (_, sentence, slips) => {
    expect(new Set(percentages(intro + sentence))).toEqual(new Set(['agrees']));
    for (const [right, wrong] of slips) {
      expect(sentence).toContain(right);
      expect(percentages(intro + sentence.replace(right, wrong)), wrong).toContain('disagrees');
    }
  });
});

test('what a share is of ends before the verb', () => {
  expect(percentages('Only 61 percent of the reading throughput is left to the Garrow with two drives.')).toEqual(['agrees']);
});

describe('points between two percentages', () => {
  test.each([
    ['two changes, each of its own', 'With four drives instead of two drives, the Garrow reads 64 percent faster and the Lintel 75, so they are 11 points apart.', '11 points', '11 percent'],
    ['against the same of what is named', 'With four drives instead of two drives, the Garrow writes 61 percent faster, 27 points less than the Lintel.', '27 points', '27 percent'],
  ])('%s', (_, sentence, right, wrong) => {
    expect(percentages(intro + sentence)).not.toContain('disagrees');
    expect(percentages(intro + sentence).at(-1)).toBe('agrees');
    expect(percentages(intro + sentence.replace(right, wrong)).at(-1)).toBe('disagrees');
  });
});

// The bare plate was measured in a draught alone; 44, 52 and 64 W. One mill on three settings: 90, 120 and 100 g/min stand for any rate.
const watts = (setup: string, setting: string, value: number): Row => [setup, setting, 'soak', 'power', 'heater', 'load', value, 'W', 0.1];
const plates = factsOf([watts('cowl', 'still', 44), watts('cowl', 'draught', 52), watts('plate', 'draught', 64)], `kind,id,spoken
setup,cowl,the Cowl
setup,plate,the bare plate
setting,still,still;in still air
setting,draught,in the draught
part,heater,heater
measure,power,power;watts
`);
const rate = (setting: string, value: number): Row => ['osk', setting, 'rye', 'throughput', 'chute', 'load', value, 'MB/s', 0.1];
const mill = factsOf([rate('slow', 90), rate('middle', 120), rate('fast', 100)], `kind,id,spoken
setup,osk,the Osk
setting,slow,on slow
setting,middle,on middle
setting,fast,on fast
part,chute,chute
measure,throughput,throughput;megabytes a second
`);

test.each([
  ['what was measured in one setting alone', plates, 'In still air the Cowl gets by on 44 watts, 69 percent of the bare plate.', '69', '63'],
  ['still, where a setting is called so', plates, 'In the draught, the Cowl still draws 81 percent of the power of the bare plate.', '81', '86'],
  ['of the best of the settings', mill, 'On slow, the throughput of the Osk is 75 percent of the best value.', '75', '81'],
])('%s', (_, facts, sentence, right, wrong) => {
  const verdicts = (s: string) => proof(new Source('script.md', s), facts).mentions.filter((m) => m.text.includes('percent')).map((m) => m.verdict);
  expect(verdicts(sentence)).toEqual(['agrees']);
  expect(verdicts(sentence.replace(right, wrong))).toEqual(['disagrees']);
});

// Efficiency of three adapters, and a duty that is set: 91.2, 88.4 and 84.9 percent lie 6.3 points apart; 60 and 35 percent, 25.
const adapter = (setup: string, value: number): Row => [setup, '', 'half', 'efficiency', 'adapter', 'load', value, '%', 0.1];
const adapters = factsOf([adapter('osk', 91.2), adapter('pell', 88.4), adapter('rusk', 84.9), ['plan', 'fast', '', 'duty', 'blower', 'target', 60, '%'], ['plan', 'slow', '', 'duty', 'blower', 'target', 35, '%']], `kind,id,spoken
setup,osk,the Osk
setup,pell,the Pell
setup,rusk,the Rusk
setup,plan,the plan
setting,fast,fast
setting,slow,slow
part,adapter,adapter
part,blower,blower
measure,efficiency,efficiency
measure,duty,blower duty;duty
`);

test.each([
  ['from end to end', 'The efficiency of the Osk is 91.2 percent, that of the Pell 88.4. Best to worst, that is 6.3 points.', '6.3 points', '7.3 points'],
  ['between what is spoken of and what is named after', 'Now on to fast. Take 25 points off the duty, so switch to slow.', '25 points', '25 percent'],
])('points %s', (_, sentence, right, wrong) => {
  const last = (s: string) => proof(new Source('script.md', s), adapters).mentions.filter((m) => /points|percent/.test(m.text)).at(-1)!.verdict;
  expect(last(sentence)).toBe('agrees');
  expect(last(sentence.replace(right, wrong))).toBe('disagrees');
});

// What a charger takes from the wall and what the pack holds: 40 of 50 Wh are 80 percent, 40 of 46 are 87.
const charge = (setting: string, value: number): Row => ['osk', setting, 'fill', 'energy', 'wall', 'whole', value, 'Wh', 0.1];
const charger = factsOf([charge('quick', 50), charge('slow', 46), ['osk', '', '', 'energy', 'pack', 'rated', 40, 'Wh']], `kind,id,spoken
setup,osk,the Osk
setting,quick,quick
setting,slow,slow
part,wall,the wall
part,pack,the pack
measure,energy,energy;watt hours
`);

test('of what another part was said to have', () => {
  const verdicts = (said: number) => proof(new Source('script.md', `On quick the Osk took 50 watt hours from the wall. Of what came from the wall, ${said} percent went into the pack.`), charger).mentions.map((m) => m.verdict);
  expect(verdicts(80)).toEqual(['agrees', 'agrees']);
  expect(verdicts(86)).toEqual(['agrees', 'disagrees']);
});
