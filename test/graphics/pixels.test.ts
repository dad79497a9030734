// Finished pictures as they are seen: over white, black and mid grey footage, measured on their pixels and not on what they were asked to be.
import { wcagContrast } from 'culori';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { inParts, prepareChart, rowsOf } from '../../pipeline/charts/index.js';
import { prepareGraphic } from '../../pipeline/graphics/index.js';
import { type Prepared, type Stage, stageIds, stageOf, textBoxes, worstFootage } from '../../pipeline/theme/index.js';
import { cases as chartCases, requestOf as chartOf } from '../charts/requests.js';
import { dark, light, template } from '../theme/stages.js';
import { cases as graphicCases, requestOf as graphicOf } from './requests.js';

type Rgb = [number, number, number];

interface Picture {
  svg: string;
  data: Buffer;
  width: number;
  height: number;
}

async function pixelsOf(prepared: Prepared): Promise<Picture> {
  const { svg, outlined } = await prepared.draw();
  const { data, info } = await sharp(Buffer.from(outlined)).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return { svg, data, width: info.width, height: info.height };
}

function hex([r, g, b]: Rgb): string {
  return `#${[r, g, b].map((c) => c.toString(16).padStart(2, '0')).join('')}`;
}

/** What lies under most of a box, and what stands out most from it, over a footage of one colour. */
function seen({ data, width, height }: Picture, box: { left: number; top: number; right: number; bottom: number }, footage: Rgb): { ground: string; ink: string; ratio: number } {
  const counts = new Map<string, number>();
  for (let y = Math.max(0, Math.floor(box.top)); y < Math.min(height, box.bottom); y++) {
    for (let x = Math.max(0, Math.floor(box.left)); x < Math.min(width, box.right); x++) {
      const at = (y * width + x) * 4;
      const a = data[at + 3]! / 255;
      const colour = hex([0, 1, 2].map((i) => Math.round(data[at + i]! * a + footage[i]! * (1 - a))) as Rgb);
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
  }
  const ground = [...counts].sort((p, q) => q[1] - p[1])[0]![0];
  // A stroke of 44 px type is five pixels thick: some are all ink.
  return [...counts.keys()].map((ink) => ({ ground, ink, ratio: wcagContrast(ground, ink) })).sort((p, q) => q.ratio - p.ratio)[0]!;
}

/** Where anything but the panel is. */
function inkOf({ data, width, height }: Picture, { opaque, colours }: Stage): { left: number; right: number; top: number; bottom: number } {
  const panel = [1, 3, 5].map((i) => parseInt(colours.panel.slice(i, i + 2), 16));
  const ink = { left: width, right: 0, top: height, bottom: 0 };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * 4;
      if (opaque ? [0, 1, 2].every((i) => Math.abs(data[at + i]! - panel[i]!) < 24) : data[at + 3]! < 250) continue;
      Object.assign(ink, { left: Math.min(ink.left, x), right: Math.max(ink.right, x + 1), top: Math.min(ink.top, y), bottom: Math.max(ink.bottom, y + 1) });
    }
  }
  return ink;
}

const charts = chartCases.map((c) => ({ name: `chart ${c.name}`, make: (stage: Stage): Prepared[] => {
  const facts = c.facts();
  const rows = rowsOf(chartOf(c), facts);
  for (let parts = 1; parts <= Math.max(1, rows); parts++) {
    const made = inParts(chartOf(c), rows, parts).map((r) => prepareChart(r, facts, stage).value);
    if (made.every((m) => m !== undefined)) return made as Prepared[];
  }
  return [];
} }));
const graphics = graphicCases.map((c) => ({ name: `graphic ${c.name}`, make: (stage: Stage): Prepared[] => [prepareGraphic(graphicOf(c), c.facts(), stage, template).value!] }));

// Every case on the largest stage in both themes, and in turn on one of the others in one of them.
const asked = [...charts, ...graphics].flatMap(({ name, make }, i) => [
  [name, 'dark', 'wide', make], [name, 'light', 'wide', make], [name, i % 2 ? 'dark' : 'light', stageIds[1 + (i % 3)]!, make],
] as const);

describe.each(asked)('%s, %s, %s', (_name, theme, id, make) => {
  const stage = stageOf(theme === 'dark' ? dark : light, id);

  test('its text is read over any footage, and its ink lies inside the area for text', async () => {
    for (const prepared of make(stage)) {
      const picture = await pixelsOf(prepared);
      expect([picture.width, picture.height]).toEqual([stage.width, stage.height]);
      for (const box of textBoxes(picture.svg).filter((b) => b.text.trim())) {
        for (const [footage, colour] of Object.entries(worstFootage)) {
          const { ratio, ground, ink } = seen(picture, box, [1, 3, 5].map((i) => parseInt(colour.slice(i, i + 2), 16)) as Rgb);
          // WCAG 2.x, success criterion 1.4.3.
          expect(ratio, `"${box.text}" over ${footage}: ${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5);
        }
      }
      const ink = inkOf(picture, stage);
      const { safe } = stage;
      expect(ink.left).toBeGreaterThanOrEqual(Math.floor(safe.x));
      expect(ink.right).toBeLessThanOrEqual(Math.ceil(safe.x + safe.width));
      expect(ink.top).toBeGreaterThanOrEqual(Math.floor(safe.y));
      expect(ink.bottom).toBeLessThanOrEqual(Math.ceil(safe.y + safe.height));
    }
  });
});
