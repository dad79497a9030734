// Bars of one phase: settings in groups of setups (or the other way round), from a true zero.
import { factName, type Facts, type KeyField, nameOf, phaseNote, quantityName, bestOf, whyClose } from '../facts/index.js';
import { barSpec } from './bar-spec.js';
import type { Chart, ChartRequest, Workbench } from './chart.js';
import { commonName, type Row, rowName, select, selectFacts, type Selection } from './rows.js';
import { tones, tonesOf } from './tones.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

export const bars: Chart = {
  kind: 'bars',
  says: 'grouped bars, setup by setting, at one phase (a measure, or `facts`)',
  rows(request, facts) {
    const chosen = chosenBy(request, facts);
    return chosen ? new Set(chosen.rows.map((r) => groupOf(r, layers(chosen).group))).size : 1;
  },
  sketch(request, facts, work) {
    const chosen = chosenBy(request, facts, work);
    if (!chosen) return undefined;
    const { group, series } = layers(chosen);
    const seriesIds = series ? [...new Set(chosen.rows.map((r) => r.parts[series]))] : [''];
    if (chosen.by.length > 2) return work.complain('picture-incomplete', `picture "${request.name}" would mix setups, settings and workloads; name one workload`, request.name);
    if (seriesIds.length > tones.length) return work.complain('too-many-rows', `picture "${request.name}" would show ${seriesIds.length} bars in each group, and ${tones.length} are the most; name fewer setups or settings`, request.name);
    const toneOf = series ? tonesOf(facts, series, seriesIds) : undefined;
    const groups = [...new Map(chosen.rows.map((r) => [groupOf(r, group), r]))].slice(request.slice?.from, request.slice?.to);
    const shown = chosen.rows.filter((r) => groups.some(([id]) => id === groupOf(r, group)));
    // Across two things that differ at once, no bar is the best.
    const winner = series || !chosen.comparable ? {} : bestOf(facts, chosen.measure, chosen.rows.map((r) => r.fact));
    const notes = foot(facts, shown.map((r) => r.fact), winner.close ? [whyClose[winner.close].best] : []);
    const heading = {
      title: request.title ?? (request.facts ? factName(facts.about, chosen.rows[0]!.fact) : quantityName(facts.about, chosen.measure, chosen.part) + phaseNote(facts, chosen)),
      subtitle: subtitle(facts, chosen, unitSymbol(chosen.rows.map((r) => r.fact)), commonName(facts, chosen.rows[0]!, chosen.by)),
      legend: series ? seriesIds.map((id) => ({ label: nameOf(facts.about, series, id), colour: toneOf!.get(id)! })) : [],
      foot: notes.text,
    };
    const { body } = work.frame(heading);
    const named = groups.map(([id, first]) => ({ name: group ? nameOf(facts.about, group, first.parts[group]) : rowName(facts, first, chosen.by), rows: shown.filter((r) => groupOf(r, group) === id) }));
    const { spec, misfits, labels } = barSpec(work.stage, {
      body, series: seriesIds, extent: chosen.rows.map((r) => r.fact.value.toNumber()),
      groups: named.map(({ name, rows }) => ({
        name,
        bars: rows.map((r) => ({
          series: series ? r.parts[series] : '', value: r.fact.value.toNumber(), text: figure(r.fact),
          colour: r.fact === winner.fact ? 'highlight' : series ? toneOf!.get(r.parts[series])! : 'plain',
        })),
      })),
    });
    for (const m of misfits) work.complain(m.code, m.message, m.text);
    return {
      heading, spec, labels,
      alt: `${named.map(({ name, rows }) => `${name}: ${rows.map((r) => spoken(facts, r, series)).join(', ')}`).join('; ')}. ${heading.foot}.`,
      table: {
        head: ['', ...(series ? seriesIds.map((id) => nameOf(facts.about, series, id)) : [heading.title])],
        rows: named.map(({ name, rows }) => [name, ...seriesIds.map((id) => rows.find((r) => !series || r.parts[series] === id)?.fact.shown ?? '')]),
      },
      facts: [...shown.map((r) => r.fact.id), ...notes.facts],
    };
  },
};

function chosenBy(request: ChartRequest, facts: Facts, work: Pick<Workbench, 'complain'> = { complain: () => undefined }): Selection | undefined {
  return request.facts ? selectFacts(request, facts, work) : select(request, facts, work);
}

/** With two fields that differ, the one with fewer values stands inside the groups. */
function layers({ by, rows }: Selection): { group?: KeyField; series?: KeyField } {
  if (by.length < 2) return { group: by[0] };
  const count = (f: KeyField): number => new Set(rows.map((r) => r.parts[f])).size;
  const [a, b] = by as [KeyField, KeyField];
  return count(a) <= count(b) ? { series: a, group: b } : { series: b, group: a };
}

function groupOf(row: Row, group: KeyField | undefined): string {
  return group ? row.parts[group] : row.key;
}

function spoken(facts: Facts, row: Row, series: KeyField | undefined): string {
  return series ? `${nameOf(facts.about, series, row.parts[series])} ${row.fact.shown}` : row.fact.shown;
}
