// What the system under test was built from, and how each part was come by.
import { obtainedWords } from '../facts/index.js';
import { type Line, measure } from '../theme/index.js';
import { type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';

export const mostParts = 12;
const mark = { size: 14, gap: 26 };

export const parts: Graphic = {
  kind: 'parts',
  says: 'the parts list: what the system was built from, in its order, and how each part was come by',
  takes: {},
  compose(request, facts, sheet) {
    const { system } = facts.about;
    if (system.length === 0) return sheet.complain('picture-empty', `picture "${request.name}" has no parts to list: the record has no \`system\``);
    if (system.length > mostParts) return sheet.complain('too-many-rows', `picture "${request.name}" would list ${system.length} parts, and ${mostParts} are the most that can be read on a phone`);
    const title = request.title ?? 'What it was tested with';
    const rows = system.map((p) => ({ name: p.name, more: [p.detail, p.obtained && obtainedWords[p.obtained]].filter(Boolean).join(' · ') }));
    const { stage, fullWidth } = sheet;
    const { space } = stage;
    const half = (fullWidth - space.large) / 2;
    // Two columns where one would not fit or would leave the picture's width empty.
    const wants = rows.length > 4 && rows.every((r) => widthOf(sheet, r) <= half);
    const set = lay(sheet, title, rows, wants ? 2 : 1);
    sheet.within(set.panel, request.name, 'shorten the parts or their details');
    return {
      title, panel: set.panel, lines: set.lines, facts: [],
      alt: `${title}. ${rows.map((r) => [r.name, r.more].filter(Boolean).join(': ')).join('; ')}.`,
      table: { head: ['Part', 'Detail'], rows: rows.map((r) => [r.name, r.more]) },
      model: { lines: set.lines, marks: set.marks },
    };
  },
};

interface Row {
  name: string;
  more: string;
}

function widthOf({ stage: { type } }: Composer, { name, more }: Row): number {
  return mark.size + mark.gap + Math.max(measure(name, type.name), measure(more, type.small));
}

function lay(sheet: Composer, title: string, rows: readonly Row[], columns: number) {
  const { stage, gaps, fullWidth } = sheet;
  const { content, space, type } = stage;
  const head = sheet.block(title, type.title, 'text', { x: content.left, top: content.top, width: fullWidth, most: 2 });
  const lines: Line[] = [...head.lines];
  const marks: { x: number; y: number; size: number }[] = [];
  const each = Math.ceil(rows.length / columns);
  const start = head.bottom + gaps.part + 14;
  let x: number = content.left;
  let bottom = start;
  let right = content.left + head.width;
  for (let c = 0; c < columns; c++) {
    let top = start;
    let widest = 0;
    for (const row of rows.slice(c * each, (c + 1) * each)) {
      const text = x + mark.size + mark.gap;
      const name = sheet.block(row.name, type.name, 'text', { x: text, top, width: content.right - text, most: 2 });
      marks.push({ x, y: name.lines[0]!.y - type.name.size * 0.36 - mark.size / 2, size: mark.size });
      const more = row.more ? sheet.block(row.more, type.small, 'quiet', { x: text, top: name.bottom + space.tight, width: content.right - text, most: 2 }) : undefined;
      lines.push(...name.lines, ...(more?.lines ?? []));
      widest = Math.max(widest, text - x + Math.max(name.width, more?.width ?? 0));
      bottom = Math.max(bottom, (more ?? name).bottom);
      top = (more ?? name).bottom + gaps.part;
    }
    right = Math.max(right, x + widest);
    x += widest + space.large;
  }
  const { panel, shift } = lowerLeft(stage, right - content.left, bottom);
  return { panel, lines: move(lines, shift), marks: move(marks, shift) };
}
