// The files of a moving picture, read back by other programs' readers.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { drawFrames, makeFiles, movieArguments, sceneOf, timeline } from '../../pipeline/motion/index.js';
import { animatedWebp, milliseconds } from '../../pipeline/motion/webp.js';
import type { MovieFormat } from '../../pipeline/theme/index.js';
import { outlined } from './pictures.js';

const motion = { rate: 30, come: 7, stand: 3, go: 2, easing: [0.2, 0.6, 0.2, 1] as const };
const moving = (name: keyof typeof outlined = 'ranked', build: 'in' | 'in-out' | 'out' = 'in-out') => ({ scene: sceneOf(outlined[name]), frames: timeline(build, motion), width: 960, height: 540 });

/** Every instant of it: frames that stand are repeated. */
async function instants(of: ReturnType<typeof moving>, repeated = true): Promise<Buffer[]> {
  const all: Buffer[] = [];
  for await (const { pixels, changed, stands } of drawFrames(of)) {
    const copy = Buffer.from(pixels);
    for (let i = 0; i < (repeated ? stands : changed || all.length === 0 ? 1 : 0); i++) all.push(copy);
  }
  return all;
}

test.each(['ranked', 'lowerLeft'] as const)('WebP of %s: libwebp reads every frame as it was drawn, and no time is lost', async (name) => {
  const { webp } = await makeFiles(moving(name), 30, { webp: true, png: false, films: [] });
  const frames = await instants(moving(name), false);
  const meta = await sharp(webp!, { pages: -1 }).metadata();
  expect([meta.format, meta.width, meta.pageHeight, meta.pages, meta.loop, meta.hasAlpha]).toEqual(['webp', 960, 540, frames.length, 1, true]);
  // 12 frames' time at 30 a second.
  expect(meta.delay!.reduce((a, b) => a + b, 0)).toBe(400);
  for (const [page, frame] of frames.entries()) {
    const read = await sharp(webp!, { page }).ensureAlpha().raw().toBuffer();
    // What is wholly transparent has no colour.
    let differing = 0;
    for (let i = 0; i < frame.length; i += 4) if (frame[i + 3] !== read[i + 3] || (frame[i + 3] !== 0 && (frame[i] !== read[i] || frame[i + 1] !== read[i + 1] || frame[i + 2] !== read[i + 2]))) differing++;
    expect(differing, `frame ${page + 1}`).toBe(0);
  }
});

test('a sequence has a picture for every instant, each the frame as it was drawn', async () => {
  const { pngs } = await makeFiles(moving(), 30, { webp: false, png: true, films: [] });
  const all = await instants(moving());
  expect(pngs).toHaveLength(12);
  expect(all).toHaveLength(12);
  for (const i of [0, 3, 6, 8, 10, 11]) expect((await sharp(pngs![i]!).raw().toBuffer()).equals(all[i]!), `frame ${i + 1}`).toBe(true);
  const stats = await sharp(pngs!.at(-1)!).stats();
  expect(stats.channels[3]!.max, 'where it goes, it ends with nothing').toBe(0);
});

test('the same again gives the same bytes', async () => {
  const [a, b] = [await makeFiles(moving('steps', 'in'), 25, { webp: true, png: true, films: [] }), await makeFiles(moving('steps', 'in'), 25, { webp: true, png: true, films: [] })];
  expect(a.webp!.equals(b.webp!)).toBe(true);
  expect(a.pngs!.every((p, i) => p.equals(b.pngs![i]!))).toBe(true);
});

test('a part of an animation begins at even pixels only', () => {
  expect(() => animatedWebp(10, 10, [{ left: 1, top: 0, width: 2, height: 2, image: Buffer.alloc(20), lasts: 1 }])).toThrow(RangeError);
});

test.each([[30, [1, 1, 1, 1], [33, 34, 33, 33]], [60, [1, 1, 60], [17, 16, 1000]], [25, [1, 50], [40, 2000]]])('%d a second, %j', (rate, stands, expected) => {
  expect(milliseconds(stands, rate)).toEqual(expected);
});

const ffmpeg = spawnSync('ffmpeg', ['-version']).status === 0;
if (!ffmpeg) console.warn('No ffmpeg: the tests of films are skipped.');

test.skipIf(!ffmpeg).each<[MovieFormat, number]>([['mov', 0], ['webm', 24]])('%s: another reader finds every frame, its alpha within %d of 255, and equal frames give equal bytes', async (format, most) => {
  const of = moving('lowerLeft');
  const frames = await instants(of);
  const folder = mkdtempSync(join(tmpdir(), 'film-'));
  try {
    const made = ['a', 'b'].map((name) => {
      const out = join(folder, `${name}.${format}`);
      const { status, stderr } = spawnSync('ffmpeg', movieArguments(format, 960, 540, 30, out), { input: Buffer.concat(frames), maxBuffer: 1 << 28 });
      expect(status, stderr.toString()).toBe(0);
      return readFileSync(out);
    });
    expect(made[0]!.equals(made[1]!)).toBe(true);
    // The plain decoder of VP9 drops the stream that holds alpha.
    const decoder = format === 'webm' ? ['-c:v', 'libvpx-vp9'] : [];
    const { stdout } = spawnSync('ffmpeg', ['-loglevel', 'error', ...decoder, '-i', join(folder, `a.${format}`), '-f', 'rawvideo', '-pix_fmt', 'rgba', '-'], { maxBuffer: 1 << 29 });
    const size = 960 * 540 * 4;
    expect(stdout.length / size).toBe(frames.length);
    for (const i of [2, 6, 10]) {
      let worst = 0;
      for (let k = 3; k < size; k += 4) worst = Math.max(worst, Math.abs(stdout[i * size + k]! - frames[i]![k]!));
      expect(worst, `frame ${i + 1}`).toBeLessThanOrEqual(most);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 30_000);
