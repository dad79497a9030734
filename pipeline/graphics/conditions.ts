// The circumstances of the test, on one card.
import { basisOf, type Facts, isFact, isMeasured, splitKey } from '../facts/index.js';
import { wrap } from '../theme/index.js';
import { Composer } from './compose.js';
import type { Graphic } from './graphic.js';
import { type LabelRow, ownRows, setLabelRows } from './label-rows.js';

const mostLines = 6;

export const conditions: Graphic = {
  kind: 'conditions',
  says: 'how it was tested: runs, room, workload, versions, instruments, parts come by',
  takes: { title: 'the heading', text: 'own rows' },
  compose(request, facts, sheet) {
    const { rows, used } = entries(facts, request.text, sheet);
    if (rows.length === 0) return sheet.complain('picture-empty', `picture "${request.name}" has no conditions to show`);
    const title = request.title ?? 'How it was tested';
    const shown = request.text ? rows : fittingRows(sheet, title, rows);
    const { panel, lines, rules } = setLabelRows(sheet, title, shown, request.name, 'give its lines in `text`');
    return {
      title, panel, lines, facts: used,
      alt: `${title}. ${shown.map((r) => `${r.label}: ${r.text}`).join('. ')}.`,
      table: { head: ['', ''], rows: shown.map((r) => [r.label, r.text]) },
      model: { lines, rules },
    };
  },
};

/** What matters most stands first: where there is no room for all, the last ones are left out. */
function fittingRows(sheet: Composer, title: string, rows: readonly LabelRow[]): readonly LabelRow[] {
  for (let count = rows.length; count > 1; count--) {
    let fits = true;
    const probe = new Composer(sheet.stage, () => void (fits = false));
    setLabelRows(probe, title, rows.slice(0, count), '', '');
    if (fits && probe.misfits.length === 0) return rows.slice(0, count);
  }
  return rows;
}

/** "Label: text; Label: text" where the record says what to show, else what it knows. */
function entries(facts: Facts, own: string | undefined, { stage, fullWidth }: Composer): { rows: { label: string; text: string }[]; used: string[] } {
  if (own) return { rows: ownRows(own), used: [] };
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
    if ('lines' in wrap(all, { ...stage.type.small, weight: 600 }, fullWidth - (stage.narrow ? 0 : 330), 2)) return all;
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
