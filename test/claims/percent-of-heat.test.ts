// A percentage of a temperature is told to be one, and is no figure of anything else.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { facts } from './bench-record.js';

const said = (text: string) => proof(new Source('s.md', text), facts);

test.each([
  'On the wall stand the pump draws 12 watts at the slow setting and 18 at the brisk setting. The brisk setting is 11 percent cooler than the slow setting.',
  'On the wall stand the brisk setting is 11 percent cooler.',
  'The wall stand is 9 percent colder than the floor stand at the slow setting.',
])('%s', (text) => {
  const { mentions, findings } = said(text);
  const percent = mentions.filter((m) => m.text.endsWith('percent'));
  expect(percent.map((m) => m.verdict)).toEqual(['untied']);
  expect(findings.filter((f) => f.code === 'percent-of-temperature').map((f) => f.said)).toEqual(percent.map((m) => m.text));
  expect(mentions.filter((m) => m.verdict === 'disagrees')).toEqual([]);
});

test('what is quieter or slower by a percentage is none', () => {
  expect(said('On the wall stand the pump draws 33 percent less power at the slow setting than at the brisk setting.').findings.filter((f) => f.code === 'percent-of-temperature')).toEqual([]);
});
