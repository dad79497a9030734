import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { insets, measure, safeArea } from '../../pipeline/theme/index.js';
import { wide } from './stages.js';

const { bars, content, panel, type } = wide;

// EBU R 95 and SMPTE ST 2046-1 as quoted by a trade dictionary and several implementations.
const areas = readFileSync(join(import.meta.dirname, '../oracles/safe_areas.csv'), 'utf8').trim().split('\n').slice(1).map((l) => l.split(','));

test.each(areas.filter(([, , name]) => !name!.startsWith('legacy')))('safe area of %s×%s, %s', (width, height, name, _inset, x, y, w, h) => {
  const area = safeArea(Number(width), Number(height), name === 'action' ? insets.action : insets.text);
  expect([area.x, area.y, area.width, area.height].map((n) => Math.round(n * 10) / 10)).toEqual([x, y, w, h].map(Number));
});

test('text of full pictures stands inside the area for text, and the panel beyond it', () => {
  const area = wide.safe;
  expect(content.left).toBeGreaterThanOrEqual(area.x);
  expect(content.right).toBeLessThanOrEqual(area.x + area.width);
  expect(content.top).toBeGreaterThanOrEqual(area.y);
  expect(content.bottom).toBeLessThanOrEqual(area.y + area.height);
  expect(panel.x).toBeLessThan(content.left);
  expect(panel.x + panel.width).toBeGreaterThan(content.right);
});

test('nothing is set below 44 px, names and figures from 48 on, bars from 40', () => {
  for (const style of Object.values(type)) expect(style.size).toBeGreaterThanOrEqual(44);
  for (const style of [type.name, type.value]) expect(style.size).toBeGreaterThanOrEqual(48);
  expect(bars.least).toBeGreaterThanOrEqual(40);
});

test('a name of ordinary length fits into the widest name column', () => {
  expect(measure('Power limit 75 %', type.name)).toBeLessThan(0.36 * (content.right - content.left));
});
