// "down to 75 percent, which means 225 watts": what a setting that was just named is set to, said in the unit of its limit.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { push } from './read-value.js';
import { valueOf } from './terms.js';

const means = /^(?:, )?(?:(?:which|that|this) (?:is|was|means|meant|makes|made|gives|gave|allows|comes to|came to|works out (?:at|to|as)|worked out (?:at|to|as)|amounts to|translates (?:to|into))|that's|or|meaning|so|i\.e\.|in other words|=)(?: (?:about|roughly|around|just|a))?$/;

export function setTo(c: Context, index: number): Candidate[] {
  const { mention: m } = c.parsed.said[index]!;
  const out: Candidate[] = [];
  if (m.type !== 'cardinal' || !m.unit || m.unit.id === '%') return out;
  const before = c.parsed.said[index - 1]?.mention;
  const name = c.hits.hits.findLast((h) => h.to <= m.from && c.grid.slots[h.slot]!.field === 'setting');
  const behind = (at: number): boolean => means.test(stretch(c.parsed.low, at, m.from));
  // The number may be the setting's own name, or a share in percent with the setting spoken of.
  const named = name && behind(name.to) && c.parsed.low.slice(name.from, name.to).some((w) => /\d/.test(w) || w === 'percent');
  const slot = named ? name.slot : c.grid.of.setting[0];
  const value = named ? name.value : before?.unit?.id === '%' && behind(before.to) && slot !== undefined ? name?.value ?? c.now.topics[slot]![0] : undefined;
  if (slot === undefined || value === undefined) return out;
  for (const x of c.grid.cells) if (x.fixed && x.at[slot] === value && x.unit.dimension === m.unit.dimension) push(out, c, valueOf(x.key), 'constant', 0, x, 'what it is set to');
  return out;
}
