// Labels and what they say, one row each: beside one another where there is room, else one above the other.
import { type Line, lineHeight, measure, type Rect, type TextStyle } from '../theme/index.js';
import { type Composer, lowerLeft, move } from './compose.js';

export interface LabelRow {
  label: string;
  text: string;
}

export interface LabelRows {
  panel: Rect;
  lines: Line[];
  rules: { x: number; y: number; width: number }[];
}

/** "Label: text; Label: text", as a record gives its own rows; a text without a label is one row. */
export function ownRows(text: string): LabelRow[] {
  const rows = text.split(/[;\n]/).map((p) => /^\s*([^:]+):\s*(.+?)\s*$/.exec(p)).filter((m) => m !== null).map((m) => ({ label: m[1]!, text: m[2]! }));
  return rows.length ? rows : [{ label: '', text }];
}

/** A title and its rows at the lower left. What is too high for the picture is a finding that says what to shorten (`remedy`). */
export function setLabelRows(sheet: Composer, title: string, rows: readonly LabelRow[], name: string, remedy: string, most = 2): LabelRows {
  const { stage, gaps, fullWidth } = sheet;
  const { content, space, type } = stage;
  const value: TextStyle = { ...type.small, weight: 600 };
  const labelWidth = Math.max(...rows.map((r) => measure(r.label, type.small))) + space.large;
  const beside = labelWidth <= fullWidth / 3;
  const x = beside ? content.left + labelWidth : content.left;
  const head = sheet.block(title, type.title, 'text', { x: content.left, top: content.top, width: fullWidth, most: 2 });
  const lines: Line[] = [...head.lines];
  const rules: { y: number }[] = [];
  let top = head.bottom + gaps.part + 16;
  let widest = head.width;
  for (const [i, row] of rows.entries()) {
    if (i) rules.push({ y: top - 23 });
    const label = row.label ? sheet.block(row.label, type.small, 'quiet', { x: content.left, top, width: beside ? labelWidth : fullWidth, most: beside ? 1 : 2 }) : undefined;
    const words = sheet.block(row.text, value, 'text', { x, top: beside || !label ? top : label.bottom + space.tight, width: content.right - x, most: beside ? most : most + 1 });
    lines.push(...(label?.lines ?? []), ...words.lines);
    widest = Math.max(widest, x - content.left + words.width, label?.width ?? 0);
    top = words.bottom + type.small.size * (lineHeight - 0.05) + 2;
  }
  const { panel, shift } = lowerLeft(stage, widest, lines.at(-1)!.y);
  sheet.within(panel, name, remedy);
  return { panel, lines: move(lines, shift), rules: move(rules, shift).map((r) => ({ ...r, x: content.left, width: widest })) };
}
