// A change that is told with the very figure it is counted from: "0.7 more than the 7.5 it drew as delivered".
import { describe, expect, test } from 'vitest';
import { findMentions } from '../../pipeline/script/mentions.js';
import { tokens } from '../../pipeline/script/tokens.js';
import { readerFacts } from './reader-record.js';
import { rightAndWrong, type Told } from './right-and-wrong.js';

const told: Told[] = [
  ['the figure, with whose it is', 'Tuned, the Amsel copies 90.3 megabytes a second, which is 17 percent more than the N the Corvin manages.', '77.4', '71.4'],
  ['the change before it', 'Tuned, the Amsel copies 90.3 megabytes a second, which is N percent more than the 77.4 the Corvin manages.', '17', '27'],
  ['less, of time', 'Tuned, the Amsel needs 56.2 seconds for the import, 6 seconds less than the N it took from the box.', '62.4', '64.2'],
  ['with its unit, and who drew it', 'Tuned, the Dorn draws 8.2 watts, which is 55 percent more than the N watts drawn by the Corvin.', '5.3', '5.8'],
  ['up to a joint that belongs to the figure', 'The Dorn tuned draws 8.2 watts, N more than the 7.5 it needed with everything as delivered.', '0.7', '1.7'],
  ['what was set, against what was set', 'The Amsel tuned gets 1.25 volts, which is N percent more than the 1.2 volts allotted to it as delivered.', '4', '14'],
  ['how far short, in words', 'Tuned, the shell of the Corvin is at 45 degrees, eight short of the N the Dorn gets to.', '53', '57'],
  ['a fraction more', 'As delivered the Birke reaches 92 megabytes a second, a third more than the N of the Corvin.', '71', '76'],
  ['the thing that it is compared with stands before', 'Tuned, the shell of the Dorn is N degrees warmer than the 45 degrees of the Corvin, and the Amsel copies 90.3 megabytes a second.', '8', '6'],
];

describe('than a figure', () => {
  rightAndWrong(readerFacts, told);
  test.each(['6 grams less than the 48 of the other', 'half a volt more than 12 volts', 'eight short of the 53 it gets to', 'three more than 40'])('no hedge: %s', (text) => {
    expect(findMentions(tokens(text)).map((m) => m.hedge?.name)).toEqual([undefined, undefined]);
  });
  test('a hedge is still one', () => expect(findMentions(tokens('draws 6 watts and makes more than 48 decibels')).map((m) => m.hedge?.name)).toEqual([undefined, 'more than']));
});
