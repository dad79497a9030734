// Two or three figures of one kind side by side, each under the name it belongs to: what a sentence says with "respectively".
import { basisOf, beforeRounding, factName, type Fact, splitKey } from '../facts/index.js';
import { capHeight, inkLeft, type Line, measure, type TextStyle } from '../theme/index.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { fitting, Stack } from './stack.js';
import { betterOf, differing, inCommon, numberAndUnit, sentence, signed, where } from './words.js';

/** Figure and unit: the largest that fits. */
const settings: { value: TextStyle; unit: TextStyle }[] = [
  { value: { size: 150, weight: 700 }, unit: { size: 64, weight: 600 } },
  { value: { size: 112, weight: 700 }, unit: { size: 52, weight: 600 } },
];
const unitGap = 18;
const between = 2 * 64;

export const pair: Graphic = {
  kind: 'pair',
  says: 'two or three figures of one kind, each under its name (`facts`)',
  takes: { facts: { least: 2, most: 3 } },
  compose(request, facts, sheet) {
    const found = (request.facts ?? []).map((id) => sheet.fact(facts, id)).filter((f) => f !== undefined);
    if (found.length < (request.facts ?? []).length) return undefined;
    const [first] = found as [Fact];
    const odd = found.find((f) => f.unit.id !== first.unit.id || f.kind !== first.kind);
    if (odd) return sheet.complain('picture-empty', `picture "${request.name}" would put ${first.shown} (${first.kind}) beside ${odd.shown} (${odd.kind})`, odd.id);
    const { stage, gaps, fullWidth } = sheet;
    const { content, space, type } = stage;
    const subjects = found.map((f) => splitKey(f.subject)!);
    const differs = differing(found.map((f) => f.subject));
    // Rises and changes name the thing; what they are taken against is the same for all and stands once, below.
    const names = subjects.map((p) => where(facts, p, differs) || where(facts, p) || '—');
    const title = request.title ?? factName(facts.about, first);
    const basis = basisOf(facts, found);
    const common = inCommon(facts, subjects[0]!, differs);
    const footText = [against(facts, found, differs), ['mean', 'constant'].includes(first.kind) ? betterOf(facts, first) : '', common, basis.runs, basis.room, beforeRounding(found)].filter(Boolean).join(' · ');

    const shown = found.map((f) => ({ ...numberAndUnit(f), colour: 'text' as Line['colour'] })).map((s, i) => ({ ...s, number: signed(found[i]!, s.number) }));
    const widthsAt = ({ value, unit }: (typeof settings)[number]): number[] => shown.map((s, i) => Math.max(measure(s.number, value) + (s.unit ? unitGap + measure(s.unit, unit) : 0), measure(names[i]!, type.name)));
    const total = (s: (typeof settings)[number]): number => widthsAt(s).reduce((a, b) => a + b, between * (found.length - 1));
    const style = fitting(settings, total, fullWidth);
    const inRow = total(style) <= fullWidth;
    const widths = widthsAt(style);

    const head = new Stack(sheet, { x: content.left, top: content.top, width: fullWidth });
    head.put(title, type.title, 'text', 0, 2);
    const lines: Line[] = head.lines;
    const rules: { x: number; y: number; width: number; height: number }[] = [];
    let widest = head.widest;
    let x: number = content.left;
    let top = head.bottom + gaps.part + 14;
    let bottom = top;
    shown.forEach((s, i) => {
      const label = sheet.block(names[i]!, type.name, 'quiet', { x, top, width: content.right - x, most: inRow ? 1 : 2 });
      const figureTop = label.bottom + gaps.line + 10;
      const left = x - inkLeft(s.number, style.value);
      const number = sheet.block(s.number, style.value, 'highlight', { x: left, top: figureTop, width: content.right - x });
      const unit = s.unit ? sheet.block(s.unit, style.unit, 'text', { x: left + number.width + unitGap, top: figureTop + capHeight * (style.value.size - style.unit.size), width: content.right - x - number.width - unitGap }) : undefined;
      lines.push(...label.lines, ...number.lines.map(lit), ...(unit?.lines ?? []).map(lit));
      bottom = number.bottom;
      widest = Math.max(widest, x - content.left + Math.max(widths[i]!, label.width));
      if (i < shown.length - 1) {
        if (inRow) rules.push({ x: x + widths[i]! + between / 2 - 1.5, y: top - 6, width: 3, height: bottom - top + 12 });
        else rules.push({ x: content.left, y: bottom + gaps.part - 2, width: 0, height: 2 });
      }
      if (inRow) x += widths[i]! + between;
      else top = bottom + 2 * gaps.part;
    });
    const foot = footText ? sheet.block(sentence(footText), type.small, 'quiet', { x: content.left, top: bottom + gaps.part + 8, width: Math.min(fullWidth, Math.max(widest, 900)), most: 4 }) : undefined;
    widest = Math.max(widest, foot?.width ?? 0);
    const { panel, shift } = lowerLeft(stage, widest, foot?.bottom ?? bottom);
    const moved = move([...lines, ...(foot?.lines ?? [])], shift);
    return {
      title, panel, lines: moved,
      alt: `${title}. ${found.map((f, i) => `${names[i]}: ${signed(f, f.shown)}`).join('; ')}.${footText ? ` ${sentence(footText)}.` : ''}`,
      facts: [...found.map((f) => f.id), ...basis.facts],
      table: { head: names, rows: [found.map((f) => signed(f, f.shown))] },
      model: { lines: moved, rules: move(rules, shift).map((r) => ({ ...r, width: r.width || widest, space: space.small })) },
    };
  },
};

/** "Against stock", where all are taken against the same. */
function against(facts: Parameters<typeof where>[0], found: readonly Fact[], differs: ReturnType<typeof differing>): string {
  const bases = found.map((f) => operandsOf(facts, f)[1]).filter((b) => b !== undefined);
  if (bases.length < found.length || !['difference', 'points', 'percent_change', 'ratio'].includes(found[0]!.kind)) return '';
  const own = differing([found[0]!.subject, bases[0]!.subject]).filter((f) => !differs.includes(f));
  const names = new Set(bases.map((b) => where(facts, splitKey(b.subject)!, own)));
  return names.size === 1 && [...names][0] ? `against ${[...names][0]}` : '';
}

function lit(line: Line): Line {
  return { ...line, build: 'figures' };
}
