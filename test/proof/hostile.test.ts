// Scripts as nobody should write them: nothing throws, places stay true, and nothing takes for ever.
import { describe, expect, test } from 'vitest';
import { explainProof } from '../../pipeline/claims/index.js';
import { decode } from '../../pipeline/logs/index.js';
import { Source } from '../../pipeline/places/index.js';
import { facts, read } from './bench.js';

const said = 'On the bench at stock under load the core temperature is 67 degrees.';
const wrong = said.replace('67', '76');

function placesHold(text: string): void {
  const lines = text.split(/\r\n|\r|\n/);
  for (const { place, text: words } of read(text).mentions) expect(lines[place.line - 1]!.slice(place.column - 1, place.endColumn - 1)).toBe(words);
}

describe('what is found stays found', () => {
  test.each<[string, string]>([
    ['no line end', wrong], ['CRLF', `\r\n\r\n${wrong}\r\n`], ['carriage returns alone', `A line.\r${wrong}\r`], ['a NUL before it', `\u0000\n${wrong}`], ['emoji before it', `🙂🙂 ${wrong}`],
    ['combining marks before it', `e\u0301 ${wrong}`], ['right-to-left text before it', `\u05E9\u05DC\u05D5\u05DD \u202Eabc\u202C. ${wrong}`], ['a comment never closed after it', `${wrong}\n<!-- and then`],
    ['a fence never closed after it', `${wrong}\n\`\`\`\nmore`], ['front matter never closed inside', `---\ntitle: x\n---\n${wrong}`], ['a quote', `> > ${wrong}`], ['emphasis', wrong.replace('76 degrees', '**76 degrees**')],
    ['no-break spaces', wrong.replace(/ /g, '\u00A0')], ['a very long line', `${'word '.repeat(10_000)}. ${wrong}`], ['ten thousand blank lines', `${'\n'.repeat(10_000)}${wrong}`], ['lone surrogates', `\uD800 ${wrong} \uDC00`],
  ])('%s', (_, text) => {
    expect(read(text).mentions.filter((m) => m.verdict === 'disagrees').map((m) => m.text.replace(/\s/, ' '))).toEqual(['76 degrees']);
    placesHold(text);
  });
});

describe('nothing is found where nothing is said', () => {
  test.each<[string, string]>([['nothing', ''], ['blanks', ' \t\n\r\n'], ['an unclosed comment', `<!-- ${wrong}`], ['an unclosed fence', `~~~\n${wrong}`], ['only marks', '#\n>\n-\n***\n|||'], ['WEBVTT and no more', 'WEBVTT'], ['unclosed front matter', `---\n${wrong}`]])('%s', (_, text) => {
    expect(read(text).findings).toEqual([]);
  });
});

test('ten thousand numbers on one line, and five hundred right and wrong lines', () => {
  const one = `${Array.from({ length: 10_000 }, (_, i) => `the core is at ${i % 97} degrees`).join(' and ')}.`;
  expect(read(one).mentions.length).toBeGreaterThan(9_000);
  const many = Array.from({ length: 500 }, (_, i) => `On the bench at stock under load the core temperature is ${i} degrees.`).join('\n');
  expect(read(many).mentions.filter((m) => m.verdict === 'agrees').map((m) => m.place.line)).toEqual([68]);
});

test('numbers beyond all measure are read or left, never wrong in form', () => {
  for (const n of ['9'.repeat(400), `0.${'0'.repeat(300)}1`, '1e999', '1,2,3,4', '٦٧', '６７', '--5', '1.2.3.4', '½', '6 7', '∞']) placesHold(`On the bench at stock under load the core temperature is ${n} degrees.`);
});

test('bytes that are no text are one error at the first bad byte, not a guess', () => {
  const { value, findings } = decode('script.md', Buffer.concat([Buffer.from('A line.\nAnd '), Buffer.from([0xe9]), Buffer.from(' 61')]));
  expect(value).toBeUndefined();
  expect(findings.map((f) => [f.code, f.place.line, f.place.column])).toEqual([['text-encoding', 2, 5]]);
});

test('the record wins over names that are hostile: markup, patterns, prototypes', () => {
  for (const word of ['__proto__', 'constructor', '$&', '(?:', '\\']) placesHold(`${word} ${said} ${word}`);
});

test('every line can be explained', () => {
  const text = `# Head 5\n${said}\n\n${wrong} And twice the power, third of three.\n`;
  for (let line = 1; line <= 6; line++) expect(() => explainProof(new Source('s.md', text), facts, line)).not.toThrow();
  const [sentence] = explainProof(new Source('s.md', text), facts, 2);
  expect(sentence!.numbers.map((n) => [n.verdict.text, n.verdict.verdict, n.operation])).toEqual([['67 degrees', 'agrees', 'a value']]);
  expect(sentence!.numbers[0]!.own.join()).toContain('"core" is core (part)');
  expect(sentence!.numbers[0]!.verdict.candidates[0]).toMatchObject({ fact: 'mean:bench/stock/scene/temperature/core/load', fits: true });
});
