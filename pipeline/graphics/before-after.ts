// Two figures and the way from one to the other.
import { basisOf, beforeRounding, factName, type Fact, type Facts, isFact, phaseNote, type PictureRequest, splitKey } from '../facts/index.js';
import { capHeight, inkLeft, measure, type Stage, type TextStyle } from '../theme/index.js';
import { type Block, type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { betterOf, differing, inCommon, numberAndUnit, sentence, signed, where } from './words.js';

/** Figure, unit, and the room for the arrow: the largest of the two settings that fits. */
const settings: { value: TextStyle; unit: TextStyle; gap: number }[] = [
  { value: { size: 132, weight: 700 }, unit: { size: 64, weight: 600 }, gap: 170 },
  { value: { size: 96, weight: 700 }, unit: { size: 50, weight: 600 }, gap: 140 },
];
const unitGap = 20;

export const beforeAfter: Graphic = {
  kind: 'before-after',
  says: 'two figures and the difference between them (`facts`: a difference, or before and after)',
  takes: { facts: { least: 1, most: 2 } },
  compose(request, facts, sheet) {
    const found = pair(request, facts, sheet);
    if (!found) return undefined;
    const { before, after, change } = found;
    const { stage, gaps } = sheet;
    const { content, space, type } = stage;
    const differs = differing([before.subject, after.subject]);
    const [from, to] = [before, after].map((f) => splitKey(f.subject)!) as [NonNullable<ReturnType<typeof splitKey>>, NonNullable<ReturnType<typeof splitKey>>];
    const names = [where(facts, from, differs), where(facts, to, differs), change.kind === 'percent_change' ? 'Change' : 'Difference'].map((n) => n || '—');
    const common = inCommon(facts, to, differs);
    const basis = basisOf(facts, [before, after]);
    const title = request.title ?? factName(facts.about, before) + (differs.includes('phase') || operandsOf(facts, before).length ? '' : phaseNote(facts, from));
    const footText = [betterOf(facts, before), common, basis.runs, basis.room, beforeRounding([change])].filter(Boolean).join(' · ');

    const x = content.left;
    const head = sheet.block(title, type.title, 'text', { x, top: content.top, width: content.right - x, most: 2 });
    const shown = [before, after, change].map((f) => ({ ...numberAndUnit(f), whole: signed(f, f.shown) })).map((f, i) => (i === 2 ? { ...f, number: signed(change, f.number) } : f));
    const { value, unitStyle, widths, starts, rows } = layOut(stage, shown, names);
    let top = head.bottom + gaps.part + 12;
    const blocks: Block[] = [];
    const tops: number[] = [];
    const baselines: number[] = [];
    rows.forEach((columns, r) => {
      if (r) top += gaps.part + (rows.length === 3 ? 46 : 24);
      const labels = columns.map((i) => sheet.block(names[i]!, type.name, 'quiet', { x: starts[i]!, top, width: content.right - starts[i]!, most: 2 }));
      const figureTop = Math.max(...labels.map((l) => l.bottom)) + gaps.line + 10;
      const figures = columns.flatMap((i) => {
        const s = shown[i]!;
        const colour = i === 2 ? 'highlight' : 'text';
        const build = (['first', 'third', 'figures'] as const)[i];
        const timed = (block: Block): Block => ({ ...block, lines: block.lines.map((l) => ({ ...l, build })) });
        const number = timed(sheet.block(s.number, value, colour, { x: starts[i]! - inkLeft(s.number, value), top: figureTop, width: content.right - starts[i]! }));
        const at = starts[i]! - inkLeft(s.number, value) + number.width + unitGap;
        return s.unit ? [number, timed(sheet.block(s.unit, unitStyle, colour, { x: at, top: figureTop + capHeight * (value.size - unitStyle.size), width: content.right - at }))] : [number];
      });
      blocks.push(...labels, ...figures);
      tops.push(labels[0]!.lines[0]!.y);
      baselines.push(figures[0]!.bottom);
      top = figures[0]!.bottom;
    });
    const right = Math.max(...starts.map((s, i) => s + widths[i]!)) - x;
    const foot = sheet.block(sentence(footText), type.small, 'quiet', { x, top: top + gaps.part + 8, width: Math.min(sheet.fullWidth, Math.max(right, 900)), most: stage.narrow ? 5 : 3 });
    const width = Math.max(head.width, right, foot.width);
    const { panel, shift } = lowerLeft(stage, width, foot.bottom);
    const lines = move([head, ...blocks, foot].flatMap((b) => b.lines), shift);
    const middle = baselines[0]! - (capHeight * value.size) / 2 + shift;
    const px = (n: number): number => Math.round(n * 100) / 100;
    const arrow = rows.length === 3
      ? `M${px(x + 26)} ${px(baselines[0]! + 34 + shift)}V${px(baselines[0]! + 70 + shift)}m-26 -26l26 26l26 -26`
      : `M${px(starts[0]! + widths[0]! + 34)} ${px(middle)}H${px(starts[1]! - 40)}m-26 -26l26 26l-26 26`;
    const ruled = rows.length === 1
      ? `M${px(starts[2]! - space.large)} ${px(tops[0]! - 40 + shift)}V${px(baselines[0]! + 4 + shift)}`
      : `M${px(x)} ${px(baselines.at(-2)! + (rows.length === 3 ? 40 : 32) + shift)}h${px(width)}`;
    return {
      title, panel, lines,
      alt: `${title}. ${names[0]}: ${before.shown}. ${names[1]}: ${after.shown}. ${names[2]}: ${signed(change, change.shown)}. ${sentence(footText)}.`,
      facts: [before.id, after.id, change.id, ...basis.facts],
      table: { head: names, rows: [shown.map((s) => s.whole)] },
      model: {
        lines,
        arrow, rule: ruled,
      },
    };
  },
};

/** In which style, from where on and in how many rows: all three side by side, the difference below, or one below the other. */
function layOut({ content, space, type }: Stage, shown: readonly { number: string; unit: string }[], names: readonly string[]): { value: TextStyle; unitStyle: TextStyle; widths: number[]; starts: number[]; rows: number[][] } {
  const x = content.left;
  const all = settings.map(({ value, unit, gap }) => {
    const widths = shown.map((s, i) => Math.max(measure(s.number, value) + (s.unit ? unitGap + measure(s.unit, unit) : 0), measure(names[i]!, type.name)));
    const second = x + widths[0]! + gap;
    return { value, unitStyle: unit, widths, starts: [x, second, second + widths[1]! + space.large * 2] };
  });
  const beside = all.find((c) => c.starts[2]! + c.widths[2]! <= content.right);
  if (beside) return { ...beside, rows: [[0, 1, 2]] };
  const below = all.find((c) => c.starts[1]! + c.widths[1]! <= content.right);
  if (below) return { ...below, starts: [x, below.starts[1]!, x], rows: [[0, 1], [2]] };
  const least = all.at(-1)!;
  return { ...least, widths: least.widths.map((w) => Math.min(w, content.right - x)), starts: [x, x, x], rows: [[0], [1], [2]] };
}

function pair(request: PictureRequest, facts: Facts, sheet: Composer): { before: Fact; after: Fact; change: Fact } | undefined {
  const [first, second] = (request.facts ?? []).map((id) => sheet.fact(facts, id));
  if (!request.facts?.length) return sheet.complain('picture-incomplete', `picture "${request.name}" names no facts; give a difference, or before and after`);
  if (!first || (request.facts.length > 1 && !second)) return undefined;
  if (!second) {
    const [after, before] = operandsOf(facts, first);
    if (after && before && ['difference', 'rise', 'points', 'percent_change'].includes(first.kind)) return { before, after, change: first };
    return sheet.complain('picture-incomplete', `picture "${request.name}" needs a difference, or two facts, and ${first.id} is neither`, first.id);
  }
  const change = facts.derive(first.unit.id === '%' ? 'points' : 'difference', [operand(second), operand(first)]);
  return isFact(change) ? { before: first, after: second, change } : sheet.complain('picture-empty', `picture "${request.name}": ${change.why}`, second.id);
}

function operand(fact: Fact): string {
  return (fact.kind === 'mean' || fact.kind === 'constant') && fact.keys.length === 1 ? fact.subject : `(${fact.id})`;
}
