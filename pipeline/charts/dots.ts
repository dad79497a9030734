// Every run as a dot, their mean as a pin above: how far apart the runs lie, and whether the rows do.
import { type Fact, isFact, phaseNote, quantityName, bestOf } from '../facts/index.js';
import { measure } from '../theme/index.js';
import { acrossLayers, ticks } from './axis.js';
import type { Chart } from './chart.js';
import { wrapName } from './names.js';
import { commonName, type Row, rowName, select } from './rows.js';
import { baseSpec, type Spec } from './spec.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

const dot = 28;

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
    const scale = ticks(Math.min(...runs), Math.max(...runs), 6);
    const notes = foot(facts, shown.map((r) => r.fact), scale.domain[0] > 0 ? ['scale not from zero'] : []);
    const heading = {
      title: request.title ?? `${quantityName(facts.about, chosen.measure, chosen.part)}${phaseNote(facts, chosen)}, run by run`,
      subtitle: subtitle(facts, chosen, unitSymbol(chosen.rows.map((r) => r.fact)), commonName(facts, shown[0]!, chosen.by)),
      legend: [{ label: 'one run', colour: 'plain' as const, shape: 'dot' as const }, { label: 'mean', colour: 'text' as const, shape: 'tick' as const }],
      foot: notes.text,
    };
    const { stage } = work;
    const { colours, space, type } = stage;
    const { body } = work.frame(heading);
    const runFacts = (r: Row): Fact[] => r.fact.readings.map((x) => facts.derive('raw', [`${r.key}#${x.run}`])).filter(isFact);
    const named = shown.map((r) => ({ ...r, name: rowName(facts, r, chosen.by), text: figure(r.fact), runs: runFacts(r) }));
    const names = named.map((r) => {
      const wrapped = wrapName(stage, r.name, body.width, (body.height - 64) / named.length);
      return 'lines' in wrapped ? wrapped.lines : (work.complain(wrapped.misfit.code, wrapped.misfit.message, r.name), [r.name]);
    });
    const left = Math.max(...names.flat().map((n) => measure(n, type.name))) + space.large;
    const right = Math.max(...named.map((r) => measure(r.text, type.value))) + space.large;
    const plot = { x: body.x + left, y: body.y, width: Math.round(body.width - left - right), height: Math.round(body.height - 64) };
    const pitch = plot.height / named.length;
    const middle = (i: number): number => Math.round(pitch * (i + 0.5));
    const px = (v: number): number => ((v - scale.domain[0]) / (scale.domain[1] - scale.domain[0])) * plot.width;

    const points = named.flatMap((r, i) => lanes(r.runs.map((f) => f.value.toNumber()), px).map(({ value, lane }) => ({ value, y: middle(i) + 14 + lane * (dot - 4) })));
    const means = named.map((r, i) => ({ value: r.fact.value.toNumber(), y: middle(i) - 40, y2: middle(i) - 8, colour: r.fact === winner.fact ? colours.highlight : colours.text }));
    const ranges = named.flatMap((r, i) => (r.fact.spread ? [{ value: r.fact.spread.min.toNumber(), value2: r.fact.spread.max.toNumber(), y: middle(i) + 14 }] : []));
    const x = { type: 'quantitative', axis: null, scale: { domain: scale.domain, nice: false, zero: false } };
    const raw = (field: string): Spec => ({ field, type: 'quantitative', scale: null, axis: null });
    const text = (rows: { text: string; y: number; colour?: string }[], at: number, mark: Spec): Spec => ({
      data: { values: rows.map((r) => ({ colour: colours.text, ...r })) }, mark: { type: 'text', ...mark },
      encoding: { x: { value: at }, y: raw('y'), text: { field: 'text' }, color: { field: 'colour', type: 'nominal', scale: null } },
    });
    const separators = named.slice(1).map((_, i) => ({ y: Math.round(pitch * (i + 1)) }));
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
          ...acrossLayers(stage, scale, x, plot.height),
          ...(separators.length ? [{ data: { values: separators }, mark: { type: 'rule', stroke: colours.rule, strokeWidth: 2 }, encoding: { x: { value: -left }, x2: { value: plot.width + right }, y: raw('y') } }] : []),
          ...(ranges.length ? [{ data: { values: ranges }, mark: { type: 'rule', stroke: colours.muted, strokeWidth: 8, strokeCap: 'round' }, encoding: { x: { ...x, field: 'value' }, x2: { field: 'value2' }, y: raw('y') } }] : []),
          { data: { values: points }, mark: { type: 'point', shape: 'circle', filled: true, size: (Math.PI * dot * dot) / 4, fill: colours.plain, stroke: colours.panel, strokeWidth: 4, opacity: 1 }, encoding: { x: { ...x, field: 'value' }, y: raw('y') } },
          { data: { values: means }, mark: { type: 'rule', strokeWidth: 10 }, encoding: { x: { ...x, field: 'value' }, y: raw('y'), y2: { field: 'y2' }, color: { field: 'colour', type: 'nominal', scale: null } } },
          text(names.flatMap((lines, i) => lines.map((line, j) => ({ text: line, y: middle(i) + Math.round((j - (lines.length - 1) / 2) * type.name.size * 1.1) }))), -left, { fontSize: type.name.size, fontWeight: type.name.weight }),
          text(named.map((r, i) => ({ text: r.text, y: middle(i), colour: r.fact === winner.fact ? colours.highlight : colours.text })), plot.width + right, { align: 'right', fontSize: type.value.size, fontWeight: type.value.weight }),
        ],
      },
    };
  },
};

/** Dots that would hide each other hang below the line, one lane each. */
function lanes(values: number[], px: (v: number) => number): { value: number; lane: number }[] {
  const placed: { value: number; lane: number }[] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    const lane = [0, 1].find((l) => !placed.some((p) => p.lane === l && Math.abs(px(p.value) - px(value)) < dot * 0.55)) ?? 0;
    placed.push({ value, lane });
  }
  return placed;
}
