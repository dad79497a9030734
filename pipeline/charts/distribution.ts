// How often a log has which value: shares of the samples in even steps, from a true zero, with facts marked on the scale.
import { type Fact, type Facts, isFact, phaseNote, quantityName, splitKey } from '../facts/index.js';
import { showNumber, Exact } from '../quantities/index.js';
import { measure } from '../theme/index.js';
import { acrossLayers, below, mostTicks, ticks, upLayers, widestTick } from './axis.js';
import type { Chart } from './chart.js';
import { baseSpec, type Spec } from './spec.js';
import { type PlacedText, textLayers } from './texts.js';
import { tracesOf } from './trace.js';
import { foot } from './words.js';

/** A hand's width of bars: finer steps show the noise of the counting. */
const mostBins = 40;
/** What lies beyond this share of the samples is told in words, so that one stutter does not flatten the rest. */
const shownShare = 0.999;

export const distribution: Chart = {
  kind: 'distribution',
  says: 'how often each value of a log occurs, such as frame times (`facts`: marked on the scale)',
  rows: () => 1,
  sketch(request, facts, work) {
    const found = tracesOf(request, facts, work);
    if (!found) return undefined;
    const main = found[0]!;
    if (main.lows) return work.complain('picture-empty', `the log of picture "${request.name}" is kept as means over short stretches, which have another distribution than its samples`, main.id);
    const values = main.values.filter(Number.isFinite).sort((a, b) => a - b);
    if (values.length < 20) return work.complain('picture-empty', `the log of picture "${request.name}" has ${values.length} values, too few for a distribution`, main.id);
    const marked = (request.facts ?? []).map((id) => facts.get(id)).filter(isFact);
    const odd = marked.find((f) => f.unit.id !== main.unit.id);
    if (odd) return work.complain('picture-empty', `picture "${request.name}" would mark ${odd.shown} on a scale in ${main.unit.symbol}`, odd.id);
    const { stage } = work;
    const { colours, space, stroke, type } = stage;
    const high = values[Math.max(0, Math.ceil(shownShare * values.length) - 1)]!;
    const low = values[0]!;
    const step = niceStep((high - low || Math.abs(high) || 1) / mostBins, resolutionOf(values));
    const first = Math.floor(low / step + 1e-9);
    const count = Math.max(1, Math.floor(high / step + 1e-9) - first + 1);
    const bins = new Array<number>(count).fill(0);
    let beyond = 0;
    for (const v of values) {
      const bin = Math.floor(v / step + 1e-9) - first;
      if (bin < count) bins[bin]!++;
      else beyond++;
    }
    const shares = bins.map((n, i) => ({ from: (first + i) * step, to: (first + i + 1) * step, share: (100 * n) / values.length }));
    const notes = foot(facts, marked, [`run ${main.run}`, `${showNumber(Exact.of(values.length), 0)} samples`, beyond ? `${beyond} beyond ${showNumber(Exact.fromNumber(shares.at(-1)!.to).round(3), decimalsOf(step))} ${main.unit.symbol}` : ''].filter(Boolean));
    const heading = {
      title: request.title ?? `${quantityName(facts.about, main.measure, main.part)}, how often`,
      subtitle: `Up: % of samples · across: ${main.unit.symbol}, in steps of ${showNumber(Exact.fromNumber(step).round(6), decimalsOf(step))} ${main.unit.symbol}`,
      foot: notes.text,
    };
    const { body } = work.frame(heading);
    const most = mostTicks(stage, body, { up: 5, across: 8 });
    const up = ticks(0, Math.max(...shares.map((s) => s.share)), most.up);
    const across = ticks(Math.min(shares[0]!.from, ...marked.map((f) => f.value.toNumber())), Math.max(shares.at(-1)!.to, ...marked.map((f) => f.value.toNumber())), most.across);
    const left = widestTick(stage, up) + 28;
    const right = measure(across.at.at(-1)!.text, type.small) / 2 + space.small;
    const width = Math.round(body.width - left - right);
    const px = (v: number): number => ((v - across.domain[0]) / (across.domain[1] - across.domain[0])) * width;
    const { texts, height: strip } = markLabels(marked, px, width, type.name, work, request.name, facts);
    const plot = { x: Math.round(body.x + left), y: Math.round(body.y + strip), width, height: Math.round(body.height - strip - below.named) };
    const x: Spec = { type: 'quantitative', axis: null, scale: { domain: across.domain, nice: false, zero: false } };
    const y: Spec = { type: 'quantitative', axis: null, scale: { domain: up.domain, nice: false, zero: true } };
    return {
      heading, labels: texts.map((t) => t.text),
      alt: `${values.length} samples from ${showNumber(Exact.fromNumber(low), decimalsOf(step))} to ${showNumber(Exact.fromNumber(values.at(-1)!), decimalsOf(step))} ${main.unit.symbol}. ${marked.map((f) => `${markName(facts, f)} ${f.shown}`).join('; ')}${marked.length ? '. ' : ''}${heading.foot}.`,
      table: { head: [`From (${main.unit.symbol})`, 'To', '% of samples'], rows: shares.map((s) => [showNumber(Exact.fromNumber(s.from).round(6), decimalsOf(step)), showNumber(Exact.fromNumber(s.to).round(6), decimalsOf(step)), showNumber(Exact.fromNumber(s.share), 2)]) },
      facts: [...marked.map((f) => f.id), ...notes.facts],
      spec: {
        ...baseSpec(stage, plot),
        layer: [
          ...upLayers(stage, up, y, plot.width),
          { data: { values: shares }, mark: { type: 'rect', fill: colours.muted, stroke: colours.panel, strokeWidth: 2 }, encoding: { x: { ...x, field: 'from' }, x2: { field: 'to' }, y: { ...y, field: 'share' }, y2: { datum: 0 } } },
          ...acrossLayers(stage, across, x, plot.height, { name: `${quantityName(facts.about, main.measure, main.part)} in ${main.unit.symbol}`, width: plot.width, stretches: [] }),
          ...(marked.length ? [{ data: { values: marked.map((f) => ({ at: f.value.toNumber() })) }, mark: { type: 'rule', stroke: colours.highlight, strokeWidth: stroke.line }, encoding: { x: { ...x, field: 'at' }, y: { value: -14 }, y2: { value: plot.height } } }] : []),
          ...textLayers(colours, texts),
        ],
      },
    };
  },
};

/** "Core temperature, idle", "Frame time, 99th percentile". */
function markName(facts: Facts, f: Fact): string {
  const p = splitKey(f.subject);
  return p ? quantityName(facts.about, p.measure, p.part) + phaseNote(facts, p) : f.id;
}

type Style = { size: number; weight: number };

/** The marked facts above the plot, each at its line, in as many rows as keep them apart. */
function markLabels(marked: readonly Fact[], px: (v: number) => number, width: number, style: PlacedText['style'] & Style, work: Parameters<Chart['sketch']>[2], name: string, facts: Facts): { texts: PlacedText[]; height: number } {
  const rows: { right: number }[] = [];
  const placed = [...marked].sort((a, b) => a.value.compare(b.value)).map((f) => {
    const text = `${markName(facts, f)} ${f.shown}`;
    const w = measure(text, style);
    if (w > width) work.complain('label-too-long', `"${text}" has no room above the plot of picture "${name}"`, text);
    const x = Math.max(0, Math.min(px(f.value.toNumber()) - w / 2, width - w));
    let row = rows.findIndex((r) => r.right + 28 <= x);
    if (row < 0) row = rows.push({ right: 0 }) - 1;
    rows[row]!.right = x + w;
    return { text, x, row };
  });
  const pitch = style.size * 1.16;
  return { height: rows.length ? rows.length * pitch + 20 : 16, texts: placed.map((p) => ({ text: p.text, x: p.x, y: -26 - p.row * pitch, style, colour: 'text' })) };
}

/** 1, 2 or 5 times a power of ten, not finer than the log writes its values. */
function niceStep(least: number, resolution: number): number {
  const power = Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].map((n) => Number(`${n}e${power}`)).find((s) => s >= least - 1e-12)!;
  return Math.max(step, resolution);
}

/** The smallest distance between different values, which are in order. */
function resolutionOf(values: readonly number[]): number {
  let least = Infinity;
  for (let i = 1; i < values.length; i++) {
    const d = values[i]! - values[i - 1]!;
    if (d > 1e-9 && d < least) least = d;
  }
  return least === Infinity ? 0 : Number(least.toPrecision(6));
}

function decimalsOf(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}
