// Idle and load side by side, with the rise between them.
import { beforeRounding, isFact, nameOf, quantityName, bestOf, whyClose } from '../facts/index.js';
import type { Chart } from './chart.js';
import { barSpec } from './bar-spec.js';
import { commonName, rowName, select } from './rows.js';
import { figure, foot, subtitle, unitSymbol } from './words.js';

export const barsIdleLoad: Chart = {
  kind: 'bars-idle-load',
  says: 'grouped bars, idle and load of each row, with the rise',
  rows: (request, facts) => select({ ...request, phase: request.phase ?? 'load' }, facts)?.rows.length ?? 1,
  sketch(request, facts, work) {
    const chosen = select({ ...request, phase: request.phase ?? 'load' }, facts, work);
    if (!chosen) return undefined;
    const all = chosen.rows.flatMap((row) => {
      const idleKey = facts.idleOf(row.key);
      const idle = idleKey && facts.value(idleKey);
      const rise = idleKey && facts.derive('rise', [row.key, idleKey]);
      return idle && rise && isFact(idle) && isFact(rise) ? [{ row, load: row.fact, idle, rise }] : [];
    });
    if (all.length === 0) return work.complain('picture-empty', `picture "${request.name}" needs readings of ${chosen.measure} both at idle and under load`, request.name);
    const shown = all.slice(request.slice?.from, request.slice?.to);
    const measured = all.flatMap((r) => [r.idle, r.load]);
    const winner = !chosen.comparable ? {} : bestOf(facts, chosen.measure, all.map((r) => r.load));
    const [idleName, loadName] = ['idle', chosen.phase].map((p) => nameOf(facts.about, 'phase', p)) as [string, string];
    const notes = foot(facts, shown.flatMap((r) => [r.load, r.idle]), [...(winner.close ? [whyClose[winner.close].best] : []), beforeRounding(shown.map((r) => r.rise))]);
    const unit = unitSymbol(measured);
    const heading = {
      title: request.title ?? `${quantityName(facts.about, chosen.measure, chosen.part)}, ${idleName.toLowerCase()} and ${loadName.toLowerCase()}`,
      subtitle: subtitle(facts, chosen, unit, commonName(facts, shown[0]!.row, chosen.by)),
      legend: [{ label: idleName, colour: 'muted' as const }, { label: loadName, colour: 'plain' as const }, ...(winner.fact ? [{ label: 'Best', colour: 'highlight' as const }] : [])],
      foot: notes.text,
    };
    const { body } = work.frame(heading);
    const named = shown.map((r) => ({ ...r, name: rowName(facts, r.row, chosen.by) }));
    const { spec, misfits, labels } = barSpec(work.stage, {
      body, series: ['idle', 'load'], extent: measured.map((f) => f.value.toNumber()),
      groups: named.map((r) => ({
        name: r.name, remark: `rise ${r.rise.shown}`,
        bars: [
          { series: 'idle', value: r.idle.value.toNumber(), text: figure(r.idle), colour: 'muted' },
          { series: 'load', value: r.load.value.toNumber(), text: figure(r.load), colour: r.load === winner.fact ? 'highlight' : 'plain' },
        ],
      })),
    });
    for (const m of misfits) work.complain(m.code, m.message, m.text);
    return {
      heading, spec, labels,
      alt: `${named.map((r) => `${r.name}: ${r.idle.shown} at idle, ${r.load.shown} under load, a rise of ${r.rise.shown}`).join('; ')}. ${heading.foot}.`,
      table: { head: ['', idleName, loadName, 'Rise'], rows: named.map((r) => [r.name, r.idle.shown, r.load.shown, r.rise.shown]) },
      facts: [...shown.flatMap((r) => [r.idle.id, r.load.id, r.rise.id]), ...notes.facts],
    };
  },
};
