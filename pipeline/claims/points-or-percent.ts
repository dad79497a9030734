// Percent said for percentage points, and points for percent: the number is right, and the word after it is the other one.
import type { Candidate, Context } from './context.js';
import { unit } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { fit } from './decide.js';
import { readChange } from './read-change.js';
import { readPoints } from './read-points.js';
import { readShare } from './read-share.js';
import type { Reading } from './read.js';

function sayingInstead(c: Context, index: number, id: '%' | 'points'): Context {
  const said = c.parsed.said.map((s, i) => (i === index ? { ...s, mention: { ...s.mention, unit: unit(id) } as Mention } : s));
  return { ...c, parsed: { ...c.parsed, kept: [], said } };
}

const likely = 0.35;

function rightInstead(shadow: Context, index: number, found: readonly Candidate[]): Candidate | undefined {
  return [...found].sort((a, b) => a.cost - b.cost).find((x) => x.cost <= likely && fit(shadow.parsed.said[index]!.mention, x));
}

/** "28 percent apart" between two shares that are 28 points apart. */
export function percentForPoints(c: Context, index: number, d: Reading): Reading {
  const { cue } = c.parsed.said[index]!;
  const follows = !d.chosen?.firm && !cue.of?.length && apartBy(c, index);
  if (cue.op === 'share' || (d.verdict === 'agrees' && !follows && (d.chosen!.cost <= 0.15 || d.chosen!.kind === 'mean'))) return d;
  const shadow = sayingInstead(c, index, 'points');
  const right = rightInstead(shadow, index, readPoints(shadow, index));
  if (!right || (d.verdict === 'agrees' && !follows && d.chosen!.cost <= right.cost + 0.1)) return d;
  const shares = right.term.args.every((a) => typeof a !== 'string');
  if (cue.op === 'value' && !shares) return d;
  return { ...d, verdict: 'disagrees', chosen: right, why: 'percentage points are meant', insisted: true };
}

/** "72 percent, down from 96, so 24 percent": just what the two percentages said before lie apart. */
function apartBy(c: Context, index: number): boolean {
  const [b, a] = [c.parsed.said[index - 1]?.mention, c.parsed.said[index - 2]?.mention];
  const m = c.parsed.said[index]!.mention;
  if (a?.type !== 'cardinal' || b?.type !== 'cardinal' || (a.unit?.id ?? '%') !== '%' || (b.unit?.id ?? '%') !== '%' || (!a.unit && !b.unit)) return false;
  return a.value.minus(b.value).abs().equals(m.value.abs());
}

/** "69 percentage points more water", where it is 69 percent more. */
export function pointsForPercent(c: Context, index: number, d: Reading): Reading {
  if (d.verdict === 'agrees') return d;
  const shadow = sayingInstead(c, index, '%');
  const low = c.parsed.low;
  const found = low[c.parsed.said[index]!.mention.to] === 'of' ? readShare(shadow, index) : readChange(shadow, index);
  const right = rightInstead(shadow, index, found);
  return right ? { ...d, verdict: 'disagrees', chosen: right, why: 'percent is meant', insisted: true } : d;
}
