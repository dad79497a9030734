// How far each row lies from a baseline: bars to either side of a true zero, muted where the runs cannot tell.
import { beforeRounding, type Fact, type Facts, isFact, judge, nameOf, ofNoAccount, phaseNote, quantityName, withFields } from '../facts/index.js';
import { barSpec } from './bar-spec.js';
import type { Chart, ChartRequest } from './chart.js';
import { commonName, type Row, rowName, select, type Selection } from './rows.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

export const differences: Chart = {
  kind: 'differences',
  says: 'each row’s difference from a baseline (the stock setting, or the first setup; `text: percent` for changes in percent)',
  rows: (request, facts) => againstBase(request, facts, select(request, facts))?.rows.length ?? 1,
  sketch(request, facts, work) {
    const chosen = select(request, facts, work);
    if (!chosen) return undefined;
    const made = againstBase(request, facts, chosen);
    if (!made || made.rows.length === 0) return work.complain('picture-empty', `picture "${request.name}" has nothing to take differences from: it needs two setups or settings of ${chosen.measure}`, chosen.measure);
    const { base, field } = made;
    const shown = made.rows.slice(request.slice?.from, request.slice?.to);
    const doubtful = shown.some((r) => !told(facts, r.change));
    const notes = foot(facts, shown.map((r) => r.change), [doubtful ? 'muted: no clear difference' : '', beforeRounding(shown.map((r) => r.change))]);
    const by = chosen.by;
    const baseName = nameOf(facts.about, field, base);
    const heading = {
      title: request.title ?? `${quantityName(facts.about, chosen.measure, chosen.part)}${phaseNote(facts, chosen)}, against ${baseName}`,
      subtitle: subtitle(facts, chosen, unitSymbol(shown.map((r) => r.change)), commonName(facts, shown[0]!.row, by)),
      foot: notes.text,
    };
    const { body } = work.frame(heading);
    const named = shown.map((r) => ({ ...r, name: rowName(facts, r.row, by), text: plus(r.change) }));
    const { spec, misfits, labels } = barSpec(work.stage, {
      body, series: [''], extent: [0, ...made.rows.map((r) => r.change.value.toNumber())],
      groups: named.map(({ name, change, text }) => ({ name, bars: [{ series: '', value: change.value.toNumber(), text, colour: told(facts, change) ? 'plain' : 'muted' }] })),
    });
    for (const m of misfits) work.complain(m.code, m.message, m.text);
    return {
      heading, spec, labels,
      alt: `${named.map(({ name, change, text }) => `${name}: ${text}${change.unit.id === '%' ? '' : ` ${change.unit.symbol}`}${told(facts, change) ? '' : ' (no clear difference)'}`).join('; ')}. ${heading.foot}.`,
      table: { head: ['', `Against ${baseName}`, ''], rows: named.map(({ name, change, text }) => [name, `${text}${change.unit.id === '%' ? '' : ` ${change.unit.symbol}`}`, told(facts, change) ? '' : 'no clear difference']) },
      facts: [...named.map((r) => r.change.id), ...notes.facts],
    };
  },
};

interface AgainstBase {
  field: 'setup' | 'setting';
  base: string;
  rows: { row: Row; change: Fact }[];
}

/** Settings against stock, or the first, each in its own setup; else setups against the first. */
function againstBase(request: ChartRequest, facts: Facts, chosen: Selection | undefined): AgainstBase | undefined {
  if (!chosen) return undefined;
  const field = chosen.by.includes('setting') ? 'setting' : 'setup';
  if (!chosen.by.includes(field)) return undefined;
  const ids = [...new Set(chosen.rows.map((r) => r.parts[field]))];
  const base = (field === 'setting' && ids.find((id) => facts.about.settings.get(id)?.kind === 'stock')) || ids[0]!;
  const kind = request.text === 'percent' ? 'percent_change' : 'difference';
  const rows = chosen.rows.filter((r) => r.parts[field] !== base).flatMap((row) => {
    const change = facts.derive(kind, [row.key, withFields(row.key, { [field]: base })]);
    return isFact(change) ? [{ row, change }] : [];
  });
  return { field, base, rows };
}

/** Whether the readings tell a difference that matters; single runs are shown as they stand. */
function told(facts: Facts, change: Fact): boolean {
  const judged = judge(facts, change);
  return !judged || (!ofNoAccount(judged) && (judged.outcome !== 'undecided' || judged.half95 === undefined));
}

function plus(change: Fact): string {
  return change.value.sign() > 0 ? `+${figure(change)}` : figure(change);
}
