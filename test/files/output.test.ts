import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Cache, type Disk, disk, FileTrouble, Output, Standing } from '../../pipeline/files/index.js';
import { failing, place, scratch, treeOf } from './scratch.js';

type Files = Record<string, string>;

function publish(folder: string, made: Record<string, Files>, fs: Disk = disk) {
  const output = new Output(folder, fs);
  try {
    for (const [maker, files] of Object.entries(made)) {
      for (const [path, content] of Object.entries(files)) output.put(maker, path, content);
      output.seal(maker, `key of ${maker}`, {});
    }
    return output.publish();
  } finally {
    output.close();
  }
}

const shown = (folder: string) => Object.fromEntries(Object.entries(treeOf(folder)).filter(([name]) => name !== '.manifest.json'));

test('files appear together, and a second time nothing is touched', () => {
  const out = join(scratch(), 'deep/out');
  const made = { one: { 'one/index.html': '<p>', 'one/pictures/01.svg': '<svg/>' }, '': { 'index.html': 'index' } };
  expect(publish(out, made)).toEqual({ written: ['index.html', 'one/index.html', 'one/pictures/01.svg'], unchanged: [], removed: [], left: [] });
  const before = Object.fromEntries(Object.keys(treeOf(out)).map((n) => [n, fs.statSync(join(out, n)).ino]));
  expect(publish(out, made).written).toEqual([]);
  delete before['.manifest.json'];
  for (const [name, ino] of Object.entries(before)) expect([name, fs.statSync(join(out, name)).ino]).toEqual([name, ino]);
});

test('what no longer belongs goes, with its empty folders; what others put there stays', () => {
  const out = scratch();
  publish(out, { one: { 'one/a.txt': 'a', 'one/deep/b.txt': 'b' }, two: { 'two/c.txt': 'c' } });
  place(out, 'two/mine.txt', 'mine');
  place(out, 'showcase/kept.png', 'kept');
  expect(publish(out, { one: { 'one/a.txt': 'a2' } })).toEqual({ written: ['one/a.txt'], unchanged: [], removed: ['one/deep/b.txt', 'two/c.txt'], left: [] });
  expect(shown(out)).toEqual({ 'one/a.txt': 'a2', 'two/mine.txt': 'mine', 'showcase/kept.png': 'kept' });
  expect(fs.existsSync(join(out, 'one/deep'))).toBe(false);
});

test('a file that somebody changed since is left alone when it is no longer wanted', () => {
  const out = scratch();
  publish(out, { one: { 'a.txt': 'a', 'b.txt': 'b' } });
  place(out, 'b.txt', 'changed by hand');
  expect(publish(out, { one: { 'a.txt': 'a' } }).left).toEqual(['b.txt']);
  expect(shown(out)).toEqual({ 'a.txt': 'a', 'b.txt': 'changed by hand' });
});

test('a wanted file that was damaged is put right', () => {
  const out = scratch();
  publish(out, { one: { 'a.txt': 'a' } });
  place(out, 'a.txt', 'b');
  expect(publish(out, { one: { 'a.txt': 'a' } }).written).toEqual(['a.txt']);
  expect(shown(out)).toEqual({ 'a.txt': 'a' });
});

test('a file that no build made is never written over, and nothing else changes', () => {
  const out = scratch();
  publish(out, { one: { 'a.txt': 'a' } });
  place(out, 'one/readings.csv', 'a source');
  const before = treeOf(out);
  expect(() => publish(out, { one: { 'a.txt': 'a2', 'one/readings.csv': 'made' } })).toThrow(/Cannot write .*one\/readings\.csv: a file that no build is known to have made stands there/);
  expect(treeOf(out)).toEqual(before);
  // One that says the same already can be taken over.
  publish(out, { one: { 'a.txt': 'a2', 'one/readings.csv': 'a source' } });
  expect(shown(out)).toEqual({ 'a.txt': 'a2', 'one/readings.csv': 'a source' });
});

test('naming one output twice, or one outside, is a mistake of the caller', () => {
  const output = new Output(scratch());
  output.put('one', 'a.txt', '');
  expect(() => output.put('two', 'a.txt', '')).toThrow('made twice');
  for (const path of ['../a', '/a', 'a/../../b', '', 'a//b', '.lock']) expect(() => output.put('one', path, ''), path).toThrow('leaves');
  output.close();
});

const first = { one: { 'one/a.txt': 'old a', 'one/b.txt': 'old b' }, '': { 'index.html': 'old' } };
const second = { one: { 'one/a.txt': 'new a', 'one/c.txt': 'new c' }, '': { 'index.html': 'new' } };

test.each(['ENOSPC', 'EDQUOT', 'EIO'])('%s while writing: the message names the file, and everything stands as it was', (code) => {
  for (const nth of [1, 2, 3]) {
    const out = scratch();
    publish(out, first);
    const before = treeOf(out);
    const full = (): Disk => {
      let written = 0;
      return failing(['writeFileSync'], code, (path) => path.includes('.staging') && ++written >= nth);
    };
    expect(() => publish(out, second, full())).toThrow(FileTrouble);
    expect(() => publish(out, second, full())).toThrow(/^Cannot write .*(a\.txt|c\.txt|index\.html): .* \((ENOSPC|EDQUOT|EIO)\)\.$/);
    expect(treeOf(out)).toEqual(before);
  }
});

test('whichever call of the disk fails, each file is old or new and whole, and the next build puts all right', () => {
  const calls: Parameters<typeof failing>[0] = ['writeFileSync', 'renameSync', 'mkdirSync', 'unlinkSync', 'rmdirSync', 'linkSync', 'rmSync'];
  const allowed: Record<string, string[]> = { 'one/a.txt': ['old a', 'new a'], 'one/b.txt': ['old b'], 'one/c.txt': ['new c'], 'index.html': ['old', 'new'] };
  let failures = 0;
  for (let nth = 1; nth < 60; nth++) {
    const out = scratch();
    publish(out, first);
    try {
      publish(out, second, failing(calls, 'EIO', (_path, count) => count === nth));
    } catch (thrown) {
      if (!(thrown instanceof FileTrouble)) throw thrown;
      failures++;
    }
    for (const [name, content] of Object.entries(shown(out))) {
      if (name.startsWith('.')) continue;
      expect(allowed[name], `${name} after call ${nth}`).toContain(content);
    }
    publish(out, second);
    expect(shown(out)).toEqual({ 'one/a.txt': 'new a', 'one/c.txt': 'new c', 'index.html': 'new' });
  }
  expect(failures).toBeGreaterThan(8);
});

test.each([
  ['EROFS', /^Cannot write into .*: the disk is read-only \(EROFS\)\.$/],
  ['EACCES', /permission is denied \(EACCES\)/],
])('a read-only output folder (%s) is told at once', (code, message) => {
  const out = scratch();
  publish(out, first);
  const before = treeOf(out);
  expect(() => publish(out, second, failing(['mkdirSync', 'writeFileSync', 'linkSync', 'renameSync'], code, () => true))).toThrow(message);
  expect(treeOf(out)).toEqual(before);
});

test('a file where a folder should be, a folder where a file should be, a link out: told before anything changes', () => {
  const project = scratch({ file: 'x', 'elsewhere/keep': 'k' });
  expect(() => new Output(join(project, 'file'))).toThrow(/Cannot write into .*file: a file stands where the folder should go/);
  const cases: [string, (out: string) => void, RegExp][] = [
    ['file', (out) => place(out, 'one', 'a file'), /one is a file, not a folder/],
    ['folder', (out) => fs.mkdirSync(join(out, 'index.html')), /a folder stands where the file should go/],
    ['link', (out) => fs.symlinkSync(join(project, 'elsewhere'), join(out, 'one')), /is a link to another folder/],
  ];
  for (const [name, prepare, message] of cases) {
    const out = join(project, `out-${name}`);
    fs.mkdirSync(out);
    prepare(out);
    const before = treeOf(out);
    expect(() => publish(out, second)).toThrow(message);
    expect(treeOf(out)).toEqual(before);
  }
  expect(treeOf(join(project, 'elsewhere'))).toEqual({ keep: 'k' });
});

test.each(['', 'not json', '{"form":1,"made":null}', '{"form":1,"made":{"x":{"key":"k","files":{"../../victim":"' + '0'.repeat(64) + '"}}}}', '{"form":99,"made":{}}'])('a broken or tampered manifest %j lets nothing be removed or written over', (text) => {
  const project = scratch({ victim: 'v' });
  const out = join(project, 'deep/out');
  publish(out, first);
  place(out, '.manifest.json', text);
  expect(() => publish(out, { one: { 'one/a.txt': 'new a' } })).toThrow('no build is known to have made');
  expect(publish(out, { one: { 'one/new.txt': 'new' } }).removed).toEqual([]);
  expect(shown(out)).toEqual({ ...first.one, ...first[''], 'one/new.txt': 'new' });
  expect(fs.readFileSync(join(project, 'victim'), 'utf8')).toBe('v');
});

test('size and time let a file pass unread, and its content decides where they differ', () => {
  const out = scratch({ 'a.txt': 'a' });
  const cache = new Cache(join(scratch(), 'cache'));
  const sha = 'ca978112ca1bbdcafac231b39a23dc4da786eff8147c4e72b9807785afee48bb'; // SHA-256 of "a": FIPS 180-4 implementations such as sha256sum
  const standing = new Standing(out, cache);
  expect(standing.stands('a.txt', sha)).toBe(true);
  standing.remember(['a.txt']);
  const unread = new Standing(out, cache, failing(['readFileSync'], 'EIO', (path) => path.endsWith('a.txt')));
  expect(unread.stands('a.txt', sha)).toBe(true);
  fs.utimesSync(join(out, 'a.txt'), 1, 1);
  expect(unread.stands('a.txt', sha)).toBe(false);
  expect(new Standing(out, cache).stands('a.txt', sha)).toBe(true);
  place(out, 'a.txt', 'b');
  expect(new Standing(out, cache).stands('a.txt', sha)).toBe(false);
});
