// Figures said side by side.
import type { Parsed } from './parse.js';

const numberGlue = new Set([',', 'and', 'or', 'then', '&', 'about', 'around', 'roughly', 'nearly', 'almost', 'just', 'over', 'under', 'finally', 'to', 'down', 'up', '/']);

/** Runs of figures joined by commas, "and", "to". */
export function numberLists(p: Parsed): number[][] {
  const out: number[][] = [];
  let run: number[] = [];
  p.said.forEach((s, i) => {
    const before = p.said[i - 1];
    const figure = (s.mention.type === 'cardinal' || s.mention.type === 'ordinal') && !s.named;
    if (before && before.mention.type !== s.mention.type) { if (run.length > 1) out.push(run); run = []; }
    let joined = figure && before !== undefined && run.length > 0;
    for (let k = before?.mention.to ?? 0; joined && k < s.mention.from; k++) joined = numberGlue.has(p.low[k]!);
    if (joined && s.mention.from === before!.mention.to && (s.mention.form !== 'digits' || before!.mention.unit && !before!.mention.sharedUnit)) joined = false;
    // "88.2 frames per second, 6 percent more" is no list, nor is "from 36 decibels to 33, or 9 percent".
    if (joined && before!.mention.unit && s.mention.unit && !s.mention.sharedUnit && before!.mention.unit.dimension !== s.mention.unit.dimension) joined = false;
    if (joined && before!.mention.unit && !before!.mention.sharedUnit && before!.mention.unit.id !== s.mention.unit?.id) joined = false;
    // "the one takes 238 watts and the other 280, or 95 and 93 percent of …"
    if (joined && before!.mention.unit && s.mention.unit && (before!.mention.unit.id === '%') !== (s.mention.unit.id === '%')) joined = false;
    // "93 against 88, 6 percent", "27.6 watts against 22.8, and 46.9 degrees": the one is set against what stands before it, the other is of its own.
    if (joined && s.mention.unit && !s.mention.sharedUnit && !before!.mention.unit && /^(?:against|versus|vs)$/.test(p.low[before!.mention.from - 1] ?? '')) joined = false;
    if (joined) run.push(i);
    else {
      if (run.length > 1) out.push(run);
      run = figure ? [i] : [];
    }
  });
  if (run.length > 1) out.push(run);
  return out;
}

/** "Respectively", or "in that order"; of two rows before it, "It is 71, 64 and 58, and the lid takes 5, 4 and 3 off those respectively", it is said of the one next to it. */
export function saidRespectively(p: Parsed, runs: readonly (readonly number[])[], run: readonly number[]): boolean {
  const at = p.low.indexOf('respectively');
  const mention = (k: number): { from: number; to: number } => p.said[k]!.mention;
  const nearer = runs.some((r) => mention(r[0]!).from > mention(run.at(-1)!).from && mention(r.at(-1)!).to <= at);
  return (at >= 0 && !nearer) || /\b(?:same|that|this) order\b/.test(p.low.join(' '));
}
