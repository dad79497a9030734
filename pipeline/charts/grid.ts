// Setups by settings as a field of cells, shaded by how high they are, each with its figure.
import { bestOf, type Facts, nameOf, phaseNote, quantityName } from '../facts/index.js';
import { type Colours, contrast, luminance, measure, type Misfit, over, type Rect, type Stage, type TextStyle, wrap } from '../theme/index.js';
import type { Chart } from './chart.js';
import { type Row, select } from './rows.js';
import { baseSpec, type Spec } from './spec.js';
import { pixels, type PlacedText, textLayers } from './texts.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

const gap = 6;
const leastCell = 76;

export const grid: Chart = {
  kind: 'grid',
  says: 'setups by settings as cells shaded by height, each with its figure; the best is outlined',
  rows: (request, facts) => new Set(select(request, facts)?.rows.map((r) => r.parts.setting)).size || 1,
  sketch(request, facts, work) {
    const chosen = select(request, facts, work);
    if (!chosen) return undefined;
    const workload = chosen.rows[0]!.parts.workload;
    const rows = chosen.rows.filter((r) => r.parts.workload === workload);
    const setups = [...new Set(rows.map((r) => r.parts.setup))];
    const settings = [...new Set(rows.map((r) => r.parts.setting))].slice(request.slice?.from, request.slice?.to);
    if (setups.length < 2 || settings.length < 2) return work.complain('picture-empty', `picture "${request.name}" needs ${chosen.measure} of two setups and two settings at least`, chosen.measure);
    const values = rows.map((r) => r.fact.value.toNumber());
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const best = bestOf(facts, chosen.measure, rows.map((r) => r.fact)).fact;
    const shown = rows.filter((r) => settings.includes(r.parts.setting));
    const notes = foot(facts, shown.map((r) => r.fact), [`${luminance(work.stage.colours.plain) > luminance(work.stage.colours.band) ? 'lighter' : 'darker'} is higher`]);
    const heading = {
      title: request.title ?? `${quantityName(facts.about, chosen.measure, chosen.part)}${phaseNote(facts, chosen)}`,
      subtitle: subtitle(facts, chosen, unitSymbol(rows.map((r) => r.fact)), workload ? nameOf(facts.about, 'workload', workload) : ''),
      foot: notes.text,
    };
    const { stage } = work;
    const { colours, type, stroke } = stage;
    const { body } = work.frame(heading);
    const across = lay(stage, body, shown, ['setup', setups], ['setting', settings], facts);
    // Names that have no room above their columns have it beside their rows.
    const turned = across.misfits.length ? lay(stage, body, shown, ['setting', settings], ['setup', setups], facts) : undefined;
    const laid = turned && turned.misfits.length === 0 ? turned : across;
    for (const m of laid.misfits) work.complain(m.code, m.message, m.text);
    const { plot, texts } = laid;
    const scale = tones(colours);
    const cells = laid.cells.map((cell) => {
      const { row } = cell;
      const share = high > low ? (row.fact.value.toNumber() - low) / (high - low) : 0.5;
      const { fill, ink } = scale[Math.round(share * (scale.length - 1))]!;
      return { x: cell.x, x2: cell.x2, y: cell.y, y2: cell.y2, fill, ink, text: figure(row.fact), best: row.fact === best };
    });
    const box = { x: pixels('x'), x2: { field: 'x2' }, y: pixels('y'), y2: { field: 'y2' } };
    return {
      heading,
      labels: [...texts.map((t) => t.text), ...cells.map((c) => c.text)],
      alt: `${settings.map((s) => `${nameOf(facts.about, 'setting', s)}: ${shown.filter((r) => r.parts.setting === s).map((r) => `${nameOf(facts.about, 'setup', r.parts.setup)} ${r.fact.shown}`).join(', ')}`).join('; ')}. ${heading.foot}.`,
      table: { head: ['', ...setups.map((s) => nameOf(facts.about, 'setup', s))], rows: settings.map((s) => [nameOf(facts.about, 'setting', s), ...setups.map((u) => shown.find((r) => r.parts.setup === u && r.parts.setting === s)?.fact.shown ?? '')]) },
      facts: [...shown.map((r) => r.fact.id), ...notes.facts],
      spec: {
        ...baseSpec(stage, plot),
        layer: [
          { data: { values: cells }, mark: { type: 'rect' }, encoding: { ...box, color: { field: 'fill', type: 'nominal', scale: null } } },
          ...(best ? [{ data: { values: cells.filter((c) => c.best).map((c) => ({ x: c.x + 4, x2: c.x2 - 4, y: c.y + 4, y2: c.y2 - 4 })) }, mark: { type: 'rect', fillOpacity: 0, fill: colours.panel, stroke: colours.highlight, strokeWidth: stroke.strong }, encoding: box }] : []),
          { data: { values: cells.map((c) => ({ text: c.text, x: Math.round((c.x + c.x2) / 2), y: Math.round((c.y + c.y2) / 2 + type.value.size * 0.36), ink: c.ink })) }, mark: { type: 'text', align: 'center', baseline: 'alphabetic', dy: 0, fontSize: type.value.size, fontWeight: type.value.weight }, encoding: { x: pixels('x'), y: pixels('y'), text: { field: 'text' }, color: { field: 'ink', type: 'nominal', scale: null } } },
          ...textLayers(colours, texts),
        ] as Spec[],
      },
    };
  },
};

interface Laid {
  misfits: Misfit[];
  plot: Rect;
  texts: PlacedText[];
  cells: { row: Row; x: number; x2: number; y: number; y2: number }[];
}

type Side = [field: 'setup' | 'setting', ids: readonly string[]];

/** Columns under their heads, rows beside their names. */
function lay(stage: Stage, body: Rect, shown: readonly Row[], [columnField, columns]: Side, [rowField, rows]: Side, facts: Facts): Laid {
  const { space, type } = stage;
  const misfits: Misfit[] = [];
  const inLines = (text: string, style: TextStyle, width: number): string[] => {
    const wrapped = wrap(text, style, width, 2);
    if ('misfit' in wrapped) misfits.push(wrapped.misfit);
    return 'lines' in wrapped ? wrapped.lines : [text];
  };
  const rowNames = rows.map((id) => nameOf(facts.about, rowField, id));
  const nameRoom = Math.min(Math.max(...rowNames.map((n) => measure(n, type.name))), body.width * (stage.narrow ? 0.34 : 0.3));
  const left = Math.round(nameRoom + space.small);
  const cellWidth = (body.width - left) / columns.length;
  const heads = columns.map((id) => inLines(nameOf(facts.about, columnField, id), type.small, cellWidth - gap));
  const line = type.small.size * 1.12;
  const top = Math.round(line * Math.max(...heads.map((h) => h.length)) + 14);
  const cellHeight = Math.min(180, (body.height - top) / rows.length);
  if (cellHeight < leastCell) misfits.push({ code: 'too-many-rows', text: rowNames.join(', '), message: `${rows.length} rows have no room below each other: each has ${Math.floor(cellHeight)} px, and ${leastCell} are the least` });
  const widest = Math.max(...shown.map((r) => measure(figure(r.fact), type.value)));
  if (widest + 16 > cellWidth - gap) misfits.push({ code: 'label-too-long', text: rowNames.join(', '), message: `the figures of a grid need ${Math.ceil(widest) + 16} px, and a cell has ${Math.floor(cellWidth - gap)}; name fewer ${columnField}s` });
  return {
    misfits,
    plot: { x: Math.round(body.x + left), y: Math.round(body.y + top), width: Math.round(body.width - left), height: Math.round(cellHeight * rows.length) },
    cells: shown.map((row) => {
      const [c, i] = [columns.indexOf(row.parts[columnField]), rows.indexOf(row.parts[rowField])];
      return { row, x: c * cellWidth, x2: (c + 1) * cellWidth - gap, y: i * cellHeight, y2: (i + 1) * cellHeight - gap };
    }),
    texts: [
      ...rowNames.flatMap((name, i) => inLines(name, type.name, nameRoom + 1).map((text, j, all): PlacedText => ({ text, x: -left, y: (i + 0.5) * cellHeight - gap / 2 + type.name.size * 0.36 + (j - (all.length - 1) / 2) * type.name.size * 1.08, style: type.name, colour: 'text' }))),
      ...heads.flatMap((lines, c) => lines.map((text, j): PlacedText => ({ text, x: (c + 0.5) * cellWidth - gap / 2, y: -16 - (lines.length - 1 - j) * line, style: type.small, colour: 'quiet', align: 'center' }))),
    ],
  };
}

/** WCAG 2.x, success criterion 1.4.3. */
const leastContrast = 4.5;

/** Fills from the lowest to the highest, each with what is written on it; those half way on which nothing can be read are passed over. */
function tones(colours: Colours): { fill: string; ink: string }[] {
  const all = Array.from({ length: 101 }, (_, i) => {
    const fill = over(colours.plain, i / 100, colours.band);
    return { fill, ink: contrast(colours.text, fill) >= contrast(colours.panel, fill) ? colours.text : colours.panel };
  });
  const read = all.filter(({ fill, ink }) => contrast(ink, fill) >= leastContrast);
  return read.length > 0 ? read : all;
}
