// Horizontal bars where there is no room beside them: the name above, the figure at its right end, the bar below over the whole width.
import { capHeight, lineHeight, measure, type Misfit, type Stage, type TextStyle, wrap } from '../theme/index.js';
import { zeroOf } from './build.js';
import { tickStyle } from './axis.js';
import type { Bar, BarDrawing, BarGroup, BarOptions } from './bar-spec.js';
import { baseSpec, type Spec } from './spec.js';
import { pixels, type PlacedText, textLayers } from './texts.js';

/** Between the bars of a group, and between a line of text and what is below it. */
const inner = 6;
const under = 18;
/** A bar with nothing in it but its length. */
const thinnestAlone = 20;
/** Nobody reads longer lines in the time that they stand. */
const longestName = 1000;
/** A figure at the end of a bar needs this much, whatever the bar. */
const figurePitch = 46;

export function barRows(stage: Stage, { body, groups, extent, mark }: BarOptions): BarDrawing {
  const { type, space, stroke, colours } = stage;
  const misfits: Misfit[] = [];
  const single = groups.every((g) => g.bars.length <= 1);
  const value: TextStyle = { ...type.value, size: single ? type.value.size : 48 };
  const width = (texts: readonly string[], style: TextStyle): number => Math.max(0, ...texts.map((t) => measure(t, style)));
  const figures = groups.flatMap((g) => g.bars.map((b) => b.text));
  const leadColumn = width(groups.map((g) => g.lead ?? ''), type.value) + (groups.some((g) => g.lead) ? space.small : 0);
  const valueColumn = width(figures, value) + space.small;
  const least = Math.min(0, ...extent);
  const greatest = Math.max(0, ...extent, mark?.at ?? 0) || 1;
  const start = !single && least < 0 ? valueColumn : 0;
  const plot = { x: body.x + start, y: body.y, width: body.width - start - (single ? 0 : valueColumn), height: body.height };

  const whole = body.width - leadColumn - (single ? valueColumn : 0);
  const remarkBeside = groups.every((g) => measure(g.name, type.name) + (g.remark ? measure(g.remark, tickStyle(stage)) + space.medium + (single ? space.small : 0) : 0) <= whole);
  const heads = groups.map((g) => head(g));
  const cap = capHeight * type.name.size;
  const pitch = type.name.size * lineHeight;
  const textHeight = (h: { lines: string[]; below: string }): number => cap + (h.lines.length - 1 + (h.below ? 1 : 0)) * pitch + under;
  const fixed = heads.reduce((sum, h) => sum + textHeight(h), 0);
  const bars = groups.reduce((sum, g) => sum + g.bars.length, 0);
  const inners = groups.reduce((sum, g) => sum + Math.max(0, g.bars.length - 1) * inner, 0);
  const room = body.height - fixed - inners - 8;
  const thinnest = single ? thinnestAlone : figurePitch - inner;
  const [airLeast, airMost] = [26, 96];
  const thick = Math.min(stage.bars.most, (room - (groups.length - 1) * airLeast) / bars, Math.max(thinnest, (0.62 * room) / bars));
  if (thick < thinnest) misfits.push({ code: 'too-many-rows', text: groups.map((g) => g.name).join(', '), message: `${groups.length} rows have no room below each other: ${Math.floor(thick)} px are left for a bar, and ${thinnest} are the least` });
  const gap = groups.length > 1 ? Math.min(airMost, (room - bars * thick) / (groups.length - 1)) : 0;

  const texts: PlacedText[] = [];
  const shapes: (Bar & { top: number; bottom: number })[] = [];
  const stretches: { top: number; bottom: number }[] = [];
  let y = Math.max(0, (body.height - fixed - inners - bars * thick - (groups.length - 1) * gap) / 2.6);
  groups.forEach((g, i) => {
    const { lines, below } = heads[i]!;
    y += cap;
    texts.push({ text: g.lead ?? '', x: -start, y, style: type.value, colour: 'quiet' });
    lines.forEach((text, j) => texts.push({ text, x: leadColumn - start, y: y + j * pitch, style: type.name, colour: 'text' }));
    if (single && g.bars[0]) texts.push({ text: g.bars[0].text, x: plot.width, y, style: value, colour: g.bars[0].colour === 'highlight' ? 'highlight' : 'text', align: 'right' });
    if (g.remark && !below) texts.push({ text: g.remark, x: plot.width + (single ? -valueColumn : valueColumn) - (single ? space.small : 0), y, style: type.small, colour: 'quiet', align: 'right' });
    y += (lines.length - 1) * pitch;
    if (below) texts.push({ text: below, x: leadColumn - start, y: (y += pitch), style: type.small, colour: 'quiet' });
    y += under;
    const from = y;
    g.bars.forEach((bar, j) => {
      if (j) y += inner;
      shapes.push({ ...bar, top: y, bottom: y + thick });
      if (!single) {
        const end = (plot.width * (bar.value - least)) / (greatest - least);
        const negative = bar.value < 0;
        texts.push({ text: bar.text, x: mark ? plot.width + space.small : end + (negative ? -space.tight : space.tight), y: y + (thick + capHeight * value.size) / 2, style: value, colour: 'text', align: negative ? 'right' : 'left' });
      }
      y += thick;
    });
    stretches.push({ top: from - 6, bottom: y + 6 });
    y += gap;
  });

  const x = { field: 'value', type: 'quantitative', axis: null, scale: { domain: [least, greatest], nice: false, zero: true } };
  const across = (at: number, more: Spec): Spec => ({ data: { values: stretches.map((s) => ({ ...s, value: at })) }, mark: { type: 'rule', ...more }, encoding: { x, y: pixels('top'), y2: { field: 'bottom' } } });
  return {
    misfits,
    labels: texts.map((t) => t.text).filter(Boolean),
    spec: {
      ...baseSpec(stage, plot),
      layer: [
        { name: 'bars', build: { role: 'bars', zero: zeroOf(least, greatest, plot.width) }, data: { values: shapes.map(({ value: v, colour, top, bottom }) => ({ value: v, top, bottom, colour: colours[colour] })) }, mark: { type: 'rect' }, encoding: { x, x2: { datum: 0 }, y: pixels('top'), y2: { field: 'bottom' }, color: { field: 'colour', type: 'nominal', scale: null } } },
        across(0, { stroke: colours.quiet, strokeWidth: stroke.hair + 1 }),
        ...(mark ? [across(mark.at, { stroke: colours.text, strokeWidth: stroke.line, strokeDash: [4, 10], strokeCap: 'round' })] : []),
        ...textLayers(colours, texts),
      ],
    },
  };

  /** The name beside its figure, on two lines where it must; the remark beside it where all fit so, else under it. */
  function head(g: BarGroup): { lines: string[]; below: string } {
    const wrapped = wrap(g.name, type.name, Math.min(whole, longestName), 2);
    if ('misfit' in wrapped) misfits.push(wrapped.misfit);
    if (g.remark && !remarkBeside && measure(g.remark, tickStyle(stage)) > whole) misfits.push({ code: 'label-too-long', text: g.remark, message: `"${g.remark}" has no room under its name; shorten its unit` });
    return { lines: 'lines' in wrapped ? wrapped.lines : [g.name], below: remarkBeside ? '' : g.remark ?? '' };
  }
}
