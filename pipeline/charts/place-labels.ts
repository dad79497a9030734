// Names beside their points, where they hide neither a point nor each other.
import { capHeight, measure, type TextStyle } from '../theme/index.js';

export interface Point {
  x: number;
  y: number;
  text: string;
}

export interface Placed {
  text: string;
  /** Left end and middle of the line. */
  x: number;
  y: number;
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Right, left, above, below, then the corners: the first place that is free. */
const sides: [dx: number, dy: number][] = [[1, 0], [-1, 0], [0, -1], [0, 1], [1, -1], [-1, -1], [1, 1], [-1, 1]];

/** Undefined for a point beside which there is no room. Coordinates in pixels of the plot; `area` is where labels may stand. */
export function placeLabels(points: readonly Point[], style: TextStyle, radius: number, area: { width: number; height: number }): (Placed | undefined)[] {
  const dots = points.map((p): Box => ({ left: p.x - radius, right: p.x + radius, top: p.y - radius, bottom: p.y + radius }));
  const taken: Box[] = [...dots];
  const half = (capHeight * style.size) / 2 + 6;
  const gap = radius + 14;
  return points.map((p) => {
    const width = measure(p.text, style);
    for (const [dx, dy] of sides) {
      const left = dx > 0 ? p.x + gap : dx < 0 ? p.x - gap - width : p.x - width / 2;
      const y = p.y + dy * (dx ? half + 4 : gap + half - 6);
      const box: Box = { left: left - 6, right: left + width + 6, top: y - half, bottom: y + half };
      const inside = box.left >= 0 && box.right <= area.width && box.top >= 0 && box.bottom <= area.height;
      if (inside && !taken.some((t) => t.left < box.right && box.left < t.right && t.top < box.bottom && box.top < t.bottom)) {
        taken.push(box);
        return { text: p.text, x: Math.round(left), y: Math.round(y) };
      }
    }
    return undefined;
  });
}
