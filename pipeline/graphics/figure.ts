// One figure, large, with what it is about and what it was made of.
import { basisOf, factName, nameOf, splitKey } from '../facts/index.js';
import { capHeight, inkLeft } from '../theme/index.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { differing, madeOf, numberAndUnit, sentence, signed, where } from './words.js';

const unitGap = 20;

export const figure: Graphic = {
  kind: 'figure',
  says: 'one figure, large, with what it is about (the first of `facts`)',
  takes: { facts: { least: 1, most: 2 }, title: 'what it is a figure of', text: 'a line of detail' },
  compose(request, facts, sheet) {
    const id = request.facts?.[0];
    if (!id) return sheet.complain('picture-incomplete', `picture "${request.name}" names no fact to show`);
    const fact = sheet.fact(facts, id);
    if (!fact) return undefined;
    const { stage, gaps, fullWidth } = sheet;
    const { content, type } = stage;
    const parts = splitKey(fact.subject);
    const operands = operandsOf(facts, fact);
    const made = madeOf(fact, operands);
    const basis = basisOf(facts, [fact]);
    const differs = differing(fact.keys);
    const [subject, base] = operands;
    const against = subject && base && differs.some((f) => f === 'setup' || f === 'setting') ? `${where(facts, splitKey(subject.subject)!, differs)} against ${where(facts, splitKey(base.subject)!, differs)}` : '';
    const phase = operands.length === 0 && parts?.phase ? nameOf(facts.about, 'phase', parts.phase).toLowerCase() : '';
    const labelText = request.title ?? [factName(facts.about, fact), phase].filter(Boolean).join(', ');
    const common = parts ? where(facts, parts, (['setup', 'setting', 'workload'] as const).filter((f) => !differs.includes(f))) : '';
    const details = [made, request.text ?? [against, common].filter(Boolean).join(' · '), basis.runs].filter(Boolean).map(sentence);

    const x = content.left;
    const label = sheet.block(labelText, type.name, 'text', { x, top: content.top, width: fullWidth, most: 2 });
    const { number, unit } = numberAndUnit(fact);
    const shown = signed(fact, number);
    const numberTop = label.bottom + gaps.part + 4;
    const figureLine = sheet.block(shown, type.figure, 'highlight', { x: x - inkLeft(shown, type.figure), top: numberTop, width: fullWidth - 300 });
    const unitLine = unit ? sheet.block(unit, type.heading, 'text', { x: x - inkLeft(shown, type.figure) + figureLine.width + unitGap, top: numberTop + capHeight * (type.figure.size - type.heading.size), width: 700 }) : undefined;
    let top = figureLine.bottom + gaps.part + 8;
    const blocks = details.map((text) => {
      const block = sheet.block(text, type.small, 'quiet', { x, top, width: fullWidth, most: 2 });
      top = block.bottom + gaps.line + 4;
      return block;
    });
    const all = [label, figureLine, ...(unitLine ? [unitLine] : []), ...blocks];
    const width = Math.max(label.width, figureLine.width + (unitLine ? unitLine.width + unitGap : 0), ...blocks.map((b) => b.width), 480);
    const { panel, shift } = lowerLeft(stage, width, blocks.at(-1)?.bottom ?? figureLine.bottom);
    const lines = move(all.flatMap((b) => b.lines), shift);
    return {
      title: labelText, panel, lines,
      alt: `${labelText}: ${signed(fact, fact.shown)}. ${details.join('. ')}.`,
      facts: [fact.id, ...operands.map((o) => o.id), ...basis.facts],
      model: { lines },
    };
  },
};
