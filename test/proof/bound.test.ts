// Scripts that are templates: filled in, proofed, and what is found told at its place in the template.
import { describe, expect, test } from 'vitest';
import { Source } from '../../pipeline/places/index.js';
import { isBound, proofScript } from '../../pipeline/proof.js';
import { facts } from './bench.js';

const load = 'mean:bench/stock/scene/temperature/core/load';
const idle = 'mean:bench/stock//temperature/core/idle';
const proofed = (text: string, file = 'script.md') => proofScript(new Source(file, text), facts);

test.each([['{{say "x"}}', 'a.md', true], ['{{~ fact "x" ~}}', 'a.txt', true], ['plain', 'a.md.hbs', true], ['plain', 'a.md', false], ['a set {1, 2} and {{ 3', 'a.md', false]])('%s in %s is bound: %s', (text, file, bound) => {
  expect(isBound(new Source(file, text))).toBe(bound);
});

test('what is filled in agrees with what is said around it', async () => {
  const { mentions, spoken, bound, findings } = await proofed(`On the bench at stock under load the core temperature is {{say "${load}"}}.\n\n{{! a note }}\nAt idle it is {{fact "${idle}"}}.\n`);
  expect(bound).toBe(true);
  expect(spoken.text).toContain('the core temperature is sixty-seven degrees.');
  expect(mentions.map((m) => m.verdict)).toEqual(['agrees', 'agrees']);
  expect(findings).toEqual([]);
});

describe('a fact in the wrong sentence disagrees, and the place is that of the {{…}}', () => {
  const filled = `{{say "${load}"}}`;
  const text = `First line.\r\nOn the bench at stock, at idle the core temperature is ${filled}, not 38 degrees.\n`;
  test.each([['LF', text.replace('\r', '')], ['CRLF', text]])('%s', async (_, t) => {
    const { findings, mentions } = await proofed(t);
    const [wrong] = findings.filter((f) => f.code === 'claim-disagrees');
    expect(wrong).toBeDefined();
    const line = t.split(/\r?\n/)[1]!;
    expect(line.slice(wrong!.place.column - 1, wrong!.place.endColumn - 1)).toBe(filled);
    expect([wrong!.place.line, wrong!.suggest]).toEqual([2, undefined]);
    const literal = mentions.find((m) => m.text === '38 degrees')!;
    expect(line.slice(literal.place.column - 1, literal.place.endColumn - 1)).toBe('38 degrees');
  });
});

test('white space that {{~ takes away does not move the places behind it', async () => {
  const text = `On the bench at stock under load the core temperature is   {{~fact "${load}"~}}   and the hotspot 99 degrees.`;
  const { findings } = await proofed(text);
  const wrong = findings.find((f) => f.said === '99 degrees')!;
  expect(text.slice(wrong.place.column - 1, wrong.place.endColumn - 1)).toBe('99 degrees');
});

test('a template that asks for what there is not is an error at its place, and nothing is proofed', async () => {
  const { findings, mentions } = await proofed('It is {{say "mean:bench/stock/scene/temperature/coer/load"}}.');
  expect(findings.map((f) => [f.code, f.severity, f.place.column])).toEqual([['bound-fact', 'error', 7]]);
  expect(mentions).toEqual([]);
});
