// What is named only to say which one is meant.
import type { Hit } from './evidence.js';
import type { Parsed } from './parse.js';

/** "The drive, which sits under the card, is at 67.4": a thing named only to say which one is meant is not what the figure is about. */
export function withoutAsides(p: Parsed, hits: readonly Hit[]): readonly Hit[] {
  const { low } = p;
  const asides: { from: number; to: number }[] = [];
  for (let i = low.indexOf(',', 1); i > 0 && i < low.length - 1; i = low.indexOf(',', i + 1)) {
    if (!/^(?:which|who|whose|where)$/.test(low[i + 1]!)) continue;
    const end = low.indexOf(',', i + 1);
    if (end > 0 && end - i < 12 && !p.said.some((s) => s.mention.from > i && s.mention.from < end)) asides.push({ from: i, to: end });
  }
  if (asides.length === 0) return hits;
  const inside = (h: Hit): { from: number; to: number } | undefined => asides.find((a) => a.from < h.from && h.from < a.to);
  return hits.filter((h) => { const a = inside(h); return !a || !hits.some((o) => o.slot === h.slot && o.value !== h.value && o.to <= a.from); });
}
