// The title of the episode or of a chapter.
import { inkLeft, type TextStyle, wrap } from '../theme/index.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';

export const chapter: Graphic = {
  kind: 'chapter',
  says: 'a title, with a line below it (`title`, `text`; else the title of the episode)',
  takes: { title: 'the title', text: 'the line below' },
  compose(request, facts, sheet) {
    const { about } = facts;
    const { stage, gaps, fullWidth } = sheet;
    const { content, type } = stage;
    // A short title and a long one: the first setting that takes it on two lines.
    const headings: [TextStyle, TextStyle] = [type.heading, { ...type.heading, size: Math.round(type.heading.size * 0.77) }];
    const title = request.title ?? about.title;
    if (!title.trim()) return sheet.complain('picture-incomplete', `picture "${request.name}" has no title, and neither has the episode`);
    const mark = { width: 14, gap: 42 };
    const x = content.left + mark.width + mark.gap;
    const room = fullWidth - mark.width - mark.gap;
    const most = room < 1300 ? 4 : 2;
    // The summary was not written for a picture: it is shown where it fits.
    const summary = !request.title && about.summary && 'lines' in wrap(about.summary, type.name, room, stage.narrow ? 4 : 2) ? about.summary : '';
    const below = request.text ?? summary;
    const heading = headings.find((h) => 'lines' in wrap(title, h, room, most)) ?? headings[0];
    const head = sheet.block(title, heading, 'text', { x: x - inkLeft(title, heading), top: content.top, width: room, most });
    const foot = below ? sheet.block(below, type.name, 'quiet', { x, top: head.bottom + gaps.part + 10, width: Math.min(room, Math.max(head.width, fits(below, Math.max(head.width, 1100), 3, type.name) ? 1100 : room)), most: most + 1 }) : undefined;
    const bottom = (foot ?? head).bottom;
    const { panel, shift } = lowerLeft(stage, Math.max(head.width, foot?.width ?? 0) + mark.width + mark.gap, bottom);
    const lines = move([...head.lines, ...(foot?.lines ?? [])], shift);
    return {
      title, panel, lines, alt: below ? `${title}. ${below}` : title, facts: [],
      model: { lines, mark: { x: content.left, y: content.top + shift, width: mark.width, height: bottom - content.top } },
    };
  },
};

function fits(text: string, width: number, most: number, style: TextStyle): boolean {
  return 'lines' in wrap(text, style, width, most);
}
