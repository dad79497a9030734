// Horizontal bars from a true zero, their values at their ends, names at the left edge, or above where there is no room: shared by all bar charts.
import { type Colour, measure, type Misfit, type Rect, type Stage, type TextStyle } from '../theme/index.js';
import { tickStyle } from './axis.js';
import { barRows } from './bar-rows.js';
import { zeroOf } from './build.js';
import { wrapName } from './names.js';
import { baseSpec, middleShift, type Spec } from './spec.js';

export interface Bar {
  series: string;
  /** Length, in the measure's unit. */
  value: number;
  text: string;
  colour: Colour;
}

export interface BarGroup {
  name: string;
  bars: Bar[];
  /** A remark at the right edge: "rise 29.0 K". */
  remark?: string;
  /** A place in a ranking, before the name. */
  lead?: string;
}

export interface BarOptions {
  body: Rect;
  groups: BarGroup[];
  /** Bars per group, empty places counted. */
  series: string[];
  /** Values that must find room on the scale, those of other parts of the same chart included. */
  extent: number[];
  /** A line across all bars, e.g. a limit; the values then stand in a column beyond it. */
  mark?: { at: number };
}

export interface BarDrawing {
  spec: Spec;
  misfits: Misfit[];
  labels: string[];
}

const inner = 4;
/** Bars shorter than this share of the picture say little: they are better off below their names. */
const leastPlot = 0.3;
const shortest = 0.15;

export function barSpec(stage: Stage, options: BarOptions): BarDrawing {
  const beside = stage.narrow ? undefined : barsBeside(stage, options);
  const short = beside !== undefined && (beside.spec.width as number) < leastPlot * options.body.width;
  if (beside?.misfits.length === 0 && !short) return beside;
  const rows = barRows(stage, options);
  if (rows.misfits.length === 0 || !beside) return rows;
  if (beside.misfits.length === 0) return (beside.spec.width as number) >= shortest * options.body.width ? beside : rows;
  return rows.misfits.every((m) => m.code === 'too-many-rows') ? rows : beside;
}

function barsBeside(stage: Stage, { body, groups, series, extent, mark }: BarOptions): BarDrawing {
  const { type, space, stroke, colours, bars: barSizes } = stage;
  const misfits: Misfit[] = [];
  const rows = heights(stage, body.height, groups.length, series.length);
  if (rows.bar < barSizes.least) misfits.push({ code: 'too-many-rows', text: groups.map((g) => g.name).join(', '), message: `${groups.length} rows of ${series.length} bars leave ${Math.floor(rows.bar)} px a bar, and ${barSizes.least} px are the least` });
  const value: TextStyle = rows.bar < 46 ? { ...type.value, size: 48 } : type.value;
  const names = groups.map((g) => {
    const wrapped = wrapName(stage, g.name, body.width, rows.pitch);
    if ('lines' in wrapped) return wrapped.lines;
    misfits.push(wrapped.misfit);
    return [g.name];
  });
  const widest = (texts: string[], style: TextStyle): number => Math.max(0, ...texts.map((t) => measure(t, style)));
  const leads = groups.map((g) => g.lead ?? '');
  const leadColumn = leads.some(Boolean) ? widest(leads, type.value) + space.small : 0;
  const nameColumn = leadColumn + widest(names.flat(), type.name) + space.medium;
  const remarks = groups.map((g) => g.remark ?? '');
  const remarkColumn = remarks.some(Boolean) ? widest(remarks, tickStyle(stage)) + space.medium : 0;
  const valueColumn = widest(groups.flatMap((g) => g.bars.map((b) => b.text)), value) + space.tight;
  const least = Math.min(0, ...extent);
  const greatest = Math.max(0, ...extent, mark?.at ?? 0) || 1;
  const left = nameColumn + (least < 0 ? valueColumn : 0);
  const plot: Rect = { x: body.x + left, y: body.y, width: body.width - left - valueColumn - remarkColumn, height: body.height };

  const y = { field: 'row', type: 'nominal', axis: null, scale: { domain: groups.map((_, i) => `${i}`), range: [rows.top, rows.top + rows.total], paddingInner: rows.gap / rows.pitch, paddingOuter: 0 } };
  const yOffset = { field: 'series', type: 'nominal', scale: { domain: series, paddingInner: series.length > 1 ? inner / (rows.bar + inner) : 0, paddingOuter: 0 } };
  const x = { field: 'value', type: 'quantitative', axis: null, scale: { domain: [least, greatest], nice: false, zero: true } };
  const data = groups.flatMap((g, i) => g.bars.map((b) => ({ row: `${i}`, series: b.series, value: b.value, text: b.text, colour: colours[b.colour] })));
  const paint = { field: 'colour', type: 'nominal', scale: null };
  const ends = (negative: boolean): Spec => ({
    transform: [{ filter: negative ? 'datum.value < 0' : 'datum.value >= 0' }],
    mark: { type: 'text', fontSize: value.size, fontWeight: value.weight, align: negative ? 'right' : 'left', dx: negative ? -space.tight : space.tight },
    encoding: { x: mark ? { value: plot.width } : x, y, yOffset, text: { field: 'text' } },
  });
  const nameLayers = [[1, 0, 0], [2, 0, -0.55], [2, 1, 0.55]].flatMap(([count, index, shift]) => {
    const values = names.flatMap((lines, i) => (lines.length === count ? [{ row: `${i}`, text: lines[index!] }] : []));
    return values.length ? [{ data: { values }, mark: { type: 'text', fontSize: type.name.size, fontWeight: type.name.weight, dy: Math.round(shift! * type.name.size) + middleShift }, encoding: { x: { value: leadColumn - left }, y, text: { field: 'text' } } }] : [];
  });
  const beside = (texts: string[], at: number, mark: Spec): Spec[] => {
    const values = texts.flatMap((text, i) => (text ? [{ row: `${i}`, text }] : []));
    return values.length ? [{ data: { values }, mark: { type: 'text', ...mark }, encoding: { x: { value: at }, y, text: { field: 'text' } } }] : [];
  };
  return {
    misfits,
    labels: [...names.flat(), ...remarks.filter(Boolean), ...data.map((d) => d.text)],
    spec: {
      ...baseSpec(stage, plot),
      data: { values: data },
      layer: [
        { build: { role: 'bars', zero: zeroOf(least, greatest, plot.width) }, mark: { type: 'bar' }, encoding: { x, y, yOffset, color: paint } },
        { data: { values: [{}] }, mark: { type: 'rule', stroke: colours.quiet, strokeWidth: stroke.hair + 1 }, encoding: { x: { datum: 0, ...scaleOf(x) }, y: { value: rows.top - space.tight }, y2: { value: rows.top + rows.total + space.tight } } },
        ...(mark ? [{ data: { values: [{}] }, mark: { type: 'rule', stroke: colours.text, strokeWidth: stroke.line, strokeDash: [4, 10], strokeCap: 'round' }, encoding: { x: { datum: mark.at, ...scaleOf(x) }, y: { value: rows.top - space.tight }, y2: { value: rows.top + rows.total + space.tight } } }] : []),
        ends(false),
        ...(least < 0 ? [ends(true)] : []),
        ...nameLayers,
        ...beside(leads, -left, { fontSize: type.value.size, fontWeight: type.value.weight, fill: colours.quiet }),
        ...beside(remarks, plot.width + valueColumn + remarkColumn, { align: 'right', fontSize: type.small.size, fontWeight: 500, fill: colours.quiet }),
      ],
    },
  };
}

function scaleOf(x: { type: string; scale: unknown; axis: null }): Spec {
  return { type: x.type, scale: x.scale, axis: x.axis };
}

/** Bars as thick as there is room for, in groups whose gaps are a good third of them, the whole in the middle. */
function heights({ space, bars: barSizes }: Stage, height: number, groups: number, series: number): { bar: number; group: number; gap: number; pitch: number; total: number; top: number } {
  const room = height - 2 * space.tight;
  const thick = (air: number): number => (room / (groups + air * (groups - 1)) - inner * (series - 1)) / series;
  const airy = thick(series > 1 ? 0.42 : 0.62);
  const bar = Math.min(barSizes.most / (series > 2 ? 1.6 : series > 1 ? 1.2 : 1), airy >= barSizes.least ? airy : Math.min(barSizes.least, thick(0.25)));
  const group = bar * series + inner * (series - 1);
  const gap = groups > 1 ? Math.min((room - groups * group) / (groups - 1), group * 0.9) : 0;
  const total = groups * group + (groups - 1) * gap;
  return { bar, group, gap, pitch: group + gap || 1, total, top: space.tight + Math.max(0, (room - total) / 2) };
}
