// The settings that were tested, and what each of them sets.
import { type Fact, type Facts, isFact, nameOf, quantityName, type Setting, splitKey } from '../facts/index.js';
import { type Line, lineHeight, measure, type TextStyle } from '../theme/index.js';
import { type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { setLabelRows } from './label-rows.js';

const none = '–';
export const mostSettings = 7;

interface Column {
  id: string;
  head: string;
}

export const settings: Graphic = {
  kind: 'settings',
  says: 'the settings and what each of them sets: limits, targets, offsets (all, or those in `settings`)',
  takes: { settings: true },
  compose(request, facts, sheet) {
    const { about } = facts;
    const chosen = (request.settings ?? [...about.settings.keys()]).map((id) => about.settings.get(id)).filter((s) => s !== undefined);
    if (chosen.length === 0) return sheet.complain('picture-empty', `picture "${request.name}" has no settings to show`);
    if (chosen.length > mostSettings) return sheet.complain('too-many-rows', `picture "${request.name}" would list ${chosen.length} settings, and ${mostSettings} are the most that can be read on a phone; name fewer`);
    const title = request.title ?? 'The settings';
    const columns = columnsOf(facts, chosen);
    const cells = chosen.map((s) => columns.map((c) => cell(facts, s, c)));
    const used = cells.flat().filter((f) => f !== undefined).map((f) => f.id);
    const table = { head: ['Setting', ...columns.map((c) => c.head)], rows: chosen.map((s, i) => [s.name, ...cells[i]!.map((f) => f?.shown ?? none)]) };
    const alt = `${title}. ${chosen.map((s, i) => `${s.name}: ${told(columns, cells[i]!)}`).join('; ')}.`;
    const grid = asTable(sheet, title, table.head, table.rows);
    if (grid) return { title, alt, facts: used, table, panel: grid.panel, lines: grid.lines, model: { lines: grid.lines, rules: grid.rules } };
    const rows = setLabelRows(sheet, title, chosen.map((s, i) => ({ label: s.name, text: told(columns, cells[i]!) })), request.name, 'name fewer settings');
    return { title, alt, facts: used, table, panel: rows.panel, lines: rows.lines, model: { lines: rows.lines, rules: rows.rules } };
  },
};

/** "Board power limit 225 W · core voltage target 0.90 V"; nothing set is said so. */
function told(columns: readonly Column[], cells: readonly (Fact | undefined)[]): string {
  const parts = columns.flatMap((c, i) => (cells[i] ? [`${c.head.toLowerCase()} ${cells[i].shown}`] : []));
  return parts.length ? parts.join(' · ') : 'as it comes';
}

/** A column for each thing that any of the settings sets, in the order in which they are met. */
function columnsOf(facts: Facts, chosen: readonly Setting[]): Column[] {
  const columns = new Map<string, Column>();
  for (const key of chosen.flatMap((s) => s.parameters)) {
    const { measure: m, part, phase } = splitKey(key)!;
    const id = `${m}/${part}/${phase}`;
    if (!columns.has(id)) columns.set(id, { id, head: [quantityName(facts.about, m, part), nameOf(facts.about, 'phase', phase).toLowerCase()].join(' ') });
  }
  return [...columns.values()];
}

function cell(facts: Facts, setting: Setting, column: Column): Fact | undefined {
  const key = setting.parameters.find((k) => k.endsWith(`/${column.id}`));
  const fact = key === undefined ? undefined : facts.value(key);
  return isFact(fact ?? { why: '' }) ? (fact as Fact) : undefined;
}

/** Names at the left, figures flush right under heads of up to two lines; undefined where the columns do not fit beside one another. */
function asTable(sheet: Composer, title: string, heads: readonly string[], rows: readonly string[][]): { panel: ReturnType<typeof lowerLeft>['panel']; lines: Line[]; rules: { x: number; y: number; width: number }[] } | undefined {
  const { stage, gaps, fullWidth } = sheet;
  const { content, space, type } = stage;
  const value: TextStyle = { ...type.value, weight: 600 };
  if (heads.length < 2) return undefined;
  const widths = heads.map((head, c) => Math.max(...rows.map((r) => measure(r[c]!, c ? value : type.name)), c ? headWidth(head, type.small) : 0));
  const needed = widths.reduce((a, b) => a + b, space.large * (heads.length - 1));
  if (needed > fullWidth) return undefined;
  const width = Math.max(needed, Math.min(fullWidth, measure(title, type.title)));
  const rights: number[] = [];
  let right = content.left + width;
  for (let c = heads.length - 1; c > 0; c--) {
    rights[c] = right;
    right -= widths[c]! + space.large;
  }
  const head = sheet.block(title, type.title, 'text', { x: content.left, top: content.top, width: fullWidth });
  const lines: Line[] = [...head.lines];
  let top = head.bottom + gaps.part + 8;
  let deepest = top;
  heads.forEach((text, c) => {
    if (!c) return;
    const block = sheet.block(text, type.small, 'quiet', { x: rights[c]!, top, width: widths[c]! + 1, most: 2, anchor: 'end' });
    deepest = Math.max(deepest, block.bottom);
    lines.push(...block.lines);
  });
  top = deepest + gaps.line + 16;
  const rules: { y: number }[] = [];
  for (const row of rows) {
    rules.push({ y: top - gaps.line });
    row.forEach((text, c) => lines.push(...sheet.block(text, c ? value : type.name, 'text', c ? { x: rights[c]!, top, width: widths[c]! + 1, anchor: 'end' } : { x: content.left, top, width: widths[0]! + 1 }).lines.map((l) => (c ? { ...l, build: 'figures' } : l))));
    top += type.value.size * lineHeight + gaps.line;
  }
  const { panel, shift } = lowerLeft(stage, Math.max(width, head.width), lines.at(-1)!.y);
  if (panel.y < stage.panel.y - 4) return undefined;
  return { panel, lines: move(lines, shift), rules: move(rules, shift).map((r) => ({ ...r, x: content.left, width: Math.max(width, head.width) })) };
}

/** Of a head on two lines, broken where it is evenest. */
function headWidth(text: string, style: TextStyle): number {
  const words = text.split(' ');
  const splits = words.map((_, i) => Math.max(measure(words.slice(0, i).join(' '), style), measure(words.slice(i).join(' '), style)));
  return Math.min(measure(text, style), ...splits);
}
