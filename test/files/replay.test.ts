import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { disk, Folder, nameOfRun, Recorder, rememberRun, replay, runPath } from '../../pipeline/files/index.js';
import { place, scratch } from './scratch.js';

/** Remembers a run that read one folder in every way the program does, and tells whether it would be told again. */
function remembered(data: string, outputs: string[] = []): () => boolean {
  const args = ['check', '--cache', join(scratch(), 'cache')];
  const recorder = new Recorder(data, disk);
  const folder = new Folder(join(data, 'episode'), recorder.disk);
  recorder.disk.readdirSync(data);
  recorder.disk.existsSync(join(data, 'other/episode.yaml'));
  folder.read('episode.yaml');
  folder.read('tables/absent.csv');
  for (const name of folder.list('logs/{run}.csv')) folder.read(name);
  rememberRun(args, { text: 'told', code: 1, outputs, recorder });
  return () => {
    const known = replay(args);
    if (known) expect([known.text, known.code]).toEqual(['told', 1]);
    return known !== undefined;
  };
}

const files = { 'data/episode/episode.yaml': 'title: a', 'data/episode/logs/1.csv': 'one', 'data/other/notes.txt': '' };

test.each<[string, (data: string) => void, boolean]>([
  ['nothing changed', () => {}, true],
  ['a file touched', (data) => fs.utimesSync(join(data, 'episode/episode.yaml'), 5, 5), true],
  ['a file that nobody read', (data) => place(data, 'episode/picture.jpg', 'x'), true],
  ['a record edited', (data) => place(data, 'episode/episode.yaml', 'title: b'), false],
  ['an edit that keeps size and time', (data) => {
    const { atime, mtime } = fs.statSync(join(data, 'episode/logs/1.csv'));
    place(data, 'episode/logs/1.csv', 'two');
    fs.utimesSync(join(data, 'episode/logs/1.csv'), atime, mtime);
  }, false],
  ['a log more', (data) => place(data, 'episode/logs/2.csv', 'two'), false],
  ['a log less', (data) => fs.rmSync(join(data, 'episode/logs/1.csv')), false],
  ['a file that was missing', (data) => place(data, 'episode/tables/absent.csv', ''), false],
  ['an episode more', (data) => place(data, 'third/episode.yaml', ''), false],
  ['a folder that becomes an episode', (data) => place(data, 'other/episode.yaml', 'title: c'), false],
])('%s', (_name, change, same) => {
  for (const linked of [false, true]) {
    const project = scratch(files);
    if (linked) {
      // The whole folder, and one episode of it, may stand behind links.
      fs.renameSync(join(project, 'data/episode'), join(project, 'elsewhere'));
      fs.symlinkSync(join(project, 'elsewhere'), join(project, 'data/episode'));
      fs.renameSync(join(project, 'data'), join(project, 'real'));
      fs.symlinkSync('real', join(project, 'data'));
    }
    const data = join(project, 'data');
    const again = remembered(data);
    expect(again()).toBe(true);
    change(data);
    expect([linked, again()]).toEqual([linked, same]);
  }
});

test('an output that is gone or was touched', () => {
  const project = scratch({ ...files, 'out/index.html': 'x' });
  const again = remembered(join(project, 'data'), [join(project, 'out/index.html')]);
  expect(again()).toBe(true);
  fs.utimesSync(join(project, 'out/index.html'), 5, 5);
  expect(again()).toBe(false);
});

test('what the printed text depends on gives another run', () => {
  const names = [
    nameOfRun(['check'], {}), nameOfRun(['build'], {}), nameOfRun(['check', '--json'], {}), nameOfRun(['check'], { isTTY: true, columns: 80 }), nameOfRun(['check'], { isTTY: true, columns: 81 }),
  ];
  expect(new Set(names).size).toBe(names.length);
  expect(nameOfRun(['check'], {})).toBe(names[0]);
});

test('other commands, help and no cache are never told again', () => {
  for (const args of [['explain', 'x'], ['proof', 'x'], ['check', '--help'], ['build', '--no-cache'], []]) expect(runPath(args), args.join(' ')).toBeUndefined();
  expect(runPath(['check', '--cache=kept'])).toMatch(/\/kept\/runs\/[0-9a-f]{64}\.json$/);
});

test('a broken memory of a run is none', () => {
  const args = ['check', '--cache', scratch()];
  for (const text of ['', '{', 'null', '[]', '{"program":[]}', '{"program":[],"outputs":[],"lists":[],"reads":5}']) {
    place(runPath(args)!.replace(/\/[^/]*$/, ''), runPath(args)!.replace(/^.*\//, ''), text);
    expect(replay(args), text).toBeUndefined();
  }
});
