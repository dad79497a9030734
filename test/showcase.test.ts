// The pictures that the README shows are what the demo build makes. ACCEPT=1 keeps new ones.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');
const kept = join(root, 'out/showcase');
const shown: Record<string, [episode: string, picture: RegExp]> = {
  'idle-load.png': ['one-card-two-boxes', /-idle-load-closed-case-1920x1080\.png$/],
  'before-after.png': ['one-card-two-boxes', /-between-setups-1920x1080\.png$/],
  'over-time.png': ['one-card-two-boxes', /-over-time-.*-1920x1080\.png$/],
  'ranked.png': ['six-pumps', /-ranked-.*-1920x1080\.png$/],
};

let out: string;
beforeAll(() => {
  out = mkdtempSync(join(tmpdir(), 'showcase-'));
  const ran = spawnSync('node', ['dist/cli.js', 'build', 'one-card-two-boxes', 'six-pumps', '--out', out], { cwd: root, encoding: 'utf8' });
  expect(ran.status, ran.stdout + ran.stderr).toBe(0);
});
afterAll(() => rmSync(out, { recursive: true, force: true }));

/** Half size is enough for a page of text and small enough to keep; a transparent border beyond the panel is cut off. */
async function reduced(file: string): Promise<Buffer> {
  const whole = await sharp(file).resize(960, 540).png().toBuffer();
  return sharp(whole).trim({ threshold: 0, background: { r: 0, g: 0, b: 0, alpha: 0 } }).png().toBuffer();
}

test.each(Object.entries(shown))('%s', async (name, [episode, picture]) => {
  const folder = join(out, episode, 'pictures');
  const file = readdirSync(folder).sort().find((f) => picture.test(f));
  expect(file, `a picture ${picture} of ${episode}`).toBeDefined();
  const made = await reduced(join(folder, file!));
  if (process.env.ACCEPT) {
    mkdirSync(kept, { recursive: true });
    writeFileSync(join(kept, name), made);
  }
  expect(existsSync(join(kept, name)), `${name} is kept`).toBe(true);
  const now = await sharp(made).raw().toBuffer({ resolveWithObject: true });
  const then = await sharp(join(kept, name)).raw().toBuffer({ resolveWithObject: true });
  expect([now.info.width, now.info.height]).toEqual([then.info.width, then.info.height]);
  let most = 0;
  for (let i = 0; i < now.data.length; i++) most = Math.max(most, Math.abs(now.data[i]! - then.data[i]!));
  expect(most, 'largest difference of a channel').toBeLessThanOrEqual(8);
});

test('nothing else is kept', () => {
  expect(readdirSync(kept).sort()).toEqual(Object.keys(shown).sort());
});
