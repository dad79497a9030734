// How the figures were made: runs, window, room, instruments, what was set aside.
import { basisOf, type Facts, isFact, isMeasured, type Reading } from '../facts/index.js';
import type { Graphic } from './graphic.js';
import { type LabelRow, ownRows, setLabelRows } from './label-rows.js';

export const method: Graphic = {
  kind: 'method',
  says: 'how the figures were made: runs, window, room, instruments, runs set aside (`text` for own rows: "Label: text; Label: text")',
  takes: { text: 'own rows' },
  compose(request, facts, sheet) {
    const { rows, used } = request.text ? { rows: ownRows(request.text), used: [] } : entries(facts);
    if (rows.length === 0) return sheet.complain('picture-empty', `picture "${request.name}" has no method to show`);
    const title = request.title ?? 'How it was measured';
    const set = setLabelRows(sheet, title, rows, request.name, 'give its rows in `text`', 3);
    return {
      title, panel: set.panel, lines: set.lines, facts: used,
      alt: `${title}. ${rows.map((r) => `${r.label}: ${r.text}`).join('. ')}.`,
      table: { head: ['', ''], rows: rows.map((r) => [r.label, r.text]) },
      model: { lines: set.lines, rules: set.rules },
    };
  },
};

function entries(facts: Facts): { rows: LabelRow[]; used: string[] } {
  const { about } = facts;
  const keys = facts.keys().filter((k) => isMeasured(facts, k) && !facts.isQuoted(k));
  const readings = keys.flatMap((k) => facts.readings(k));
  const basis = basisOf(facts, keys.map((k) => facts.value(k)).filter(isFact));
  const aside = keys.flatMap((k) => facts.readings(k, { aside: true })).filter((r) => r.aside);
  const reasons = [...new Set(aside.map((r) => r.aside!.reason))];
  const rows = [
    { label: 'Runs', text: basis.count && (basis.count === '1' ? 'one of each' : `${basis.count} of each, averaged`) },
    { label: 'Window', text: windows(readings) },
    { label: 'Room', text: basis.room.replace(/^room (temperature )?/, '') },
    { label: 'Read with', text: about.instruments.map((i) => [i.name, i.accuracy].filter(Boolean).join(' ')).join(', ') },
    { label: 'Set aside', text: reasons.join('; ') },
  ].filter((r) => r.text);
  return { rows, used: basis.facts };
}

/** "Last 60 to 120 s of each log", from how long the stretches were that was averaged over. */
function windows(readings: readonly Reading[]): string {
  const seconds = readings.map((r) => r.log?.lasted?.window).filter((s) => s !== undefined).map((s) => Math.round(s));
  if (seconds.length === 0) return '';
  const [low, high] = [Math.min(...seconds), Math.max(...seconds)];
  return low === high ? `mean over ${low} s of log` : `means over ${low} to ${high} s of log`;
}
