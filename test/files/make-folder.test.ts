import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFolder } from '../../pipeline/files/make-folder.js';
import { failing, scratch } from './scratch.js';

test('all that are missing on the way are made, and what is there is let be', () => {
  const folder = scratch({ 'there/file': 'x' });
  for (const name of ['there/a/b/c', 'there/a/b/c', 'there', '.', 'there/d/']) makeFolder(join(folder, name));
  expect(fs.readdirSync(folder, { recursive: true }).sort()).toEqual(['there', 'there/a', 'there/a/b', 'there/a/b/c', 'there/d', 'there/file']);
  expect(() => makeFolder('/')).not.toThrow();
});

test('a folder that another build makes meanwhile is as good', () => {
  const path = join(scratch(), 'a/b');
  const other = { ...failing([], '', () => false), mkdirSync: ((at: string) => { fs.mkdirSync(at); fs.mkdirSync(at); }) as typeof fs.mkdirSync };
  makeFolder(path, other);
  expect(fs.statSync(path).isDirectory()).toBe(true);
});

test('where the system says for ever that it is not there, it is said once', () => {
  const folder = scratch();
  const calls: string[] = [];
  const none = failing(['mkdirSync'], 'ENOENT', (path) => path !== folder && calls.push(path) > 0);
  expect(() => makeFolder(join(folder, 'a/b'), none)).toThrow(`Cannot make the folder ${join(folder, 'a')}: the system takes no new folder there (ENOENT).`);
  expect(calls).toHaveLength(3);
});

test('a file on the way, and a disk that refuses', () => {
  const folder = scratch({ file: 'x' });
  expect(() => makeFolder(join(folder, 'file'))).toThrow('EEXIST');
  expect(() => makeFolder(join(folder, 'file/a/b'))).toThrow('ENOTDIR');
  expect(() => makeFolder(join(folder, 'a/b'), failing(['mkdirSync'], 'ENOSPC', () => true))).toThrow('ENOSPC');
});
