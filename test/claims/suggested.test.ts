// What is suggested for a number that is wrong, or right with a wrong word beside it: in the writer's own form, and true.
import { describe, expect, test } from 'vitest';
import { heard as heater } from './heater-record.js';

const about = 'On the cold evening at ninety percent the Sundin pulls 902 watts at the wall.\n\n';

/** The sentence as it reads when what is suggested has been written into it. */
function mended(sentence: string): string {
  const text = about + sentence;
  const m = heater(text).find((x) => x.verdict === 'disagrees');
  if (!m) return 'nothing flagged';
  const at = m.suggest !== undefined ? { place: m.place, put: m.suggest } : m.turn && { place: m.turn.place, put: m.turn.suggest };
  if (!at) return 'nothing suggested';
  const lines = text.split('\n');
  const line = lines[at.place.line - 1]!;
  lines[at.place.line - 1] = line.slice(0, at.place.column - 1) + at.put + line.slice(at.place.endColumn - 1);
  expect(heater(lines.join('\n')).filter((x) => x.verdict === 'disagrees'), 'what is suggested is true').toEqual([]);
  return lines.slice(2).join('\n');
}

// Record: at ninety percent 902 W and 39.1 dB for the Sundin, 988 W and 36.3 dB for the Makerel; at thirty 310 W and 342 W.
describe.each([
  ['digits', 'At ninety percent the Makerel pulls 998 watts at the wall.', 'At ninety percent the Makerel pulls 988 watts at the wall.'],
  ['words', 'At ninety percent the Makerel pulls nine hundred ninety-eight watts at the wall.', 'At ninety percent the Makerel pulls nine hundred eighty-eight watts at the wall.'],
  ['a place after the point in words', 'At ninety percent the Sundin hums at thirty-one point nine decibels.', 'At ninety percent the Sundin hums at thirty-nine point one decibels.'],
  ['the unit, where the number is right in another', 'At ninety percent the Makerel pulls 988 kilowatts at the wall.', 'At ninety percent the Makerel pulls 988 watts at the wall.'],
  ['a symbol for a symbol', 'At ninety percent the Makerel pulls 988 kW at the wall.', 'At ninety percent the Makerel pulls 988 W at the wall.'],
  ['the unit of another quantity', 'At ninety percent the Sundin hums at 39.1 watts.', 'At ninety percent the Sundin hums at 39.1 decibels.'],
  ['the word that says which way', 'At ninety percent the Makerel is 2.8 decibels louder than the Sundin.', 'At ninety percent the Makerel is 2.8 decibels quieter than the Sundin.'],
  ['a verb that says which way', 'From thirty to ninety percent the wall power of the Sundin falls by 592 watts.', 'From thirty to ninety percent the wall power of the Sundin rises by 592 watts.'],
  ['times', 'At ninety percent the Sundin pulls 3.9 times the wall power that it pulls at thirty percent.', 'At ninety percent the Sundin pulls 2.9 times the wall power that it pulls at thirty percent.'],
  ['a part', 'At sixty percent the Sundin pulls a quarter of the wall power that it pulls at ninety percent.', 'At sixty percent the Sundin pulls two thirds of the wall power that it pulls at ninety percent.'],
  ['a part for which there is no word', 'At thirty percent the Sundin pulls a quarter of the wall power that it pulls at ninety percent.', 'At thirty percent the Sundin pulls thirty-four percent of the wall power that it pulls at ninety percent.'],
  ['a place', 'At ninety percent the Sundin is the second loudest of the two.', 'At ninety percent the Sundin is the loudest of the two.'],
] as const)('%s', (_, wrong, right) => {
  test('is put right', () => expect(mended(wrong)).toBe(right));
});

test('a number bounded by the words before it is put on the side of the bound that is true', () => {
  expect(mended('At ninety percent the Makerel pulls at least 1020 watts at the wall.')).toMatch(/at least 988 watts/);
  // 39.1 dB: at least 39, never at least 40.
  expect(mended('At ninety percent the Sundin hums at at least 43 decibels.')).toMatch(/at least 39 decibels/);
});

test('of readings that the words say about as well, that one is told of which the number is a slip', () => {
  const [m] = heater(`${about}At ninety percent the Makerel is at 988 watts, and the Sundin 68 below it.`).filter((x) => x.verdict === 'disagrees');
  expect(m).toMatchObject({ text: '68', suggest: '86', slip: 'two digits have changed places' });
});

test('where the size is wrong too, no word is said to be it', () => {
  const [m] = heater(`${about}At ninety percent the Makerel is 4.8 decibels louder than the Sundin.`).filter((x) => x.verdict === 'disagrees');
  expect(m?.turn).toBeUndefined();
  expect(m?.slip ?? '').not.toMatch(/direction/);
});
