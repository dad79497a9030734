// How much of its limit each row used: the limit is one line for all.
import { beforeRounding, type Fact, isFact, nameOf, quantityName } from '../facts/index.js';
import { showNumber } from '../quantities/index.js';
import { barSpec } from './bar-spec.js';
import type { Chart } from './chart.js';
import { commonName, type Row, rowName, select, type Selection } from './rows.js';
import { figure, foot } from './words.js';
import type { Facts } from '../facts/index.js';

export const shareOfLimit: Chart = {
  kind: 'share-of-limit',
  says: 'bars in percent of the limit that holds for each row',
  rows: (request, facts) => shares(facts, select(request, facts)).length || 1,
  sketch(request, facts, work) {
    const chosen = select(request, facts, work);
    if (!chosen) return undefined;
    const all = shares(facts, chosen);
    if (all.length === 0) return work.complain('picture-empty', `picture "${request.name}" needs a limit for ${chosen.measure}, and the record has none`, request.name);
    const shown = all.slice(request.slice?.from, request.slice?.to);
    const notes = foot(facts, shown.map((r) => r.row.fact), [beforeRounding(shown.map((r) => r.share))]);
    const limitName = nameOf(facts.about, 'phase', 'limit').toLowerCase();
    const heading = {
      title: request.title ?? `${quantityName(facts.about, chosen.measure, chosen.part)}, share of the ${limitName}`,
      subtitle: [`Dotted line: 100 % of the ${limitName}`, commonName(facts, shown[0]!.row, chosen.by)].filter(Boolean).join(' · '),
      foot: notes.text,
    };
    const { body } = work.frame(heading);
    const named = shown.map((r) => ({ ...r, name: rowName(facts, r.row, chosen.by), of: `${showNumber(r.row.fact.value, r.row.fact.decimals)} of ${r.limit.shown}` }));
    const { spec, misfits, labels } = barSpec(work.stage, {
      body, series: [''], extent: all.map((r) => r.share.value.toNumber()), mark: { at: 100 },
      groups: named.map((r) => ({ name: r.name, remark: r.of, bars: [{ series: '', value: r.share.value.toNumber(), text: figure(r.share), colour: r.share.value.toNumber() > 100 ? 'highlight' : 'plain' }] })),
    });
    for (const m of misfits) work.complain(m.code, m.message, m.text);
    return {
      heading, spec, labels,
      alt: `${named.map((r) => `${r.name}: ${r.share.shown}, ${r.of}`).join('; ')}. ${heading.foot}.`,
      table: { head: ['', nameOf(facts.about, 'measure', chosen.measure), 'Limit', 'Share'], rows: named.map((r) => [r.name, r.row.fact.shown, r.limit.shown, r.share.shown]) },
      facts: [...named.flatMap((r) => [r.row.fact.id, r.limit.id, r.share.id]), ...notes.facts],
    };
  },
};

function shares(facts: Facts, chosen: Selection | undefined): { row: Row; limit: Fact; share: Fact }[] {
  return (chosen?.rows ?? []).flatMap((row) => {
    const limitKey = facts.constantFor(row.key, 'limit');
    const limit = limitKey && facts.value(limitKey);
    const share = limitKey && facts.derive('percent_of', [row.key, limitKey]);
    return limit && share && isFact(limit) && isFact(share) && limit.unit.id === row.fact.unit.id ? [{ row, limit, share }] : [];
  });
}
