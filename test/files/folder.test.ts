import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Folder, wholeGiven } from '../../pipeline/files/index.js';
import { failing, place, scratch } from './scratch.js';

function episode() {
  const project = scratch({ 'episode/episode.yaml': 'title: a\n', 'episode/readings.csv': 'a,b\n', 'episode/logs/b-2.csv': '', 'episode/logs/a-10.csv': '', 'episode/logs/a-9.csv': '', 'secret.txt': 'secret', 'episode-two/x.csv': '' });
  return { project, folder: new Folder(join(project, 'episode')) };
}

test('a file of the folder is read as bytes', () => {
  const { folder } = episode();
  expect(Buffer.from(folder.read('readings.csv') as Uint8Array).toString()).toBe('a,b\n');
  expect(Buffer.from(folder.read('./logs/../readings.csv') as Uint8Array).toString()).toBe('a,b\n');
});

test.each([
  ['../secret.txt', /leaves the episode folder/],
  ['logs/../../secret.txt', /leaves the episode folder/],
  ['../episode-two/x.csv', /leaves the episode folder/],
  ['..', /leaves the episode folder/],
  ['/etc/passwd', /absolute path/],
  ['C:/windows', /absolute path/],
  ['..\\secret.txt', /backslash/],
  ['a\0b', /control character/],
  ['', /empty/],
  ['logs', /a folder/],
  ['nothing.bin', /no such file$/],
  ['reading.csv', /no such file; did you mean "readings.csv"\?/],
  ['logs/a-8.csv', /did you mean "logs\//],
  ['readings.csv/x', /no such file/],
])('%j is refused', (name, why) => {
  const { folder } = episode();
  expect(folder.read(name)).toEqual({ error: expect.stringMatching(why) });
});

test('links may lead about inside the folder and not out of it', () => {
  const { project, folder } = episode();
  symlinkSync('readings.csv', join(folder.path, 'inside.csv'));
  symlinkSync(join(project, 'secret.txt'), join(folder.path, 'outside.csv'));
  symlinkSync('..', join(folder.path, 'up'));
  symlinkSync('loop', join(folder.path, 'loop'));
  expect(folder.read('inside.csv')).toBeInstanceOf(Uint8Array);
  expect(folder.read('outside.csv')).toEqual({ error: expect.stringMatching(/link that leaves/) });
  expect(folder.read('up/secret.txt')).toEqual({ error: expect.stringMatching(/link that leaves/) });
  expect(folder.read('loop')).toEqual({ error: expect.stringMatching(/circle/) });
  expect(folder.list('up/*')).toEqual([]);
});

test('the folder may itself stand behind a link', () => {
  const { project } = episode();
  symlinkSync('episode', join(project, 'alias'));
  expect(new Folder(join(project, 'alias')).read('readings.csv')).toBeInstanceOf(Uint8Array);
});

test('a pipe would block for ever and is refused', () => {
  const { folder } = episode();
  execFileSync('mkfifo', [join(folder.path, 'pipe.csv')]);
  expect(folder.read('pipe.csv')).toEqual({ error: 'it is not a plain file' });
});

test('a file beyond the limit is refused unread', () => {
  const { folder } = episode();
  place(folder.path, 'long.csv', 'x'.repeat(2_000_000));
  const small = new Folder(folder.path, failing(['readFileSync'], 'EIO', () => true), 1_048_576);
  expect(wholeGiven(small.read('long.csv'))).toEqual({ error: 'it has 2 MB, and at most 1 MB are read at once' });
});

test('a file that may not be read says so', () => {
  const { folder } = episode();
  const locked = new Folder(folder.path, failing(['readFileSync'], 'EACCES', (path) => path.endsWith('readings.csv')));
  expect(locked.read('readings.csv')).toEqual({ error: 'it cannot be read: permission is denied (EACCES)' });
});

test.each([
  ['logs/{setting}-{run}.csv', ['logs/a-10.csv', 'logs/a-9.csv', 'logs/b-2.csv']],
  ['logs/a-{run}.csv', ['logs/a-10.csv', 'logs/a-9.csv']],
  ['{folder}/*.csv', ['logs/a-10.csv', 'logs/a-9.csv', 'logs/b-2.csv']],
  ['*.csv', ['readings.csv']],
  ['logs/a.{run}.csv', []],
  ['../{any}.txt', []],
  ['nowhere/*', []],
])('pattern %s', (pattern, names) => {
  const { folder } = episode();
  mkdirSync(join(folder.path, 'logs/a-folder.csv'), { recursive: true });
  expect(folder.list(pattern)).toEqual(names);
});
