// Folders that the command does not ask for and meets all the same: of the search path, at home, under its feet.
import { spawnSync } from 'node:child_process';
import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { exitCodes } from '../../pipeline/exit-codes.js';
import { one, sample } from '../build/sample.js';
import { scratch } from '../files/scratch.js';
import { cli, run } from './run.js';

test('a folder of the search path or a home that cannot be looked into stops nothing, the first time and the second', () => {
  const { folder } = sample({ bench: one });
  // Links in a circle are closed to everybody, also to who may read all.
  const closed = join(folder, 'closed');
  fs.symlinkSync('closed', closed);
  for (const env of [{ PATH: `${closed}:${process.env.PATH}` }, { HOME: closed, USERPROFILE: closed }, { DUCKDB: closed }]) {
    for (let i = 0; i < 2; i++) {
      const { status, stderr } = run(folder, ['check'], env);
      expect([status, stderr], Object.keys(env)[0]).toEqual([0, i === 0 ? 'Checking 1 episode\n' : '']);
    }
    fs.rmSync(join(folder, '.cache/runs'), { recursive: true });
  }
});

test.skipIf(process.platform === 'win32')('in a working folder that is gone every command ends with 3 and says so, and help is still to be had', () => {
  const from = (args: string[]) => {
    const folder = scratch({ 'gone/x.md': '' });
    const script = 'cd gone && rm x.md && rmdir "$PWD" && exec "$0" "$@"';
    return spawnSync('sh', ['-c', script, process.execPath, cli, ...args], { cwd: folder, encoding: 'utf8', timeout: 60_000, killSignal: 'SIGKILL' });
  };
  for (const args of [['check'], ['build', '--no-cache'], ['new', 'x'], ['proof', 'x.md', '--alone'], ['explain', 'room-differs'], ['stale', 'x'], ['look']]) {
    const { status, stderr } = from(args);
    expect([status, stderr], args[0]).toEqual([exitCodes.trouble.code, 'Cannot use the working folder: it is no longer there; change to a folder that is (ENOENT).\n']);
  }
  expect(from(['--help']).status).toBe(0);
});

test.skipIf(!fs.existsSync('/proc/self/stat'))('outputs or a cache where the system takes no folder: 3, and no cache', () => {
  const { folder } = sample({ bench: one });
  const ended = (args: string[]) => spawnSync(process.execPath, [cli, ...args], { cwd: folder, encoding: 'utf8', timeout: 60_000, killSignal: 'SIGKILL' });
  const built = ended(['build', '--out', '/proc/x/y']);
  expect([built.status, built.stderr]).toEqual([exitCodes.trouble.code, expect.stringMatching(/^Cannot (make the folder|write into) \/proc\/x.* \(E\w+\)\.$/m)]);
  expect(ended(['new', 'x', '--data', '/proc/x']).status).toBe(exitCodes.trouble.code);
  expect(ended(['check', '--cache', '/proc/x']).status).toBe(0);
});
