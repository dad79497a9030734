import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { prepareGraphic, rasterise } from '../../pipeline/graphics/index.js';
import { outline } from '../../pipeline/theme/index.js';
import { cases, requestOf } from './requests.js';
import { template } from './templates.js';
import { wide } from '../theme/stages.js';

const svg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg" width="1920" height="1080" viewBox="0 0 1920 1080">${inside}</svg>`;

test.each([[1920, 1080], [3840, 2160]])('a transparent PNG of %d × %d, nothing in it but the picture', async (width, height) => {
  const c = cases.find((x) => x.name === 'rise')!;
  const png = await rasterise((await prepareGraphic(requestOf(c), c.facts(), wide, template).value!.draw()).outlined, width, height);
  const meta = await sharp(png).metadata();
  expect([meta.format, meta.width, meta.height, meta.channels, meta.hasAlpha, meta.depth]).toEqual(['png', width, height, 4, true, 'uchar']);
  // The upper right corner is free for the footage.
  const { data } = await sharp(png).extract({ left: width - 8, top: 0, width: 8, height: 8 }).raw().toBuffer({ resolveWithObject: true });
  expect([...data].every((v) => v === 0)).toBe(true);
  const chunks = new Set<string>();
  for (let at = 8; at < png.length;) {
    chunks.add(png.toString('latin1', at + 4, at + 8));
    at += 12 + png.readUInt32BE(at);
  }
  expect([...chunks].filter((name) => !['IHDR', 'pHYs', 'IDAT', 'IEND'].includes(name))).toEqual([]);
});

test('the ink of text lies inside the area for text, seen in pixels and not in sums', async () => {
  const area = wide.safe;
  for (const c of cases) {
    const { outlined } = await prepareGraphic(requestOf(c), c.facts(), wide, template).value!.draw();
    const inkOnly = outlined.replace(/<rect [^>]*fill-opacity[^>]*\/>/, '');
    const { data, info } = await sharp(await rasterise(inkOnly, wide.width, wide.height)).extractChannel('alpha').raw().toBuffer({ resolveWithObject: true });
    let [left, right, top, bottom] = [info.width, 0, info.height, 0];
    for (let y = 0; y < info.height; y++) for (let x = 0; x < info.width; x++) if (data[y * info.width + x]! > 16) [left, right, top, bottom] = [Math.min(left, x), Math.max(right, x), Math.min(top, y), Math.max(bottom, y)];
    expect(left, c.name).toBeGreaterThanOrEqual(area.x);
    expect(right, c.name).toBeLessThan(area.x + area.width);
    expect(top, c.name).toBeGreaterThanOrEqual(area.y);
    expect(bottom, c.name).toBeLessThan(area.y + area.height);
  }
});

test('outlines are where text would have been: the bounding box of "H" in pixels', async () => {
  const png = await rasterise(outline(svg('<text x="500" y="800" font-size="400" font-weight="700" fill="#000">H</text>')), 1920, 1080);
  const { info } = await sharp(png).trim({ threshold: 8 }).toBuffer({ resolveWithObject: true });
  // 1490 of 2048 units is the height of a capital in the font's own OS/2 table.
  expect(Math.abs(info.height - (400 * 1490) / 2048)).toBeLessThan(2);
  expect(Math.abs(-info.trimOffsetTop! + info.height - 800)).toBeLessThan(2);
});

describe('refused', () => {
  test.each([
    ['text that was not outlined', svg('<text>x</text>'), 1920, 1080],
    ['a picture larger than any that is made', svg(''), 4000, 4000],
    ['an endless file', svg(`<path d="${'M0 0'.repeat(2_100_000)}"/>`), 1920, 1080],
    ['what is no SVG', '<svg', 1920, 1080],
  ])('%s', async (_what, bad, width, height) => {
    await expect(rasterise(bad, width, height)).rejects.toThrow();
  });

  test('files are not read into a picture', async () => {
    const with1 = await rasterise(svg('<image href="file:///work/a.png" width="900" height="900"/><image href="README.md" width="9" height="9"/>'), 1920, 1080);
    expect((await sharp(with1).stats()).channels.every((c) => c.max === 0)).toBe(true);
  });
});
