// While a record cannot be read whole, what is said is not judged: a claim would be tied to the wrong reading.
import { expect, test } from 'vitest';
import { bench, sample } from './sample.js';

const script = 'On the bench at stock the core runs at 67 degrees under load.\nThe board draws 248 watts.\n';
const spoken = `${bench}script: script.md\n`;
const lost = (record: string): string => record.replace('temperature/core: {idle: 38 38 39 °C, load: 67 67 68 °C}', 'temperature/core: {idle: 38 38 39 °C, load: 67 6x 68 °C}').replace(/^stated:\n.*\n/m, '');

async function found(record: string) {
  const s = sample({ bench: record });
  s.write('bench/script.md', script);
  return (await s.check()).examined[0]!;
}

const codes = (e: Awaited<ReturnType<typeof found>>): string[] => e.findings.map((f) => f.code);

test('one note instead of claims, and every error of the record as ever', async () => {
  expect(codes(await found(spoken)).filter((c) => /^claim-|not-proofed/.test(c))).toEqual([]);
  const { findings, counts } = await found(lost(spoken).replace('power/board/limit: 250 W', 'power/board/limit: 250 Q'));
  expect(findings.filter((f) => /^claim-/.test(f.code))).toEqual([]);
  expect(findings.filter((f) => f.code === 'texts-not-proofed').map((f) => [f.severity, f.message])).toEqual([['note', expect.stringMatching(/^What is said is not proofed: \d errors stand in the record, .*put them right first/)]]);
  expect(findings.filter((f) => f.severity === 'error').map((f) => f.said)).toEqual(expect.arrayContaining([expect.stringContaining('6x'), 'Q']));
  expect(counts.mentions).toBe(0);
});

test('a log that is not there, and a table that cannot be read', async () => {
  const withTable = spoken.replace('readings:', 'tables: [readings.csv]\nreadings:');
  const withLog = spoken.replace('readings:', `layouts:
  sensor: {time: {column: t, unit: s}, phases: {column: stage}, columns: {core: temperature/core °C}}
logs:
  - {files: "log-{run}.csv", layout: sensor, for: {setup: bench, setting: capped, workload: loop}}
readings:`);
  for (const record of [withTable, withLog]) expect(codes(await found(record))).toContain('texts-not-proofed');
});

test('what a check finds, and what the record accepts or weighs less, stands in no one’s way', async () => {
  const contradicted = await found(spoken.replace('is: 29 K', 'is: 31 K'));
  expect(codes(contradicted)).not.toContain('texts-not-proofed');
  expect(contradicted.counts.mentions).toBe(2);
  const { code, subject } = (await found(lost(spoken))).findings.find((f) => f.severity === 'error')!;
  expect(codes(await found(`${lost(spoken)}severities: {${code}: warning}\n`))).not.toContain('texts-not-proofed');
  if (subject) expect(codes(await found(`${lost(spoken)}accept: [{finding: ${code}, subject: ${JSON.stringify(subject)}, reason: known}]\n`))).not.toContain('texts-not-proofed');
});

test('an acceptance of a claim that is not proofed is not called unused, and another is', async () => {
  const accepting = (finding: string): string => `${lost(spoken)}accept: [{finding: ${finding}, subject: "248", reason: known}]\n`;
  expect(codes(await found(accepting('claim-untied')))).not.toContain('accept-unused');
  expect(codes(await found(accepting('room-differs')))).toContain('accept-unused');
});

test('where no text says a number there is nothing to say', async () => {
  const s = sample({ bench: lost(bench) });
  expect(codes((await s.check()).examined[0]!)).not.toContain('texts-not-proofed');
});

test('a script that was emptied says so', async () => {
  const s = sample({ bench: spoken });
  s.write('bench/script.md', '\n');
  const { findings } = (await s.check()).examined[0]!;
  expect(findings.filter((f) => f.code === 'nothing-said').map((f) => [f.severity, f.place.file, f.subject])).toEqual([['note', 'data/bench/script.md', 'script.md']]);
  expect(codes(await found(spoken))).not.toContain('nothing-said');
});

test('a record without a reading says so, and one whose readings are in error does not', async () => {
  const noted = async (record: string): Promise<string[]> => codes(await found(record)).filter((c) => c === 'nothing-read');
  expect(await noted('title: To fill in\nsetups: {bench: Open bench}\nreadings:\n')).toEqual(['nothing-read']);
  expect(await noted('title: In error\nsetups: {bench: Open bench}\nreadings:\n  - {for: {setup: bench}, temperature/core: {load: 67 6x °C}}\n')).toEqual([]);
  expect(await noted(bench)).toEqual([]);
});
