// What the whole command does to the disk: killed, interrupted, run twice at once, on a full disk, elsewhere.
import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import * as fs from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, onTestFinished, test } from 'vitest';
import { exitCodes } from '../../pipeline/exit-codes.js';
import { one, quoting, sample } from '../build/sample.js';
import { place, scratch, treeOf } from '../files/scratch.js';
import { cli, run, start } from './run.js';

const changed = one.replace('load: 59 60 60 °C', 'load: 60 60 60 °C').replace('load: 199 200 200 W', 'load: 202 200 200 W').replace('title: Bench notes', 'title: Bench notes, again');

/** All outputs without the manifest and what a killed build leaves beside them. */
const outputs = (folder: string): Record<string, string> => Object.fromEntries(Object.entries(treeOf(join(folder, 'out'))).filter(([name]) => !name.startsWith('.')));

test('killed at any moment, each output is old or new and whole, and the next build puts all right', async () => {
  const { folder, data } = sample({ bench: one });
  run(folder, ['build']);
  const before = outputs(folder);
  place(data, 'bench/episode.yaml', changed);
  run(folder, ['build']);
  const after = outputs(folder);
  expect(after).not.toEqual(before);
  // Moments spread over the whole run, most of them where files are renamed.
  for (let n = 0; n < 9; n++) {
    const back = n % 2 === 1;
    place(data, 'bench/episode.yaml', back ? changed : one);
    const child = start(folder, ['build']);
    let ended = false;
    const exit = once(child, 'exit').then(() => (ended = true));
    if (n < 3) await new Promise((go) => setTimeout(go, 60 + n * 150));
    else {
      const staging = join(folder, 'out/.staging');
      for (let spin = 0; !ended && !fs.existsSync(staging); spin++) await new Promise((go) => setTimeout(go, 1));
      if (n > 4) for (let spin = 0; !ended && fs.existsSync(staging) && fs.readdirSync(staging).length > (n % 3); spin++) await new Promise((go) => setImmediate(go));
    }
    child.kill('SIGKILL');
    await exit;
    for (const [name, content] of Object.entries(outputs(folder))) expect([before[name], after[name]].includes(content), `${name} after kill ${n}`).toBe(true);
    expect(run(folder, ['build']).status).toBe(0);
    expect(outputs(folder)).toEqual(back ? after : before);
    expect(fs.readdirSync(join(folder, 'out')).filter((f) => f.startsWith('.'))).toEqual(['.manifest.json']);
  }
}, 600_000);

test('what a killed build left is cleared where all is in place as well', () => {
  const { folder } = sample({ bench: one });
  run(folder, ['build']);
  const out = join(folder, 'out');
  // No process has so high a number (proc_sys_kernel(5): pid_max is at most 4,194,304).
  fs.writeFileSync(join(out, '.lock'), '99999999 1\n');
  fs.mkdirSync(join(out, '.staging'));
  fs.writeFileSync(join(out, '.staging/0'), 'half');
  expect(run(folder, ['build']).status).toBe(0);
  expect(fs.readdirSync(out).filter((f) => f.startsWith('.'))).toEqual(['.manifest.json']);
  // A build that is still at work keeps its lock, and is no reason to fail.
  const own = `${process.pid} ?\n`;
  fs.writeFileSync(join(out, '.lock'), own);
  expect(run(folder, ['build']).status).toBe(0);
  expect(fs.readFileSync(join(out, '.lock'), 'utf8')).toBe(own);
});

describe.each([['SIGINT', exitCodes.interrupted], ['SIGTERM', exitCodes.terminated]] as const)('%s', (signal, { code }) => {
  test('in the midst of writing clears up, and what stood stays', async () => {
    const { folder, data } = sample({ bench: one });
    run(folder, ['build']);
    const before = treeOf(join(folder, 'out'));
    place(data, 'bench/episode.yaml', changed);
    const child = start(folder, ['build'], { SIGNAL_SELF: signal, NODE_OPTIONS: `--import ${pathToFileURL(join(import.meta.dirname, 'signal-self.mjs')).href}` });
    expect(await once(child, 'exit')).toEqual([code, null]);
    expect(treeOf(join(folder, 'out'))).toEqual(before);
  });

  test('from outside leaves all or nothing done, whenever it comes', async () => {
    const { folder, data } = sample({ bench: changed });
    run(folder, ['build']);
    const after = treeOf(join(folder, 'out'));
    place(data, 'bench/episode.yaml', one);
    run(folder, ['build']);
    const before = treeOf(join(folder, 'out'));
    place(data, 'bench/episode.yaml', changed);
    fs.rmSync(join(folder, '.cache'), { recursive: true });
    const child = start(folder, ['build']);
    let ended = false;
    const exit = once(child, 'exit').then((all) => { ended = true; return all as [number]; });
    for (let spin = 0; !ended && !fs.existsSync(join(folder, 'out/.staging')); spin++) await new Promise((go) => setTimeout(go, 1));
    child.kill(signal);
    const [told] = await exit;
    const now = treeOf(join(folder, 'out'));
    if (JSON.stringify(now) === JSON.stringify(before)) expect(told).toBe(code);
    else expect(now).toEqual(after);
  });
});

test('of two builds at once one is told that the other is at work, and nothing is harmed', async () => {
  const { folder } = sample({ bench: one });
  const children = [start(folder, ['build', '--no-cache']), start(folder, ['build', '--no-cache'])];
  const ended = await Promise.all(children.map(async (c) => {
    let told = '';
    c.stderr.on('data', (d: Buffer) => (told += d.toString()));
    const [code] = (await once(c, 'close')) as [number];
    return { code, told };
  }));
  for (const { code, told } of ended) {
    expect([0, exitCodes.trouble.code]).toContain(code);
    if (code !== 0) expect(told).toMatch(/Cannot build into out: another build \(process \d+\) is writing there\./);
  }
  expect(ended.map((e) => e.code)).toContain(0);
  const alone = sample({ bench: one });
  run(alone.folder, ['build']);
  expect(outputs(folder)).toEqual(outputs(alone.folder));
});

test('the same bytes in another folder, time zone and locale, from an empty cache or a full one', () => {
  const settings = [
    { TZ: 'Pacific/Kiritimati', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' },
    { TZ: 'America/St_Johns', LC_ALL: 'C', LANG: 'C' },
    { TZ: undefined, LC_ALL: 'de_DE.UTF-8', LANG: 'de_DE.UTF-8' },
  ];
  const trees = settings.map((env, i) => {
    const elsewhere = join(scratch(), 'a folder, “odd” & deep'.repeat(i), `${i}`);
    for (const [id, text] of Object.entries({ bench: one, quoting })) place(elsewhere, `data/${id}/episode.yaml`, text);
    const built = run(elsewhere, ['build'], env);
    expect([built.status, built.stderr]).toEqual([0, 'Checking 2 episodes\n  bench\n  quoting\nDrawing 2 pictures\n  bench\n  quoting\n']);
    const cold = treeOf(join(elsewhere, 'out'));
    if (i === 0) {
      fs.rmSync(join(elsewhere, 'out'), { recursive: true });
      run(elsewhere, ['build'], env);
      expect(treeOf(join(elsewhere, 'out'))).toEqual(cold);
    }
    return cold;
  });
  expect(trees[1]).toEqual(trees[0]);
  expect(trees[2]).toEqual(trees[0]);
  // Named folders, the manifest included: nothing in any output tells where it was made.
  const there = scratch();
  for (const [id, text] of Object.entries({ bench: one, quoting })) place(there, `elsewhere/data/${id}/episode.yaml`, text);
  expect(run(there, ['build', '--data', 'elsewhere/data', '--out', 'made/here', '--no-cache']).status).toBe(0);
  expect(treeOf(join(there, 'made/here'))).toEqual(trees[0]);
});

/** A disk of 300 KB of its own, where the system lets this user mount one. */
function smallDisk(): string | undefined {
  const folder = scratch();
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=300k', 'tmpfs', folder]).status !== 0) return undefined;
  onTestFinished(() => void spawnSync('umount', [folder]));
  return folder;
}

test('a disk that is full: a plain sentence, and what stood stays (without the right to mount, test/files plays it)', () => {
  const disk = smallDisk();
  if (disk === undefined) return;
  const s = sample({ bench: one });
  const out = join(disk, 'out');
  place(out, 'kept.txt', 'kept');
  const { status, stderr } = run(s.folder, ['build', '--out', out]);
  expect(status, stderr).toBe(exitCodes.trouble.code);
  expect(stderr).toMatch(/Cannot write .*: the disk is full \(ENOSPC\)\.\n$/);
  expect(treeOf(out)).toEqual({ 'kept.txt': 'kept' });
});

test('a cache that cannot be written is no trouble', () => {
  const s = sample({ bench: one });
  place(s.folder, 'file', '');
  const { status } = run(s.folder, ['build', '--cache', 'file/cache']);
  expect(status).toBe(0);
  expect(fs.existsSync(join(s.folder, 'out/bench/index.html'))).toBe(true);
});

test('the command runs through a link, as a package manager makes one', () => {
  const s = sample({ bench: one });
  const link = join(s.folder, 'figureproof');
  fs.symlinkSync(cli, link);
  expect(spawnSync(process.execPath, [link, 'check'], { cwd: s.folder, encoding: 'utf8' }).status).toBe(0);
});

test('an episode folder that leads to what is not there: a plain sentence, and what stood stays', () => {
  const { folder, data } = sample({ bench: one, quoting });
  expect(run(folder, ['build']).status).toBe(exitCodes.fine.code);
  const before = outputs(folder);
  fs.renameSync(join(data, 'quoting'), join(folder, 'away'));
  fs.symlinkSync('../elsewhere', join(data, 'quoting'));
  const { status, stderr } = run(folder, ['build']);
  expect([status, stderr]).toEqual([exitCodes.trouble.code, expect.stringMatching(/Cannot read the episode folder .*quoting: it is a link to what is not there \(ENOENT\)\.\n$/)]);
  expect(outputs(folder)).toEqual(before);
});
