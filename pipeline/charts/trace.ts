// A log over time, every run of it, the windows that were averaged marked with what they gave.
import { basisOf, type Fact, type Facts, isFact, makeKey, nameOf, quantityName, type Trace } from '../facts/index.js';
import { nearest } from '../places/index.js';
import { brief, type Colour, measure } from '../theme/index.js';
import { acrossLayers, below, mostTicks, ticks, upLayers, widestTick } from './axis.js';
import type { Chart, ChartRequest, Workbench } from './chart.js';
import { drawnOf, reduce } from './reduce.js';
import { baseSpec, type Spec } from './spec.js';
import { pixels } from './texts.js';

/** Runs that lie on each other are all seen: the first, whose figures are told, on top and thin, the others wider below it. */
const strands: { colour: Colour; width: number }[] = [{ colour: 'highlight', width: 4 }, { colour: 'plain', width: 10 }, { colour: 'muted', width: 17 }];
const timeSteps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400];

export const trace: Chart = {
  kind: 'trace',
  says: 'a log over time with the averaged windows marked',
  rows: () => 1,
  sketch(request, facts, work) {
    const runs = tracesOf(request, facts, work);
    if (!runs) return undefined;
    const main = runs[0]!;
    const windows = main.windows.flatMap((w) => {
      const key = makeKey({ setup: main.setup, setting: main.setting, workload: main.workload, measure: main.measure, part: main.part, phase: w.phase });
      const plainKey = makeKey({ setup: main.setup, setting: main.setting, measure: main.measure, part: main.part, phase: w.phase });
      const fact = [key, plainKey].map((k) => facts.derive('raw', [`${k}#${main.run}`])).find(isFact);
      return [{ ...w, name: nameOf(facts.about, 'phase', w.phase), fact }];
    });
    const averaged = windows.flatMap((w) => (w.fact ? [w.fact] : []));
    const basis = basisOf(facts, averaged);
    const spoken = windows.filter((w) => w.fact).map((w) => `${w.name} ${w.fact!.shown}, averaged from ${clock(w.start)} to ${clock(w.end)}${w.steady ? `, ${steadyInWords(w.steady)}` : ''}`);
    const common = [nameOf(facts.about, 'setup', main.setup), nameOf(facts.about, 'setting', main.setting), main.workload && nameOf(facts.about, 'workload', main.workload)].filter(Boolean).join(', ');
    const heading = {
      title: request.title ?? `${quantityName(facts.about, main.measure, main.part)} over time`,
      subtitle: [main.unit.symbol, common].filter(Boolean).join(' · '),
      legend: runs.length > 1 ? runs.map((r, i) => ({ label: `run ${r.run}`, colour: strands[i]!.colour })) : [],
      foot: [averaged.length ? `Shaded: averaged${runs.length > 1 ? `, figures of run ${main.run}` : ''}` : '', ...foundBy(windows.filter((w) => w.fact)), basis.room].filter(Boolean).join(' · '),
    };
    const { stage } = work;
    const { colours, space, type } = stage;
    const { body } = work.frame(heading);
    const values = runs.flatMap((r) => drawnOf(r).values.filter(Number.isFinite));
    const times = runs.flatMap((r) => r.times.filter(Number.isFinite));
    if (values.length < 2) return work.complain('picture-empty', `the log of picture "${request.name}" has no values to draw`, main.id);
    const long = max(times) - min(times) > 600;
    const most = mostTicks(stage, body, { up: 5, across: 8 });
    const up = ticks(min(values), max(values) + (max(values) - min(values)) * 0.04, most.up);
    const across = ticks(Math.min(0, min(times)), max(times), most.across, timeSteps);
    const end = max(times);
    const shownTicks = { domain: [across.domain[0], end] as [number, number], at: across.at.filter((t) => t.value <= end).map((t) => ({ value: t.value, text: long ? clock(t.value) : t.text })) };
    const left = widestTick(stage, up) + 28;
    const right = measure(shownTicks.at.at(-1)!.text, type.small) / 2 + space.small;
    const width = Math.round(body.width - left - right);
    const px = (t: number): number => ((t - shownTicks.domain[0]) / (end - shownTicks.domain[0])) * width;
    const { labels, rows } = windowLabels(windows.filter((w) => w.fact) as Windowed[], px, width + right, work);
    const strip = rows ? 64 + (rows - 1) * labelPitch : 16;
    const plot = { x: Math.round(body.x + left), y: Math.round(body.y + strip), width, height: Math.round(body.height - strip - below.named) };
    // Columns of the plot in the largest picture: a wide one is also drawn at twice its size.
    const columns = stage.id === 'wide' ? 3000 : width;

    const x: Spec = { type: 'quantitative', axis: null, scale: { domain: shownTicks.domain, nice: false, zero: false } };
    const y: Spec = { type: 'quantitative', axis: null, scale: { domain: up.domain, nice: false, zero: false } };
    const line = (r: Trace, colour: string, width: number): Spec => {
      const drawn = drawnOf(r);
      return {
        build: { role: 'line', span: `0 ${plot.width}` },
        data: { values: reduce(drawn.times, drawn.values, columns) },
        mark: { type: 'line', stroke: colour, strokeWidth: width, strokeJoin: 'round', invalid: 'break-paths-show-domains' },
        encoding: { x: { ...x, field: 't' }, y: { ...y, field: 'v' } },
      };
    };
    return {
      heading,
      labels: labels.map((l) => l.text),
      alt: `${heading.title}, ${common}, ${runs.length} run${runs.length > 1 ? 's' : ''} of up to ${clock(end)}. ${spoken.length ? `${spoken.join('; ')} (run ${main.run}).` : 'No window was averaged.'}`,
      table: {
        head: ['Window', 'From', 'To', `Run ${main.run}`, ...(windows.some((w) => w.steady) ? ['Steady'] : [])],
        rows: windows.map((w) => [w.name, clock(w.start), clock(w.end), w.fact?.shown ?? '', ...(windows.some((v) => v.steady) ? [w.steady ? steadyInWords(w.steady) : ''] : [])]),
      },
      facts: [...averaged.map((f) => f.id), ...(basis.room ? basis.facts : [])],
      spec: {
        ...baseSpec(stage, plot),
        layer: [
          ...(windows.length ? [{ data: { values: windows.map((w) => ({ from: w.start, to: Math.min(w.end, end) })) }, mark: { type: 'rect', fill: colours.band, opacity: 1 }, encoding: { x: { ...x, field: 'from' }, x2: { field: 'to' }, y: { value: 0 }, y2: { value: plot.height } } }] : []),
          ...acrossLayers(stage, shownTicks, x, plot.height, { name: `Time in ${long ? (end >= 3600 ? 'h:min:s' : 'min:s') : 's'}`, width: plot.width }),
          ...upLayers(stage, up, y, plot.width),
          ...(runs.length > 1 ? runs.map((r, i) => line(r, colours[strands[i]!.colour], strands[i]!.width)).reverse() : [line(main, colours.highlight, 6)]),
          ...(labels.length ? [{ build: { role: 'figures' }, data: { values: labels }, mark: { type: 'text', fontSize: 48, fontWeight: 600, fill: colours.text }, encoding: { x: { field: 'x', type: 'quantitative', scale: null, axis: null }, y: pixels('y'), text: { field: 'text' } } }] : []),
        ],
      },
    };
  },
};

type Steady = NonNullable<Trace['windows'][number]['steady']>;

/** "steady from 1:02 on (at most 1 K in 5 min)", "never steady (…)". */
function steadyInWords({ start, rule }: Steady): string {
  return start === undefined ? `never steady (${rule})` : `steady from ${clock(start)} on (${rule})`;
}

/** How windows came about that were not given by hand, each rule once. */
function foundBy(windows: readonly { name: string; steady?: Steady }[]): string[] {
  const found = windows.filter((w) => w.steady?.finds);
  const never = found.filter((w) => w.steady!.start === undefined).map((w) => w.name.toLowerCase());
  const rules = [...new Set(found.map((w) => w.steady!.rule))];
  return [rules.length ? `steady: ${rules.join('; ')}` : '', never.length ? `never steady: ${never.join(', ')}` : ''].filter(Boolean);
}

type Windowed = { start: number; end: number; name: string; fact: Fact };

const labelPitch = 58;

interface WindowLabel {
  text: string;
  x: number;
  y: number;
}

/** What was averaged, above its window: in one row where all have room beside each other, else in as few as it takes, three at most. */
function windowLabels(windows: Windowed[], px: (t: number) => number, edge: number, work: Workbench): { labels: WindowLabel[]; rows: number } {
  const style = { size: 48, weight: 600 } as const;
  const gap = work.stage.space.medium;
  const all = [...windows].sort((a, b) => a.start - b.start).map((w) => {
    const text = `${w.name} ${w.fact.shown}`;
    const width = measure(text, style);
    return { text, width, wanted: (px(w.start) + px(w.end)) / 2 - width / 2 };
  });
  if (all.length === 0) return { labels: [], rows: 0 };
  for (let rows = 1; rows <= Math.min(3, all.length); rows++) {
    const placed = Array.from({ length: rows }, (_, r) => inARow(all.filter((_l, i) => i % rows === r), edge, gap));
    if (placed.every((row) => row !== undefined)) {
      return { rows, labels: placed.flatMap((row, r) => row.map(({ text, x }) => ({ text, x: Math.round(x), y: -34 - (rows - 1 - r) * labelPitch }))) };
    }
  }
  work.complain('label-too-long', `the windows ${all.map((l) => `"${brief(l.text)}"`).join(', ')} have no room above each other`);
  return { labels: [], rows: 0 };
}

/** Each moved right until it is clear of the one before, and left from the edge; undefined where they have no room. */
function inARow(labels: readonly { text: string; width: number; wanted: number }[], edge: number, gap: number): { text: string; x: number }[] | undefined {
  const out: { text: string; width: number; x: number }[] = [];
  for (const { text, width, wanted } of labels) {
    const before = out.at(-1);
    out.push({ text, width, x: Math.max(0, before ? before.x + before.width + gap : 0, wanted) });
  }
  for (let i = out.length - 1, limit = edge; i >= 0; i--) {
    out[i]!.x = Math.min(out[i]!.x, limit - out[i]!.width);
    limit = out[i]!.x - gap;
  }
  return out.length && out[0]!.x < 0 ? undefined : out;
}

export function tracesOf(request: ChartRequest, facts: Facts, work: Workbench): Trace[] | undefined {
  let pool = [...facts.traces];
  if (pool.length === 0) return work.complain('picture-empty', `picture "${request.name}" needs a log, and the record has none`);
  for (const [field, wanted] of [['measure', request.measure], ['part', request.part], ['setup', request.setups?.[0]], ['setting', request.settings?.[0]], ['workload', request.workload]] as const) {
    const value = wanted ?? pool[0]![field];
    const left = pool.filter((t) => t[field] === value);
    if (left.length === 0) {
      const known = [...new Set(pool.map((t) => t[field]))];
      const near = nearest(value, known);
      return work.complain('picture-empty', `no log has ${field} "${value}"; ${near ? `did you mean "${near}"?` : `logs have ${known.map((k) => `"${k}"`).join(', ')}`}`, value);
    }
    pool = left;
  }
  return pool.slice(0, strands.length);
}

/** "2:05", "1:00:00". */
function clock(seconds: number): string {
  const s = Math.round(seconds);
  const two = (n: number): string => String(n).padStart(2, '0');
  return s >= 3600 ? `${Math.floor(s / 3600)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}` : `${Math.floor(s / 60)}:${two(s % 60)}`;
}

function min(list: number[]): number {
  return list.reduce((a, b) => Math.min(a, b));
}

function max(list: number[]): number {
  return list.reduce((a, b) => Math.max(a, b));
}
