// The compiled command in a process of its own.
import { spawn, spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { resolve } from 'node:path';

export const cli = resolve(import.meta.dirname, '../../dist/cli.js');

export function run(cwd: string, args: string[], env: Record<string, string | undefined> = {}): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [cli, ...args], { cwd, encoding: 'utf8', env: { ...process.env, NO_COLOR: undefined, FORCE_COLOR: undefined, ...env }, maxBuffer: 1 << 26 });
}

export function start(cwd: string, args: string[], env: Record<string, string | undefined> = {}) {
  return spawn(process.execPath, [cli, ...args], { cwd, stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, ...env } });
}
