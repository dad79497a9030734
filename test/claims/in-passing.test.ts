// What people say in passing: how far apart two figures lie, where one came from, where a change ends, the same of another, a
// slip put right at once, a name short of its noun.
import { describe, expect, test } from 'vitest';
import { rightAndWrong, verdicts } from './right-and-wrong.js';
import { stove } from './stove-record.js';

rightAndWrong(stove, [
  ['two ends, then how far apart', '## In the hut\n\nAs it comes, baking, the voltage goes from 5.241 in the shed to 5.196 volts, so N millivolts.', '45', '54'],
  ['two against each other, then the share', '## Fierce\n\nBaking on fierce, the blower turns at 1,230 in the shed against 1,510 in the hut, so N percent.', '23', '28'],
  ['an afterthought', '## In the shed\n\nAs it comes, baking, it makes 36.4 decibels. In the hut it is 40.7, up from N.', '36.4', '34.6'],
  ['where a change ends', '## In the shed\n\nAs it comes, baking, the lid is at 112 and the base at 131 degrees. On gentle the base drops fourteen, to N.', '117', '101'],
  ['the same of another', '## In the shed\n\nGoing from plain to fierce, baking, the base gains 15 degrees. For the grate it\'s N.', '12', '18', 'open'],
  ['two summed up', '## As it comes\n\nBaking, it makes 36.4 decibels in the shed and 40.7 in the hut, so that\'s N decibels more.', '4.3', '6.4'],
]);

describe('a slip put right at once', () => {
  const shed = '## In the shed\n\nAs it comes, baking, ';
  test.each([
    'the lid is at 121, no, 112 degrees.',
    'the lid is at 121, sorry, 112.',
    'it makes 34.6, I mean 36.4 decibels.',
    'the blower does 810, wait, make that 910 rpm.',
  ])('%s', (text) => {
    const said = verdicts(stove, shed + text).filter((v) => !v.endsWith('not-a-claim'));
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/: agrees$/);
  });
});

rightAndWrong(stove, [
  ['shares of a limit told between', '## In the shed\n\nBaking, the coil takes 412 watts as it comes and 318 on gentle, and with a limit of 430, that\'s 96 and N percent.', '74', '79'],
  ['the limit in a sentence of its own', '## As it comes\n\nBaking, the coil takes 412 watts in the shed and 409 in the hut. The limit\'s 430 for both, so that\'s N and 95 percent.', '96', '99'],
  ['a bare change right behind a figure', '## In the shed\n\nAs it comes, baking, the lid is at 112 degrees. On gentle it drops to 101, so N less than before.', '11', '15'],
  ['the changes of another, in turn', '## From shed to hut\n\nAs it comes, baking, the hut adds 12 degrees on the lid and 16 on the base. On gentle it\'s 8 and N.', '11', '14'],
]);
