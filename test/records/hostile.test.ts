// Whatever stands in a file, reading it ends in a value or a finding, soon, and never in an exception.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decode } from '../../pipeline/logs/index.js';
import { assemble, importFile, outline } from '../../pipeline/records/index.js';
import { readEpisode } from './reading.js';

const sound = readFileSync(new URL('./sound.yaml', import.meta.url), 'utf8');
const table = 'setup,setting,workload,measure,part,phase,run,value,unit\nbench,stock,scene,power,board,load,1,247.5,W\nbench,stock,scene,power,board,load,2,248.5,W\n';
const log = 't,phase,c\n0,idle,30\n1,load,60\n2,load,61\n';
const frames = 'ms\n10\n11\n12\n';
const files = { 'readings.csv': table, 'logs/stock-run1.csv': log, 'logs/stock-run1-frames.csv': frames, 'script.md': 'Text.', 'description.md': 'Text.' };

/** Reads everything and asks that something is said or made. */
function survives(bytes: Uint8Array, given: Record<string, Uint8Array>): void {
  const decoded = decode('data/example/episode.yaml', bytes);
  if (!decoded.value) return void expect(decoded.findings.length).toBeGreaterThan(0);
  const outlined = outline(decoded.value, 'example');
  if (!outlined.value) return void expect(outlined.findings.some((f) => f.severity === 'error')).toBe(true);
  const assembled = assemble(outlined.value, new Map(Object.entries(given)));
  expect(assembled.value).toBeDefined();
  for (const f of [...outlined.findings, ...assembled.findings]) {
    expect(f.place.line).toBeGreaterThan(0);
    expect(f.place.column).toBeGreaterThan(0);
    expect(f.place.endLine * 1e6 + f.place.endColumn).toBeGreaterThanOrEqual(f.place.line * 1e6 + f.place.column);
    expect(f.message).not.toMatch(/undefined|\[object/);
  }
  for (const r of assembled.value!.readings) expect(Number.isFinite(r.quantity.value.toNumber())).toBe(true);
}

const bytesOf = (text: string) => new Uint8Array(Buffer.from(text));
const allFiles = Object.fromEntries(Object.entries(files).map(([k, v]) => [k, bytesOf(v)]));

/** Cuts, doubles, swaps and overwrites stretches of a text. */
const mutation = (text: string) => fc.array(fc.record({
  at: fc.nat(text.length), length: fc.nat(30), kind: fc.constantFrom('cut', 'double', 'put', 'end'),
  put: fc.string({ unit: fc.constantFrom('a', '1', ' ', '\n', ':', '-', '{', '}', '[', ']', ',', '"', "'", '#', '&', '*', '!', '|', '>', '%', '@', '\t', '°', '/', '?', '\u0000', '−', '.'), maxLength: 6 }),
}), { minLength: 1, maxLength: 4 }).map((edits) => edits.reduce((t, e) => {
  if (e.kind === 'end') return t.slice(0, e.at);
  const [before, middle, after] = [t.slice(0, e.at), t.slice(e.at, e.at + e.length), t.slice(e.at + e.length)];
  return e.kind === 'cut' ? before + after : e.kind === 'double' ? before + middle + middle + after : before + e.put + after;
}, text));

test('the sound record is sound', () => {
  const { episode, findings } = readEpisode(sound, files);
  expect(findings.map((f) => `${f.place.line}:${f.place.column} ${f.message}`)).toEqual([]);
  expect(episode!.readings.length).toBeGreaterThan(20);
});

test('any bytes', () => {
  fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => survives(bytes, { 'readings.csv': bytes })), { seed: 1, numRuns: 300 });
});

test('the sound record, altered', () => {
  fc.assert(fc.property(mutation(sound), (text) => survives(bytesOf(text), allFiles)), { seed: 2, numRuns: 200 });
});

test('the record cut off anywhere', () => {
  for (let n = 0; n < sound.length; n += 97) survives(bytesOf(sound.slice(0, n)), allFiles);
});

test('its tables and logs, altered', () => {
  fc.assert(fc.property(fc.constantFrom(...Object.keys(files)), fc.integer(), (name, seed) => {
    const [text] = fc.sample(mutation(files[name as keyof typeof files]), { numRuns: 1, seed });
    survives(bytesOf(sound), { ...allFiles, [name]: bytesOf(text!) });
  }), { seed: 3, numRuns: 150 });
});

test('what is proposed for any table or log is YAML that the reader takes as such', () => {
  const cell = fc.oneof(fc.constantFrom('1', '2.5', '3,5', 'idle', '10:00:01', 'N/A', '', 'temp °C', 'power_w', 'a: b', '# x', '- y', '"', "'", '{', '*a', '&b', '!c', 'x\ny', '%', '@'), fc.string({ maxLength: 5 }));
  const table = fc.integer({ min: 1, max: 5 }).chain((n) => fc.array(fc.array(cell, { minLength: n, maxLength: n }), { maxLength: 12 }));
  fc.assert(fc.property(table, fc.constantFrom(',', ';', '\t'), (rows, delimiter) => {
    const text = rows.map((r) => r.map((c) => (/["\r\n,;\t]/.test(c) ? `"${c.replaceAll('"', '""')}"` : c)).join(delimiter)).join('\n');
    const { value, findings } = importFile('a.csv', bytesOf(text));
    if (value === undefined) expect(findings.length).toBeGreaterThan(0);
    else expect(readEpisode(`title: T\n${value}`, { 'a.csv': text }).findings.filter((f) => f.code.startsWith('yaml-')).map((f) => f.message), value).toEqual([]);
  }), { seed: 4, numRuns: 400 });
});

describe('attacks', () => {
  const told = (text: string) => readEpisode(text).findings.map((f) => f.code);

  test('aliases of aliases', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x]', ...Array.from({ length: 9 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(', ')}]`)];
    const codes = told(`title: T\nmethod:\n  - ${lines.map((l) => l.replace(/^a\d: /, '')).join('\n  - ')}\nsummary: *a9\n`);
    expect(codes.length).toBeGreaterThan(0);
    expect(codes.length).toBeLessThan(200);
  });

  test('one alias many times is refused beyond a bound, a few are taken', () => {
    const names = (n: number) => `title: T\nreadings: [{power: 1 W}]\nparts:\n  core: &c {name: Core}\n${Array.from({ length: n }, (_, i) => `  p${i}: *c\n`).join('')}`;
    expect(told(names(50))).toEqual([]);
    expect(told(names(9000))).toEqual(['yaml-alias']);
  });

  test.each(['[', '{a: ', '- ', '? ', '"', "'", '|\n ', '&a ', '!', '*a ', '# '])('%s repeated', (piece) => {
    expect(readEpisode(piece.repeat(5000)).findings.length).toBeGreaterThan(0);
  });

  test('a record that is far too large', () => {
    expect(told(`title: ${'x'.repeat(5_000_000)}`)).toEqual(['record-size']);
  });

  test('names that objects are born with are names like others', () => {
    const { episode, findings } = readEpisode('title: T\nsetups:\n  constructor: {}\n  toString: {}\nparts: [hasOwnProperty]\nreadings:\n  - for: {setup: constructor}\n    power/hasOwnProperty: 1 W\n');
    expect(findings).toEqual([]);
    expect([...episode!.setups.keys()]).toEqual(['constructor', 'toString']);
    expect(told('title: T\n__proto__: {a: 1}\nreadings: [{power: 1 W}]\n')).toEqual(['record-field']);
  });
});
