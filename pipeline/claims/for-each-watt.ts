// A quotient whose unit stands apart from its number: "Frames per watt: 0.52 for the one", "0.72 frames for every watt, up from 0.60".
import { perUnit, type Unit, unit } from '../quantities/index.js';
import { unitAt } from '../script/index.js';
import { type Context, withMention } from './context.js';
import { isMeasuredIn, readQuotient } from './read-quotient.js';
import type { Reading } from './read.js';
import { perWatt } from './support.js';

/** Undefined where the number is in no such unit, or the record does not bear it out. */
export function forEachWatt(c: Context, index: number): Reading | undefined {
  const { mention: m, cue } = c.parsed.said[index]!;
  if (m.type !== 'cardinal' || m.decimals < 1 || m.unit?.parts || cue.op === 'ratio' || cue.op === 'share') return undefined;
  const own = goesOn(c, index) ?? named(c, index);
  if (!own || isMeasuredIn(c, own)) return undefined;
  const r = readQuotient(withMention(c, index, { ...m, unit: own, loose: false }), index);
  return r?.verdict === 'agrees' || r?.verdict === 'disagrees' ? r : undefined;
}

/** The unit of the quotient before, as finely said. */
function goesOn(c: Context, index: number): Unit | undefined {
  const { mention: m } = c.parsed.said[index]!;
  const before = c.parsed.said[index - 1]?.mention;
  return !m.unit && before?.decimals === m.decimals && c.done[index - 1]?.kind === 'per_watt' ? c.done[index - 1]!.fact.unit : undefined;
}

function named(c: Context, index: number): Unit | undefined {
  const { mention: m } = c.parsed.said[index]!;
  if (!perWatt(c, index)) return undefined;
  const at = c.parsed.low.findIndex((w, k) => w === 'per' && c.parsed.low[k + 1] === 'watt');
  // "Frames per watt" is read as one unit, where it stands by itself.
  const top = m.unit ?? (at > 0 ? unitAt(c.parsed.tokens, at - 1, true)?.unit : undefined);
  if (top?.parts && !m.unit) return top;
  return top && !top.parts && top.dimension !== 'share' ? perUnit(top, unit('W')) : undefined;
}
