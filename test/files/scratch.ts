// A fresh folder a test, removed after it; and disks that fail in a chosen way.
import * as fs from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Disk } from '../../pipeline/files/index.js';

export function scratch(files: Record<string, string | Uint8Array> = {}): string {
  const folder = fs.realpathSync(fs.mkdtempSync(join(tmpdir(), 'figureproof-')));
  onTestFinished(() => fs.rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) place(folder, name, content);
  return folder;
}

export function place(folder: string, name: string, content: string | Uint8Array): void {
  fs.mkdirSync(join(folder, name, '..'), { recursive: true });
  fs.writeFileSync(join(folder, name), content);
}

/** Every file below a folder with its content, dot files included. */
export function treeOf(folder: string): Record<string, string> {
  const all = (fs.readdirSync(folder, { recursive: true, encoding: 'utf8' })).sort();
  return Object.fromEntries(all.filter((n) => fs.lstatSync(join(folder, n)).isFile()).map((n) => [n, fs.readFileSync(join(folder, n), 'latin1')]));
}

/** A disk on which the named calls fail with a system error, from the nth call on, where `when` says so. */
export function failing(calls: Exclude<keyof Disk, 'hashed'>[], code: string, when: (path: string, count: number) => boolean): Disk {
  let count = 0;
  const broken: Record<string, unknown> = { ...fs };
  for (const call of calls) {
    const real = fs[call] as (...args: unknown[]) => unknown;
    broken[call] = (...args: unknown[]) => {
      const path = String(args[call === 'renameSync' || call === 'linkSync' ? 1 : 0]);
      if (when(path, ++count)) throw Object.assign(new Error(`${code}: refused, ${call} '${path}'`), { code });
      return real(...args);
    };
  }
  return broken as unknown as Disk;
}
