// The circumstances of the test, on one card.
import { basisOf, type Facts, isFact, isMeasured, splitKey } from '../facts/index.js';
import { type Line, lineHeight, measure, type TextStyle, wrap } from '../theme/index.js';
import { type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';

const mostLines = 6;

export const conditions: Graphic = {
  kind: 'conditions',
  says: 'how it was tested: runs, room, workload, versions, instruments, parts come by',
  takes: { title: 'the heading', text: 'own rows' },
  compose(request, facts, sheet) {
    const { stage, gaps, fullWidth } = sheet;
    const { content, space, type } = stage;
    const value: TextStyle = { ...type.small, weight: 600 };
    const { rows, used } = entries(facts, request.text, sheet);
    if (rows.length === 0) return sheet.complain('picture-empty', `picture "${request.name}" has no conditions to show`);
    const title = request.title ?? 'How it was tested';
    const head = sheet.block(title, type.title, 'text', { x: content.left, top: content.top, width: fullWidth });
    const labelWidth = Math.max(...rows.map((r) => measure(r.label, type.small))) + space.large;
    const x = content.left + labelWidth;
    const lines: Line[] = [...head.lines];
    const rules: { y: number }[] = [];
    let top = head.bottom + gaps.part + 16;
    let widest = head.width;
    for (const [i, row] of rows.entries()) {
      if (i) rules.push({ y: top - 23 });
      const label = sheet.block(row.label, type.small, 'quiet', { x: content.left, top, width: labelWidth });
      const words = sheet.block(row.text, value, 'text', { x, top, width: fullWidth - labelWidth, most: 2 });
      lines.push(...label.lines, ...words.lines);
      widest = Math.max(widest, labelWidth + words.width);
      top = words.bottom + type.small.size * (lineHeight - 0.05) + 2;
    }
    const bottom = lines.at(-1)!.y;
    const { panel, shift } = lowerLeft(stage, widest, bottom);
    if (panel.y < 36) sheet.complain('label-too-long', `picture "${request.name}" is ${Math.ceil(36 - panel.y)} px too high; give its lines in \`text\``);
    const moved = move(lines, shift);
    return {
      title, panel, lines: moved, facts: used,
      alt: `${title}. ${rows.map((r) => `${r.label}: ${r.text}`).join('. ')}.`,
      table: { head: ['', ''], rows: rows.map((r) => [r.label, r.text]) },
      model: { lines: moved, rules: move(rules, shift).map((r) => ({ ...r, x: content.left, width: widest })) },
    };
  },
};

/** "Label: text; Label: text" where the record says what to show, else what it knows. */
function entries(facts: Facts, own: string | undefined, { stage: { type }, fullWidth }: Composer): { rows: { label: string; text: string }[]; used: string[] } {
  if (own) {
    const rows = own.split(/[;\n]/).map((p) => /^\s*([^:]+):\s*(.+?)\s*$/.exec(p)).filter((m) => m !== null).map((m) => ({ label: m[1]!, text: m[2]! }));
    return { rows: rows.length ? rows : [{ label: '', text: own }], used: [] };
  }
  const { about } = facts;
  const keys = facts.keys().filter((k) => isMeasured(facts, k));
  const shown = keys.map((k) => facts.value(k)).filter(isFact);
  const basis = basisOf(facts, shown);
  const counted: string[] = [];
  const names = (list: Iterable<{ id: string; name: string }>, field: 'workload' | 'setting' | 'setup'): string => {
    const used = new Set(keys.map((k) => splitKey(k)![field]));
    const shownNames = [...list].filter((n) => used.has(n.id)).map((n) => n.name);
    const all = shownNames.join(', ');
    // A list that takes more than two lines says less than its length.
    if ('lines' in wrap(all, { ...type.small, weight: 600 }, fullWidth - 330, 2)) return all;
    const count = facts.derive('count', keys, `${field}s`);
    if (!isFact(count)) return all;
    counted.push(count.id);
    return `${count.shown} ${field}s`;
  };
  const rows = [
    { label: 'Tested', text: names(about.setups.values(), 'setup') },
    { label: 'Settings', text: names(about.settings.values(), 'setting') },
    { label: 'Workload', text: names(about.workloads.values(), 'workload') },
    { label: 'Runs', text: basis.count && (basis.count === '1' ? '1 each' : `${basis.count} each, averaged`) },
    { label: 'Room', text: basis.room.replace(/^room (temperature )?/, '') },
    { label: 'Versions', text: about.versions.map((v) => `${v.name} ${v.version}`).join(', ') },
  ].filter((r) => r.text).slice(0, mostLines);
  return { rows, used: [...basis.facts, ...counted] };
}
