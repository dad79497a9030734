// What must hold for the text of every picture, whoever drew it.
import { expect } from 'vitest';
import { type Stage, textBoxes, type TextBox } from '../../pipeline/theme/index.js';
import { wide } from '../theme/stages.js';

/** Inside the area for text, none below 44 px, no two on top of each other. Ink a little left of its pen is allowed for large figures. */
export function expectWellSet(svg: string, { safe: area }: Stage = wide): TextBox[] {
  const boxes = textBoxes(svg).filter((b) => b.text.trim()).map(ink);
  expect(boxes.length).toBeGreaterThan(0);
  for (const b of boxes) {
    expect(b.size, b.text).toBeGreaterThanOrEqual(44);
    expect(b.left, `${b.text} at the left`).toBeGreaterThanOrEqual(area.x - 0.12 * (b.size - 44));
    expect(b.right, `${b.text} at the right`).toBeLessThanOrEqual(area.x + area.width);
    expect(b.top, `${b.text} at the top`).toBeGreaterThanOrEqual(area.y);
    expect(b.bottom, `${b.text} at the bottom`).toBeLessThanOrEqual(area.y + area.height);
  }
  boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => {
    const over = Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5;
    expect(over, `"${a.text}" lies on "${b.text}"`).toBe(false);
  }));
  return boxes;
}

/** Words without descenders end at their baseline. */
function ink(b: TextBox): TextBox {
  return /[gjpqyQ,;()/@|ß]/.test(b.text) ? b : { ...b, bottom: b.bottom - 0.21 * b.size };
}
