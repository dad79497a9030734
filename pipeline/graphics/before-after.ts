// Two figures and the way from one to the other.
import { basisOf, factName, type Fact, type Facts, isFact, phaseNote, type PictureRequest, splitKey } from '../facts/index.js';
import { capHeight, inkLeft, measure, type TextStyle } from '../theme/index.js';
import { type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { betterOf, differing, numberAndUnit, sentence, signed, where } from './words.js';

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
    const common = where(facts, to, (['setup', 'setting', 'workload'] as const).filter((f) => !differs.includes(f)));
    const basis = basisOf(facts, [before, after]);
    const title = request.title ?? factName(facts.about, before) + (differs.includes('phase') || operandsOf(facts, before).length ? '' : phaseNote(facts, from));
    const footText = [betterOf(facts, before), common, basis.runs, basis.room, change.sofa ? 'difference taken before rounding' : ''].filter(Boolean).join(' · ');

    const x = content.left;
    const head = sheet.block(title, type.title, 'text', { x, top: content.top, width: content.right - x, most: 2 });
    const shown = [before, after, change].map((f) => ({ ...numberAndUnit(f), whole: signed(f, f.shown) })).map((f, i) => (i === 2 ? { ...f, number: signed(change, f.number) } : f));
    const columns = settings.map(({ value, unit, gap }) => {
      const widths = shown.map((s, i) => Math.max(measure(s.number, value) + (s.unit ? unitGap + measure(s.unit, unit) : 0), measure(names[i]!, type.name)));
      return { value, unitStyle: unit, widths, starts: [x, x + widths[0]! + gap, x + widths[0]! + gap + widths[1]! + space.large * 2] };
    });
    const { value, unitStyle, widths, starts } = columns.find((c) => c.starts[2]! + c.widths[2]! <= content.right) ?? columns.at(-1)!;
    const top = head.bottom + gaps.part + 12;
    const labels = names.map((n, i) => sheet.block(n, type.name, 'quiet', { x: starts[i]!, top, width: content.right - starts[i]! }));
    const figureTop = labels[0]!.bottom + gaps.line + 10;
    const figures = shown.flatMap((s, i) => {
      const colour = i === 2 ? 'highlight' : 'text';
      const number = sheet.block(s.number, value, colour, { x: starts[i]! - inkLeft(s.number, value), top: figureTop, width: content.right - starts[i]! });
      const at = starts[i]! - inkLeft(s.number, value) + number.width + unitGap;
      return s.unit ? [number, sheet.block(s.unit, unitStyle, colour, { x: at, top: figureTop + capHeight * (value.size - unitStyle.size), width: content.right - at })] : [number];
    });
    const baseline = figures[0]!.bottom;
    const foot = sheet.block(sentence(footText), type.small, 'quiet', { x, top: baseline + gaps.part + 8, width: Math.max(starts[2]! + widths[2]! - x, 900), most: 3 });
    const width = Math.max(head.width, starts[2]! + widths[2]! - x, foot.width);
    const { panel, shift } = lowerLeft(stage, width, foot.bottom);
    const lines = move([head, ...labels, ...figures, foot].flatMap((b) => b.lines), shift);
    const middle = baseline - (capHeight * value.size) / 2 + shift;
    return {
      title, panel, lines,
      alt: `${title}. ${names[0]}: ${before.shown}. ${names[1]}: ${after.shown}. ${names[2]}: ${signed(change, change.shown)}. ${sentence(footText)}.`,
      facts: [before.id, after.id, change.id, ...basis.facts],
      table: { head: names, rows: [shown.map((s) => s.whole)] },
      model: {
        lines,
        arrow: { from: starts[0]! + widths[0]! + 34, to: starts[1]! - 40, y: middle },
        rule: { x: starts[2]! - space.large, top: labels[0]!.lines[0]!.y - 40 + shift, bottom: baseline + 4 + shift },
      },
    };
  },
};

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
