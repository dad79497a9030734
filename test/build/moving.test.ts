// Pictures that move, from the record to the files; and what is told where that cannot be done.
import * as fs from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, describe, expect, test } from 'vitest';
import { template } from '../graphics/templates.js';
import { one, sample } from './sample.js';

const path = process.env.PATH;
afterEach(() => {
  process.env.PATH = path;
});

/** No program is found. */
const bare = (): void => {
  process.env.PATH = '';
};

/** A theme of few frames, so that drawing them takes little. */
const few = template('themes/dark.yaml').replace(/(rate|come|stand|go): \d+/g, (_w, name: string) => `${name}: ${{ rate: 30, come: 10, stand: 3, go: 3 }[name]}`);
const record = `${one}sizes: 1920x1080\ntheme: few.yaml\n`;
const moving = (motion: string, picture = ''): string => `${record.replace('phase: load}\n', `phase: load${picture}}\n`)}motion: ${motion}\n`;
const started = (record: string): ReturnType<typeof sample> => {
  const s = sample({ bench: record }, 'own');
  s.write('bench/few.yaml', few);
  return s;
};
const files = (tree: Record<string, string>): string[] => Object.keys(tree).filter((n) => n.startsWith('bench/pictures/')).map((n) => n.replace('bench/pictures/', '')).sort();

test('an animation and a sequence stand beside the still, at the first size; the last of the sequence is the still', async () => {
  bare();
  const s = started(moving('in'));
  const built = await s.build();
  expect(built.fails).toBe(false);
  expect(built.moved).toBe(1);
  const made = files(s.outputs());
  expect(made).toContain('01-core-1920x1080.webp');
  const sequence = made.filter((n) => /^01-core-1920x1080\/\d{4}\.png$/.test(n));
  expect(sequence).toHaveLength(10);
  expect(sequence[0]).toBe('01-core-1920x1080/0001.png');
  expect(made.filter((n) => /\.(png|webp|mov|webm)$/.test(n) && !sequence.includes(n))).toEqual(['01-core-1920x1080.png', '01-core-1920x1080.webp']);
  const raw = (name: string) => sharp(join(s.out, 'bench/pictures', name)).raw().toBuffer();
  expect((await raw(sequence.at(-1)!)).equals(await raw('01-core-1920x1080.png'))).toBe(true);
  const meta = await sharp(join(s.out, 'bench/pictures/01-core-1920x1080.webp'), { pages: -1 }).metadata();
  expect([meta.width, meta.pageHeight, meta.loop]).toEqual([1920, 1080, 1]);

  const again = await s.build();
  expect([again.moved, again.published!.written]).toEqual([0, []]);
  // Nothing of the cache is needed for that, and what was lost comes from it.
  const before = s.outputs();
  fs.rmSync(join(s.out, 'bench/pictures/01-core-1920x1080.webp'));
  fs.rmSync(join(s.out, 'bench/pictures/01-core-1920x1080/0003.png'));
  expect((await s.build()).moved).toBe(0);
  expect(s.outputs()).toEqual(before);

  s.write('bench/episode.yaml', record);
  await s.build();
  expect(files(s.outputs()).filter((n) => n.includes('webp') || n.includes('/'))).toEqual([]);
  expect(fs.existsSync(join(s.out, 'bench/pictures/01-core-1920x1080'))).toBe(false);
});

test('one picture of several, its own way, in the formats and sizes asked for', async () => {
  bare();
  const s = started(moving('{formats: webp, sizes: 1080x1080}', ', motion: out').replace('sizes: 1920x1080', 'sizes: [1920x1080, 1080x1080]'));
  await s.build();
  expect(files(s.outputs()).filter((n) => /webp|\//.test(n))).toEqual(['01-core-1080x1080.webp']);
  const off = started(moving('in', ', motion: none'));
  await off.build();
  expect(files(off.outputs()).filter((n) => /webp|\//.test(n))).toEqual([]);
});

describe('what is wrong is told with its place', () => {
  test.each<[string, string, RegExp, number]>([
    ['motion: inn', 'record-form', /"inn" is none of in, in-out, out, none; did you mean in\?/, 9],
    ['motion: {pictures: in, formats: [webp, gif]}', 'record-form', /"gif" is none of webp, png, mov, webm/, 40],
    ['motion: {pictures: in, only: [cor]}', 'motion-picture', /there is no picture "cor" to move; did you mean "core"\?/, 31],
    ['motion: {pictures: in, sizes: [1920x1081]}', 'record-form', /none of/, 32],
    ['motion: {pictures: in, sizes: [1080x1080]}', 'motion-size', /nothing can move at 1080x1080/, 32],
    ['motion: {pictures: in, speed: 2}', 'record-field', /speed/, 24],
    ['motion: [in]', 'record-form', /motion|in, in-out/, 9],
  ])('%s', async (line, code, message, column) => {
    bare();
    const s = started(`${record}${line}\n`);
    const found = (await s.check()).examined[0]!.findings.filter((f) => f.severity === 'error');
    expect(found.map((f) => f.code)).toEqual([code]);
    expect(found[0]!.message).toMatch(message);
    expect([found[0]!.place.line, found[0]!.place.column]).toEqual([record.split('\n').length, column]);
  });

  test('films where ffmpeg is not: a note, and the rest is made; where it is there later, they are', async () => {
    bare();
    const s = started(moving('{pictures: in, formats: [webp, mov]}'));
    const built = await s.build();
    const notes = built.examined[0]!.findings.filter((f) => f.code === 'motion-tool');
    expect(notes.map((n) => [n.severity, n.subject, n.place.line])).toEqual([['note', 'mov', record.split('\n').length]]);
    expect(files(s.outputs()).filter((n) => /webp|mov/.test(n))).toEqual(['01-core-1920x1080.webp']);
    // A stand-in that hands on what it is fed: what counts is that it is found, fed and its file taken.
    const bin = join(s.folder, 'bin');
    fs.mkdirSync(bin);
    fs.writeFileSync(join(bin, 'ffmpeg'), `#!${process.execPath}\nconst { createWriteStream } = require('node:fs');\nlet n = 0;\nconst out = createWriteStream(process.argv.at(-1));\nprocess.stdin.on('data', (d) => (n += d.length)).on('end', () => out.end(String(n)));\n`, { mode: 0o755 });
    process.env.PATH = bin;
    const later = await s.build();
    expect(later.examined[0]!.findings.filter((f) => f.code === 'motion-tool')).toEqual([]);
    const fed = Number(s.outputs()['bench/pictures/01-core-1920x1080.mov']);
    expect(fed % (1920 * 1080 * 4)).toBe(0);
    expect(fed).toBeGreaterThan(0);
  });

  test('an ffmpeg that fails says what it said', async () => {
    const s = started(moving('{pictures: in, formats: mov}'));
    const bin = join(s.folder, 'bin');
    fs.mkdirSync(bin);
    fs.writeFileSync(join(bin, 'ffmpeg'), `#!${process.execPath}\nprocess.stderr.write('no such encoder\\n');\nprocess.exit(3);\n`, { mode: 0o755 });
    process.env.PATH = bin;
    await expect(s.build()).rejects.toThrow(/no such encoder/);
    expect(fs.existsSync(join(s.out, 'bench'))).toBe(false);
  });
});
