// A log over time, every run of it, the windows that were averaged marked with what they gave.
import { basisOf, type Fact, type Facts, isFact, makeKey, nameOf, quantityName, type Trace } from '../facts/index.js';
import { nearest } from '../places/index.js';
import { brief, type Colour, measure } from '../theme/index.js';
import { acrossLayers, below, ticks, upLayers, widestTick } from './axis.js';
import type { Chart, ChartRequest, Workbench } from './chart.js';
import { reduce } from './reduce.js';
import { baseSpec, type Spec } from './spec.js';

/** Columns of the plot in the largest picture (3840 wide). */
const columns = 3000;
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
    const spoken = windows.filter((w) => w.fact).map((w) => `${w.name} ${w.fact!.shown}, averaged from ${clock(w.start)} to ${clock(w.end)}`);
    const common = [nameOf(facts.about, 'setup', main.setup), nameOf(facts.about, 'setting', main.setting), main.workload && nameOf(facts.about, 'workload', main.workload)].filter(Boolean).join(', ');
    const heading = {
      title: request.title ?? `${quantityName(facts.about, main.measure, main.part)} over time`,
      subtitle: [main.unit.symbol, common].filter(Boolean).join(' · '),
      legend: runs.length > 1 ? runs.map((r, i) => ({ label: `run ${r.run}`, colour: strands[i]!.colour })) : [],
      foot: [averaged.length ? `Shaded: averaged${runs.length > 1 ? `, figures of run ${main.run}` : ''}` : '', basis.room].filter(Boolean).join(' · '),
    };
    const { stage } = work;
    const { colours, space, type } = stage;
    const { body } = work.frame(heading);
    const values = runs.flatMap((r) => r.values.filter(Number.isFinite));
    const times = runs.flatMap((r) => r.times.filter(Number.isFinite));
    if (values.length < 2) return work.complain('picture-empty', `the log of picture "${request.name}" has no values to draw`, main.id);
    const long = Math.max(...times) - Math.min(...times) > 600;
    const up = ticks(min(values), max(values) + (max(values) - min(values)) * 0.04, 5);
    const across = ticks(Math.min(0, min(times)), max(times), 8, timeSteps);
    const end = max(times);
    const shownTicks = { domain: [across.domain[0], end] as [number, number], at: across.at.filter((t) => t.value <= end).map((t) => ({ value: t.value, text: long ? clock(t.value) : t.text })) };
    const strip = averaged.length ? 64 : 16;
    const left = widestTick(stage, up) + 28;
    const right = measure(shownTicks.at.at(-1)!.text, type.small) / 2 + space.small;
    const plot = { x: Math.round(body.x + left), y: Math.round(body.y + strip), width: Math.round(body.width - left - right), height: Math.round(body.height - strip - below.named) };
    const px = (t: number): number => ((t - shownTicks.domain[0]) / (end - shownTicks.domain[0])) * plot.width;
    const labels = windowLabels(windows.filter((w) => w.fact) as Windowed[], px, plot.width + right, work);

    const x: Spec = { type: 'quantitative', axis: null, scale: { domain: shownTicks.domain, nice: false, zero: false } };
    const y: Spec = { type: 'quantitative', axis: null, scale: { domain: up.domain, nice: false, zero: false } };
    const line = (r: Trace, colour: string, width: number): Spec => ({
      data: { values: reduce(r.times, r.values, columns) },
      mark: { type: 'line', stroke: colour, strokeWidth: width, strokeJoin: 'round', invalid: 'break-paths-show-domains' },
      encoding: { x: { ...x, field: 't' }, y: { ...y, field: 'v' } },
    });
    return {
      heading,
      labels: labels.map((l) => l.text),
      alt: `${heading.title}, ${common}, ${runs.length} run${runs.length > 1 ? 's' : ''} of up to ${clock(end)}. ${spoken.length ? `${spoken.join('; ')} (run ${main.run}).` : 'No window was averaged.'}`,
      table: { head: ['Window', 'From', 'To', `Run ${main.run}`], rows: windows.map((w) => [w.name, clock(w.start), clock(w.end), w.fact?.shown ?? '']) },
      facts: [...averaged.map((f) => f.id), ...(basis.room ? basis.facts : [])],
      spec: {
        ...baseSpec(stage, plot),
        layer: [
          ...(windows.length ? [{ data: { values: windows.map((w) => ({ from: w.start, to: Math.min(w.end, end) })) }, mark: { type: 'rect', fill: colours.band, opacity: 1 }, encoding: { x: { ...x, field: 'from' }, x2: { field: 'to' }, y: { value: 0 }, y2: { value: plot.height } } }] : []),
          ...acrossLayers(stage, shownTicks, x, plot.height, { text: `Time in ${long ? (end >= 3600 ? 'h:min:s' : 'min:s') : 's'}`, width: plot.width }),
          ...upLayers(stage, up, y, plot.width),
          ...(runs.length > 1 ? runs.map((r, i) => line(r, colours[strands[i]!.colour], strands[i]!.width)).reverse() : [line(main, colours.highlight, 6)]),
          ...(labels.length ? [{ data: { values: labels }, mark: { type: 'text', fontSize: 48, fontWeight: 600, fill: colours.text }, encoding: { x: { field: 'x', type: 'quantitative', scale: null, axis: null }, y: { value: -34 }, text: { field: 'text' } } }] : []),
        ],
      },
    };
  },
};

type Windowed = { start: number; end: number; name: string; fact: Fact };

/** One line above each window, moved right until it is clear of the one before, and left from the edge. */
function windowLabels(windows: Windowed[], px: (t: number) => number, edge: number, work: Workbench): { text: string; x: number }[] {
  const style = { size: 48, weight: 600 } as const;
  const out: { text: string; x: number; width: number }[] = [];
  for (const w of [...windows].sort((a, b) => a.start - b.start)) {
    const text = `${w.name} ${w.fact.shown}`;
    const width = measure(text, style);
    const before = out.at(-1);
    const wanted = (px(w.start) + px(w.end)) / 2 - width / 2;
    out.push({ text, width, x: Math.max(0, before ? before.x + before.width + work.stage.space.medium : 0, wanted) });
  }
  for (let i = out.length - 1, limit = edge; i >= 0; i--) {
    out[i]!.x = Math.min(out[i]!.x, limit - out[i]!.width);
    limit = out[i]!.x - work.stage.space.medium;
  }
  if (out.length && out[0]!.x < 0) work.complain('label-too-long', `the windows ${out.map((o) => `"${brief(o.text)}"`).join(', ')} have no room beside each other`);
  return out.map(({ text, x }) => ({ text, x: Math.round(x) }));
}

function tracesOf(request: ChartRequest, facts: Facts, work: Workbench): Trace[] | undefined {
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
