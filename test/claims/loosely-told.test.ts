// What leaves open by the way people talk just what would make it wrong is no alarm; what is said outright still is.
import { describe, expect, test } from 'vitest';
import { heard } from './heater-record.js';

const said = (text: string): string[] => heard(`In the cold evening.\n\n${text}`).map((m) => `${m.text}: ${m.verdict}`);

describe('counts of what was tested', () => {
  test('nine of whatever they are is no alarm where there are three steps', () => {
    expect(said('That makes nine settings in all.')).not.toContainEqual(expect.stringMatching(/disagrees/));
  });
  test('one too many is', () => {
    expect(said('That makes four settings in all.')).toEqual(['four: disagrees']);
  });
  test('and so is any number of those that are ranked', () => {
    expect(said('At ninety percent the Sundin is the loudest of all nine.')).toContain('nine: disagrees');
  });
});

test.each([
  'At ninety percent the wall power of the Sundin is 91 percent of that of the Makerel, and at sixty percent 1,598.',
  'From sixty to ninety percent the Sundin gains 51 percent at the wall, and the Makerel 3,407.',
])('a thousand is told of something else than percents: %s', (text) => {
  expect(heard(`In the cold evening.\n\n${text}`).find((m) => /^\d,/.test(m.text))!.kind).not.toMatch(/percent/);
});

describe('who is ranked, by how many they are', () => {
  test('of all six combinations', () => {
    expect(said('At thirty percent the Makerel hums at 25 decibels, the quietest of all six.')).toEqual(['25 decibels: agrees', 'quietest: agrees', 'six: agrees']);
    expect(said('At thirty percent the Makerel hums at 25 decibels, the second quietest of all six.')).toContain('second quietest: disagrees');
  });
  test('a figure that opens the sentence keeps nobody out', () => {
    expect(said('At 25 decibels the Makerel is the quietest of all six combinations.')).toContain('quietest: agrees');
    expect(said('At 25 decibels the Makerel is the second quietest of all six combinations.')).toContain('second quietest: disagrees');
  });
});

describe('ends of a step, and the step in percent', () => {
  test('with a word that only says how closely', () => {
    expect(said('From sixty to ninety percent the wall power of the Sundin climbs from 598 to 902 watts, nearly 51 percent, and you hear it.')).toEqual(['598: agrees', '902 watts: agrees', '51 percent: agrees']);
    expect(said('From sixty to ninety percent the wall power of the Sundin climbs from 598 to 902 watts, nearly 55 percent, and you hear it.')).toContain('55 percent: disagrees');
  });
  test('where the sentence says from which to which it goes', () => {
    expect(said('From the lowest step to wide open the Sundin goes from 310 to 902 watts at the wall and from 27.2 to 39.1 decibels.')).toEqual(['310: agrees', '902 watts: agrees', '27.2: agrees', '39.1 decibels: agrees']);
    expect(said('From the lowest step to wide open the Sundin goes from 342 to 902 watts at the wall.')).toContain('342: disagrees');
  });
  test('after a percentage, too', () => {
    expect(said('At ninety percent the wall power of the Sundin is nine percent below that of the Makerel, because it goes from 988 to 902.')).toContain('902: agrees');
    expect(said('At ninety percent the wall power of the Sundin is nine percent below that of the Makerel, because it goes from 988 to 920.')).toContain('920: disagrees');
  });
});

test('what a share is of stands behind it', () => {
  expect(said('At ninety percent the noise of the Makerel is 96 percent of its 38.')).toEqual(['96 percent: agrees', '38: agrees']);
  expect(said('At ninety percent the noise of the Makerel is 96 percent of its 36.')).toContain('36: disagrees');
});

test('two of whom one is the quietest', () => {
  expect(said('At thirty percent the Makerel and the Sundin are the quietest of the six, at 25 and 27.2 decibels.')).not.toContainEqual(expect.stringMatching(/disagrees/));
});
