// No frame shows a false number or a false order.
import { expect, test } from 'vitest';
import { drawFrames, sceneOf, timeline } from '../../pipeline/motion/index.js';
import { expectHonest } from './honesty.js';
import { lengths, outlined, pictures } from './pictures.js';

test.each(Object.keys(pictures) as (keyof typeof pictures)[])('%s, frame by frame', (name) => {
  expectHonest(pictures[name], name === 'ranked' ? lengths.map(String) : []);
});

test('bars in pixels: in every frame their order and their ratios are the final ones', async () => {
  const frames = timeline('in', { rate: 30, come: 14, stand: 0, go: 0, easing: [0.2, 0.6, 0.2, 1] });
  let grown = 0;
  for await (const { pixels } of drawFrames({ scene: sceneOf(outlined.ranked), frames, width: 1920, height: 1080 })) {
    // Bluer than the panel is, in the upper fifth of each bar, where no letter of the stamp begins.
    const found = lengths.map((_, row) => {
      const y = 263 + row * 140 + 10;
      let count = 0;
      for (let x = 421; x < 1500; x++) if (pixels[(y * 1920 + x) * 4 + 2]! > 0x90) count++;
      return count;
    });
    if (found.every((n) => n === 0)) continue;
    grown++;
    const factor = found.at(-1)! / lengths.at(-1)!;
    found.forEach((n, i) => expect(Math.abs(n - lengths[i]! * factor), JSON.stringify(found)).toBeLessThanOrEqual(1.5));
    for (let i = 1; i < found.length; i++) expect(found[i]!).toBeGreaterThanOrEqual(found[i - 1]!);
  }
  expect(grown).toBeGreaterThan(4);
});

test.each([
  ['a role that is none', '<rect width="1" height="1" data-build="dance"/>'],
  ['growth without a zero line', '<rect width="1" height="1" data-build="bars"/>'],
  ['a line that is uncovered from nowhere', '<path d="M0 0L9 9" data-build="line"/>'],
])('%s is a mistake of the template and says so', (_what, inside) => {
  expect(() => sceneOf(`<svg viewBox="0 0 10 10">${inside}</svg>`)).toThrow(/no role|data-zero|data-span/);
});

test('growth begins at the zero line, for what lies left of it and below it too', async () => {
  const svg = '<svg viewBox="0 0 100 100"><rect width="100" height="100" fill="#000"/><rect x="50" y="10" width="40" height="10" fill="#fff" data-build="bars" data-zero="x 50"/><rect x="30" y="30" width="20" height="10" fill="#fff" data-build="bars" data-zero="x 50"/><rect x="10" y="60" width="10" height="30" fill="#fff" data-build="bars" data-zero="y 90"/></svg>';
  const frames = timeline('in', { rate: 30, come: 9, stand: 0, go: 0, easing: [0.5, 0.5, 0.5, 0.5] });
  for await (const { pixels } of drawFrames({ scene: sceneOf(svg), frames, width: 100, height: 100 })) {
    const lit = (x: number, y: number): boolean => pixels[(y * 100 + x) * 4]! > 128;
    const right = Array.from({ length: 50 }, (_, i) => lit(50 + i, 15)).filter(Boolean).length;
    const left = Array.from({ length: 50 }, (_, i) => lit(i, 35)).filter(Boolean).length;
    const up = Array.from({ length: 100 }, (_, i) => lit(15, i)).filter(Boolean).length;
    expect(Math.abs(left * 2 - right)).toBeLessThanOrEqual(2);
    expect(Math.abs(up / 3 - left / 2)).toBeLessThanOrEqual(1);
    if (left) expect(lit(49, 35) && lit(50, 15) && lit(15, 89)).toBe(true);
  }
});
