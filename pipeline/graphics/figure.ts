// One figure, large, with what it is about and what it was made of.
import { basisOf, beforeRounding, factName, type Fact, type Facts, type KeyParts, nameOf, splitKey } from '../facts/index.js';
import { capHeight, inkLeft, measure } from '../theme/index.js';
import { fitting } from './stack.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { differing, inCommon, madeOf, numberAndUnit, sentence, signed, where } from './words.js';

const unitGap = 20;

export const figure: Graphic = {
  kind: 'figure',
  says: 'one figure, large, with what it is about (the first of `facts`) and its change (the second)',
  takes: { facts: { least: 1, most: 2 }, title: 'what it is a figure of', text: 'a line of detail' },
  compose(request, facts, sheet) {
    const id = request.facts?.[0];
    if (!id) return sheet.complain('picture-incomplete', `picture "${request.name}" names no fact to show`);
    const fact = sheet.fact(facts, id);
    const changeId = request.facts?.[1];
    const change = changeId === undefined ? undefined : sheet.fact(facts, changeId);
    if (!fact || (changeId !== undefined && !change)) return undefined;
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
    // What is set for everything, as a limit is, has no circumstances of its own: those of what is held against it count.
    const common = parts ? inCommon(facts, filledFrom(parts, base && splitKey(base.subject)), differs) : '';
    const details = [made, request.text ?? [against, common].filter(Boolean).join(' · '), basis.runs, beforeRounding(change ? [fact, change] : [fact])].filter(Boolean).map(sentence);

    const x = content.left;
    const label = sheet.block(labelText, type.name, 'text', { x, top: content.top, width: fullWidth, most: stage.narrow ? 3 : 2 });
    const { number, unit } = numberAndUnit(fact);
    const shown = signed(fact, number);
    const { figure: large, heading } = type;
    const scaled = [1, 0.75, 0.55].map((k) => ({ number: { ...large, size: Math.round(large.size * k) }, unit: { ...heading, size: Math.max(type.value.size, Math.round(heading.size * k)) } }));
    const set = fitting(scaled, (c) => measure(shown, c.number) + (unit ? unitGap + measure(unit, c.unit) : 0), fullWidth);
    const numberTop = label.bottom + gaps.part + 4;
    const figureLine = sheet.block(shown, set.number, 'highlight', { x: x - inkLeft(shown, set.number), top: numberTop, width: fullWidth });
    const unitLine = unit ? sheet.block(unit, set.unit, 'text', { x: x - inkLeft(shown, set.number) + figureLine.width + unitGap, top: numberTop + capHeight * (set.number.size - set.unit.size), width: fullWidth }) : undefined;
    const changed = change && sheet.block(changeWords(facts, fact, change), type.value, 'text', { x, top: figureLine.bottom + gaps.part + 4, width: fullWidth, most: stage.narrow ? 3 : 2 });
    let top = (changed ?? figureLine).bottom + gaps.part + 8;
    const blocks = details.map((text) => {
      const block = sheet.block(text, type.small, 'quiet', { x, top, width: fullWidth, most: stage.narrow ? 4 : 2 });
      top = block.bottom + gaps.line + 4;
      return block;
    });
    const all = [label, figureLine, ...(unitLine ? [unitLine] : []), ...(changed ? [changed] : []), ...blocks];
    const width = Math.max(label.width, figureLine.width + (unitLine ? unitLine.width + unitGap : 0), ...(changed ? [changed.width] : []), ...blocks.map((b) => b.width), 480);
    const { panel, shift } = lowerLeft(stage, width, blocks.at(-1)?.bottom ?? (changed ?? figureLine).bottom);
    const lines = move(all.flatMap((b) => (b === label ? b.lines : b.lines.map((l) => ({ ...l, build: 'figures' })))), shift);
    return {
      title: labelText, panel, lines,
      alt: `${labelText}: ${signed(fact, fact.shown)}.${change ? ` ${changeWords(facts, fact, change)}.` : ''} ${details.join('. ')}.`,
      facts: [fact.id, ...(change ? [change.id] : []), ...operands.map((o) => o.id), ...basis.facts],
      model: { lines },
    };
  },
};

function filledFrom(parts: KeyParts, base: KeyParts | undefined): KeyParts {
  if (!base) return parts;
  return { ...parts, setup: parts.setup || base.setup, setting: parts.setting || base.setting, workload: parts.workload || base.workload };
}

/** "−9 K against Closed case", "+35 K from idle". */
function changeWords(facts: Facts, fact: Fact, change: Fact): string {
  const base = operandsOf(facts, change)[1];
  if (!base) return signed(change, change.shown);
  const differs = differing([fact.subject, base.subject]);
  const against = where(facts, splitKey(base.subject)!, differs.filter((f) => f !== 'phase'));
  const phase = differs.includes('phase') ? nameOf(facts.about, 'phase', splitKey(base.subject)!.phase).toLowerCase() : '';
  const sign = change.value.sign() > 0 && !signed(change, '').length ? '+' : '';
  return [`${sign}${signed(change, change.shown)}`, against ? `against ${against}` : phase && `from ${phase}`].filter(Boolean).join(' ');
}
