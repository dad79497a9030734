// What a stretch of a sentence leaves unsaid: its verb, which is that of the stretch before ("gives the one 11 watts and the other 8").
import { changeNouns, changeVerbs, type Mention, phraseAt, stretch } from '../script/index.js';
import { goesOnAsShare } from './gapped.js';
import type { Parsed, Said } from './parse.js';
import { endAfterChange } from './said-direction.js';
import { insideBase } from './standing-by.js';

const verbal = /^(?:is|are|was|were|be|to|at|reads?|hits?|reaches|reached|settles|settled|draws|drew|with|has|have|had|sits|sat|lands|landed|averages|averaged|measures|measured|comes|came|gets|got|shows|showed|needs|takes|took|runs|ran|makes|it's|that's|:|from|gives|gave|stays|stayed|weighs|ends|ended|starts|goes|go|went|does|did|adds)$/;

/** A stretch without a verb of its own goes on with that of the one before. */
export function elide(p: Parsed): void {
  for (let i = 1; i < p.said.length; i++) {
    const { cue, segment, mention } = p.said[i]!;
    const before = i > 1 && insideBase(p, i - 2, i - 1) ? p.said[i - 2]! : p.said[i - 1]!;
    if (cue.op !== 'value' || (before.cue.op !== 'change' && before.cue.op !== 'share' && !before.cue.elided) || cue.because) continue;
    // "58 degrees over the room; the Larch, by contrast, 53": so much over it too.
    if (before.cue.overRoom && placedIn(p, { from: before.mention.to, to: mention.from }, mention) && !p.low.slice(before.mention.to, mention.from).some((w) => verbal.test(w))) { cue.overRoom = true; }
    // "1.9 degrees warmer, 40.1 after 38.2": no changes, but what it changed to and from.
    if (endAfterChange(p, i)) continue;
    const words = p.low.slice(Math.max(segment.from, before.mention.to), mention.from);
    // "22.0 on the one, so 4.5 more than before, and 24.9 on its rival": the second goes with the first, not with the aside.
    const place = /^(?:on|in|for|at|with)$/;
    const first = p.said[i - 2];
    if (first?.cue.op === 'value' && first.mention.decimals === mention.decimals && place.test(p.low[first.mention.to] ?? '') && place.test(p.low[mention.to] ?? '') && p.low.slice(before.segment.from, before.segment.from + 2).includes('so')) continue;
    // "needs 4.1, which is 60 percent less than before, and the other 3.3": the aside is over.
    const aside = p.low.slice(before.segment.from, before.mention.from).filter((w) => w !== ',')[0] ?? '';
    if (first?.cue.op === 'value' && first.mention.decimals === mention.decimals && mention.decimals > 0 && !mention.unit && before.mention.unit?.id === '%' && /^(?:which|that's|or)$/.test(aside) && placedIn(p, { from: before.mention.to, to: mention.from }, mention)) continue;
    // "sheds 7 percent, 58.1 now": where it is.
    if (/^(?:now|today|currently|instead)$/.test(p.low[mention.to] ?? '') || /^(?:now|today|currently)$/.test(p.low[mention.from - 1] ?? '')) continue;
    // … and what follows a figure as its share is one like the share before.
    const next = p.said[i + 1];
    if (first?.cue.op === 'value' && first.mention.decimals === mention.decimals && before.cue.op === 'share' && next?.cue.op === 'value' && next.mention.sharedUnit && goesOnAsShare(p.low, mention, next.mention)) { next.cue.elided = before.cue; continue; }
    // "3.1 degrees cooler, 41.2 after 44.3": what it is now, and what it was.
    if (p.low[mention.to] === 'after' && p.said[i + 1]?.mention.from === mention.to + 1) continue;
    // "65 percent of the 38.4 it needs": what the share is of, and no share itself.
    if (before.cue.op === 'share' && before.cue.base && mention.from >= before.cue.base.from && mention.from < before.cue.base.to) continue;
    if (before.cue.op === 'change' && becomesOf(p, i, before.cue.because)) { cue.elided = before.cue; continue; }
    // "a gap of 3 volts on the one, and on the other it is 20": as big as that gap is there.
    const again = before.cue.op === 'change' && changeNouns.has(before.cue.because) && /\b(?:it's|that's|(?:it|that) (?:is|was|comes to|becomes))(?: (?:only|just|already|about|almost|nearly|still|even))*$/.test(words.join(' ')) && placedIn(p, segment, mention);
    // "was at 97 percent of its cap with the fan off, and it's at 83 with it on": the same again.
    const parallel = before.cue.op === 'share' && !mention.unit && [mention, before.mention].every((m) => p.low[m.from - 1] === 'at');
    if (!again && !parallel && words.length > 9 || words.some((w) => verbal.test(w)) && !again && !parallel || words.some((w) => /^(?:;|\(|[-–—])$/.test(w)) && !gapAfter(p, before.mention.to, mention.from)) continue;
    cue.elided = before.cue.elided ?? before.cue;
  }
}

/** "It lies 20 below the ceiling; the Larch's, only 12.": between two numbers stand a semicolon and a thing, and no more than "only" or "about". */
function gapAfter(p: Parsed, from: number, to: number): boolean {
  const semicolon = p.low.indexOf(';', from);
  if (semicolon < 0 || semicolon >= to) return false;
  const name = p.names.find((n) => n.from > semicolon && n.from <= semicolon + 3 && n.to <= to && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting')));
  return name !== undefined && p.low.slice(name.to, to).every((w) => /^(?:,|'s|only|just|a|about|by|contrast|even|still|and|mere|full|whole|barely|almost|nearly)$/.test(w));
}

/** "the gap is 3.3, and flat out it shrinks to 2.1": it is the gap that does. */
function becomesOf(p: Parsed, i: number, noun: string): boolean {
  const { mention } = p.said[i]!;
  const words = p.low.slice(p.said[i - 1]!.mention.to, mention.from).filter((w) => !/^(?:only|just|about|around|nearly|almost|barely|a|mere|still|then|back)$/.test(w));
  if (phraseAt(changeNouns, [noun], 0) === undefined || mention.unit || words.at(-1) !== 'to') return false;
  return [2, 3].some((k) => /^(?:it|that|this|which)$/.test(words.at(-1 - k) ?? '') && phraseAt(changeVerbs, words, words.length - k)?.words.length === k - 1);
}

/** A thing, a setting or a load is named before the number, in its own stretch. */
function placedIn(p: Parsed, segment: Said['segment'], m: Mention): boolean {
  return p.names.some((n) => n.from >= segment.from && n.to <= m.from && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting' || f === 'workload')));
}

/** "The Alder saves the most, 3 watts": so much is what it saves. */
export function mostChanged(p: Parsed): void {
  for (const [k, { mention: m }] of p.said.entries()) {
    const next = p.said[k + 1];
    if (!m.superlative || !/^(?:most|least)$/.test(p.low[m.from]!) || next?.cue.op !== 'value' || !next.mention.unit || !/^(?:,|by|with|at|, by|, with|, at|:)$/.test(stretch(p.low, m.to, next.mention.from))) continue;
    const at = m.from - (p.low[m.from - 1] === 'the' ? 2 : 1);
    const verb = at < 0 ? undefined : phraseAt(changeVerbs, p.low, at);
    if (verb?.words.length === 1) Object.assign(next.cue, { op: 'change', way: verb.value, because: verb.words[0] });
  }
}
