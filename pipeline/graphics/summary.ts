// What was gained and what it cost, told apart by which end of each measure is better, and by what the readings allow to be said.
import { basisOf, beforeRounding, factName, type Fact, type Facts, judge, nameOf, ofNoAccount, phaseNote, quantityName, splitKey } from '../facts/index.js';
import { type Line, lineHeight, measure } from '../theme/index.js';
import { type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { differing, inCommon, sentence, signed, where } from './words.js';

const groups = ['gained', 'cost', 'other', 'same', 'open'] as const;
type Group = (typeof groups)[number];
const heads: Record<Group, string> = { gained: 'Gained', cost: 'What it cost', other: 'Also changed', same: 'About the same', open: 'Cannot be told' };

export const summary: Graphic = {
  kind: 'summary',
  says: 'what was gained and what it cost: up to six changes (`facts`), sorted by which end is better',
  takes: { facts: { least: 1, most: 6, kinds: ['difference', 'percent_change', 'points', 'rise'] } },
  compose(request, facts, sheet) {
    const found = (request.facts ?? []).map((id) => sheet.fact(facts, id)).filter((f) => f !== undefined);
    if (found.length < (request.facts ?? []).length) return undefined;
    const { stage, gaps, fullWidth } = sheet;
    const { content, space, type } = stage;
    const sorted = groups.map((group) => ({ group, rows: found.filter((f) => groupOf(facts, f) === group) })).filter((g) => g.rows.length);
    const basis = basisOf(facts, found);
    const [against, common] = circumstances(facts, found);
    const title = request.title ?? (against || 'Gained and given');
    const footText = [request.title ? against : '', common, basis.runs, basis.room, beforeRounding(found)].filter(Boolean).join(' · ');
    const named = new Map(found.map((f) => [f, nameOfChange(facts, f)] as const));

    const head = sheet.block(title, type.title, 'text', { x: content.left, top: content.top, width: fullWidth, most: 2 });
    const start = head.bottom + gaps.part + 10;
    // Groups stand side by side where two are there and the picture is wide.
    const half = (fullWidth - 2 * space.large) / 2;
    const needed = (rows: Fact[]): number => Math.max(...rows.map((f) => measure(named.get(f)!, type.name) + space.medium + measure(signed(f, f.shown), type.value)));
    const beside = sorted.length === 2 && sorted.every((g) => needed(g.rows) <= half);
    const lines: Line[] = [...head.lines];
    const rules: { x: number; y: number; width: number; height: number }[] = [];
    const marks: { x: number; y: number; width: number; height: number; colour: string }[] = [];
    let x: number = content.left;
    let top = start;
    let bottom = start;
    sorted.forEach(({ group, rows }, i) => {
      const width = beside ? half : fullWidth;
      const block = setGroup(sheet, heads[group], rows.map((f) => ({ name: named.get(f)!, text: signed(f, f.shown) })), group === 'gained', { x, top, width });
      lines.push(...block.lines);
      rules.push(...block.rules);
      marks.push({ x, y: top - 2, width: 8, height: block.headHeight, colour: group === 'gained' ? 'highlight' : 'muted' });
      bottom = Math.max(bottom, block.bottom);
      if (beside && i === 0) x += half + 2 * space.large;
      else if (!beside) top = block.bottom + gaps.part + 16;
    });
    const foot = footText ? sheet.block(sentence(footText), type.small, 'quiet', { x: content.left, top: bottom + gaps.part + 10, width: fullWidth, most: 3 }) : undefined;
    const { panel, shift } = lowerLeft(stage, fullWidth, foot?.bottom ?? bottom);
    sheet.within(panel, request.name, 'name fewer facts');
    const moved = move([...lines, ...(foot?.lines ?? [])], shift);
    return {
      title, panel, lines: moved,
      alt: `${title}. ${sorted.map((g) => `${heads[g.group]}: ${g.rows.map((f) => `${named.get(f)} ${signed(f, f.shown)}`).join(', ')}`).join('. ')}.${footText ? ` ${sentence(footText)}.` : ''}`,
      facts: [...found.map((f) => f.id), ...basis.facts],
      table: { head: ['', '', 'Change'], rows: sorted.flatMap((g) => g.rows.map((f) => [heads[g.group], named.get(f)!, signed(f, f.shown)])) },
      model: { lines: moved, rules: move(rules, shift), marks: move(marks, shift) },
    };
  },
};

function groupOf(facts: Facts, fact: Fact): Group {
  const better = facts.about.measures.get(splitKey(fact.subject)?.measure ?? '')?.better ?? 'neither';
  const judged = judge(facts, fact);
  if ((judged && ofNoAccount(judged)) || fact.value.sign() === 0) return 'same';
  // Where nothing is known of how sure it is, as with single runs, the figure is told as it stands.
  if (judged?.outcome === 'undecided' && judged.half95 !== undefined) return 'open';
  if (better === 'neither') return 'other';
  return (fact.value.sign() > 0) === (better === 'higher') ? 'gained' : 'cost';
}

function nameOfChange(facts: Facts, fact: Fact): string {
  const p = splitKey(fact.subject);
  return p ? quantityName(facts.about, p.measure, p.part) + phaseNote(facts, p) : factName(facts.about, fact);
}

/** "Undervolt against Stock", and what is the same for all. */
function circumstances(facts: Facts, found: readonly Fact[]): [string, string] {
  const pairs = found.map((f) => ({ subject: splitKey(f.subject)!, base: operandsOf(facts, f)[1] }));
  const differs = differing(found.flatMap((f) => [f.subject, ...(operandsOf(facts, f)[1] ? [operandsOf(facts, f)[1]!.subject] : [])]));
  const own = differs.filter((f) => f !== 'phase');
  const texts = new Set(pairs.map(({ subject, base }) => {
    const [a, b] = [where(facts, subject, own), base ? where(facts, splitKey(base.subject)!, own) : ''];
    return a && b && a !== b ? `${a} against ${b}` : differs.includes('phase') && base ? `From ${nameOf(facts.about, 'phase', splitKey(base.subject)!.phase).toLowerCase()} to ${nameOf(facts.about, 'phase', subject.phase).toLowerCase()}` : '';
  }));
  const same = inCommon(facts, pairs[0]!.subject, differs);
  return [texts.size === 1 ? [...texts][0]! : '', same];
}

function setGroup(sheet: Composer, head: string, rows: readonly { name: string; text: string }[], lit: boolean, at: { x: number; top: number; width: number }) {
  const { gaps, stage: { space, type } } = sheet;
  const inset = 8 + space.small;
  const heading = sheet.block(head, { ...type.small, weight: 600 }, 'quiet', { x: at.x + inset, top: at.top, width: at.width - inset });
  const lines: Line[] = [...heading.lines];
  const rules: { x: number; y: number; width: number; height: number }[] = [];
  let top = heading.bottom + gaps.line + 10;
  let bottom = top;
  rows.forEach((row, i) => {
    if (i) rules.push({ x: at.x, y: top - gaps.line / 2 - 6, width: at.width, height: 2 });
    const textWidth = measure(row.text, type.value);
    const name = sheet.block(row.name, type.name, 'text', { x: at.x, top, width: at.width - textWidth - space.medium, most: 2 });
    const value = sheet.block(row.text, type.value, lit ? 'highlight' : 'text', { x: at.x + at.width, top, width: textWidth + 1, anchor: 'end' });
    lines.push(...name.lines, ...value.lines.map((l) => ({ ...l, build: 'figures' })));
    bottom = Math.max(name.bottom, value.bottom);
    top = bottom + type.name.size * (lineHeight - 1) + gaps.line + 10;
  });
  return { lines, rules, bottom, headHeight: heading.bottom - at.top + 4 };
}
