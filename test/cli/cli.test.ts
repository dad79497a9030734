import { spawnSync } from 'node:child_process';
import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { exitCodes } from '../../pipeline/exit-codes.js';
import { one, quoting, sample } from '../build/sample.js';
import { place, scratch } from '../files/scratch.js';
import { cli, run } from './run.js';

const doubtful = one.replace('load: 67 67 68 °C', 'load: 61 67 74 °C');
const contradicted = one.replace('load: 67 67 68 °C', 'load: 68 68 69 °C');

test('check and build end with 0, print a table and where to look, and nothing in colour', () => {
  const { folder } = sample({ bench: one });
  const checked = run(folder, ['check']);
  expect([checked.status, checked.stderr]).toEqual([0, 'Checking 1 episode\n']);
  expect(checked.stdout).toMatch(/^episode +readings +facts +pictures.*\nbench +20 +\d+ +1/m);
  const built = run(folder, ['build']);
  expect(built.status).toBe(0);
  expect(built.stdout).toMatch(/Built in out: \d+ files written, 0 unchanged\.\n1 picture drawn, 0 taken from the cache\.\nLook at out\/index\.html\n$/);
  expect(checked.stdout + built.stdout + built.stderr).not.toContain('\x1b');
});

test('findings are printed with their line, and end with 1', () => {
  const { folder } = sample({ bench: contradicted });
  for (const command of ['check', 'build']) {
    const { status, stdout } = run(folder, [command]);
    expect(status).toBe(exitCodes.findings.code);
    const lines = stdout.split('\n');
    const at = lines.findIndex((l) => /^error .* data\/bench\/episode\.yaml:\d+:\d+$/.test(l));
    expect(lines.slice(at).join('\n')).toMatch(/\n {2}\d+ \| .*\n +\| +\^+\n/);
    expect(stdout).toContain('29 K');
  }
  expect(fs.existsSync(join(folder, 'out'))).toBe(false);
  expect(run(folder, ['build', '--draft']).status).toBe(exitCodes.findings.code);
  expect(fs.existsSync(join(folder, 'out/bench/index.html'))).toBe(true);
});

test.each<[string, string[], RegExp]>([
  ['no such command', ['chekc'], /unknown command 'chekc'\n\(Did you mean check\?\)/],
  ['no such option', ['check', '--jsno'], /unknown option '--jsno'\n\(Did you mean --json\?\)/],
  ['several of them at once, each with what it may have meant', ['build', '--drafts', '--outt', 'x', '--json', '--qqqq=1', '--', '--no'], /^error: unknown option '--drafts'\n\(Did you mean --draft\?\)\nerror: unknown option '--outt'\n\(Did you mean --out\?\)\nerror: unknown option '--qqqq=1'\n\(figureproof --help tells/],
  ['no such severity', ['check', '--fail-on', 'never'], /Allowed choices are error, warning, note/],
  ['no such episode', ['check', 'bencj', 'quoting'], /There is no episode "bencj" in data; did you mean "bench"\?/],
  ['several of them', ['build', 'x', 'quotin'], /"x" in data\.\nThere is no episode "quotin" in data; did you mean "quoting"\?/],
  ['no such fact', ['explain', 'mean:bench/stok/loop/temperature/core/load'], /mean:bench\/stock\/loop\/temperature\/core\/load/],
  ['a fact that one episode nearly has, told by that one alone', ['explain', 'mean:after/stock/loop/temperature/core/laod'], /^No episode has it; quoting comes nearest\. (?![^]*bench)[^]*\n {2}mean:after\/stock\/loop\/temperature\/core\/load\n/],
  ['outputs over the sources', ['build', '--out', 'data'], /^Outputs cannot go to data: it is data, where the records are/],
  ['outputs around the sources', ['build', '--out', '.', '--draft'], /^Outputs cannot go to \.: it holds data/],
  ['a folder without a name', ['build', '--out', ''], /It names no folder/],
  ['data without a name', ['check', '--data='], /It names no folder/],
  ['no such check', ['explain', 'room-diffres'], /did you mean "room-differs"\?/],
])('usage: %s ends with 2', (_name, args, message) => {
  const { folder } = sample({ bench: one, quoting });
  const { status, stderr, stdout } = run(folder, args);
  expect([status, stdout]).toEqual([exitCodes.usage.code, '']);
  expect(stderr).toMatch(message);
  expect(stderr).not.toMatch(/\n\s+at /);
});

test('trouble with files ends with 3 and one plain sentence', () => {
  const folder = scratch();
  const lost = run(folder, ['check']);
  expect([lost.status, lost.stderr]).toEqual([exitCodes.trouble.code, 'Cannot read the episodes of data: it is not there (ENOENT).\n']);
  const s = sample({ bench: one });
  place(s.folder, 'out', 'a file');
  const blocked = run(s.folder, ['build', '--cache', 'kept']);
  expect([blocked.status, blocked.stderr.split('\n').at(-2)]).toEqual([exitCodes.trouble.code, 'Cannot write into out: a file stands where the folder should go (EEXIST).']);
  expect(fs.readFileSync(join(s.folder, 'out'), 'utf8')).toBe('a file');
});

test('an empty data folder is no error and builds an empty index', () => {
  const folder = scratch({ 'data/notes.txt': '' });
  const { status, stdout } = run(folder, ['build']);
  expect(status).toBe(0);
  expect(stdout).toContain('1 file written');
  expect(fs.readdirSync(join(folder, 'out')).sort()).toEqual(['.manifest.json', 'index.html']);
});

test('--json prints one JSON value with every finding', () => {
  const { folder } = sample({ bench: contradicted, quoting });
  for (const args of [['check', '--json'], ['build', '--json'], ['build', '--draft', '--json'], ['build', '--draft', '--json']]) {
    const { status, stdout, stderr } = run(folder, args);
    const result = JSON.parse(stdout) as { exit: number; episodes: { id: string; findings: { code: string; severity: string; place: { line: number } }[] }[]; written?: string[]; built?: boolean };
    expect([result.exit, stderr]).toEqual([status, '']);
    expect(result.episodes.map((e) => e.id)).toEqual(['bench', 'quoting']);
    expect(result.episodes[0]!.findings.filter((f) => f.severity === 'error').length).toBeGreaterThan(0);
    for (const f of result.episodes.flatMap((e) => e.findings)) expect(f.place.line).toBeGreaterThan(0);
    if (args[0] === 'build') expect(result.built).toBe(args.includes('--draft'));
  }
});

test('--fail-on decides what counts', () => {
  const { folder } = sample({ bench: doubtful });
  expect(run(folder, ['check']).status).toBe(0);
  expect(run(folder, ['check', '--fail-on', 'warning']).status).toBe(1);
  expect(run(folder, ['check', '--fail-on=note']).status).toBe(1);
});

test('help of every command tells its options, and of the program its exit codes', () => {
  const { folder } = sample({ bench: one });
  const help = run(folder, ['--help']);
  expect(help.status).toBe(0);
  const commands = [...help.stdout.matchAll(/^ {2}([a-z]+) /gm)].map((m) => m[1]!).filter((c) => c !== 'help');
  expect(commands).toEqual(expect.arrayContaining(['check', 'build', 'explain']));
  const words = help.stdout.replace(/\s+/g, ' ');
  for (const { code, says } of Object.values(exitCodes)) expect(words).toContain(`${code} ${says}`);
  for (const line of help.stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  for (const c of commands) {
    const own = run(folder, [c, '--help']);
    expect([c, own.status]).toEqual([c, 0]);
    expect(own.stdout).toMatch(/^Usage: figureproof /);
    for (const line of own.stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  }
  expect(run(folder, ['--version']).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
});

test('explain goes down to the file and line of each reading', () => {
  const { folder } = sample({ bench: one });
  const { status, stdout } = run(folder, ['explain', 'rise:bench/stock/loop/temperature/core/load~workload=,phase=idle']);
  expect(status).toBe(0);
  const line = one.split('\n').findIndex((l) => l.includes('load: 67 67 68')) + 1;
  expect(stdout.match(new RegExp(`run \\d: 6[78] °C {2}data/bench/episode\\.yaml:${line}\\b`, 'g'))).toHaveLength(3);
  // 67.33 − 38.33
  expect(stdout).toMatch(/^29 K /);
  const json = JSON.parse(run(folder, ['explain', '--json', '--episode', 'bench', 'mean:bench/stock/loop/temperature/core/load']).stdout) as { episode: string; shown: string }[];
  expect(json.map((e) => [e.episode, e.shown])).toEqual([['bench', '67 °C']]);
});

test('explain tells of a check what it looks for and what it found', () => {
  const { folder } = sample({ bench: doubtful });
  const { status, stdout } = run(folder, ['explain', 'runs-disagree']);
  expect(status).toBe(0);
  for (const part of ['Right', 'Wrong', 'threshold', 'data/bench/episode.yaml:']) expect(stdout).toContain(part);
});

test('explain tells of a finding in a text what it says and what to do about it, found here or not', () => {
  const { folder } = sample({ bench: doubtful });
  const { status, stdout } = run(folder, ['explain', 'self-unit']);
  expect(status).toBe(0);
  for (const part of ['self-unit (error)', 'a unit that no such quantity has', 'Say the unit', 'nothing here']) expect(stdout).toContain(part);
  expect(run(folder, ['explain', 'claim-untie']).stderr).toContain('did you mean "claim-untied"?');
});

test('nothing is drawn over a pipe, and colour follows NO_COLOR and the terminal', () => {
  const { folder } = sample({ bench: contradicted });
  // script(1) gives the command a terminal of its own.
  const inTerminal = (env: Record<string, string>) => spawnSync('script', ['-qec', `stty cols 80; '${process.execPath}' '${cli}' check`, '/dev/null'], { cwd: folder, encoding: 'utf8', env: { ...process.env, NO_COLOR: undefined, FORCE_COLOR: undefined, TERM: 'xterm', ...env } });
  const coloured = inTerminal({});
  expect(coloured.status).toBe(1);
  expect(coloured.stdout).toContain('\x1b[31m');
  expect(inTerminal({ NO_COLOR: '1' }).stdout).not.toMatch(/\x1b\[\d*m/);
  expect(inTerminal({ TERM: 'dumb' }).stdout).not.toMatch(/\x1b\[\d*m/);
  for (const l of coloured.stdout.split('\r\n')) expect(l.replace(/\x1b\[[\d;]*[mK]/g, '').replace(/^[^]*\r/, '').length, l).toBeLessThanOrEqual(80);
});

test('a reader that has seen enough is no error', () => {
  const { folder } = sample({ bench: contradicted });
  const { stderr } = spawnSync('bash', ['-c', `'${process.execPath}' '${cli}' check --json --no-cache | head -c 10`], { cwd: folder, encoding: 'utf8' });
  expect(stderr).not.toMatch(/EPIPE|Error|\n\s+at /);
});

test('the same command again says the same of the findings, and that nothing was written', () => {
  const { folder, data } = sample({ bench: doubtful });
  const first = run(folder, ['build']);
  const second = run(folder, ['build']);
  expect(first.status).toBe(0);
  expect([second.status, second.stderr]).toEqual([0, '']);
  const findings = (text: string): string => text.slice(0, text.indexOf('Built in'));
  expect(findings(second.stdout)).toBe(findings(first.stdout));
  expect(second.stdout).toMatch(/Built in out: 0 files written, \d+ unchanged\.\nLook at/);
  // What the run rests on: an input, an input that was not there before, an output, the arguments.
  const changes: [string, () => void, RegExp][] = [
    ['an output lost', () => fs.rmSync(join(folder, 'out/bench/index.html')), /1 file written/],
    ['an output edited', () => place(folder, 'out/bench/index.html', 'x'), /1 file written/],
    ['a record edited', () => fs.appendFileSync(join(data, 'bench/episode.yaml'), '\n'), /files? written/],
    ['an episode more', () => place(data, 'next/episode.yaml', quoting), /^next /m],
    ['an episode less', () => fs.rmSync(join(data, 'next'), { recursive: true }), /\d+ removed/],
  ];
  for (const [name, change, says] of changes) {
    change();
    expect([name, run(folder, ['build']).stdout]).toEqual([name, expect.stringMatching(says)]);
    expect([name, run(folder, ['build']).stdout]).toEqual([name, expect.stringMatching(/ 0 files written/)]);
  }
  expect(run(folder, ['build', '--draft']).stdout).toContain('A draft in out');
});

test('a run with findings is told again with its exit code', () => {
  const { folder, data } = sample({ bench: contradicted });
  const first = run(folder, ['check']);
  const second = run(folder, ['check']);
  expect([second.status, second.stdout, second.stderr]).toEqual([1, first.stdout, '']);
  place(data, 'bench/episode.yaml', one);
  expect(run(folder, ['check']).status).toBe(0);
});
