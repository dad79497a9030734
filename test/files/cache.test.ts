import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Cache, hash, hashOf, codeVersion, episodeIds } from '../../pipeline/files/index.js';
import { failing, place, scratch, treeOf } from './scratch.js';

test('what is put under a hash comes back, and what is damaged does not', () => {
  const folder = scratch();
  const cache = new Cache(folder);
  const key = hash('what it was made from');
  cache.put('png', key, Buffer.from([1, 2, 3]));
  expect(cache.get('png', key)).toEqual(Buffer.from([1, 2, 3]));
  expect(cache.get('svg', key)).toBeUndefined();
  const [name] = Object.keys(treeOf(folder));
  for (const damage of [(b: Buffer) => b.subarray(0, b.length - 1), (b: Buffer) => b.fill(0, b.length - 1), () => Buffer.alloc(0), () => Buffer.from('short')]) {
    const path = join(folder, name!);
    cache.put('png', key, Buffer.from([1, 2, 3]));
    fs.writeFileSync(path, damage(fs.readFileSync(path)));
    expect(cache.get('png', key)).toBeUndefined();
  }
});

test('what is remembered under a name comes back, and half a file does not', () => {
  const folder = scratch();
  const cache = new Cache(folder);
  cache.remember('episodes', 'a/../b', { n: 1 });
  expect(cache.recall('episodes', 'a/../b')).toEqual({ n: 1 });
  expect(cache.recall('episodes', 'b')).toBeUndefined();
  place(folder, Object.keys(treeOf(folder))[0]!, '{"n":');
  expect(cache.recall('episodes', 'a/../b')).toBeUndefined();
});

test('a cache that cannot be read or written is no trouble', () => {
  const folder = scratch();
  for (const cache of [new Cache(undefined), new Cache(folder, failing(['readFileSync', 'writeFileSync', 'mkdirSync', 'readdirSync'], 'EACCES', () => true)), new Cache(join(scratch({ file: '' }), 'file'))]) {
    cache.put('png', hash('x'), Buffer.from('x'));
    cache.remember('episodes', 'x', {});
    cache.prune();
    expect(cache.get('png', hash('x'))).toBeUndefined();
    expect(cache.recall('episodes', 'x')).toBeUndefined();
  }
});

test('pruning drops the oldest beyond the limit, and what a killed build left half written', () => {
  const folder = scratch({ 'png/old': 'x'.repeat(60), 'png/new': 'y'.repeat(60), 'png/new.99999999.tmp': 'half', [`png/other.${process.pid}.tmp`]: 'at work' });
  fs.utimesSync(join(folder, 'png/old'), 1, 1);
  new Cache(folder).prune(100);
  expect(Object.keys(treeOf(folder)).sort()).toEqual(['png/new', `png/other.${process.pid}.tmp`]);
});

test('the hash is SHA-256', () => {
  // FIPS 180-4, the one-block example "abc".
  expect(hash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(hashOf('a', 'b')).not.toBe(hashOf('ab'));
  expect(hashOf(['a'], 'b')).not.toBe(hashOf('a', ['b']));
});

test('the program has one hash, the same each time', () => {
  expect(codeVersion()).toMatch(/^[0-9a-f]{64}$/);
  expect(codeVersion()).toBe(codeVersion());
});

test('episodes are the folders with a record, in order', () => {
  const data = scratch({ 'b/episode.yaml': '', 'a/episode.yaml': '', 'B/episode.yaml': '', '.hidden/episode.yaml': '', 'notes/readme.md': '', 'episode.yaml': '' });
  expect(episodeIds(data)).toEqual(['B', 'a', 'b']);
  expect(episodeIds(scratch({ 'a/episode.yaml': '', 'notes.txt': '', 'lost+found/x': '' }), failing(['statSync'], 'EACCES', (path) => path.includes('lost+found')))).toEqual(['a']);
  expect(() => episodeIds(join(data, 'nowhere'))).toThrow(/^Cannot read the episodes of .*nowhere: it is not there \(ENOENT\)\.$/);
});

test('a folder that cannot be looked into is not taken for one without a record', () => {
  const data = scratch({ 'a/episode.yaml': '', 'locked/episode.yaml': '' });
  expect(() => episodeIds(data, failing(['statSync', 'lstatSync'], 'EACCES', (path) => path.includes('/locked')))).toThrow(/^Cannot read the episode folder .*\/locked: permission is denied \(EACCES\)\.$/);
  fs.symlinkSync(join(data, 'gone'), join(data, 'linked'));
  expect(() => episodeIds(data)).toThrow(/^Cannot read the episode folder .*\/linked: it is a link to what is not there \(ENOENT\)\.$/);
  fs.mkdirSync(join(data, 'gone'));
  expect(episodeIds(data)).toEqual(['a', 'locked']);
  fs.symlinkSync('nowhere.yaml', join(data, 'gone/episode.yaml'));
  expect(() => episodeIds(data)).toThrow(/\/gone: episode\.yaml is a link to what is not there/);
});
