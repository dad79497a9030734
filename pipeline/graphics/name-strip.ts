// A name and what there is to know about who or what bears it.
import { type Facts, obtainedWords, type PictureRequest, type Setup } from '../facts/index.js';
import { show } from '../quantities/index.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { Stack } from './stack.js';

const mark = { width: 10, gap: 36 };

export const nameStrip: Graphic = {
  kind: 'name',
  says: 'a strip with a name and a line below: of a product in `setups` (how it was come by, sample, price), or `title` and `text`',
  takes: { title: 'the name', text: 'the line below', setups: true },
  compose(request, facts, sheet) {
    const { about } = facts;
    const id = request.setups?.[0];
    const setup = id === undefined ? undefined : about.setups.get(id);
    const title = request.title ?? setup?.name ?? '';
    if (!title.trim()) return sheet.complain('picture-incomplete', `picture "${request.name}" has neither a title nor one of \`setups\` to name`);
    const text = request.text ?? (setup ? known(setup) : '');
    const { stage, gaps, fullWidth } = sheet;
    const { content, type } = stage;
    const stack = new Stack(sheet, { x: content.left + mark.width + mark.gap, top: content.top, width: fullWidth - mark.width - mark.gap });
    stack.put(title, type.title, 'text', 0, 2);
    if (text) stack.put(text, type.small, 'quiet', gaps.line + 4, 2);
    const { panel, shift } = lowerLeft(stage, mark.width + mark.gap + stack.widest, stack.bottom);
    const lines = move(stack.lines, shift);
    return {
      title, panel, lines, facts: priceFacts(request, facts), alt: text ? `${title}. ${text}.` : `${title}.`,
      model: { lines, mark: { x: content.left, y: content.top + shift - 4, width: mark.width, height: stack.bottom - content.top + 8 } },
    };
  },
};

/** "Lent · sample 2 · $499 on 2026-03-01". */
function known({ obtained, sample, price }: Setup): string {
  const parts = [obtained && obtainedWords[obtained], sample && `sample ${sample}`, price && `${show(price.amount.value, price.amount.unit, price.amount.decimals)}${price.date ? ` on ${price.date}` : ''}`].filter(Boolean).join(' · ');
  return parts.slice(0, 1).toUpperCase() + parts.slice(1);
}

/** The price shown, as a fact, so that the picture can be traced to it. */
function priceFacts(request: PictureRequest, facts: Facts): string[] {
  const id = request.text === undefined ? request.setups?.[0] : undefined;
  if (id === undefined || !facts.about.setups.get(id)?.price) return [];
  const key = facts.keys().find((k) => k.startsWith(`${id}/`) && facts.readings(k).some((r) => r.constant && r.quantity.unit.dimension === 'money'));
  const fact = key === undefined ? undefined : facts.value(key);
  return fact && 'id' in fact ? [fact.id] : [];
}
