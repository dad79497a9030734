// Text as one path in font units, y upwards: glyphs are kept in relative form, so that setting a text is joining strings.
import { font } from './font.js';
import { shape } from './measure.js';
import type { Weight } from './sizes.js';

interface Drawn {
  /** Start of the first contour; the rest is relative to it. */
  x: number;
  y: number;
  rest: string;
}

const drawn = new Map<string, Drawn | undefined>();

export function textPath(text: string, weight: Weight, tabular = false, letterSpacing = 0): string {
  const run = shape(text, weight, tabular);
  let pen = 0;
  let d = '';
  run.glyphs.forEach((glyph, i) => {
    const at = run.positions[i]!;
    const key = `${weight}/${glyph.id}`;
    if (!drawn.has(key)) drawn.set(key, relative(glyph.path.commands as unknown as Command[]));
    const shapeOf = drawn.get(key);
    if (shapeOf) d += `M${Math.round(pen + at.xOffset + shapeOf.x)} ${Math.round(at.yOffset + shapeOf.y)}${shapeOf.rest}`;
    pen += at.xAdvance + letterSpacing;
  });
  return d;
}

export function unitsPerEm(weight: Weight): number {
  return font(weight).unitsPerEm;
}

interface Command {
  command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
  args: number[];
}

const letters = { moveTo: 'm', lineTo: 'l', quadraticCurveTo: 'q', bezierCurveTo: 'c', closePath: 'z' } as const;

function relative(commands: Command[]): Drawn | undefined {
  const first = commands[0];
  if (!first) return undefined;
  let [x, y] = first.args.map(Math.round) as [number, number];
  const begin = { x, y };
  let start = begin;
  let rest = '';
  for (const { command, args } of commands.slice(1)) {
    const points = args.map(Math.round);
    rest += letters[command] + points.map((v, i) => v - (i % 2 ? y : x)).join(' ');
    if (command === 'closePath') ({ x, y } = start);
    else [x, y] = points.slice(-2) as [number, number];
    if (command === 'moveTo') start = { x, y };
  }
  return { ...begin, rest };
}
