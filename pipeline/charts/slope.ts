// From one setup to another: a line for each setting, its figures at both ends.
import { type Fact, nameOf, phaseNote, quantityName } from '../facts/index.js';
import { type Colour, measure, wrap } from '../theme/index.js';
import type { Chart } from './chart.js';
import { select } from './rows.js';
import { baseSpec, type Spec } from './spec.js';
import { spreadLabels } from './spread-labels.js';
import { pixels, type PlacedText, textLayers } from './texts.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

const radius = 15;
/** The least span of the scale, as a share of the largest figure; common practice, no published source. */
const leastSpan = 0.15;

export const slope: Chart = {
  kind: 'slope',
  says: 'two setups side by side (`setups`, else the first two), a line from one to the other for each setting; the scale need not begin at zero',
  rows: (request, facts) => new Set(select(request, facts)?.rows.map((r) => r.parts.setting)).size || 1,
  sketch(request, facts, work) {
    const chosen = select(request, facts, work);
    if (!chosen) return undefined;
    const [from, to] = [...new Set(chosen.rows.map((r) => r.parts.setup))];
    if (from === undefined || to === undefined) return work.complain('picture-empty', `picture "${request.name}" needs ${chosen.measure} of two setups`, chosen.measure);
    const workload = chosen.rows[0]!.parts.workload;
    const of = (setup: string, setting: string): Fact | undefined => chosen.rows.find((r) => r.parts.setup === setup && r.parts.setting === setting && r.parts.workload === workload)?.fact;
    const lines = [...new Set(chosen.rows.map((r) => r.parts.setting))].slice(request.slice?.from, request.slice?.to).flatMap((setting) => {
      const [a, b] = [of(from, setting), of(to, setting)];
      return a && b && a.unit.id === b.unit.id ? [{ setting, name: setting ? nameOf(facts.about, 'setting', setting) : quantityName(facts.about, chosen.measure, chosen.part), a, b }] : [];
    });
    if (lines.length === 0) return work.complain('picture-empty', `picture "${request.name}" has no setting that was read in both setups`, request.name);
    const ends = lines.flatMap((l) => [l.a, l.b]);
    const values = ends.map((f) => f.value.toNumber());
    const [low, high] = [Math.min(...values), Math.max(...values)];
    // A slope over the whole height says "much": what is little beside the figures themselves stays little.
    const span = Math.max(high - low, Math.max(Math.abs(high), Math.abs(low)) * leastSpan) || 1;
    const [middle, half] = [(high + low) / 2, span * 0.56];
    const domain: [number, number] = [low > 0 ? Math.max(0, middle - half) : middle - half, middle + half];
    const notes = foot(facts, ends, low > 0 ? ['scale not from zero'] : []);
    const [left, right] = [nameOf(facts.about, 'setup', from), nameOf(facts.about, 'setup', to)];
    const heading = {
      title: request.title ?? `${quantityName(facts.about, chosen.measure, chosen.part)}${phaseNote(facts, chosen)}, ${left} to ${right}`,
      subtitle: subtitle(facts, chosen, unitSymbol(ends), workload ? nameOf(facts.about, 'workload', workload) : ''),
      foot: notes.text,
    };
    const { stage } = work;
    const { colours, space, type, stroke } = stage;
    const { body } = work.frame(heading);
    const headWidth = stage.narrow ? body.width / 2 - space.small : body.width * 0.3;
    const heads = [left, right].map((name) => {
      const wrapped = wrap(name, type.name, headWidth, 2);
      if ('misfit' in wrapped) work.complain(wrapped.misfit.code, wrapped.misfit.message, name);
      return 'lines' in wrapped ? wrapped.lines : [name];
    });
    const headPitch = type.name.size * 1.12;
    const headRoom = 76 + (Math.max(...heads.map((h) => h.length)) - 1) * headPitch;
    const valueWidth = Math.max(...ends.map((f) => measure(figure(f), type.value)));
    const widest = Math.max(...lines.map((l) => measure(l.name, type.name)));
    // Names at the right, behind the second figure; where there is no room for them in one line, in two.
    const nameRoom = Math.min(widest, body.width * (stage.narrow ? 0.36 : 0.3));
    const names = lines.map((l) => {
      const wrapped = wrap(l.name, type.name, nameRoom + 1, 2);
      if ('misfit' in wrapped) work.complain(wrapped.misfit.code, wrapped.misfit.message, l.name);
      return 'lines' in wrapped ? wrapped.lines : [l.name];
    });
    const pitch = type.value.size * 1.16 * (names.some((n) => n.length > 1) ? 1.75 : 1) + 8;
    const leader = 44;
    const start = valueWidth + leader;
    const plot = { x: Math.round(body.x + start), y: Math.round(body.y + headRoom), width: Math.round(body.width - start - leader - valueWidth - space.small - nameRoom), height: Math.round(body.height - headRoom) };
    const py = (f: Fact): number => plot.height * (1 - (f.value.toNumber() - domain[0]) / (domain[1] - domain[0]));
    const place = (fs: Fact[]): number[] => {
      const spread = spreadLabels(fs.map(py), pitch, pitch / 2, plot.height - pitch / 2);
      if (!spread) work.complain('too-many-rows', `${fs.length} lines have no room for their figures in picture "${request.name}"; name fewer settings`, request.name);
      return spread ?? fs.map(py);
    };
    const [lefts, rights] = [place(lines.map((l) => l.a)), place(lines.map((l) => l.b))];
    const colour = (l: (typeof lines)[number], i: number): Colour => (facts.about.settings.get(l.setting)?.kind === 'stock' || (lines.length === 1 && i === 0) ? 'highlight' : 'plain');
    const base = (y: number): number => y + type.value.size * 0.36;
    const texts: PlacedText[] = [
      ...heads.flatMap((head, side) => head.map((text, j): PlacedText => ({
        // On a narrow picture each head keeps to its half; else it stands over its line.
        text, x: stage.narrow ? (side ? body.width - start : -start) : side ? plot.width : 0, y: -32 - (head.length - 1 - j) * headPitch, style: type.name, colour: 'quiet',
        align: stage.narrow ? (side ? 'right' : 'left') : side || start > headWidth / 2 ? 'center' : 'left',
      }))),
      ...lines.flatMap((l, i): PlacedText[] => [
        { text: figure(l.a), x: -leader, y: base(lefts[i]!), style: type.value, colour: 'text', align: 'right' },
        { text: figure(l.b), x: plot.width + leader, y: base(rights[i]!), style: type.value, colour: 'text' },
        ...names[i]!.map((text, j): PlacedText => ({ text, x: plot.width + leader + valueWidth + space.small, y: base(rights[i]!) + (j - (names[i]!.length - 1) / 2) * type.name.size * 1.08, style: type.name, colour: 'quiet' })),
      ]),
    ];
    const shapes = lines.map((l, i) => ({ x: 0, x2: plot.width, y: py(l.a), y2: py(l.b), colour: colours[colour(l, i)], wide: colour(l, i) === 'highlight' ? stroke.strong + 2 : stroke.line + 1 }));
    const stems = lines.flatMap((l, i) => [{ x: -radius - 4, x2: -leader + 8, y: py(l.a), y2: lefts[i]! }, { x: plot.width + radius + 4, x2: plot.width + leader - 8, y: py(l.b), y2: rights[i]! }]).filter((s) => Math.abs(s.y - s.y2) > 5);
    const paint = { field: 'colour', type: 'nominal', scale: null };
    const across = { x: pixels('x'), x2: { field: 'x2' }, y: pixels('y'), y2: { field: 'y2' } };
    return {
      heading,
      labels: [...names.flat(), ...heads.flat(), ...ends.map(figure)],
      alt: `${lines.map((l) => `${l.name}: ${l.a.shown} in ${left}, ${l.b.shown} in ${right}`).join('; ')}. ${heading.foot}.`,
      table: { head: ['', left, right], rows: lines.map((l) => [l.name, l.a.shown, l.b.shown]) },
      facts: [...ends.map((f) => f.id), ...notes.facts],
      spec: {
        ...baseSpec(stage, plot),
        layer: [
          { data: { values: [{ x: 0 }, { x: plot.width }] }, mark: { type: 'rule', stroke: colours.rule, strokeWidth: 3 }, encoding: { x: pixels('x'), y: { value: 0 }, y2: { value: plot.height } } },
          ...(stems.length ? [{ data: { values: stems }, mark: { type: 'rule', stroke: colours.quiet, strokeWidth: 2 }, encoding: across }] : []),
          { data: { values: shapes }, mark: { type: 'rule', strokeCap: 'round' }, encoding: { ...across, color: paint, strokeWidth: { field: 'wide', type: 'quantitative', scale: null } } },
          { data: { values: shapes.flatMap((s) => [{ x: s.x, y: s.y, colour: s.colour }, { x: s.x2, y: s.y2, colour: s.colour }]) }, mark: { type: 'point', shape: 'circle', filled: true, size: Math.PI * radius * radius, stroke: colours.panel, strokeWidth: 4, opacity: 1 }, encoding: { x: pixels('x'), y: pixels('y'), fill: paint } },
          ...textLayers(colours, texts),
        ] as Spec[],
      },
    };
  },
};
