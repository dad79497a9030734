// What was said wrong, and what is right.
import { basisOf, beforeRounding, factName, splitKey } from '../facts/index.js';
import { capHeight, inkLeft, measure } from '../theme/index.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { Stack } from './stack.js';
import { numberAndUnit, sentence, signed, where } from './words.js';

const unitGap = 20;

export const correction: Graphic = {
  kind: 'correction',
  says: 'a correction notice: the right figure (`facts`), what was said instead (`text`)',
  takes: { facts: { least: 1, most: 1 }, text: 'what was said instead' },
  compose(request, facts, sheet) {
    const fact = sheet.fact(facts, request.facts?.[0] ?? '');
    if (!fact) return undefined;
    const { stage, gaps, fullWidth } = sheet;
    const { content, type } = stage;
    const said = request.text?.trim() ?? '';
    if (!said) return sheet.complain('picture-incomplete', `picture "${request.name}" does not say what was wrong; give it in \`text\``);
    const title = request.title ?? 'Correction';
    const about = [factName(facts.about, fact), where(facts, splitKey(fact.subject)!)].filter(Boolean).join(' · ');
    const basis = basisOf(facts, [fact]);
    const { number, unit } = numberAndUnit(fact);
    const shown = signed(fact, number);
    const stack = new Stack(sheet, { x: content.left, top: content.top, width: fullWidth });
    stack.put(title, type.title, 'highlight', 0, 2);
    stack.put(about, type.name, 'text', gaps.part, 3);
    const wrong = stack.put(`We said ${said}.`, type.name, 'quiet', gaps.part + 6, 2);
    const figureTop = stack.bottom + gaps.part + 16;
    const left = content.left - inkLeft(shown, type.heading);
    const lead = sheet.block('It is', type.name, 'text', { x: content.left, top: figureTop + capHeight * (type.heading.size - type.name.size), width: fullWidth });
    const figure = sheet.block(shown, type.heading, 'text', { x: left + lead.width + unitGap, top: figureTop, width: fullWidth - lead.width - unitGap });
    const symbol = unit ? sheet.block(unit, type.title, 'text', { x: left + lead.width + figure.width + 2 * unitGap, top: figureTop + capHeight * (type.heading.size - type.title.size), width: measure(unit, type.title) + 1 }) : undefined;
    const below = [basis.runs, basis.room, beforeRounding([fact])].filter(Boolean).join(' · ');
    const foot = below ? sheet.block(sentence(below), type.small, 'quiet', { x: content.left, top: figure.bottom + gaps.part, width: fullWidth, most: 4 }) : undefined;
    const right = Math.max(stack.widest, lead.width + figure.width + 2 * unitGap + (symbol?.width ?? 0), foot?.width ?? 0);
    const { panel, shift } = lowerLeft(stage, right, (foot ?? figure).bottom);
    const lines = move([...stack.lines, ...[lead, figure, ...(symbol ? [symbol] : [])].flatMap((b) => b.lines.map((l) => ({ ...l, build: 'figures' }))), ...(foot?.lines ?? [])], shift);
    return {
      title, panel, lines, facts: [fact.id, ...basis.facts],
      alt: `${title}. ${about}. We said ${said}. It is ${signed(fact, fact.shown)}.${below ? ` ${sentence(below)}.` : ''}`,
      model: { lines, rule: { x: content.left, y: wrong.lines[0]!.y - capHeight * type.name.size - gaps.part / 2 - 2 + shift, width: right } },
    };
  },
};
