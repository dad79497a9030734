// A strip that says what is on the bench now.
import { type Facts, isFact, nameOf, type PictureRequest } from '../facts/index.js';
import { capHeight, measure, type TextStyle } from '../theme/index.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';

const main: TextStyle = { size: 66, weight: 700 };

export const now: Graphic = {
  kind: 'now',
  says: 'a strip with the setup and the setting on screen, and the setting’s limits and targets',
  takes: { setups: true, settings: true, text: 'the line below' },
  compose(request, facts, sheet) {
    const { about } = facts;
    const { stage, fullWidth } = sheet;
    const { content, space, type } = stage;
    const setup = request.setups?.[0];
    const setting = request.settings?.[0];
    for (const [field, id, known] of [['setup', setup, about.setups], ['setting', setting, about.settings]] as const) {
      if (id !== undefined && !known.has(id)) return sheet.complain('picture-empty', `picture "${request.name}" asks for ${field} "${id}", which the record does not have`, id);
    }
    const first = setup !== undefined ? nameOf(about, 'setup', setup) : setting !== undefined ? nameOf(about, 'setting', setting) : '';
    const second = setup !== undefined && setting !== undefined ? nameOf(about, 'setting', setting) : '';
    if (!first) return sheet.complain('picture-incomplete', `picture "${request.name}" names neither setup nor setting`);
    const parameters = parametersOf(request, facts);
    const dot = { radius: 16, gap: 34 };
    const x = content.left + 2 * dot.radius + dot.gap;
    const top = content.top;
    const head = sheet.block(first, main, 'text', { x, top, width: fullWidth - x + content.left, most: stage.narrow ? 2 : 1 });
    const gap = space.medium + 6;
    const light: TextStyle = { ...main, weight: 500 };
    const beside = !second || x + head.width + gap + measure(second, light) <= content.right;
    const next = second ? sheet.block(second, light, 'text', beside ? { x: x + head.width + gap, top, width: content.right - x - head.width - gap } : { x, top: head.bottom + space.small + 4, width: content.right - x, most: 2 }) : undefined;
    const above = beside || !next ? head : next;
    const text = request.text ?? parameters.map((p) => p.text).join(' · ');
    const foot = text ? sheet.block(text, type.small, 'quiet', { x, top: above.bottom + space.small + 8, width: content.right - x, most: stage.narrow ? 4 : 2 }) : undefined;
    const end = Math.max(x + head.width, next ? (beside ? x + head.width + gap : x) + next.width : 0);
    const { panel, shift } = lowerLeft(stage, Math.max(end, x + (foot?.width ?? 0)) - content.left, (foot ?? above).bottom);
    const lines = move([...head.lines, ...(next?.lines ?? []), ...(foot?.lines ?? [])], shift);
    const middle = head.lines[0]!.y - (main.size * capHeight) / 2 + shift;
    return {
      title: [first, second].filter(Boolean).join(', '), panel, lines,
      alt: `${[first, second].filter(Boolean).join(', ')}${text ? `: ${text}` : ''}.`,
      facts: request.text ? [] : parameters.map((p) => p.id),
      model: { lines, dot: { x: content.left + dot.radius, y: middle, radius: dot.radius }, rule: next && beside ? { x: x + head.width + space.medium / 2 + 3, top: middle - 30, bottom: middle + 30 } : false },
    };
  },
};

/** What the setting brings with it, as facts: "Board power limit 225 W". */
function parametersOf(request: PictureRequest, facts: Facts): { text: string; id: string }[] {
  const setting = facts.about.settings.get(request.settings?.[0] ?? '');
  return (setting?.parameters ?? []).slice(0, 3).flatMap((key) => {
    const fact = facts.value(key);
    const [, , , measureId = '', part = '', phase = ''] = key.split('/');
    if (!isFact(fact)) return [];
    const name = [part && nameOf(facts.about, 'part', part), nameOf(facts.about, 'measure', measureId).toLowerCase(), nameOf(facts.about, 'phase', phase).toLowerCase()].filter(Boolean).join(' ');
    return [{ text: `${name} ${fact.shown}`, id: fact.id }];
  });
}
