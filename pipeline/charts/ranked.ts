// Ranked bars, the best on top; also of derived facts (per watt, over room) when the request names them.
import { type Fact, factName, isFact, phaseNote, quantityName, bestOf, closeNotes } from '../facts/index.js';
import { barSpec } from './bar-spec.js';
import type { Chart } from './chart.js';
import { commonName, rowName, select, selectFacts } from './rows.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

export const ranked: Chart = {
  kind: 'ranked',
  says: 'bars in order, the best first, with their places',
  rows: (request, facts) => (request.facts ?? select(request, facts)?.rows)?.length ?? 1,
  sketch(request, facts, work) {
    const chosen = request.facts ? selectFacts(request, facts, work) : select(request, facts, work);
    if (!chosen) return undefined;
    const better = facts.about.measures.get(chosen.measure)?.better ?? 'neither';
    const sorted = [...chosen.rows].sort((a, b) => (better === 'lower' ? 1 : -1) * a.fact.value.compare(b.fact.value));
    const shown = sorted.slice(request.slice?.from, request.slice?.to);
    const winner = !chosen.comparable ? {} : bestOf(facts, chosen.measure, sorted.map((r) => r.fact));
    const first = shown[0]!;
    const ranks = new Map<string, Fact>();
    if (better !== 'neither' && chosen.ranks && sorted.length > 1) {
      for (const r of sorted) {
        const own = request.facts ? `(${r.fact.id})` : r.key;
        const others = sorted.filter((o) => o !== r).map((o) => (request.facts ? `(${o.fact.id})` : o.key));
        const rank = facts.derive('rank', [own, ...others], 'better');
        if (isFact(rank)) ranks.set(r.fact.id, rank);
      }
    }
    const close = better !== 'neither' && chosen.comparable ? closeNotes(facts, sorted.map((r) => r.fact), (f) => ranks.get(f.id)?.shown, shown.map((r) => r.fact)) : [];
    const notes = foot(facts, shown.map((r) => r.fact), close);
    const heading = {
      title: request.title ?? (request.facts ? factName(facts.about, first.fact) : quantityName(facts.about, chosen.measure, chosen.part) + phaseNote(facts, chosen)),
      subtitle: subtitle(facts, chosen, unitSymbol(sorted.map((r) => r.fact)), commonName(facts, first, chosen.by)),
      foot: notes.text,
    };
    const { body } = work.frame(heading);
    const named = shown.map((r) => ({ ...r, name: rowName(facts, r, chosen.by), place: ranks.get(r.fact.id) }));
    const { spec, misfits, labels } = barSpec(work.stage, {
      body, series: [''], extent: sorted.map((r) => r.fact.value.toNumber()),
      groups: named.map(({ name, fact, place }) => ({
        name, lead: place?.shown,
        bars: [{ series: '', value: fact.value.toNumber(), text: figure(fact), colour: fact === winner.fact ? 'highlight' : 'plain' }],
      })),
    });
    for (const m of misfits) work.complain(m.code, m.message, m.text);
    return {
      heading, spec, labels,
      alt: `${named.map(({ name, fact, place }) => `${place ? `${place.shown}: ` : ''}${name}, ${fact.shown}`).join('; ')}. ${heading.foot}.`,
      table: { head: ['Place', '', heading.title], rows: named.map(({ name, fact, place }) => [place?.shown ?? '', name, fact.shown]) },
      facts: [...named.flatMap((r) => [r.fact.id, ...(r.place ? [r.place.id] : [])]), ...notes.facts],
    };
  },
};
