// Every run as a dot, their mean as a pin above: how far apart the runs lie, and whether the rows do.
import { type Fact, isFact, phaseNote, quantityName, bestOf, uncertaintyOf } from '../facts/index.js';
import { capHeight, type Colour, lineHeight, measure, type Misfit, type Rect, type Stage, wrap } from '../theme/index.js';
import { acrossLayers, fittingTicks, mostTicks, ticks, widestTick } from './axis.js';
import type { Chart } from './chart.js';
import { wrapName } from './names.js';
import { commonName, type Row, rowName, select } from './rows.js';
import { baseSpec, type Spec } from './spec.js';
import { pixels, type PlacedText, textLayers } from './texts.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

const dot = 28;
const notFromZero = 'scale not from zero';

export const dots: Chart = {
  kind: 'dots',
  says: 'every run as a dot with the mean and the range of each row; the scale need not begin at zero',
  rows: (request, facts) => select(request, facts)?.rows.length ?? 1,
  sketch(request, facts, work) {
    const chosen = select(request, facts, work);
    if (!chosen) return undefined;
    const runs = chosen.rows.flatMap((r) => r.fact.readings.map((x) => x.quantity.value.toNumber()));
    const shown = chosen.rows.slice(request.slice?.from, request.slice?.to);
    const winner = !chosen.comparable ? {} : bestOf(facts, chosen.measure, chosen.rows.map((r) => r.fact));
    // What is known of each mean: its 95 % interval, where the record lets it be worked out.
    const half = new Map(chosen.rows.flatMap((r) => { const u = uncertaintyOf(facts, r.fact); return u && r.fact.readings.length > 1 ? [[r.fact.id, u.half95] as const] : []; }));
    const reach = chosen.rows.flatMap((r) => [1, -1].map((sign) => r.fact.value.toNumber() + sign * (half.get(r.fact.id) ?? 0)));
    const [low, high] = [Math.min(...runs, ...reach), Math.max(...runs, ...reach)];
    const most = mostTicks(work.stage, work.stage.panel, { up: 5, across: 6 }).across;
    const rough = ticks(low, high, most);
    const notes = foot(facts, shown.map((r) => r.fact), [...(half.size ? ['brackets: 95 % interval'] : []), ...(rough.domain[0] > 0 ? [notFromZero] : [])]);
    const heading = {
      title: request.title ?? `${quantityName(facts.about, chosen.measure, chosen.part)}${phaseNote(facts, chosen)}, run by run`,
      subtitle: subtitle(facts, chosen, unitSymbol(chosen.rows.map((r) => r.fact)), commonName(facts, shown[0]!, chosen.by)),
      legend: [{ label: 'one run', colour: 'plain' as const, shape: 'dot' as const }, { label: 'mean', colour: 'text' as const, shape: 'tick' as const }],
      foot: notes.text,
    };
    const { stage } = work;
    const { colours } = stage;
    const { body } = work.frame(heading);
    const runFacts = (r: Row): Fact[] => r.fact.readings.map((x) => facts.derive('raw', [`${r.key}#${x.run}`])).filter(isFact);
    const named = shown.map((r) => ({ ...r, name: rowName(facts, r, chosen.by), text: figure(r.fact), runs: runFacts(r) }));
    const { misfits, plot, left, right, middles, texts, separators, stretches } = rowsOf(named.map((r) => ({ ...r, colour: r.fact === winner.fact ? 'highlight' : 'text' })), body, stage, Math.max(widestTick(stage, rough), widestTick(stage, ticks(low, high, 2))) / 2);
    const scale = fittingTicks(stage, low, high, most, plot.width);
    if (scale.domain[0] <= 0) heading.foot = heading.foot.replace(` · ${notFromZero}`, '');
    for (const m of misfits) work.complain(m.code, m.message, m.text);
    const px = (v: number): number => ((v - scale.domain[0]) / (scale.domain[1] - scale.domain[0])) * plot.width;
    const middle = (i: number): number => middles[i]!;

    const points = named.flatMap((r, i) => lanes(r.runs.map((f) => f.value.toNumber()), px).map(({ value, lane }) => ({ value, y: middle(i) + 14 + lane * (dot - 4) })));
    const means = named.map((r, i) => ({ value: r.fact.value.toNumber(), y: middle(i) - 40, y2: middle(i) - 8, colour: r.fact === winner.fact ? colours.highlight : colours.text }));
    const brackets = named.flatMap((r, i) => { const h = half.get(r.fact.id); const v = r.fact.value.toNumber(); return h ? [{ value: v - h, value2: v + h, y: middle(i) - 24 }] : []; });
    const ranges = named.flatMap((r, i) => (r.fact.spread ? [{ value: r.fact.spread.min.toNumber(), value2: r.fact.spread.max.toNumber(), y: middle(i) + 14 }] : []));
    const x = { type: 'quantitative', axis: null, scale: { domain: scale.domain, nice: false, zero: false } };
    return {
      heading,
      labels: named.flatMap((r) => [r.name, r.text]),
      alt: `${named.map((r) => `${r.name}: mean ${r.fact.shown}, runs ${r.runs.map(figure).join(', ')}`).join('; ')}. ${heading.foot}.`,
      table: {
        head: ['', 'Mean', 'Runs'],
        rows: named.map((r) => [r.name, r.fact.shown, r.runs.map(figure).join(', ')]),
      },
      facts: [...named.flatMap((r) => [r.fact.id, ...r.runs.map((f) => f.id)]), ...notes.facts],
      spec: {
        ...baseSpec(stage, plot),
        layer: [
          ...acrossLayers(stage, scale, x, plot.height, { stretches }),
          ...(separators.length ? [{ data: { values: separators }, mark: { type: 'rule', stroke: colours.rule, strokeWidth: 2 }, encoding: { x: { value: -left }, x2: { value: plot.width + right }, y: pixels('y') } }] : []),
          ...(ranges.length ? [{ data: { values: ranges }, mark: { type: 'rule', stroke: colours.muted, strokeWidth: 8, strokeCap: 'round' }, encoding: { x: { ...x, field: 'value' }, x2: { field: 'value2' }, y: pixels('y') } }] : []),
          { data: { values: points }, mark: { type: 'point', shape: 'circle', filled: true, size: (Math.PI * dot * dot) / 4, fill: colours.plain, stroke: colours.panel, strokeWidth: 4, opacity: 1 }, encoding: { x: { ...x, field: 'value' }, y: pixels('y') } },
          ...(brackets.length ? [
            { data: { values: brackets }, mark: { type: 'rule', stroke: colours.quiet, strokeWidth: 4 }, encoding: { x: { ...x, field: 'value' }, x2: { field: 'value2' }, y: pixels('y') } },
            { data: { values: brackets.flatMap((b) => [b.value, b.value2].map((value) => ({ value, y: b.y - 13, y2: b.y + 13 }))) }, mark: { type: 'rule', stroke: colours.quiet, strokeWidth: 4 }, encoding: { x: { ...x, field: 'value' }, y: pixels('y'), y2: { field: 'y2' } } },
          ] : []),
          { data: { values: means }, mark: { type: 'rule', strokeWidth: 10 }, encoding: { x: { ...x, field: 'value' }, y: pixels('y'), y2: { field: 'y2' }, color: { field: 'colour', type: 'nominal', scale: null } } },
          ...texts,
        ],
      },
    };
  },
};

interface Rows {
  misfits: Misfit[];
  plot: Rect;
  /** How far rows reach beyond the plot. */
  left: number;
  right: number;
  /** Where the line of each row lies. */
  middles: number[];
  texts: Spec[];
  separators: { y: number }[];
  /** Where the lines of the scale may be seen. */
  stretches?: { from: number; to: number }[];
}

interface NamedRow {
  name: string;
  /** Its mean. */
  text: string;
  colour: Colour;
}

const axisRoom = 64;
/** The pin of the mean, the dots, and those that hang below them. */
const leastPitch = 98;

/** Names beside their rows where there is room for them, else above. The figures of the scale reach `edge` beyond the plot. */
function rowsOf(rows: readonly NamedRow[], body: Rect, stage: Stage, edge: number): Rows {
  const first = stage.narrow ? undefined : beside(rows, body, stage, edge);
  if (first?.misfits.length === 0) return first;
  const second = above(rows, body, stage, edge);
  return first && second.misfits.length > 0 && !second.misfits.every((m) => m.code === 'too-many-rows') ? first : second;
}

/** Names at the left edge, means at the right. */
function beside(rows: readonly NamedRow[], body: Rect, stage: Stage, edge: number): Rows {
  const misfits: Misfit[] = [];
  const { colours, space, type } = stage;
  const names = rows.map((r) => {
    const wrapped = wrapName(stage, r.name, body.width, (body.height - axisRoom) / rows.length);
    return 'lines' in wrapped ? wrapped.lines : (misfits.push(wrapped.misfit), [r.name]);
  });
  const left = Math.max(edge, Math.max(...names.flat().map((n) => measure(n, type.name))) + space.large);
  const right = Math.max(edge, Math.max(...rows.map((r) => measure(r.text, type.value))) + space.large);
  const plot = { x: body.x + left, y: body.y, width: Math.round(body.width - left - right), height: Math.round(body.height - axisRoom) };
  const pitch = plot.height / rows.length;
  if (pitch < leastPitch) misfits.push({ code: 'too-many-rows', text: rows.map((r) => r.name).join(', '), message: `${rows.length} rows have no room below each other: each has ${Math.floor(pitch)} px, and ${leastPitch} are the least` });
  const middles = rows.map((_, i) => Math.round(pitch * (i + 0.5)));
  const text = (lines: { text: string; y: number; colour: string }[], at: number, mark: Spec): Spec => ({
    data: { values: lines }, mark: { type: 'text', ...mark }, encoding: { x: { value: at }, y: pixels('y'), text: { field: 'text' }, color: { field: 'colour', type: 'nominal', scale: null } },
  });
  return {
    misfits, plot, left, right, middles, separators: rows.slice(1).map((_, i) => ({ y: Math.round(pitch * (i + 1)) })),
    texts: [
      text(names.flatMap((lines, i) => lines.map((line, j) => ({ text: line, y: middles[i]! + Math.round((j - (lines.length - 1) / 2) * type.name.size * 1.1), colour: colours.text }))), -left, { fontSize: type.name.size, fontWeight: type.name.weight }),
      text(rows.map((r, i) => ({ text: r.text, y: middles[i]!, colour: colours[r.colour] })), plot.width + right, { align: 'right', fontSize: type.value.size, fontWeight: type.value.weight }),
    ],
  };
}

/** From the line of a row up to its text, and down to its end. */
const reach = { up: 60, down: 56 } as const;

/** Names and means above the rows, which have the whole width. */
function above(rows: readonly NamedRow[], body: Rect, stage: Stage, edge: number): Rows {
  const misfits: Misfit[] = [];
  const { colours, space, type } = stage;
  const side = Math.max(space.medium, edge);
  const plot = { x: body.x + side, y: body.y, width: Math.round(body.width - 2 * side), height: Math.round(body.height - axisRoom) };
  const means = Math.max(...rows.map((r) => measure(r.text, type.value)));
  const names = rows.map((r) => {
    const wrapped = wrap(r.name, type.name, body.width - means - space.medium, 2);
    return 'lines' in wrapped ? wrapped.lines : (misfits.push(wrapped.misfit), [r.name]);
  });
  const most = Math.max(...names.map((n) => n.length));
  const linePitch = type.name.size * lineHeight;
  const height = capHeight * type.name.size + (most - 1) * linePitch + reach.up + reach.down;
  const pitch = plot.height / rows.length;
  if (pitch < height) misfits.push({ code: 'too-many-rows', text: rows.map((r) => r.name).join(', '), message: `${rows.length} rows have no room below each other: each has ${Math.floor(pitch)} px, and ${Math.ceil(height)} are the least` });
  const tops = rows.map((_, i) => pitch * i + Math.min(24, (pitch - height) / 2));
  const baselines = tops.map((t) => t + capHeight * type.name.size);
  const middles = baselines.map((b, i) => Math.round(b + (names[i]!.length - 1) * linePitch + reach.up));
  return {
    misfits, plot, left: side, right: side,
    middles,
    stretches: middles.map((m) => ({ from: m - 46, to: m + 50 })),
    separators: [],
    texts: textLayers(colours, rows.flatMap((r, i): PlacedText[] => [
      ...names[i]!.map((text, j) => ({ text, x: -side, y: baselines[i]! + j * linePitch, style: type.name, colour: 'text' as const })),
      { text: r.text, x: plot.width + side, y: baselines[i]!, style: type.value, colour: r.colour, align: 'right' },
    ])),
  };
}

/** Dots that would hide each other hang below the line, one lane each. */
function lanes(values: number[], px: (v: number) => number): { value: number; lane: number }[] {
  const placed: { value: number; lane: number }[] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    const lane = [0, 1].find((l) => !placed.some((p) => p.lane === l && Math.abs(px(p.value) - px(value)) < dot * 0.55)) ?? 0;
    placed.push({ value, lane });
  }
  return placed;
}
