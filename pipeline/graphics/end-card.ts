// The last picture: what has to be disclosed, and the cautions that the work calls for.
import { cautionsFor } from '../cautions/index.js';
import type { Line } from '../theme/index.js';
import { type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';

const defers = 'The whole cautions stand on the page of the episode. What makers, local codes and qualified people say comes first.';

export const endCard: Graphic = {
  kind: 'end',
  says: 'the end card: disclosures, and the cautions that the record calls for in short',
  takes: { text: 'a last line' },
  compose(request, facts, sheet) {
    const { disclosures } = facts.about;
    const cautions = cautionsFor(facts);
    if (disclosures.length === 0 && cautions.length === 0) return sheet.complain('picture-empty', `picture "${request.name}" has nothing to show: the record discloses nothing and calls for no caution`);
    const title = request.title ?? 'Before you try this';
    const whole = setLists(sheet, title, [
      { head: 'Disclosed', texts: disclosures.map((d) => d.text), colour: 'muted' },
      { head: 'Cautions', texts: cautions.map((c) => c.brief), colour: 'highlight' },
    ], [request.text, cautions.length ? defers : ''].filter(Boolean).join(' '));
    const { text, lines, marks, panel } = stands(whole, sheet) ? whole : setLists(sheet, title, [
      { head: 'Disclosed', texts: disclosures.map((d) => d.text), colour: 'muted' },
      // Where they do not all fit, what they are about, so that none is left out.
      { head: 'Cautions about', texts: [listed(cautions.map((c) => c.subject || c.brief))], colour: 'highlight' },
    ], [request.text, defers].filter(Boolean).join(' '));
    sheet.within(panel, request.name, 'shorten the disclosures');
    return { title, panel, lines, facts: [], alt: text, model: { lines, marks } };
  },
};

interface List {
  head: string;
  texts: readonly string[];
  colour: string;
}

function setLists(sheet: Composer, title: string, lists: readonly List[], last: string) {
  const { stage, gaps, fullWidth } = sheet;
  const { content, space, type } = stage;
  const inset = 44;
  const head = sheet.block(title, type.title, 'text', { x: content.left, top: content.top, width: fullWidth, most: 2 });
  const lines: Line[] = [...head.lines];
  const marks: { x: number; y: number; colour: string }[] = [];
  let top = head.bottom + gaps.part;
  let widest = head.width;
  for (const { head: name, texts, colour } of lists.filter((l) => l.texts.length > 0)) {
    const heading = sheet.block(name, { ...type.small, weight: 600 }, 'quiet', { x: content.left, top, width: fullWidth });
    lines.push(...heading.lines);
    top = heading.bottom + gaps.line;
    for (const text of texts) {
      const block = sheet.block(text, type.small, 'text', { x: content.left + inset, top, width: fullWidth - inset, most: 8 });
      marks.push({ x: content.left + 12, y: block.lines[0]!.y - type.small.size * 0.36, colour });
      lines.push(...block.lines);
      widest = Math.max(widest, inset + block.width);
      top = block.bottom + space.small;
    }
    top += gaps.line;
  }
  if (last) {
    const foot = sheet.block(last, type.small, 'quiet', { x: content.left, top: top + 4, width: fullWidth, most: 5 });
    lines.push(...foot.lines);
    widest = Math.max(widest, foot.width);
  }
  const { panel, shift } = lowerLeft(stage, widest, lines.at(-1)!.y);
  return {
    panel, lines: move(lines, shift), marks: move(marks, shift),
    text: [`${title}.`, ...lists.filter((l) => l.texts.length).map((l) => `${l.head}: ${l.texts.join(' ')}`), last].filter(Boolean).join(' '),
  };
}

/** Whether all of it is inside the picture. */
function stands({ panel, lines }: { panel: { y: number }; lines: readonly Line[] }, { stage }: Composer): boolean {
  return panel.y >= stage.panel.y && lines[0]!.y - lines[0]!.style.size >= stage.safe.y - 20;
}

/** "Mains voltage, hot surfaces and loud sound." */
function listed(names: readonly string[]): string {
  const text = names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1).replace(/\.?$/, '.')}`;
}
