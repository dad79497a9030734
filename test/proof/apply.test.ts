import { mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync, chmodSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { decode } from '../../pipeline/logs/index.js';
import { type PrintOptions, width } from '../../pipeline/places/index.js';
import { applySuggestions, changesOf, encodeLike, rewritten } from '../../pipeline/proof-apply.js';
import { proofScript } from '../../pipeline/proof.js';
import { facts } from './bench.js';

const folder = mkdtempSync(join(tmpdir(), 'figureproof-apply-'));
afterAll(() => rmSync(folder, { recursive: true }));
const print: PrintOptions = { columns: 80, ink: (_, t) => t, line: () => undefined, path: (f) => f };

const wrong = `# The bench

\`\`\`
On the bench at stock the board draws 205 watts under load.
\`\`\`
<!-- On the bench at stock the board draws 205 watts under load. -->
On the bench at stock the board draws 205 watts under load, and the hotspot is at eighty-one degrees.
At stock the core temperature is 67 degrees under load. 🙂 The hotspot stands at 88 degrees.
`;
const right = wrong.replace('205 watts under load, and the hotspot is at eighty-one', '248 watts under load, and the hotspot is at eighty').replace('88 degrees', '80 degrees');

async function applied(name: string, bytes: Uint8Array) {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  const script = decode(name, bytes).value!;
  const result = applySuggestions(path, bytes, script, await proofScript(script, facts), print);
  return { path, script, result, now: readFileSync(path) };
}

describe('the suggestions are written, and nothing else is touched', () => {
  const utf16 = (text: string, swap: boolean): Buffer => { const b = Buffer.from(`\uFEFF${text}`, 'utf16le'); return swap ? b.swap16() : b; };
  const crlf = (t: string): string => t.replace(/\n/g, '\r\n');
  test.each<[string, Uint8Array, Uint8Array]>([
    ['UTF-8', Buffer.from(wrong), Buffer.from(right)],
    ['UTF-8 with a byte order mark', Buffer.from(`\uFEFF${wrong}`), Buffer.from(`\uFEFF${right}`)],
    ['CRLF', Buffer.from(crlf(wrong)), Buffer.from(crlf(right))],
    ['UTF-16, little end first', utf16(wrong, false), utf16(right, false)],
    ['UTF-16, big end first, CRLF', utf16(crlf(wrong), true), utf16(crlf(right), true)],
    ['no line end at the end', Buffer.from(wrong.trimEnd()), Buffer.from(right.trimEnd())],
  ])('%s', async (name, before, after) => {
    const { now, result } = await applied(`${name.replace(/\W/g, '')}.md`, before);
    expect(now).toEqual(after);
    const shown = result.lines.filter((l) => /^[-+] /.test(l));
    expect(shown.map((l) => /[-+](?=.*?(205 watts|248 watts|eighty-one degrees|eighty degrees|8[80] degrees))/g.exec(l.replace(/^(.) .*(draws|hotspot is at|stands at) (?=[2e8])/, '$1'))?.[1])).toEqual(
      ['205 watts', '248 watts', 'eighty-one degrees', 'eighty degrees', '88 degrees', '80 degrees']);
    for (const l of shown) expect(width(l)).toBeLessThanOrEqual(80);
    expect(proof(result.script!, facts).findings).toEqual([]);
  });
});

test('a true script is left as it is, to the byte and to the time', async () => {
  const path = join(folder, 'true.md');
  writeFileSync(path, right);
  const before = statSync(path).mtimeMs;
  const { result } = await applied('other.md', Buffer.from(right));
  expect(result.script).toBeUndefined();
  expect(statSync(path).mtimeMs).toBe(before);
});

test('a file that has changed since it was read is left alone', async () => {
  const path = join(folder, 'changed.md');
  writeFileSync(path, `${wrong}One more line.\n`);
  const script = decode('changed.md', Buffer.from(wrong)).value!;
  const proofed = await proofScript(script, facts);
  expect(() => applySuggestions(path, Buffer.from(wrong), script, proofed, print)).toThrow('it has changed since it was read');
  expect(readFileSync(path, 'utf8')).toBe(`${wrong}One more line.\n`);
});

test('permissions stay, and no other file is left behind', async () => {
  const path = join(folder, 'mine.md');
  writeFileSync(path, wrong);
  chmodSync(path, 0o600);
  const script = decode('mine.md', Buffer.from(wrong)).value!;
  applySuggestions(path, Buffer.from(wrong), script, await proofScript(script, facts), print);
  expect(statSync(path).mode & 0o777).toBe(0o600);
  expect(readdirSync(folder).filter((n) => n.endsWith('.tmp'))).toEqual([]);
  symlinkSync('mine.md', join(folder, 'link.md'));
});

test('what the record accepts, what is said in filled-in text, and what has no one way to be right is not written', async () => {
  const script = decode('a.md', Buffer.from(wrong)).value!;
  const { findings } = proof(script, facts);
  const accepted = findings.map((f) => ({ ...f, accepted: { reason: 'known', place: f.place } }));
  expect(changesOf(script, accepted)).toEqual([]);
  expect(changesOf(script, findings.map(({ suggest: _, ...f }) => f))).toEqual([]);
  const bound = decode('b.md', Buffer.from('On the bench at stock, at idle the core temperature is {{fact "mean:bench/stock/scene/temperature/core/load"}}.')).value!;
  expect(changesOf(bound, (await proofScript(bound, facts)).findings)).toEqual([]);
});

test('overlapping changes: the first one stays', () => {
  const script = decode('a.md', Buffer.from('x 10 y')).value!;
  const f = (column: number, endColumn: number, said: string) => ({ code: 'claim-disagrees', severity: 'error' as const, place: { file: 'a.md', line: 1, column, endLine: 1, endColumn }, message: '', said, suggest: '11' });
  const changes = changesOf(script, [f(3, 5, '10'), f(4, 7, '0 y')]);
  expect(rewritten(script.text, changes)).toBe('x 11 y');
});

test('text goes back into the bytes that it came from', () => {
  for (const bytes of [Buffer.from('aé🙂'), Buffer.from('\uFEFFaé'), Buffer.from('\uFEFFaé🙂', 'utf16le'), Buffer.from('\uFEFFaé', 'utf16le').swap16(), Buffer.from('a\u0000b')]) {
    expect(Buffer.from(encodeLike(decode('a', bytes).value!.text, bytes))).toEqual(bytes);
  }
});
