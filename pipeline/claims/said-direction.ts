// Which way the words beside two ends say that it goes, and whether the ends as said go there.
//   "eco lowers the efficiency from 86 to 94"           the verb stands before what is changed
//   "it goes from 1,690 to 1,480 rpm, up by 14 percent"  the way is said after
//   "2.6 degrees warmer, 49.8 after 52.4"                what it is, and what it was or is elsewhere
//   "drops to 44 from 40"
import { changeNouns, changeVerbs, type Mention, phraseAt, stretch } from '../script/index.js';
import type { Parsed } from './parse.js';

export type Direction = 'up' | 'down';

/** Two figures of which one is said to be where it comes from, and that lie the other way round. */
export interface WrongWay { from: Mention; to: Mention; way: Direction }

/** Those that name a thing or a moment as often as a change. */
const ambiguous = /^(?:cut|save|lose|loss|top|lower|heat|warm|cool|over|above|under|below|off|down|up|add|adds|added|gone)$/;
/** Another verb stands between: what goes from the one to the other is not what the first verb changes. */
const carrying = /^(?:takes?|took|brings?|brought|sends?|sent|push(?:es|ed)?|moves?|moved|gets?|got|makes?|made|goes|go|went|comes?|came|is|was|are|were|has|have|had|and|but|while|so|that|which|when|if|because|although|though|not|never|by|to|than|[,;:(—–])$/;

/** The verb that "from" goes with: right before it, or before what is changed. */
export function verbBeforeFrom(p: Parsed, from: number): Direction | undefined {
  for (let i = from - 1; i >= Math.max(0, from - 7); i--) {
    const v = phraseAt(changeVerbs, p.low, i);
    const adjacent = v !== undefined && i + v.words.length === from;
    if (v && i + v.words.length <= from && (v.value === 'up' || v.value === 'down') && !ambiguous.test(v.words[0]!)) {
      // "lowering the fans takes it from …", "the rise goes from …": no verb of this clause.
      if (!adjacent && (/ing$/.test(v.words[0]!) || /^(?:the|a|an|its|their|this|that|of|to|not|n't|never|no)$/.test(p.low[i - 1] ?? '') || (changeNouns.has(v.words[0]!) && !/s$/.test(v.words[0]!)))) return undefined;
      return /^(?:not|n't|never|without|of)$/.test(p.low[i - 1] ?? '') ? undefined : v.value;
    }
    if (carrying.test(p.low[i]!) || p.said.some((s) => s.mention.from <= i && i < s.mention.to)) return undefined;
  }
  return undefined;
}

/** "…, up by 14 percent", "…, 210 more": said of the two ends, and of nothing else that it is compared with. */
export function wayAfter(p: Parsed, second: number): Direction | undefined {
  const next = p.said[second + 1];
  if (!next || next.mention.type !== 'cardinal' || next.cue.op !== 'change' || next.cue.base || (next.cue.way !== 'up' && next.cue.way !== 'down')) return undefined;
  const gap = p.low.slice(p.said[second]!.mention.to, next.mention.from);
  if (!/^[,:(—–-]$/.test(gap[0] ?? '') || !gap.slice(1).every((w) => /^(?:up|down|by|so|or|that's|that|is|a|an|about|around|roughly|nearly|almost|just|some|,)$/.test(w))) return undefined;
  const said = gap.find((w) => w === 'up' || w === 'down') ?? (/^(?:up|down|more|less|fewer|higher|lower)$/.test(p.low[next.mention.to] ?? '') ? next.cue.way : undefined);
  return said === 'up' || said === 'down' ? said : undefined;
}

const instead = /^(?:after|instead of|rather than|against|versus|vs|compared (?:to|with)|,? ?(?:up|down) from)(?: (?:the|its|about|around))?$/;

/** A change, and right after it what it is and what it is compared with. */
export function wrongWays(p: Parsed): WrongWay[] {
  const out: WrongWay[] = [];
  const check = (from: Mention, to: Mention, way: Direction | undefined): void => {
    const rises = to.value.compare(from.value);
    if ((way === 'up' && rises < 0) || (way === 'down' && rises > 0)) out.push({ from, to, way });
  };
  for (let i = 0; i + 1 < p.said.length; i++) {
    const [a, b] = [p.said[i]!, p.said[i + 1]!];
    if (!plain(a.mention) || !plain(b.mention) || a.named || b.named || (a.mention.unit && b.mention.unit && a.mention.unit.dimension !== b.mention.unit.dimension)) continue;
    const gap = p.low.slice(a.mention.to, b.mention.from);
    const change = p.said[i - 1];
    if (change && change.cue.op === 'change' && !change.cue.base && (change.cue.way === 'up' || change.cue.way === 'down') && instead.test(gap.join(' ')) && closes(p, i, change.cue.because)) check(b.mention, a.mention, change.cue.way);
    // "drops to 44 from 40"
    if (gap.join(' ') === 'from' && p.low[a.mention.from - 1] === 'to') check(b.mention, a.mention, verbBeforeFrom(p, a.mention.from - 1));
  }
  return out;
}

/** The figure is one of the two that are set against each other right after a change: what it is, or what that was. */
export function endAfterChange(p: Parsed, i: number): 'is' | 'was' | undefined {
  const against = (k: number): boolean => {
    const [a, b, change] = [p.said[k]?.mention, p.said[k + 1]?.mention, p.said[k - 1]];
    return a !== undefined && b !== undefined && change?.cue.op === 'change' && a.type === 'cardinal' && b.type === 'cardinal' && instead.test(stretch(p.low, a.to, b.from)) && closes(p, k, change.cue.because);
  };
  return against(i) ? 'is' : against(i - 1) ? 'was' : undefined;
}

/** "2.6 degrees cooler, 49.8 …": nothing but the words of the change and a comma stand between. */
function closes(p: Parsed, i: number, because: string): boolean {
  const gap = p.low.slice(p.said[i - 1]!.mention.to, p.said[i]!.mention.from);
  const words = because.split(' ');
  return gap.length > 0 && /^[,:(—–-]$/.test(gap.at(-1)!) && gap.slice(0, -1).every((w) => words.includes(w));
}

export function plain(m: Mention): boolean {
  return m.type === 'cardinal' && !m.hedge && !m.idle;
}
