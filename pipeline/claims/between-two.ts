// "Between the Ashlar and the Corrow lie 12 watts", "a gap of 12 watts between the two", "they are 12 watts apart": two things of
// one kind that are both named, and how far the one is from the other. Neither is the one that is compared.
import { type Candidate, type Context, subjectCells, unitsOf } from './context.js';
import { movedTo } from './grid.js';
import { push } from './read-value.js';

const nouns = /^(?:gap|difference|distance|margin|spread|step|delta|space|lead)$/;
/** What may stand between the second name and the number. */
const leading = /^(?:,|are|is|was|were|lies?|lay|there|there's|that's|it's|the|a|an|of|gap|difference|distance|margin|spread|step|only|just|about|around|roughly|nearly|almost|comes|to|makes|we|you|see|find|have|i|still|some|whole|full|whopping|mere)$/;

interface Two { slot: number; values: readonly [string, string] }

/** Readings of what lies between the two. */
export function betweenTwo(c: Context, index: number): Candidate[] {
  const { mention: m } = c.parsed.said[index]!;
  if (m.type !== 'cardinal' || m.unit?.id === 'points') return [];
  const two = twoNamed(c, index) ?? twoParts(c, index);
  if (!two) return [];
  const out: Candidate[] = [];
  const percent = m.unit?.id === '%';
  const { cells } = subjectCells(c, index, unitsOf(c.parsed.said[index]!, true), { ignoreBase: true });
  const [x, y] = two.values;
  for (const { cell, cost } of cells) {
    if (cell.fixed || !two.values.includes(cell.at[two.slot]!)) continue;
    const a = cell.at[two.slot] === x ? cell : movedTo(c.grid, cell, two.slot, x);
    const b = cell.at[two.slot] === y ? cell : movedTo(c.grid, cell, two.slot, y);
    if (!a || !b || a === b || out.some((o) => o.subject === a && o.base === b)) continue;
    if (percent) for (const [p, q] of [[a, b], [b, a]] as const) push(out, c, { kind: 'percent_change', args: [p.key, q.key] }, 'percent_change', cost, p, 'between the two', { base: q, firm: true });
    else push(out, c, { kind: 'difference', args: [a.key, b.key] }, 'difference', cost, a, 'between the two', { base: b, firm: true });
  }
  const least = Math.min(...out.map((o) => o.cost));
  return out.map((o) => ({ ...o, cost: o.cost - least }));
}

const partingVerbs: ReadonlySet<string> = new Set(['separate', 'separates', 'separated', 'divide', 'divides', 'divided']);

function twoNamed(c: Context, index: number): Two | undefined {
  const { mention: m } = c.parsed.said[index]!;
  const { low } = c.parsed;
  let parting = -1;
  for (let k = m.to; k < m.to + 5 && k < low.length && parting < 0; k++) if (partingVerbs.has(low[k]!)) parting = k;
  if (!low.includes('between') && parting < 0) return undefined;
  const kinds = ['setup', 'setting', 'workload'];
  const hits = c.hits.hits.filter((h) => kinds.includes(c.grid.slots[h.slot]!.field) && !c.grid.holders.has(h.value));
  for (let k = Math.max(0, m.from - 18); k < Math.min(low.length, m.to + (parting < 0 ? 3 : 5)); k++) {
    if (low[k] !== 'between' && k !== parting) continue;
    const first = hits.find((h) => h.from > k && h.from <= k + 4);
    const second = first && hits.find((h) => h.slot === first.slot && h.value !== first.value && h.from > first.to && h.from <= first.to + 5 && low.slice(first.to, h.from).some((w) => w === 'and' || (w === 'from' && k === parting)) && !low.slice(first.to, h.from).some((w) => /^(?:,|but|while)$/.test(w)));
    if (!first || !second || hits.some((h) => h.slot === first.slot && h.from > second.to && h.from <= second.to + 3 && low[second.to] === 'and')) continue;
    const two: Two = { slot: first.slot, values: [first.value, second.value] };
    if (k === parting) return two;
    // "a gap of 12 watts between …"
    if (k >= m.to && low.slice(Math.max(0, m.from - 5), m.from).some((w) => nouns.test(w))) return two;
    if (k >= m.to && k <= m.to && /^(?:lies?|lay|are|is|were|was|there's|there)$/.test(low[m.from - 1] ?? '')) return two;
    // "between … lie 12 watts", "the gap between … is 12 watts"; names of other kinds may stand there too.
    if (second.to <= m.from && low.slice(second.to, m.from).every((w, i) => leading.test(w) || c.hits.hits.some((h) => h.from <= second.to + i && second.to + i < h.to))) return two;
  }
  return undefined;
}

const parted = /^(?:gap|difference|distance|margin|spread|delta|step|space)$/;

/** "the gap between its core and its skin is 16 degrees", "skin minus core: 13 as it comes, 15 tuned", "widens the gap from core to skin from 12 to 14": two parts of one thing, and figures of how far they lie apart. */
function twoParts(c: Context, index: number): Two | undefined {
  const { mention: m, cue } = c.parsed.said[index]!;
  const { low } = c.parsed;
  if (cue.op !== 'value' && cue.op !== 'range' && !parted.test(cue.because)) return undefined;
  const hits = c.hits.hits.filter((h) => c.grid.slots[h.slot]!.field === 'part' && h.to <= m.from);
  const [a, b] = hits.slice(-2);
  if (!a || !b || a.slot !== b.slot || a.value === b.value || hits.slice(0, -2).some((h) => h.slot === a.slot) && b.to < (c.parsed.said[index - 1]?.mention.to ?? 0)) return undefined;
  const lead = low.slice(Math.max(0, a.from - 5), a.from);
  const link = low.slice(a.to, b.from).filter((w, k) => !/^(?:the|its|their|a|of|on|in)$/.test(w) && !c.parsed.names.some((n) => n.from <= a.to + k && a.to + k < n.to)).join(' ');
  const noun = lead.some((w) => parted.test(w)) || parted.test(low[b.to] ?? '');
  const opens = link === 'and' ? lead.includes('between') && noun : link === 'to' ? noun : link === 'minus' || link === 'less';
  // What is named of it since, or said in between, is another matter.
  const since = c.parsed.said.filter((s) => s.mention.from >= b.to && s.mention.to <= m.from);
  if (!opens || c.hits.hits.some((h) => h.from >= b.to && h.to <= m.from && c.grid.of.measure.includes(h.slot)) || since.some((s) => s.cue.op !== 'value' && s.cue.op !== 'range' && !parted.test(s.cue.because))) return undefined;
  return { slot: a.slot, values: [a.value, b.value] };
}
