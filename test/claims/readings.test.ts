// Each kind of statement on a small record: the true sentence agrees and rests on the right readings; with the number, the
// direction or the name changed it does not. Expected values are worked out by hand from the table in bench-record.ts.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';

const intro = 'Now the pump on the wall stand, with the brisk setting.\n';
const brisk = 'wall-stand/brisk/mill';

const truths: [what: string, sentence: string, from: string[]][] = [
  ['a value', 'The coolant settles at 36.5 degrees.', [`${brisk}/temperature/coolant/load`]],
  ['a value in words', 'The block is at fifty-five degrees.', [`${brisk}/temperature/block/load`]],
  ['a value with its setting', 'With the slow setting the pump makes 24 decibels.', ['wall-stand/slow/mill/noise/pump/load']],
  ['a difference to a named setting', 'The block is 7 degrees cooler than with the slow setting.', [`${brisk}/temperature/block/load`, 'wall-stand/slow/mill/temperature/block/load']],
  ['a percentage of a named base', 'The pump draws 50 percent more power than with the slow setting.', [`${brisk}/power/pump/load`, 'wall-stand/slow/mill/power/pump/load']],
  ['a difference to the other stand', 'The coolant is 3 degrees cooler than on the floor stand.', [`${brisk}/temperature/coolant/load`, 'floor-stand/brisk/mill/temperature/coolant/load']],
  ['a hedged value', 'Noise is just under 32 decibels.', [`${brisk}/noise/pump/load`]],
];

describe('true sentences agree, for the right reason', () => {
  test.each(truths)('%s', (_, sentence, from) => {
    const [m, ...rest] = said(intro + sentence);
    expect(rest).toEqual([]);
    expect([m!.verdict, [...m!.from].sort()]).toEqual(['agrees', [...from].sort()]);
  });
});

const slips: [what: string, sentence: string][] = [
  ['another number', 'The coolant settles at 37.5 degrees.'],
  ['the last place', 'The coolant settles at 36.6 degrees.'],
  ['another number in words', 'The block is at fifty-seven degrees.'],
  ['the wrong direction', 'The block is 7 degrees warmer than with the slow setting.'],
  ['the wrong base of a percentage', 'The pump draws 33 percent more power than with the slow setting.'],
  ['another unit', 'The pump draws 18 volts of power.'],
  ['the unit scale', 'The pump draws 18 kilowatts of power.'],
  ['the wrong side of a hedge', 'Noise is just over 32 decibels.'],
];

describe('a slip is an alarm at its place', () => {
  test.each(slips)('%s', (_, sentence) => {
    const [m] = said(intro + sentence);
    expect(m!.verdict).toBe('disagrees');
    expect(m!.place.line).toBe(2);
    expect(m!.recorded).toBeTruthy();
  });
});

test('names that pair with numbers decide, not what would fit', () => {
  const right = said(`${intro}The coolant and the block reach 36.5 and 55 degrees respectively.`);
  expect(right.map((m) => m.verdict)).toEqual(['agrees', 'agrees']);
  const swapped = said(`${intro}The coolant and the block reach 55 and 36.5 degrees respectively.`);
  expect(swapped.map((m) => m.verdict)).toEqual(['disagrees', 'disagrees']);
});

test('a place in a ranking is checked against the set it names', () => {
  expect(said('On the wall stand, the slow setting is the quietest of the three settings.').map((m) => m.verdict)).toContain('agrees');
  const [m] = said('On the wall stand, the slow setting is the loudest of the three settings.');
  expect(m!.verdict).toBe('disagrees');
});

test('the suggestion keeps the form of the writer', () => {
  expect(said(`${intro}The block is at fifty-seven degrees.`)[0]!.suggest).toBe('fifty-five degrees');
  expect(said(`${intro}The coolant settles at 37.5 degrees.`)[0]!.suggest).toBe('36.5 degrees');
});

test('what the sentences before established carries on', () => {
  const list = said(`${intro}The coolant settles at 36.5 degrees.\nWith the slow setting it is at 41.0.`);
  expect(list.map((m) => [m.verdict, m.from[0]])).toEqual([['agrees', `${brisk}/temperature/coolant/load`], ['agrees', 'wall-stand/slow/mill/temperature/coolant/load']]);
});

test.each([
  'The stand cost 90 dollars.', 'We filmed at 2560 by 1440 pixels.', 'This is part 12 of the series.', 'It has 3 screws and 16 gigabytes of memory.', 'See you on the 14th of June.', 'Give it a second thought.',
])('no claim: %s', (sentence) => {
  expect(said(intro + sentence)).toEqual([]);
});

test('the same input gives the same verdicts, whatever was proofed in between', () => {
  const text = `${intro}The coolant settles at 36.5 degrees. That is 3 degrees cooler than on the floor stand.`;
  const plain = (): unknown => said(text).map((m) => [m.place, m.verdict, m.facts, m.from, m.recorded, m.why]);
  const first = plain();
  said('On the floor stand, flat out, the block is at 56 degrees.');
  expect(plain()).toEqual(first);
});
