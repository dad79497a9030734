// Files that are read by stretches: the same bytes each time, or nothing.
import { createHash } from 'node:crypto';
import { appendFileSync, readFileSync, renameSync, rmSync, statSync, truncateSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { disk, Folder, LargeFile, Recorder } from '../../pipeline/files/index.js';
import { readLogFile } from '../../pipeline/logs/index.js';
import { steady } from '../logs/random-logs.js';
import { place, scratch } from './scratch.js';

const text = `t,phase,a,b,c\n${Array.from({ length: 400_000 }, (_, i) => `${i},load,${40 + (i % 50)},35.1,200`).join('\n')}\n`;

function large(): { file: LargeFile; path: string; folder: string } {
  const folder = scratch();
  place(folder, 'log.csv', text);
  const file = new Folder(folder).read('log.csv');
  if (!(file instanceof LargeFile)) throw new Error('not large');
  return { file, path: join(folder, 'log.csv'), folder };
}

test('gives every stretch as often as asked, its hash, and all of it where that is allowed', () => {
  const { file, path } = large();
  const bytes = readFileSync(path);
  expect(file.hash()).toBe(createHash('sha256').update(bytes).digest('hex'));
  for (const [at, length] of [[0, 10], [file.size - 5, 10], [1_234_567, 70_000], [0, 10], [file.size, 4]] as const) {
    const into = new Uint8Array(length);
    const n = file.read(into, at);
    expect(bytes.subarray(at, at + length).equals(into.subarray(0, n))).toBe(true);
  }
  expect(bytes.equals(file.whole() as Uint8Array)).toBe(true);
  expect(new LargeFile(path, disk, 1_048_576).whole()).toEqual({ error: 'it has 10 MB, and at most 1 MB are read at once' });
});

describe('a file that changes between two readings', () => {
  test.each<[string, (path: string) => void]>([
    ['grows', (path) => appendFileSync(path, '400000,load,1,2,3\n')],
    ['is cut', (path) => truncateSync(path, 5_000_000)],
    ['is written over, with size and times as before', (path) => {
      const { atime, mtime } = statSync(path);
      writeFileSync(path, text.replace('5,load,45,', '5,load,47,'));
      utimesSync(path, atime, mtime);
    }],
    ['is another one', (path) => {
      writeFileSync(`${path}.new`, text.replace('5,load,45,', '5,load,47,'));
      renameSync(`${path}.new`, path);
    }],
    ['is gone', (path) => rmSync(path)],
  ])('%s: nothing of it counts', (_, change) => {
    const { file, path } = large();
    file.hash();
    change(path);
    const { value, findings, lines } = readLogFile('log.csv', file, steady);
    expect([value, lines]).toEqual([undefined, undefined]);
    expect(findings.map((f) => [f.code, f.severity, f.message])).toEqual([['file-missing', 'error', expect.stringMatching(/^The file log\.csv cannot be read: (it was changed while it was read|it is not there.*)/)]]);
  });

  test('in the midst of a reading: nothing of it counts either', () => {
    const { file, path } = large();
    file.hash();
    let reads = 0;
    const changing = { size: file.size, get trouble() { return file.trouble; }, read: (into: Uint8Array, at: number) => {
      if (++reads === 20) writeFileSync(path, text.replace('5,load,45,', '5,load,47,'));
      return file.read(into, at);
    } };
    const { value, findings } = readLogFile('log.csv', changing, steady);
    expect(reads).toBeGreaterThan(20);
    expect(value).toBeUndefined();
    expect(findings.map((f) => f.message)).toEqual(['The file log.csv cannot be read: it was changed while it was read']);
  });

  test('but one that was only touched is the same', () => {
    const { file, path } = large();
    file.hash();
    utimesSync(path, new Date(1_000_000_000_000), new Date(1_000_000_000_000));
    const { value, findings } = readLogFile('log.csv', file, steady);
    expect(findings).toEqual([]);
    expect(value!.values.map((v) => v.samples)).toEqual([400_000, 400_000, 400_000, 1]);
  });
});

test('a run takes note of what it held', () => {
  const { path, folder } = large();
  const recorder = new Recorder(folder, disk);
  const file = new Folder(folder, recorder.disk).read('log.csv') as LargeFile;
  const sha = file.hash();
  writeFileSync(path, 'another');
  expect(recorder.seen().reads.find(([p]) => p === path)?.[1]).toBe(sha);
});
