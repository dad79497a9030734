// A number in the form in which another was written.
import { describe, expect, test } from 'vitest';
import { Exact, unit } from '../../pipeline/quantities/index.js';
import { findMentions, tokens } from '../../pipeline/script/index.js';
import { inHalves, inUnit, numberInForm, unitTail } from '../../pipeline/wording/number.js';
import { rightPlace } from '../../pipeline/wording/rank.js';
import { rightRatio } from '../../pipeline/wording/ratio.js';
import type { Fact } from '../../pipeline/facts/index.js';

const mention = (text: string) => findMentions(tokens(text))[0]!;
const exact = (text: string): Exact => Exact.parse(text)!;
/** Of a fact nothing is looked at but its value, its unit and of how many keys it is. */
const fact = (value: string, id = 'x', of = 2): Fact => ({ value: exact(value), unit: unit(id), keys: Array.from({ length: of }, (_, i) => `k${i}`), readings: [], kind: 'ratio' }) as unknown as Fact;

describe.each([
  ['1,204 rpm', '1310', '1,310'], ['1204 rpm', '1310', '1310'], ['sixty-one degrees', '58', 'fifty-eight'], ['sixty one degrees', '58', 'fifty eight'], ['Sixty-one degrees', '58', 'Fifty-eight'],
  ['two hundred and six watts', '310', 'three hundred and ten'], ['two hundred six watts', '310', 'three hundred ten'],
])('%s', (text, value, put) => {
  test('tells another number as it tells its own', () => expect(numberInForm(mention(text), text, exact(value), 0)).toBe(put));
});

describe.each([
  ['1.05 millivolts', 'V', '1.05 volts'], ['1.05 mV', 'V', '1.05 V'], ['1.05mV', 'V', '1.05V'], ['one millivolt', 'V', 'one volt'], ['12 percent', 'points', '12 percentage points'], ['12%', 'points', '12 percentage points'],
  ['6 percentage points', '%', '6 percent'], ['1.9 megabytes a second', 'GB/s', '1.9 gigabytes a second'],
])('%s', (text, id, put) => {
  test(`in ${id}`, () => expect(inUnit(mention(text), text, unit(id))).toBe(put));
});

test('halves stay halves', () => {
  expect(inHalves(mention('three and a half degrees'), 'three and a half degrees', exact('5.5'))).toBe('five and a half degrees');
  expect(inHalves(mention('3 and a half minutes'), '3 and a half minutes', exact('4'))).toBe('4 minutes');
});

test('the unit of a number is what follows it', () => {
  expect(unitTail('sixty-one point five degrees')).toBe(' degrees');
  expect(unitTail('61.5°C')).toBe('°C');
  expect(unitTail('sixty-one')).toBe('');
});

describe.each([
  ['three times', '2.25', 'twice', false], ['3.7 times', '2.69', '2.7 times', false], ['six times', '9.02', 'nine times', false], ['two and a half times', '1.5', 'one and a half times', false],
  ['double', '3', 'three times', false], ['a third', '0.5', 'half', true], ['two thirds', '0.75', 'three quarters', true], ['a quarter', '0.43', 'forty-three percent', true],
])('%s', (text, value, put, part) => {
  // "twice" is said of 2.25 where "more than" stands before it.
  const m = { ...mention(`${text} of`), ...(value === '2.25' && { hedge: { name: 'more than', words: [], low: 1, high: 1.25, rounds: false } }) };
  test(`${value} in its form`, () => expect(rightRatio(m, text, { kind: 'ratio', fact: fact(value), sign: 0 }, part ? ' of it' : '')).toBe(put));
});

test('what is less than the other is no multiple of it', () => expect(rightRatio(mention('three times'), 'three times', { kind: 'ratio', fact: fact('0.4'), sign: 0 }, '')).toBeUndefined());

describe.each([
  ['second coolest', 1, 'coolest'], ['coolest', 2, 'second coolest'], ['Loudest', 3, 'Third loudest'], ['2nd-loudest', 3, '3rd-loudest'], ['hottest', 5, 'coolest'], ['third', 4, 'fourth'], ['most efficient', 2, 'second most efficient'],
])('%s', (text, place, put) => {
  test(`at place ${place} of five`, () => expect(rightPlace(mention(text), text, { kind: 'rank', fact: fact(String(place), '1', 5), sign: 0 })).toBe(put));
});
