// README.md and DEVELOPERS.md are held to the code: tables, commands, paths, links. ACCEPT=1 writes the tables anew.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { charts } from '../pipeline/charts/index.js';
import { checksTable } from '../pipeline/checks/index.js';
import { exitCodes } from '../pipeline/exit-codes.js';
import { proofTable } from '../pipeline/proof-rules.js';
import { factKinds } from '../pipeline/facts/index.js';
import { graphics } from '../pipeline/graphics/index.js';
import { Source } from '../pipeline/places/index.js';
import { outline } from '../pipeline/records/index.js';
import { scratch } from './files/scratch.js';
import { between, exitCodesTable, picturesTable, replaceBetween, roomsTable } from './documents.js';

const root = resolve(import.meta.dirname, '..');
const pictures = picturesTable([...graphics.map((g) => ({ medium: 'graphic', ...g })), ...charts.map((c) => ({ medium: 'chart', ...c }))]);
const read = (name: string) => readFileSync(join(root, name), 'utf8');
if (process.env.ACCEPT) {
  writeFileSync(join(root, 'README.md'), [['checks', checksTable()], ['proof-findings', proofTable()], ['exit-codes', exitCodesTable(exitCodes)], ['pictures', pictures]].reduce((text, [name, table]) => replaceBetween(text, name!, table!), read('README.md')));
  writeFileSync(join(root, 'DEVELOPERS.md'), replaceBetween(read('DEVELOPERS.md'), 'rooms', roomsTable()));
}
const readme = read('README.md');
const developers = read('DEVELOPERS.md');
const blocks = (text: string, language: string) => [...text.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].filter((m) => m[1] === language).map((m) => m[2]!);

test('the README lists every check as the code has it', () => {
  expect(between(readme, 'checks')).toBe(checksTable().trim());
});

test('the README lists what a proof may find as the code has it', () => {
  expect(between(readme, 'proof-findings')).toBe(proofTable().trim());
});

test('the README lists the exit codes as the code has them', () => {
  expect(between(readme, 'exit-codes')).toBe(exitCodesTable(exitCodes).trim());
});

test('the README lists every kind of picture as the code has it', () => {
  expect(between(readme, 'pictures')).toBe(pictures.trim());
});

test('DEVELOPERS lists the rooms and what they may import', () => {
  expect(between(developers, 'rooms')).toBe(roomsTable().trim());
});

test('every kind of fact is named in the README', () => {
  expect(factKinds.filter((k) => !readme.includes(k))).toEqual([]);
});

test('npm scripts that are named exist, and every script is named', () => {
  const scripts = Object.keys(JSON.parse(read('package.json')).scripts as object);
  const named = [...(readme + developers).matchAll(/npm (?:run )?(build|test|bench|compile|accept|[a-z-]+:[a-z-]+|(?<=run )[a-z-]+)\b/g)].map((m) => m[1]!);
  expect([...new Set(named)].filter((n) => !scripts.includes(n))).toEqual([]);
  expect(scripts.filter((s) => !named.includes(s))).toEqual([]);
});

test('commands that are named exist, with the options named', () => {
  const lines = blocks(readme + developers, 'sh').flatMap((b) => b.split('\n')).filter((l) => l.startsWith('node dist/cli.js'));
  const help = new Map<string, string>();
  for (const line of lines) {
    const [command, ...words] = line.replace(/\s+#.*$/, '').split(/\s+/).slice(2);
    if (!help.has(command!)) {
      const ran = spawnSync('node', ['dist/cli.js', command!, '--help'], { cwd: root, encoding: 'utf8' });
      expect(ran.stdout, line).toContain(`figureproof ${command}`);
      help.set(command!, ran.stdout);
    }
    for (const option of words.filter((w) => w.startsWith('--'))) expect(help.get(command!), line).toContain(option);
  }
  const all = spawnSync('node', ['dist/cli.js', '--help'], { cwd: root, encoding: 'utf8' }).stdout;
  const commands = [...all.matchAll(/^ {2}([a-z]+) .*/gm)].map((m) => m[1]!).filter((c) => c !== 'help');
  expect(commands.filter((c) => !lines.some((l) => l.split(/\s+/)[2] === c))).toEqual([]);
});

test('the commands that the README says to have --json have it, and no others', () => {
  const said = [.../those that find or tell something \(([^)]+)\) have `--json`/.exec(readme)![1]!.matchAll(/`([a-z]+)`/g)].map((m) => m[1]!);
  const all = spawnSync('node', ['dist/cli.js', '--help'], { cwd: root, encoding: 'utf8' }).stdout;
  const commands = [...all.matchAll(/^ {2}([a-z]+) .*/gm)].map((m) => m[1]!).filter((c) => c !== 'help');
  const have = commands.filter((c) => spawnSync('node', ['dist/cli.js', c, '--help'], { cwd: root, encoding: 'utf8' }).stdout.includes('--json'));
  expect([...said].sort()).toEqual([...have].sort());
});

test('what the README has explained can be explained', () => {
  const lines = blocks(readme, 'sh').flatMap((b) => b.split('\n')).filter((l) => l.startsWith('node dist/cli.js explain'));
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) {
    const id = /"([^"]+)"/.exec(line)![1]!;
    const ran = spawnSync('node', ['dist/cli.js', 'explain', id], { cwd: root, encoding: 'utf8' });
    expect(ran.status, ran.stdout + ran.stderr).toBe(0);
  }
});

test('paths that are named exist', () => {
  const named = [...(readme + developers).matchAll(/`((?:pipeline|test|templates|data|out\/showcase|\.ci)[/\w.-]*)`/g)].map((m) => m[1]!);
  const links = [...(readme + developers).matchAll(/\]\(([^)#:]+)\)/g)].map((m) => m[1]!);
  expect([...named, ...links].filter((p) => !/[A-Z]{3}/.test(p) && !existsSync(join(root, p)))).toEqual([]);
});

test('the first record of the README can be read, and its other YAML is YAML', () => {
  const [first, ...others] = blocks(readme, 'yaml');
  const { value, findings } = outline(new Source('episode.yaml', first!), 'example');
  expect(findings).toEqual([]);
  expect(value).toBeDefined();
  for (const b of others) expect(parseDocument(b).errors).toEqual([]);
});

test('the commands of the README go with its first record, and the figures that it names of it are there', () => {
  const [first] = blocks(readme, 'yaml');
  const folder = scratch({ 'data/ex/episode.yaml': first! });
  const typed = blocks(readme, 'sh').flatMap((b) => b.split('\n')).flatMap((l) => /^node dist\/cli\.js (.*?)\s*(?:#|$)/.exec(l)?.[1] ?? []);
  // Those about files of the demo are left out, and what opens a window.
  const commands = typed.filter((c) => !/\bdata\/|\.(?:md|csv)\b|^look$|--help/.test(c));
  expect(commands.map((c) => c.split(' ')[0])).toEqual(expect.arrayContaining(['check', 'build', 'explain']));
  const said = [...readme.matchAll(/(?<=record above[^.]*)`([a-z_]+:[^` ]+)`/g)].map((m) => `explain "${m[1]}"`);
  expect(said.length).toBeGreaterThan(0);
  for (const command of [...commands, ...said]) {
    const ran = spawnSync('sh', ['-c', `"$0" "$1" ${command}`, process.execPath, join(root, 'dist/cli.js')], { cwd: folder, encoding: 'utf8' });
    expect(ran.status, command + ran.stdout + ran.stderr).toBe(0);
    // Nothing in it is doubtful either.
    if (command === 'check') expect(ran.stdout).toMatch(/\nNothing found\.\n$/);
  }
});

test('why each dependency is there stands in DEVELOPERS', () => {
  const { dependencies, devDependencies } = JSON.parse(read('package.json')) as Record<string, Record<string, string>>;
  expect(Object.keys({ ...dependencies, ...devDependencies }).filter((d) => !developers.includes(`\`${d}\``))).toEqual([]);
});

test('versions are exact and the lock file names no address', () => {
  const { dependencies, devDependencies } = JSON.parse(read('package.json')) as Record<string, Record<string, string>>;
  expect(Object.values({ ...dependencies, ...devDependencies }).filter((v) => !/^\d+\.\d+\.\d+$/.test(v))).toEqual([]);
  expect(read('package-lock.json')).not.toContain('"resolved"');
});

test('few files are long', () => {
  const lengths = readdirSync(join(root, 'pipeline'), { recursive: true }).map(String).filter((f) => f.endsWith('.ts'))
    .map((f) => [read(`pipeline/${f}`).split('\n').length, f] as const).sort((a, b) => a[0] - b[0]);
  expect(lengths[lengths.length >> 1]![0]).toBeLessThan(100);
  expect(lengths.filter(([n]) => n > 300)).toEqual([]);
});
