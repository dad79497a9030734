// A list of figures beside which nothing is named goes, in turn, with what was named before it one after the other.
import { stretch } from '../script/index.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

export function inTurn(p: Parsed, g: Grid, hits: readonly Hit[], numbers: readonly number[], respectively: boolean): { slot: number; values: string[] } | undefined {
  return respectively ? named(p, g, hits, numbers) : figures(p, g, hits, numbers);
}

/** "The lid reads 37.4 and the base 29.1, so they are 2.2 and 0.8 warmer respectively": as many named before, each once. */
function named(p: Parsed, g: Grid, hits: readonly Hit[], numbers: readonly number[]): { slot: number; values: string[] } | undefined {
  const first = p.said[numbers[0]!]!.segment.from;
  for (const field of ['setup', 'setting', 'workload', 'part'] as const) for (const slot of g.of[field]) {
    const values = hits.filter((h) => h.slot === slot && h.to <= first && h.baseOf < 0 && !h.departs).map((h) => h.value);
    if (values.length === numbers.length && new Set(values).size === values.length) return { slot, values };
  }
  return undefined;
}

/** "It draws 201 watts in the barn and 185 outside, 80 and 74 percent of its limit": as many figures right before, each with a name of its own. */
function figures(p: Parsed, g: Grid, hits: readonly Hit[], numbers: readonly number[]): { slot: number; values: string[] } | undefined {
  const [first, n] = [numbers[0]!, numbers.length];
  const { mention } = p.said[first]!;
  const before = p.said.slice(Math.max(0, first - n), first);
  if (before.length < n || before.some((s) => s.cue.op !== 'value' || s.named || s.mention.type !== 'cardinal') || before.at(-1)!.mention.unit?.id === p.said[numbers.at(-1)!]!.mention.unit?.id) return undefined;
  const comma = p.low.slice(0, mention.from).lastIndexOf(',');
  if (comma < before.at(-1)!.mention.to || !/^,(?: (?:or|so|and|that's|which is|which makes|making|only|just|about|around|roughly|nearly|almost))*$/.test(stretch(p.low, comma, mention.from))) return undefined;
  for (const field of ['setup', 'setting', 'workload', 'part'] as const) for (const slot of g.of[field]) {
    const own = before.map((_, k) => [...new Set(hits.filter((h) => h.slot === slot && h.segment === first - n + k && h.baseOf < 0).map((h) => h.value))]);
    if (own.every((v) => v.length === 1) && new Set(own.flat()).size === n && !hits.some((h) => h.slot === slot && h.from > comma)) return { slot, values: own.flat() };
  }
  return undefined;
}
