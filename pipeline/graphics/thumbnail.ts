// A base for the thumbnail: one figure as large as the frame allows, few words, and half of the frame left free for a photograph.
import { factName, splitKey } from '../facts/index.js';
import { capHeight, inkLeft, type Line, lineHeight, measure, type TextStyle, wrap } from '../theme/index.js';
import type { Graphic } from './graphic.js';
import { numberAndUnit, signed, where } from './words.js';

const figures: { value: TextStyle; unit: TextStyle }[] = [440, 360, 300, 240, 190].map((size) => ({ value: { size, weight: 700 }, unit: { size: Math.round(size * 0.42), weight: 700 } }));
const words: TextStyle[] = [120, 96, 80, 64].map((size) => ({ size, weight: 700 }));
/** The largest figure first: the words give way before it does. */
const choices = figures.flatMap((style) => words.map((heading) => ({ style, heading })));
const unitGap = 24;
const bar = { width: 150, height: 14 };

export const thumbnail: Graphic = {
  kind: 'thumbnail',
  says: 'a base for the thumbnail: one figure as large as can be (`facts`), few words (`title`), the rest free for a photograph',
  takes: { facts: { least: 1, most: 1 }, title: 'a few words' },
  compose(request, facts, sheet) {
    const fact = sheet.fact(facts, request.facts?.[0] ?? '');
    if (!fact) return undefined;
    const { stage, gaps } = sheet;
    const { content, panel: full, padding } = stage;
    const upright = stage.height > stage.width;
    // The figure takes a side; upright, the lower part.
    const width = upright || stage.id === 'square' ? full.width : Math.round(full.width * 0.56);
    const inner = width - 2 * padding.side;
    const title = request.title ?? factName(facts.about, fact);
    const place = where(facts, splitKey(fact.subject)!, ['setup', 'setting']);
    const { number, unit } = numberAndUnit(fact);
    const shown = signed(fact, number);
    const most = full.height - padding.top - padding.bottom;
    const fits = (style: (typeof figures)[number], heading: TextStyle): boolean => {
      const set = wrap(title, heading, inner, 4);
      const across = measure(shown, style.value) + (unit ? unitGap + measure(unit, style.unit) : 0) <= inner;
      return across && 'lines' in set && set.lines.length * heading.size * lineHeight + capHeight * style.value.size + (place ? 2 * stage.type.title.size * lineHeight : 0) + 3 * gaps.part + bar.height + 40 <= most;
    };
    const { style, heading } = choices.find((c) => fits(c.style, c.heading)) ?? choices.at(-1)!;
    const x = content.left;
    const head = sheet.block(title, heading, 'text', { x: x - inkLeft(title, heading), top: content.top + bar.height + gaps.part, width: inner, most: 4 });
    const top = head.bottom + gaps.part + 30;
    // Not wholly flush: so large a sign would reach out of the area for text.
    const left = x - Math.min(inkLeft(shown, style.value), 22);
    const figure = sheet.block(shown, style.value, 'highlight', { x: left, top, width: inner + 20 });
    const symbol = unit ? sheet.block(unit, style.unit, 'highlight', { x: left + figure.width + unitGap, top: top + capHeight * (style.value.size - style.unit.size), width: measure(unit, style.unit) + 1 }) : undefined;
    const foot = place ? sheet.block(place, stage.type.title, 'text', { x, top: figure.bottom + gaps.part + 10, width: inner, most: 2 }) : undefined;
    const bottom = (foot ?? figure).bottom;
    const height = upright || stage.id === 'square' ? bottom - content.top + padding.top + padding.bottom : full.height;
    const y = full.y + full.height - height;
    if (bottom - content.top + padding.top + padding.bottom > full.height + 4) sheet.complain('label-too-long', `picture "${request.name}" has too many words for a thumbnail; shorten its title`);
    const shift = y + (height - (bottom - content.top)) / 2 - content.top;
    const lines: Line[] = [head, figure, ...(symbol ? [symbol] : []), ...(foot ? [foot] : [])].flatMap((b) => b.lines).map((l) => ({ ...l, y: l.y + shift }));
    return {
      title, lines, facts: [fact.id], panel: { x: full.x, y, width, height },
      alt: `${title}: ${signed(fact, fact.shown)}${place ? `, ${place}` : ''}.`,
      model: { lines, mark: { x, y: content.top + shift, ...bar } },
    };
  },
};
