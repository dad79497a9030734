// Timed transcripts: WebVTT, and plain text with [m:ss] marks. Places are those of the file as it stands.
import { describe, expect, test } from 'vitest';
import { read, verdicts } from './bench.js';

const vtt = `WEBVTT - the bench

STYLE
::cue { font-size: 48px }

NOTE recorded on day 12

1
00:00:01.000 --> 00:00:04.500 align:start position:10%
On the bench at stock the core temperature is 67 degrees
under load and 38 degrees at idle.

second-cue
00:04.500 --> 00:09.000
<v Ada>On the bench at stock</v> the board draws <00:00:06.250><c.loud>205 watts</c> under load.

3
01:00:09.000 --> 01:00:12.000
R&amp;D: the undervolt draws 205 watts under load.
`;

describe('WebVTT', () => {
  const { mentions } = read(vtt);
  test('cue numbers, times, settings, styles and notes state nothing and are not read', () => {
    expect(mentions.map((m) => [m.text, m.verdict])).toEqual([['67 degrees', 'agrees'], ['38 degrees', 'agrees'], ['205 watts', 'disagrees'], ['205 watts', 'agrees']]);
  });
  test('places are those of the file', () => {
    const lines = vtt.split('\n');
    for (const { place, text } of mentions) expect(lines[place.line - 1]!.slice(place.column - 1, place.endColumn - 1)).toBe(text);
  });
  test.each([['CRLF', vtt.replace(/\n/g, '\r\n')], ['a byte order mark', `\uFEFF${vtt}`]])('with %s all is the same', (_, text) => {
    const other = read(text);
    expect(other.mentions.map((m) => [m.text, m.verdict, m.place])).toEqual(mentions.map((m) => [m.text, m.verdict, m.place]));
  });
});

test('[m:ss] marks state nothing, wherever they stand', () => {
  const text = '[0:05] on the bench at stock the core temperature is 67 degrees under load\n[1:02:33] and at idle [12:40] it is 38 degrees\n';
  expect(verdicts(text).filter((v) => !v.endsWith('not-a-claim'))).toEqual(['67 degrees: agrees', '38 degrees: agrees']);
});
