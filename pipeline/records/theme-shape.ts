// The theme file: every field that it may have.
import { type Colour, colourNames, type Motion, spaceNames, strokeNames, type TextStyle, typeNames, type Weight } from '../theme/index.js';
import { text } from './plain-shapes.js';
import { choice, fields, list, type Shape, turned, written, type Written } from './shape.js';

export const shippedThemes = ['dark', 'light'] as const;
export type ShippedTheme = (typeof shippedThemes)[number];

/** A decimal number between two bounds, both allowed. */
function number(says: string, low: number, high: number, whole = false): Shape<Written & { value: number }> {
  const kind = whole ? 'a whole number' : 'a number';
  const expects = `${kind} from ${low} to ${high}`;
  const fault = (t: string): string | undefined => {
    const n = /^-?\d+(\.\d+)?$/.test(t) ? Number(t) : NaN;
    return n >= low && n <= high && (!whole || Number.isInteger(n)) ? undefined : `expected ${expects}, found "${t}"`;
  };
  return turned(written(expects, says, fault, { type: whole ? 'integer' : 'number', minimum: low, maximum: high }), (w) => ({ ...w, value: Number(w.text) }));
}

function colour(says: string): Shape<Written> {
  const fault = (t: string): string | undefined => (/^#[0-9a-f]{6}$/i.test(t) ? undefined : `"${t}" is not a colour; write six hexadecimal digits in quotes: "#1b2a3c"`);
  return turned(written('a colour ("#1b2a3c")', says, fault, { type: 'string', pattern: '^#[0-9a-fA-F]{6}$' }), (w) => ({ ...w, text: w.text.toLowerCase() }));
}

const colourSays: Record<Colour, string> = {
  panel: 'Under all text.', text: 'Text and figures.', quiet: 'Units, conditions, scales.', muted: 'Bars and lines to compare with.', plain: 'The second of two series.',
  highlight: 'The one thing to look at.', rule: 'Grid lines and rules.', band: 'Behind a stretch of time.', stamp: 'The word DRAFT.',
};

function each<N extends string, T>(names: readonly N[], shape: (name: N) => Shape<T>): Record<N, Shape<T>> {
  return Object.fromEntries(names.map((n) => [n, shape(n)])) as Record<N, Shape<T>>;
}

const style = turned(fields({
  size: number('Pixels of a picture 1920 wide.', 44, 400), weight: choice(['500', '600', '700'], 'Weight of the typeface.', [500, 600, 700]), tabular: choice(['true', 'false'], 'All figures of one width.', [true, false]),
}, { expects: 'a map of size, weight, tabular', required: ['size', 'weight'] }), ({ fields: f }): TextStyle | undefined =>
  f.size && f.weight && { size: f.size.value, weight: Number(f.weight.value) as Weight, ...(f.tabular?.value === 'true' && { tabular: true }) });

const easing = turned(list(number('A number.', -2, 3), 'x1, y1, x2, y2 of a cubic curve from 0 0 to 1 1.'), (l, reader, around): Motion['easing'] | undefined => {
  const [x1, y1, x2, y2] = l.map((n) => n.value);
  if (l.length === 4 && x1! >= 0 && x1! <= 1 && x2! >= 0 && x2! <= 1) return [x1!, y1!, x2!, y2!];
  reader.fail(l[0]?.place ?? around, 'record-form', 'an easing is four numbers x1, y1, x2, y2, and both x lie between 0 and 1');
  return undefined;
});

export const themeShape = fields({
  name: text('Name of the theme.'),
  from: choice(shippedThemes, 'What is not given here is taken from this one.'),
  colours: fields(each(colourNames, (n) => colour(colourSays[n])), { expects: `a map of ${colourNames.join(', ')}`, says: 'sRGB; on the panel over any footage text keeps 4.5:1, bars and lines 3:1.' }),
  panel: fields({ opacity: number('1 lets no footage through.', 0.5, 1), corner: number('Radius in pixels.', 0, 60) }, { expects: 'a map of opacity, corner', says: 'The panel under all text.' }),
  type: fields(each(typeNames, () => style), { expects: `a map of ${typeNames.join(', ')}`, says: 'Type, in pixels of a picture 1920 wide; nothing below 44.' }),
  space: fields(each(spaceNames, () => number('Pixels.', 4, 120)), { expects: `a map of ${spaceNames.join(', ')}`, says: 'Space between things.' }),
  stroke: fields(each(strokeNames, () => number('Pixels.', 2, 20)), { expects: `a map of ${strokeNames.join(', ')}`, says: 'Thickness of lines.' }),
  motion: fields({
    rate: number('Frames per second.', 1, 120), come: number('Frames in which a graphic comes.', 0, 600, true), stand: number('Frames that it stands.', 1, 6000, true), go: number('Frames in which it goes.', 0, 600, true), easing,
  }, { expects: 'a map of rate, come, stand, go, easing', says: 'How a graphic comes and goes.' }),
}, { expects: 'a theme', says: 'How pictures look.' });
