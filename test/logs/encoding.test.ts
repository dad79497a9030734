// Bytes to text in every encoding a log may have; none is ever guessed into wrong characters.
import { Buffer } from 'node:buffer';
import { describe, expect, test } from 'vitest';
import { decode, type Encoding } from '../../pipeline/logs/index.js';

const text = 'Lüfter,°C\n1,−5 µV\n';
const le = (s: string) => Buffer.from(s, 'utf16le');
const be = (s: string) => Buffer.from(s, 'utf16le').swap16();
const bom = '\ufeff';

describe('is read', () => {
  test.each<[string, Uint8Array, Encoding | undefined, string]>([
    ['UTF-8', Buffer.from(text), undefined, text],
    ['UTF-8 with a byte order mark', Buffer.from(bom + text), undefined, text],
    ['UTF-16 LE with its mark', le(bom + text), undefined, text],
    ['UTF-16 BE with its mark', be(bom + text), undefined, text],
    ['UTF-16 with its mark, as said', be(bom + text), 'utf-16', text],
    ['UTF-16 LE without a mark, as said', le(text), 'utf-16le', text],
    ['UTF-16 BE without a mark, as said', be(text), 'utf-16be', text],
    ['Latin-1, as said', Buffer.from('Lüfter;°C\n', 'latin1'), 'latin-1', 'Lüfter;°C\n'],
    ['Windows-1252, as said', Uint8Array.from([0x80, 0x96, 0x0a]), 'windows-1252', '€–\n'],
    ['nothing', new Uint8Array(), undefined, ''],
  ])('%s', (_, bytes, encoding, expected) => {
    expect(decode('a.csv', bytes, encoding)).toMatchObject({ value: { text: expected }, findings: [] });
  });
});

describe('is refused', () => {
  test.each<[string, Uint8Array, Encoding | undefined, string, string]>([
    ['Latin-1 taken for UTF-8, at the first wrong byte', Buffer.from('a,b\nLüfter,1\n', 'latin1'), undefined, '2:2', 'Byte FC'],
    ['Latin-1 at the end of a line', Buffer.from('a,b\n1,café\n2,x\n', 'latin1'), undefined, '2:6', 'Byte E9 is not UTF-8 (in Windows-1252 it is "é")'],
    ['Latin-1 before a letter that goes on with nothing', Buffer.from('Café au lait', 'latin1'), undefined, '1:4', 'Byte E9'],
    ['two such letters', Buffer.from('°éa', 'latin1'), undefined, '1:1', 'Byte B0'],
    ['three bytes of four, then a letter', Uint8Array.from([0x61, 0xf0, 0x9f, 0x98, 0x61]), undefined, '1:2', 'Byte F0'],
    ['a byte alone that goes on with nothing', Buffer.concat([Buffer.from('a°'), Uint8Array.from([0xb0])]), undefined, '1:3', 'Byte B0'],
    ['a character cut in two', Buffer.from('ab°').subarray(0, 3), undefined, '1:3', 'middle of a UTF-8 character'],
    ['UTF-16 without a mark', le('time,core\n1,2\n'), undefined, '1:1', 'looks like UTF-16'],
    ['half a UTF-16 unit', le(bom + 'abc').subarray(0, 7), undefined, '1:1', 'odd number'],
    ['a mark that says otherwise', le(bom + text), 'utf-8', '1:1', 'byte order mark'],
    ['a lone surrogate', Uint8Array.from([0xff, 0xfe, 0x00, 0xd8]), undefined, '1:1', 'not valid utf-16le'],
  ])('%s', (_, bytes, encoding, at, words) => {
    const { value, findings } = decode('a.csv', bytes, encoding);
    expect(value).toBeUndefined();
    expect(findings.map((f) => [f.code, `${f.place.line}:${f.place.column}`])).toEqual([['text-encoding', at]]);
    expect(findings[0]!.message).toContain(words);
  });
});

test('an encoding can be said of a table or a log, and only of these', () => {
  const bad = Buffer.from('é\n', 'latin1');
  const message = (file: string) => decode(file, bad).findings[0]!.message;
  expect(message('logs/a.csv')).toContain('encoding: windows-1252');
  for (const file of ['episode.yaml', 'script.md']) expect(message(file)).toBe('Byte E9 is not UTF-8 (in Windows-1252 it is "é"); save the file as UTF-8');
});
