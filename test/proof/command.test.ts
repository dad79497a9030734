// The command as it is called: what it proofs against, what it prints, and how it exits.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { width } from '../../pipeline/places/index.js';
import { run } from '../cli/run.js';
import { names, readings } from './bench.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'figureproof-proof-'));
  mkdirSync(join(folder, 'data/bench/texts'), { recursive: true });
  writeFileSync(join(folder, 'readings.csv'), readings);
  writeFileSync(join(folder, 'names.csv'), names);
  writeFileSync(join(folder, 'data/bench/readings.csv'), readings);
  writeFileSync(join(folder, 'data/bench/episode.yaml'), `title: A bench
date: 2026-03-14
setups: {bench: {name: Bench, spoken: [the bench]}}
settings: {stock: {name: Stock, kind: stock}, undervolt: {name: Undervolt, kind: undervolt}}
workloads: {scene: {name: Scene}}
measures: {temperature: {better: lower}, power: {better: lower}, frequency: {name: Clock}}
parts: {core: Core, hotspot: Hotspot, board: Board}
phases: {idle: {spoken: [at idle]}, load: {spoken: [under load]}}
tables: [readings.csv]
`);
  writeFileSync(join(folder, 'data/bench/texts/script.md'), wrong);
  writeFileSync(join(folder, 'right.md'), right);
  writeFileSync(join(folder, 'wrong.md'), wrong);
});
afterAll(() => rmSync(folder, { recursive: true }));

const right = 'On the bench at stock under load the core temperature is 67 degrees.\n';
const wrong = right.replace('67', '76');
const tables = ['--readings', 'readings.csv', '--names', 'names.csv'];
const proof = (...args: string[]) => run(folder, ['proof', ...args]);
const json = (...args: string[]) => JSON.parse(proof(...args, '--json').stdout);

describe('what a script is proofed against', () => {
  test('two tables and nothing else', () => {
    const { mentions } = json('wrong.md', ...tables);
    expect(mentions).toEqual([expect.objectContaining({
      line: 1, column: 58, endColumn: 68, text: '76 degrees', verdict: 'disagrees', kind: 'mean', from: ['bench/stock/scene/temperature/core/load'],
      facts: ['mean:bench/stock/scene/temperature/core/load'], said: '76 degrees', recorded: '67 °C', suggest: '67 degrees',
    })]);
  });
  test('two tables that cannot be read: each fault once', () => {
    writeFileSync(join(folder, 'faulty.csv'), 'setup,setting,value\nx,y,z\n');
    writeFileSync(join(folder, 'nameless.csv'), 'kind,spoken\nsetup,x\n');
    const { findings } = json('right.md', '--readings', 'faulty.csv', '--names', 'nameless.csv');
    expect(findings.map((f: { code: string; file: string; line: number; column: number }) => [f.code, f.file, f.line, f.column])).toEqual([['table-header', 'faulty.csv', 1, 1], ['table-header', 'nameless.csv', 1, 1]]);
  });
  test('the nearest record above it; findings name files as seen from here', () => {
    const { mentions, findings } = json('data/bench/texts/script.md');
    expect(mentions.map((m: { verdict: string }) => m.verdict)).toEqual(['disagrees']);
    expect(findings.map((f: { code: string; file: string }) => [f.code, f.file])).toEqual([['claim-disagrees', 'data/bench/texts/script.md']]);
  });
  test('another episode by its id', () => expect(json('right.md', '--episode', 'bench').mentions[0].verdict).toBe('agrees'));
  test('itself alone', () => {
    const out = proof('wrong.md', '--alone');
    expect([out.status, out.stdout]).toEqual([0, expect.stringContaining('1 number read, against nothing but the script itself; 0 cannot be.')]);
  });
});

describe('exit codes', () => {
  test.each<[string, string[], number]>([
    ['true', ['right.md', ...tables], 0], ['false', ['wrong.md', ...tables], 1], ['false, as JSON', ['wrong.md', ...tables, '--json'], 1], ['true, any note an error', ['right.md', ...tables, '--fail-on', 'note'], 0],
    ['no record above', ['right.md'], 2], ['an unknown episode', ['right.md', '--episode', 'bunch'], 2], ['two at once', ['right.md', '--alone', '--episode', 'bench'], 2], ['names without a table', ['right.md', '--names', 'names.csv'], 2],
    ['a line that is none', ['right.md', ...tables, '--explain', 'x'], 2], ['a line beyond the end', ['right.md', ...tables, '--explain', '99'], 2], ['no such script', ['nowhere.md', ...tables], 3], ['a folder', ['data', ...tables], 3],
  ])('%s', (_, args, code) => {
    const { status, stderr } = proof(...args);
    expect(status).toBe(code);
    if (code >= 2) expect(stderr.trim().split('\n').length).toBeLessThan(4);
  });
});

test('the report: the line underlined, what the record gives, how, and the right words; within 80 columns, without colour in a pipe', () => {
  const { stdout } = proof('wrong.md', ...tables);
  const lines = stdout.split('\n');
  const at = lines.findIndex((l) => l.includes('1 | '));
  expect(lines[at + 1]!.indexOf('^')).toBe(lines[at]!.indexOf('76 degrees'));
  expect(lines[at + 1]!.trim().replace(/^\| +/, '')).toBe('^'.repeat('76 degrees'.length));
  expect(stdout).toContain('write instead: 67 degrees');
  expect(stdout).toContain('mean of 67, 67, 68');
  expect(stdout).toContain('1 number said: 0 agree, 1 disagrees, 0 untied, 0 no claim.');
  expect(stdout).not.toContain('\u001b');
  for (const l of lines) expect(width(l)).toBeLessThanOrEqual(80);
});

test('worst last, as check tells it: what has to be put right stands just above the counts', () => {
  writeFileSync(join(folder, 'mixed.md'), `${wrong}It was 4711 there.\n${wrong}`);
  const heads = proof('mixed.md', ...tables).stdout.split('\n').flatMap((l) => /^(error|warning|note) .*:(\d+):\d+$/.exec(l)?.slice(1).join(' ') ?? []);
  expect(heads).toEqual(['note 2', 'error 1', 'error 3']);
});

test('a script without a word says so, against whatever it is proofed', () => {
  for (const [i, text] of ['', ' \n\n', '---\n---\n', '\uFEFF'].entries()) {
    writeFileSync(join(folder, `empty-${i}.md`), text);
    for (const against of [tables, ['--alone'], ['--episode', 'bench']]) {
      const { status, stdout } = proof(`empty-${i}.md`, ...against);
      expect([status, stdout], text).toEqual([0, expect.stringMatching(/^note nothing-said empty-\d\.md:1:1\n {2}There is nothing in this text/)]);
    }
    expect(JSON.parse(proof(`empty-${i}.md`, '--alone', '--sarif').stdout).runs[0].results[0].ruleId).toBe('nothing-said');
  }
});

test('SARIF speaks of the script by its relative path, and of the readings', () => {
  const [result] = JSON.parse(proof('data/bench/texts/script.md', '--sarif').stdout).runs[0].results;
  expect(result.locations[0].physicalLocation).toEqual({ artifactLocation: { uri: 'data/bench/texts/script.md' }, region: { startLine: 1, startColumn: 58, endLine: 1, endColumn: 68 } });
  expect(result.relatedLocations.map((l: any) => [l.physicalLocation.artifactLocation.uri, l.physicalLocation.region.startLine])).toEqual([2, 3, 4].map((n) => ['data/bench/readings.csv', n]));
  expect(result.fixes[0].artifactChanges[0].replacements[0].insertedContent.text).toBe('67 degrees');
});

test('where the direction is the wrong way round the word that says it is to be written, wherever one works', () => {
  const text = 'On the bench under load the core is 6 degrees warmer undervolted than at stock.\n';
  writeFileSync(join(folder, 'data/bench/texts/turned.md'), text);
  mkdirSync(join(folder, 'away'));
  const from = (args: string[]) => run(join(folder, 'away'), ['proof', '../data/bench/texts/turned.md', '--data', '../data', ...args]).stdout;
  const column = text.indexOf('warmer') + 1;
  const turn = { line: 1, column, endColumn: column + 6, text: 'warmer', suggest: 'cooler' };
  expect(from([])).toContain(`write instead: cooler (for warmer, column ${column})`);
  expect(JSON.parse(from(['--json'])).mentions[0]).toMatchObject({ verdict: 'disagrees', suggest: null, turn });
  const [{ artifactLocation, replacements }] = JSON.parse(from(['--sarif'])).runs[0].results[0].fixes[0].artifactChanges;
  expect([artifactLocation.uri, replacements]).toEqual([expect.stringMatching(/\/data\/bench\/texts\/turned\.md$/), [{ deletedRegion: { startLine: 1, startColumn: column, endLine: 1, endColumn: column + 6 }, insertedContent: { text: 'cooler' } }]]);
  // What else may be wrong is the order of the two: nothing is written for the writer.
  expect(from(['--apply'])).toContain('There is nothing to write');
});

test('--apply puts it right and tells what the script says now', () => {
  cpSync(join(folder, 'data'), join(folder, 'copy'), { recursive: true });
  const { status, stdout } = proof('copy/bench/texts/script.md', '--apply');
  expect([status, readFileSync(join(folder, 'copy/bench/texts/script.md'), 'utf8')]).toEqual([0, right]);
  expect(stdout).toContain('1 number said: 1 agrees');
});

test('--explain tells the words, the readings weighed, and the one taken', () => {
  const { stdout, status } = proof('wrong.md', ...tables, '--explain', '1');
  expect(status).toBe(0);
  expect(stdout).toContain('"core" is core (part)');
  expect(stdout).toMatch(/^ {2}> +0\.0 +67 °C +mean:bench\/stock\/scene\/temperature\/core\/load$/m);
  for (const l of stdout.split('\n')) expect(width(l)).toBeLessThanOrEqual(80);
});

describe('a record that cannot be read whole', () => {
  beforeAll(() => {
    cpSync(join(folder, 'data'), join(folder, 'broken'), { recursive: true });
    writeFileSync(join(folder, 'broken/bench/readings.csv'), `${readings.trimEnd()}\nbench,stock,scene,temperature,core,load,9,warm,degC\n`);
    writeFileSync(join(folder, 'broken/bench/texts/script.md'), wrong);
  });
  const script = 'broken/bench/texts/script.md';

  test('nothing is judged against it, and it is told why', () => {
    const { mentions, findings } = json(script);
    expect(mentions).toEqual([]);
    expect(findings.map((f: { severity: string }) => f.severity).sort()).toEqual(['error', 'note']);
    expect(findings.map((f: { code: string }) => f.code)).toContain('texts-not-proofed');
  });
  test('--apply writes nothing and says so', () => {
    const { status, stdout, stderr } = proof(script, '--apply');
    expect([status, readFileSync(join(folder, script), 'utf8')]).toEqual([1, wrong]);
    expect(stderr).toBe(`Nothing is written into ${script}: what it is proofed against cannot be read whole.\n`);
    expect(stdout).toContain('What is said is not proofed: an error stands in the record');
  });
  test('of a table alone what can be read is judged, and nothing is written', () => {
    const { status, stdout, stderr } = proof(script, '--readings', 'broken/bench/readings.csv', '--names', 'names.csv', '--apply');
    expect([status, readFileSync(join(folder, script), 'utf8')]).toEqual([1, wrong]);
    expect(stderr).toContain('Nothing is written');
    expect(stdout).toContain('write instead: 67 degrees');
  });
});
