// Theme and sizes from the record to the files.
import * as fs from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { one, sample } from './sample.js';

const square = `${one}sizes: 1080x1080\n`;
const mine = 'from: light\ncolours: {panel: "#fffaf0"}\n';

/** The colour in the middle of the upper edge of the panel, and its opacity. */
async function panelOf(out: string): Promise<number[]> {
  const { data } = await sharp(join(out, 'bench/pictures/01-core-1080x1080.png')).extract({ left: 540, top: 36, width: 1, height: 1 }).raw().toBuffer({ resolveWithObject: true });
  return [...data];
}

test.each([
  ['dark', '', {}, [15, 21, 29, 230]],
  ['light', 'theme: light\n', {}, [248, 250, 252, 240]],
  ['a file of the episode\'s folder', 'theme: mine.yaml\n', { 'bench/mine.yaml': mine }, [255, 250, 240, 240]],
  ['a file beside the episodes', 'theme: ../house.yaml\n', { 'house.yaml': mine }, [255, 250, 240, 240]],
] as const)('%s', async (_name, line, files, panel) => {
  const s = sample({ bench: square + line });
  for (const [path, text] of Object.entries(files)) s.write(path, text);
  const built = await s.build();
  expect(built.examined.flatMap((e) => e.findings.filter((f) => f.severity === 'error'))).toEqual([]);
  const found = await panelOf(s.out);
  found.forEach((v, i) => expect(Math.abs(v - panel[i]!), `channel ${i} of ${found.join(' ')}`).toBeLessThanOrEqual(2));
  expect(fs.readdirSync(join(s.out, 'bench/pictures')).filter((n) => n.endsWith('.png'))).toEqual(['01-core-1080x1080.png']);
});

test('a changed theme is drawn anew, and only then', async () => {
  const s = sample({ bench: `${square}theme: ../house.yaml\n` });
  s.write('house.yaml', mine);
  await s.build();
  expect((await s.build()).drawn).toBe(0);
  s.write('house.yaml', mine.replace('#fffaf0', '#fffff0'));
  expect((await s.build()).drawn).toBe(1);
  expect((await panelOf(s.out)).slice(0, 2)).toEqual([255, 255]);
});

describe('what is unfit is told at its line, and nothing is built', () => {
  test.each([
    ['a colour that footage swallows', 'theme: mine.yaml\n', { 'bench/mine.yaml': 'from: dark\ncolours:\n  quiet: "#56606c"\n' }, ['theme-contrast', 'data/bench/mine.yaml', 3, 10]],
    ['a mistyped field beside the episodes', 'theme: ../house.yaml\n', { 'house.yaml': 'from: dark\ncolour: {}\n' }, ['theme-field', 'data/house.yaml', 2, 1]],
    ['no such file', 'theme: mine.yaml\n', {}, ['file-missing', 'data/bench/episode.yaml', 24, 8]],
    ['no such theme', 'theme: ligth\n', {}, ['record-form', 'data/bench/episode.yaml', 24, 8]],
    ['a file elsewhere', 'theme: ../../house.yaml\n', {}, ['record-form', 'data/bench/episode.yaml', 24, 8]],
    ['no such size', 'theme: dark\nsizes: [1920x1080, 1280x720]\n', {}, ['record-form', 'data/bench/episode.yaml', 25, 20]],
  ] as const)('%s', async (_name, lines, files, [code, file, , column]) => {
    const s = sample({ bench: one + lines });
    for (const [path, text] of Object.entries(files)) s.write(path, text);
    const built = await s.build();
    expect(built.published).toBeUndefined();
    const found = built.examined.flatMap((e) => e.findings).find((f) => f.code === code);
    expect(found).toMatchObject({ severity: 'error', place: { column } });
    expect(found!.place.file.endsWith(file.replace(/^data\//, '')), found!.place.file).toBe(true);
  });

  test('a theme that is misspelt is guessed', async () => {
    const built = await sample({ bench: `${one}theme: ligth\n` }).build();
    expect(built.examined.flatMap((e) => e.findings).map((f) => f.message)).toContain('There is no theme "ligth"; did you mean light?');
  });
});
