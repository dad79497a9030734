// Every code of a proof has its rule, with the severity that the code gives it.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { proofRules } from '../../pipeline/proof-rules.js';

const pipeline = join(import.meta.dirname, '../../pipeline');
const sources = ['claims', 'narration', 'script'].flatMap((room) => readdirSync(join(pipeline, room), { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts')).map((f) => readFileSync(join(pipeline, room, f), 'utf8')));
const given = sources.flatMap((s) => [...s.matchAll(/code: '([a-z-]+)', severity: '([a-z]+)'/g)].map((m) => [m[1]!, m[2]!] as const));

test('each code that is given with a severity has a rule with the same', () => {
  expect(given.length).toBeGreaterThan(5);
  expect(given.filter(([code, severity]) => proofRules[code]?.severity !== severity)).toEqual([]);
});

test('each code that is named has a rule', () => {
  const named = new Set(sources.flatMap((s) => [...s.matchAll(/\bcode: '([a-z-]+)'/g)].map((m) => m[1]!)));
  expect([...named].filter((code) => !proofRules[code])).toEqual([]);
});

test('each says what to do, in whole sentences', () => {
  for (const [code, { says, help }] of Object.entries(proofRules)) {
    expect(says, code).toMatch(/^[A-Z].*[^.]$/);
    expect(help, code).toMatch(/^[A-Z]/);
  }
});
