// Processes timed whole, in pairs that take turns, so that a slow moment of the machine falls on both.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export const project = resolve(import.meta.dirname, '../..');
export const cli = join(project, 'dist/cli.js');

export function scratch() {
  const folder = mkdtempSync(join(tmpdir(), 'figureproof-bench-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Milliseconds of a whole process; throws when it exits otherwise than expected. */
export function timed(args, { cwd = project, codes = [0], env = process.env } = {}) {
  const started = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, args, { cwd, env, encoding: 'utf8', maxBuffer: 1 << 28 });
  const taken = Number(process.hrtime.bigint() - started) / 1e6;
  if (!codes.includes(status)) throw new Error(`${args.join(' ')} exited with ${status}\n${stderr}`);
  return taken;
}

/** The same with the processor time of all its threads, which a machine with other work to do falsifies less: `{ms, cpu}`, both in milliseconds. */
export function costed(args, options) {
  const folder = scratch();
  const told = join(folder, 'cpu');
  const ms = timed(['--require', join(import.meta.dirname, 'tell-cpu.cjs'), ...args], { ...options, env: { ...process.env, CPU_TOLD_IN: told } });
  const cpu = Number(readFileSync(told, 'utf8'));
  rmSync(folder, { recursive: true, force: true });
  return { ms, cpu };
}

export function median(numbers) {
  const sorted = [...numbers].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Median of the ratios of pairs run in turns. */
export function pairs(count, one, other) {
  const ratios = [];
  const times = [[], []];
  for (let i = 0; i < count; i++) {
    const [a, b] = i % 2 ? [one(), other()] : [other(), one()].reverse();
    ratios.push(a / b);
    times[0].push(a);
    times[1].push(b);
  }
  return { ratio: median(ratios), detail: `${median(times[0]).toFixed(0)} ms against ${median(times[1]).toFixed(0)} ms; ${ratios.map((r) => r.toFixed(2)).join(' ')}` };
}
