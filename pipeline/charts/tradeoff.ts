// What one measure costs in another: each setting (or product) as a point, e.g. frame rate against power.
import { betterWords, type Fact, isFact, nameOf, quantityName, withFields } from '../facts/index.js';
import { brief, measure, type TextStyle } from '../theme/index.js';
import { acrossLayers, below, fittingTicks, mostTicks, ticks, tickStyle, upLayers, widestTick } from './axis.js';
import type { Chart } from './chart.js';
import { type Point, placeLabels } from './place-labels.js';
import { commonName, type Row, rowName, select } from './rows.js';
import { baseSpec, type Spec } from './spec.js';
import { tones, tonesOf } from './tones.js';
import { foot, lower } from './words.js';

const name: TextStyle = { size: 48, weight: 600 };
const radius = 19;

export const tradeoff: Chart = {
  kind: 'tradeoff',
  says: 'a measure against another (`text: measure/part`, else power), a point for each row',
  rows: () => 1,
  sketch(request, facts, work) {
    const chosen = select(request, facts, work);
    if (!chosen) return undefined;
    const [otherMeasure, otherPart] = (request.text ?? powerOf(facts.keys()) ?? '').split('/') as [string, string?];
    const rows = chosen.rows.flatMap((row) => {
      const against = facts.value(withFields(row.key, { measure: otherMeasure, ...(otherPart !== undefined && { part: otherPart }) }));
      return isFact(against) ? [{ row, up: row.fact, across: against }] : [];
    });
    if (rows.length < 2) return work.complain('picture-empty', `picture "${request.name}" needs ${chosen.measure} and ${otherMeasure || 'a second measure'} of the same rows, at least two of them`, otherMeasure || request.name);
    const first = rows[0]!;
    const series = chosen.by.length > 1 ? chosen.by[0] : undefined;
    const seriesIds = series ? [...new Set(rows.map((r) => r.row.parts[series]))] : [''];
    if (seriesIds.length > tones.length) return work.complain('too-many-rows', `picture "${request.name}" would show ${seriesIds.length} lines, and ${tones.length} are the most; name fewer setups`, request.name);
    const toneOf = series ? tonesOf(facts, series, seriesIds) : undefined;
    const notes = foot(facts, rows.flatMap((r) => [r.up, r.across]), ['scales not from zero'], commonName(facts, first.row, chosen.by));
    const [upName, acrossName] = [quantityName(facts.about, chosen.measure, chosen.part), quantityName(facts.about, otherMeasure, otherPart ?? '')];
    const axisWords = (what: string, fact: Fact, id: string): string => `${what}: ${fact.unit.symbol}${betterWords(facts.about, id) ? `, ${betterWords(facts.about, id)}` : ''}`;
    const heading = {
      title: request.title ?? `${upName} against ${lower(acrossName)}`,
      subtitle: `${axisWords('Up', first.up, chosen.measure)} · ${axisWords('across', first.across, otherMeasure)}`,
      legend: series ? seriesIds.map((id) => ({ label: nameOf(facts.about, series, id), colour: toneOf!.get(id)!, shape: 'dot' as const })) : [],
      foot: notes.text,
    };
    const { stage } = work;
    const { colours, space, type } = stage;
    const { body } = work.frame(heading);
    const numbers = (pick: 'up' | 'across'): number[] => rows.map((r) => r[pick].value.toNumber());
    const most = mostTicks(stage, body, { up: 5, across: 7 });
    const up = ticks(...padded(numbers('up')), most.up);
    const rough = padded(numbers('across'));
    const left = Math.max(widestTick(stage, up) + 28, measure(ticks(...rough, most.across).at[0]!.text, tickStyle(stage)) / 2);
    const across = fittingTicks(stage, ...rough, most.across, body.width - left - widestTick(stage, ticks(...rough, most.across)));
    const right = measure(across.at.at(-1)!.text, type.small) + space.small;
    const plot = { x: Math.round(body.x + left), y: Math.round(body.y + 24), width: Math.round(body.width - left - right), height: Math.round(body.height - 24 - below.named) };
    const px = (v: number): number => ((v - across.domain[0]) / (across.domain[1] - across.domain[0])) * plot.width;
    const py = (v: number): number => plot.height - ((v - up.domain[0]) / (up.domain[1] - up.domain[0])) * plot.height;
    const label = (row: Row): string => (series ? rowName(facts, row, chosen.by.slice(1)) : rowName(facts, row, chosen.by));
    const points = rows.map((r): Point => ({ x: px(r.across.value.toNumber()), y: py(r.up.value.toNumber()), text: label(r.row) }));
    const labels = placeLabels(points, name, radius, plot);
    labels.forEach((l, i) => {
      if (!l) work.complain('label-too-long', `there is no room for "${brief(points[i]!.text)}" beside its point in picture "${request.name}"; name fewer setups or settings`, points[i]!.text);
    });
    const data = rows.map((r, i) => ({ x: r.across.value.toNumber(), y: r.up.value.toNumber(), order: i, series: series ? r.row.parts[series] : '', colour: colours[series ? toneOf!.get(r.row.parts[series])! : 'plain'] }));
    const x: Spec = { type: 'quantitative', axis: null, scale: { domain: across.domain, nice: false, zero: false } };
    const y: Spec = { type: 'quantitative', axis: null, scale: { domain: up.domain, nice: false, zero: false } };
    const paint = { field: 'colour', type: 'nominal', scale: null };
    const raw = (field: string): Spec => ({ field, type: 'quantitative', scale: null, axis: null });
    const leaders = labels.flatMap((l) => l?.leader ?? []);
    const inWords = rows.map((r) => [rowName(facts, r.row, chosen.by), r.across.shown, r.up.shown] as const);
    return {
      heading,
      labels: points.map((p) => p.text),
      alt: `${inWords.map(([who, a, u]) => `${who}: ${u} at ${a}`).join('; ')}. ${heading.foot}.`,
      table: { head: ['', acrossName, upName], rows: inWords.map((r) => [...r]) },
      facts: [...rows.flatMap((r) => [r.up.id, r.across.id]), ...notes.facts],
      spec: {
        ...baseSpec(stage, plot),
        data: { values: data },
        layer: [
          ...acrossLayers(stage, across, x, plot.height, { name: `${acrossName} in ${first.across.unit.symbol}`, width: plot.width }),
          ...upLayers(stage, up, y, plot.width),
          ...(leaders.length ? [{ data: { values: leaders }, mark: { type: 'rule', stroke: colours.quiet, strokeWidth: 3 }, encoding: { x: raw('x'), x2: { field: 'x2' }, y: raw('y'), y2: { field: 'y2' } } }] : []),
          { mark: { type: 'point', shape: 'circle', filled: true, size: Math.PI * radius * radius, stroke: colours.panel, strokeWidth: 3, opacity: 1 }, encoding: { x: { ...x, field: 'x' }, y: { ...y, field: 'y' }, fill: paint } },
          { data: { values: labels.flatMap((l) => l?.lines ?? []) }, mark: { type: 'text', fontSize: name.size, fontWeight: name.weight }, encoding: { x: raw('x'), y: raw('y'), text: { field: 'text' } } },
        ],
      },
    };
  },
};

/** A tenth of the span free all round, so that no point sits on the edge. */
function padded(values: number[]): [low: number, high: number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const air = (high - low || Math.abs(high) || 1) * 0.1;
  return [low > 0 ? Math.max(0, low - air) : low - air, high + air];
}

function powerOf(keys: readonly string[]): string | undefined {
  return keys.map((k) => k.split('/')).find((p) => p[3] === 'power' && p[5] && p[5] !== 'idle')?.slice(3, 5).join('/');
}
