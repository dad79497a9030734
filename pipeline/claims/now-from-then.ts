// "It was at 61 in spring and now it's 4 cooler": what it has come down by since the figure before, to where it is now.
import { type Candidate, type Context, sameCellExcept, signOf } from './context.js';
import { fit } from './decide.js';
import { movedTo } from './grid.js';
import { push } from './read-value.js';

const past = /^(?:was|were|had|stood|sat|used|drew|took|ran|did|made|needed|read|got|managed|hit|reached|averaged|weighed|cost)$/;

/** Changes from the figure before, which was then, to each other setting or phase: the one spoken of first. */
export function nowFromThen(c: Context, index: number): Candidate[] {
  const [then, said] = [c.parsed.said[index - 1], c.parsed.said[index]!];
  const from = c.done[index - 1];
  if (!then || said.cue.op !== 'change' || said.cue.base || from?.term.kind !== 'mean' || !from.subject || from.subject.fixed || !fit(then.mention, from)) return [];
  const { low } = c.parsed;
  const between = low.slice(then.mention.to, said.mention.from);
  if (between.length > 8 || !(between.includes('now') || low.slice(said.mention.to, said.mention.to + 3).includes('now')) || !low.slice(then.segment.from, then.mention.from).some((w) => past.test(w))) return [];
  const slots = [...c.grid.of.setting, ...c.grid.of.phase].filter((i) => c.hits.hits.some((h) => h.slot === i && h.segment === index - 1 && from.subject!.at[i] === h.value));
  if (c.hits.hits.some((h) => slots.includes(h.slot) && h.segment === index && h.from < said.mention.to)) return [];
  const out: Candidate[] = [];
  const percent = said.mention.unit?.id === '%';
  for (const i of slots) {
    const here = c.now.heading.find(([k]) => k === i)?.[1];
    const values = [...new Set([...(here ? [here] : []), ...c.now.topics[i]!, ...c.grid.values[i]!.keys()])].filter((v) => v !== from.subject!.at[i]);
    for (const [k, v] of values.entries()) {
      const now = movedTo(c.grid, from.subject, i, v);
      if (now && !now.fixed) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [now.key, from.subject.key] }, percent ? 'percent_change' : 'difference', v === here ? 0 : 0.2 + 0.05 * k, now, 'from what it was', { sign: signOf(c, said.cue.way, now), base: from.subject, change: sameCellExcept(c.grid, now, from.subject).map((s) => [s, from.subject!.at[s]!] as const) });
    }
  }
  return out;
}
