// A small table such as fan duty against temperature, as a line with its points named.
import { nearest } from '../places/index.js';
import { show, showNumber } from '../quantities/index.js';
import { measure } from '../theme/index.js';
import { acrossLayers, below, mostTicks, ticks, upLayers, widestTick } from './axis.js';
import type { Chart } from './chart.js';
import { baseSpec, type Spec } from './spec.js';
import { lower } from './words.js';

export const curve: Chart = {
  kind: 'curve',
  says: 'a control curve of the record (its id in `text`)',
  rows: () => 1,
  sketch(request, facts, work) {
    const known = facts.about.curves;
    const wanted = request.text ?? known[0]?.id;
    const chosen = known.find((c) => c.id === wanted);
    if (!chosen || wanted === undefined) {
      const near = wanted && nearest(wanted, known.map((c) => c.id));
      return work.complain('picture-empty', known.length ? `the record has no curve "${wanted}"${near ? `; did you mean "${near}"?` : ''}` : `picture "${request.name}" needs a curve, and the record has none`, wanted);
    }
    const points = [...chosen.points].sort((a, b) => a.at.value.compare(b.at.value));
    const heading = {
      title: request.title ?? chosen.name,
      subtitle: `${chosen.of.label} in ${chosen.of.unit.symbol}, against ${lower(chosen.against.label)} in ${chosen.against.unit.symbol}`,
      foot: '',
    };
    const { stage } = work;
    const { colours, space } = stage;
    const { body } = work.frame(heading);
    const xs = points.map((p) => p.at.value.toNumber());
    const ys = points.map((p) => p.value.value.toNumber());
    const most = mostTicks(stage, body, { up: 5, across: 5 });
    // Room above the highest point, for its figure.
    const high = Math.max(...ys);
    const up = ticks(Math.min(0, ...ys), high + (high - Math.min(0, ...ys)) * 0.12, most.up);
    const across = ticks(Math.min(...xs), Math.max(...xs), most.across);
    const left = widestTick(stage, up) + 28;
    const plot = { x: Math.round(body.x + left), y: Math.round(body.y + 24), width: Math.round(body.width - left - (stage.id !== 'wide' ? space.medium : space.large * 1.5)), height: Math.round(body.height - 24 - below.named) };
    const at = (value: number, [low, high]: [number, number], size: number): number => ((value - low) / (high - low)) * size;
    const style = { size: 48, weight: 700, tabular: true } as const;
    const labels = points.map((p, i) => {
      const text = showNumber(p.value.value, p.value.decimals);
      const half = measure(text, style) / 2;
      const px = at(xs[i]!, across.domain, plot.width);
      const py = plot.height - at(ys[i]!, up.domain, plot.height);
      // Above and to the left where the line climbs, below where there is no room above.
      return { text, x: Math.round(Math.max(half + 8, px - half - 14)), y: Math.round(py < 60 ? py + 48 : py - 38), half };
    });
    labels.forEach((l, i) => {
      const next = labels[i + 1];
      if (next && next.x - next.half < l.x + l.half && Math.abs(next.y - l.y) < style.size) work.complain('label-too-long', `the points ${l.text} and ${next.text} of curve "${chosen.name}" lie too close to be told apart`, chosen.id);
    });
    const x: Spec = { type: 'quantitative', axis: null, scale: { domain: across.domain, nice: false, zero: false } };
    const y: Spec = { type: 'quantitative', axis: null, scale: { domain: up.domain, nice: false } };
    const raw = (field: string): Spec => ({ field, type: 'quantitative', scale: null, axis: null });
    const data = points.map((_p, i) => ({ x: xs[i], y: ys[i] }));
    const rows = points.map((p) => [show(p.at.value, p.at.unit, p.at.decimals), show(p.value.value, p.value.unit, p.value.decimals)] as const);
    return {
      heading,
      labels: labels.map((l) => l.text),
      alt: `${chosen.name}: ${rows.map(([a, v]) => `${v} at ${a}`).join(', ')}.`,
      table: { head: [chosen.against.label, chosen.of.label], rows: rows.map((r) => [...r]) },
      facts: [],
      spec: {
        ...baseSpec(stage, plot),
        data: { values: data },
        layer: [
          ...acrossLayers(stage, across, x, plot.height, { name: `${chosen.against.label} in ${chosen.against.unit.symbol}`, width: plot.width }),
          ...upLayers(stage, up, y, plot.width),
          { mark: { type: 'line', stroke: colours.plain, strokeWidth: 6 }, encoding: { x: { ...x, field: 'x' }, y: { ...y, field: 'y' } } },
          { mark: { type: 'point', shape: 'circle', filled: true, size: 700, fill: colours.plain, stroke: colours.panel, strokeWidth: 4, opacity: 1 }, encoding: { x: { ...x, field: 'x' }, y: { ...y, field: 'y' } } },
          { data: { values: labels }, mark: { type: 'text', align: 'center', fontSize: style.size, fontWeight: style.weight }, encoding: { x: raw('x'), y: raw('y'), text: { field: 'text' } } },
        ],
      },
    };
  },
};
