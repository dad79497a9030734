// Names beside their points, where they hide neither a point nor each other.
import { capHeight, lineHeight, measure, type TextStyle, wrap } from '../theme/index.js';

export interface Point {
  x: number;
  y: number;
  text: string;
}

export interface Placed {
  text: string;
  /** Left end and middle of a line. */
  x: number;
  y: number;
}

interface Area {
  width: number;
  height: number;
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Right, left, above, below, then the corners. */
const sides: [dx: number, dy: number][] = [[1, 0], [-1, 0], [0, -1], [0, 1], [1, -1], [-1, -1], [1, 1], [-1, 1]];

/** Points of one name stand together when they are at most so many radii apart. */
const closest = 3;

/** As many as are tried before it is given up: some thousands take a moment. */
const mostTries = 20_000;

interface Candidate {
  lines: Placed[];
  box: Box;
  leader?: Leader;
}

/** A thin line from a point to its name where that stands off. */
export interface Leader {
  x: number;
  y: number;
  x2: number;
  y2: number;
}

export interface Label {
  lines: Placed[];
  leader?: Leader;
}

/** A point, or several of one name that stand together, with the circle around them. */
interface Spot extends Point {
  radius: number;
  /** Indexes of its points. */
  of: number[];
}

/**
 * Undefined for a point beside which there is no room. Where there is not room for all, points of one name that stand close
 * together (one setting in two setups) share it. Coordinates in pixels of the plot; `area` is where labels may stand.
 */
export function placeLabels(points: readonly Point[], style: TextStyle, radius: number, area: Area): (Label | undefined)[] {
  const each = place(points.map((p, i) => ({ ...p, radius, of: [i] })), points, style, radius, area);
  const spots = each.every(Boolean) ? [] : together(points, radius);
  const shared = spots.length < points.length ? place(spots, points, style, radius, area) : [];
  if (shared.length === 0 || !shared.every(Boolean)) return each;
  const nothing: Label = { lines: [] };
  return points.map((_, i) => {
    const at = spots.findIndex((s) => s.of.includes(i));
    return spots[at]!.of[0] === i ? shared[at] : nothing;
  });
}

function together(points: readonly Point[], radius: number): Spot[] {
  const spots: Spot[] = [];
  points.forEach((p, i) => {
    const near = spots.find((s) => s.text === p.text && s.of.every((j) => Math.hypot(points[j]!.x - p.x, points[j]!.y - p.y) <= radius * closest));
    const of = [...(near?.of ?? []), i];
    const [xs, ys] = [of.map((j) => points[j]!.x), of.map((j) => points[j]!.y)];
    const [x, y] = [xs, ys].map((v) => (Math.min(...v) + Math.max(...v)) / 2) as [number, number];
    const spot = { text: p.text, x, y, of, radius: radius + Math.max(...of.map((j) => Math.hypot(points[j]!.x - x, points[j]!.y - y))) };
    if (near) Object.assign(near, spot);
    else spots.push(spot);
  });
  return spots;
}

function place(spots: readonly Spot[], points: readonly Point[], style: TextStyle, radius: number, area: Area): (Label | undefined)[] {
  const dots = points.map((p): Box => ({ left: p.x - radius, right: p.x + radius, top: p.y - radius, bottom: p.y + radius }));
  const inside = (box: Box): boolean => box.left >= 0 && box.right <= area.width && box.top >= 0 && box.bottom <= area.height;
  const choices = spots.map((s) => candidates(s, style, s.radius).filter(({ box, leader }) => inside(box) && !dots.some((d, j) => meet(d, box) || (leader && !s.of.includes(j) && crosses(leader, d)))));
  // The points with the fewest places first; going back where a choice leaves another without a place.
  const order = spots.map((_, i) => i).filter((i) => choices[i]!.length > 0).sort((a, b) => choices[a]!.length - choices[b]!.length || a - b);
  let tries = 0;
  let best: (Candidate | undefined)[] = [];
  const go = (n: number, taken: (Candidate | undefined)[]): boolean => {
    if (taken.filter(Boolean).length > best.filter(Boolean).length) best = taken;
    if (n === order.length) return true;
    for (const candidate of choices[order[n]!]!) {
      if (++tries > mostTries) return false;
      if (!taken.some((t) => t && clash(t, candidate)) && go(n + 1, [...taken, candidate])) return true;
    }
    return false;
  };
  go(0, []);
  return spots.map((_, i) => best[order.indexOf(i)]);
}

function clash(a: Candidate, b: Candidate): boolean {
  return meet(a.box, b.box) || (a.leader !== undefined && crosses(a.leader, b.box)) || (b.leader !== undefined && crosses(b.leader, a.box));
}

function crosses({ x, y, x2, y2 }: Leader, box: Box): boolean {
  return Array.from({ length: 13 }, (_, i) => i / 12).some((t) => {
    const [px, py] = [x + t * (x2 - x), y + t * (y2 - y)];
    return px > box.left && px < box.right && py > box.top && py < box.bottom;
  });
}

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** How far off a name may stand, and in which directions, the flattest first. */
const distances = [70, 110, 160, 220, 290] as const;
const directions = [0.7, -0.7, 2.44, -2.44, 1.2, -1.2, 1.94, -1.94, 0.25, -0.25, 2.89, -2.89, 1.5, -1.5, 1.64, -1.64] as const;

function candidates(p: Point, style: TextStyle, radius: number): Candidate[] {
  return [...beside(p, style, radius), ...distances.flatMap((d) => directions.flatMap((angle) => standingOff(p, style, radius, d, angle)))];
}

function standingOff(p: Point, style: TextStyle, radius: number, distance: number, angle: number): Candidate[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const end = { x: p.x + (radius + distance) * cos, y: p.y - (radius + distance) * sin };
  const pitch = style.size * lineHeight;
  return settings(p.text, style).map((lines) => {
    const widths = lines.map((l) => measure(l, style));
    const width = Math.max(...widths);
    const half = (capHeight * style.size + (lines.length - 1) * pitch) / 2 + 6;
    const left = cos > 0 ? end.x + 8 : end.x - 8 - width;
    return {
      box: { left: left - 6, right: left + width + 6, top: end.y - half, bottom: end.y + half },
      lines: lines.map((text, i) => ({ text, x: Math.round(cos > 0 ? left : left + width - widths[i]!), y: Math.round(end.y + (i - (lines.length - 1) / 2) * pitch) })),
      leader: { x: Math.round(p.x + (radius + 4) * cos), y: Math.round(p.y - (radius + 4) * sin), x2: Math.round(end.x), y2: Math.round(end.y) },
    };
  });
}

/** Touching the point, in one line or two. */
function beside(p: Point, style: TextStyle, radius: number): Candidate[] {
  const gap = radius + 14;
  const pitch = style.size * lineHeight;
  return settings(p.text, style).flatMap((lines) => {
    const widths = lines.map((l) => measure(l, style));
    const width = Math.max(...widths);
    const half = (capHeight * style.size + (lines.length - 1) * pitch) / 2 + 6;
    return sides.map(([dx, dy]) => {
      const left = dx > 0 ? p.x + gap : dx < 0 ? p.x - gap - width : p.x - width / 2;
      const y = p.y + dy * (dx ? half + 4 : gap + half - 6);
      return {
        box: { left: left - 6, right: left + width + 6, top: y - half, bottom: y + half },
        // Two lines end at the point where they stand to the left of it.
        lines: lines.map((text, i) => ({ text, x: Math.round(left + (dx < 0 ? width - widths[i]! : dx === 0 ? (width - widths[i]!) / 2 : 0)), y: Math.round(y + (i - (lines.length - 1) / 2) * pitch) })),
      };
    });
  });
}

/** In one line, else in two that are about as long. */
function settings(text: string, style: TextStyle): string[][] {
  const wrapped = wrap(text, style, measure(text, style) * 0.7, 2);
  return [[text], ...('lines' in wrapped && wrapped.lines.length > 1 ? [wrapped.lines] : [])];
}
