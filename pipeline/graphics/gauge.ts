// A share of a limit: a bar that fills towards a mark, and the two figures it is made of.
import { basisOf, beforeRounding, factName, type Fact, isFact, splitKey } from '../facts/index.js';
import { capHeight, inkLeft, type Line, measure } from '../theme/index.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { Stack } from './stack.js';
import { differing, inCommon, numberAndUnit, sentence, where } from './words.js';

const bar = 44;
const overshoot = 16;

export const gauge: Graphic = {
  kind: 'gauge',
  says: 'a share of a limit as a bar that fills towards it (one to three shares in `facts`)',
  takes: { facts: { least: 1, most: 3, kinds: ['percent_of'] } },
  compose(request, facts, sheet) {
    const found = (request.facts ?? []).map((id) => sheet.fact(facts, id)).filter((f) => f !== undefined);
    if (found.length < (request.facts ?? []).length) return undefined;
    const rows = found.map((fact) => ({ fact, ends: operandsOf(facts, fact) as [Fact, Fact] }));
    if (rows.some((r) => r.ends.length < 2 || r.fact.value.sign() < 0)) return sheet.complain('picture-empty', `picture "${request.name}" needs shares of a limit that are not negative`);
    const { stage, gaps, fullWidth } = sheet;
    const { content, space, type } = stage;
    const differs = differing(found.map((f) => f.subject));
    const title = request.title ?? factName(facts.about, found[0]!);
    const basis = basisOf(facts, found);
    const common = inCommon(facts, splitKey(found[0]!.subject)!, differs);
    const footText = ['the bar starts at zero, the mark is the limit', common, basis.runs, basis.room, beforeRounding(found)].filter(Boolean).join(' · ');
    // The whole track is the limit, unless something is above it: then the mark stands inside.
    const whole = Math.max(100, ...found.map((f) => f.value.toNumber()));
    const one = rows.length === 1;
    const figureStyle = one ? type.figure : type.heading;

    const head = new Stack(sheet, { x: content.left, top: content.top, width: fullWidth });
    head.put(title, type.title, 'text', 0, 2);
    const lines: Line[] = head.lines;
    const bars: { x: number; y: number; width: number; track: number; mark: number; height: number; over: number }[] = [];
    let top = head.bottom + gaps.part + 8;
    for (const { fact, ends: [part, limit] } of rows) {
      const { number, unit } = numberAndUnit(fact);
      const name = one ? '' : where(facts, splitKey(fact.subject)!, differs);
      const of = `${part.shown} of ${limit.shown}`;
      const figureTop = name ? sheetName(name) + gaps.line + 6 : top;
      const left = content.left - inkLeft(number, figureStyle);
      const figure = sheet.block(number, figureStyle, 'highlight', { x: left, top: figureTop, width: fullWidth });
      const unitStyle = one ? type.heading : type.title;
      const symbol = sheet.block(unit || '%', unitStyle, 'text', { x: left + figure.width + space.tight, top: figureTop + capHeight * (figureStyle.size - unitStyle.size), width: 300 });
      const after = left + figure.width + space.tight + symbol.width + space.medium;
      const beside = after + measure(of, type.name) <= content.right;
      const words = sheet.block(of, type.name, 'quiet', beside ? { x: content.right, top: figureTop + capHeight * (figureStyle.size - type.name.size), width: content.right - after, anchor: 'end' } : { x: content.left, top: figure.bottom + gaps.line, width: fullWidth });
      lines.push(...[figure, symbol].flatMap((b) => b.lines.map((l) => ({ ...l, build: 'figures' }))), ...words.lines);
      const y = words.bottom + gaps.line + 12;
      const share = Math.min(fact.value.toNumber(), whole);
      bars.push({ x: content.left, y, width: (fullWidth * share) / whole, track: fullWidth, mark: content.left + (fullWidth * 100) / whole, height: bar, over: overshoot });
      top = y + bar + overshoot + gaps.part + 8;
    }
    const foot = sheet.block(sentence(footText), type.small, 'quiet', { x: content.left, top, width: fullWidth, most: 3 });
    const { panel, shift } = lowerLeft(stage, fullWidth, foot.bottom);
    sheet.within(panel, request.name, 'name fewer facts or shorten its title');
    const moved = move([...lines, ...foot.lines], shift);
    return {
      title, panel, lines: moved,
      alt: `${title}. ${rows.map(({ fact, ends: [part, limit] }) => `${[where(facts, splitKey(fact.subject)!, differs), fact.shown].filter(Boolean).join(': ')}, ${part.shown} of ${limit.shown}`).join('; ')}. ${sentence(footText)}.`,
      facts: [...rows.flatMap((r) => [r.fact.id, ...r.ends.filter(isFact).map((e) => e.id)]), ...basis.facts],
      table: { head: ['', title, 'Reached', 'Limit'], rows: rows.map(({ fact, ends: [part, limit] }) => [where(facts, splitKey(fact.subject)!, differs), fact.shown, part.shown, limit.shown]) },
      model: { lines: moved, bars: move(bars, shift).map((b) => ({ ...b, markTop: b.y - b.over, markHeight: b.height + 2 * b.over, markLeft: Math.min(b.mark, content.right) - 4 })) },
    };

    function sheetName(name: string): number {
      const block = sheet.block(name, type.name, 'text', { x: content.left, top, width: fullWidth });
      lines.push(...block.lines);
      return block.bottom;
    }
  },
};
