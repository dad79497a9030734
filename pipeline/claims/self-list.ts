// "K9 and M5 draw 40, 61 and 70 watts respectively": as many numbers as names, or nobody can tell whose is whose.
import { numberLists } from './lists.js';
import type { Parsed } from './parse.js';
import { eachSentence, type SelfCheck, type SelfFault } from './self-check.js';

export const selfList: SelfCheck = {
  code: 'self-list',
  says: 'A list of names and the numbers said of them "respectively" differ in length',
  help: 'Say one number for each name, in the same order.',
  right: [
    'The bench and the case reach 61 and 66 degrees respectively.',
    'Quiet, medium and full speed give 30.2, 35.1 and 43.8 decibels, respectively.',
    'At idle and under load, the first card and the second card draw 14, 15, 240 and 298 watts respectively.',
    'They draw 14 and 298 watts respectively.',
    'The stove draws 14, 61 and 298 watts at low, middle and high respectively.',
    'For the ladle, the spoon and the whisk she needs 3.2, 2.5 and 6.4 grams respectively.',
    'The kettle wins, full and empty, by 3.1 and 2.4 minutes respectively.',
    'The signs say 30, 50 and 80 metres respectively, and that is where the path begins.',
    'Minutes for this one, respectively for the kettle, the pan and the pot: 3.5, 6.2 and 9.8 minutes.',
  ],
  wrong: [
    ['The bench and the case reach 61, 64 and 66 degrees respectively.', '61, 64 and 66 degrees'],
    ['The stove draws 14 and 298 watts at low, middle and high respectively.', '14 and 298 watts'],
    ['Quiet, medium and full speed give 30.2 and 43.8 decibels, respectively.', '30.2 and 43.8 decibels'],
    ['For the ladle and the spoon she needs 3.2, 2.5 and 6.4 grams respectively.', '3.2, 2.5 and 6.4 grams'],
  ],
  run: eachSentence(look),
};

function look(p: Parsed): SelfFault[] {
  if (!p.low.includes('respectively')) return [];
  const lists = numberLists(p);
  if (lists.length !== 1) return [];
  const list = lists[0]!;
  const [first, last] = [p.said[list[0]!]!.mention, p.said[list.at(-1)!]!.mention];
  // Other figures in the sentence may be what the list is told by ("at 150, 200 and 250 watts").
  if (p.said.length !== list.length || p.quiet.length > 0) return [];
  const counts = [...named(p, 0, first.from), ...named(p, last.to, p.low.length)];
  if (counts.length !== 1 || counts[0]!.includes(list.length)) return [];
  const { start } = first;
  return [{ code: 'self-list', start, end: last.end, against: [], message: `${counts[0]![0]} things are named, but ${list.length} numbers are said of them respectively` }];
}

const stop = /^(?:[.;:()]|respectively|that|which|while|but|because|where|when|if|so)$/;

/** For each run of things joined by "and" between two bounds, how many there may be, the likeliest first. */
function named(p: Parsed, from: number, to: number): number[][] {
  const out: number[][] = [];
  for (let i = from; i < to; i++) {
    if (p.low[i] !== 'and' && p.low[i] !== '&') continue;
    // "…, and that is where it begins": another sentence, and no thing.
    if (/^(?:that|this|it|it's|that's|they|we|i|you|which)$/.test(p.low[i + 1] ?? '')) continue;
    let things = 2;
    let words = 0;
    // "the K9 the M5 and the A3", as captions write it: how many things that are cannot be told.
    const left = p.low.slice(Math.max(from, i - 8), i);
    if (left.slice(left.lastIndexOf(',') + 1).filter((w) => /^(?:the|a|an|my|our|its)$/.test(w)).length > 1) return [];
    for (let k = i - 1; k >= from && !stop.test(p.low[k]!); k--) {
      if (p.low[k] === ',') {
        // A comma right before the "and" closes the same list; one after a long stretch belongs to the sentence.
        if (k === i - 1) { words = 0; continue; }
        if (words === 0 || words > 4) break;
        things++;
        words = 0;
      } else words++;
    }
    // What stands before the first comma may be an opening of its own: "At idle, A and B"; after the numbers it is part of the list: "at low, middle and high".
    const opened = things > 2 && from === 0 && opens(p, from);
    // "For the ladle, the spoon and the whisk, …": the opening may be the first of them.
    const may = opened && opensWithThing.test(p.low[from] ?? '') ? [things - 1, things] : [opened ? things - 1 : things];
    // "It wins, full and empty, by …": between commas, what stands before them need be none of the list.
    if (things > 2 && p.low.slice(i + 1, Math.min(to, i + 4)).includes(',')) may.push(2);
    out.push(may);
  }
  return out;
}

/** Words that lead to what a list is of, as well as to where or when it is told. */
const opensWithThing = /^(?:for|with|on|in|at|under|from)$/;

function opens(p: Parsed, from: number): boolean {
  const first = p.low.slice(from).indexOf(',');
  return /^(?:at|in|on|under|with|for|from|after|before|across|over)$/.test(p.low[from] ?? '') || (first === 1 && p.low[from] !== undefined && /^(?:here|now|then|still|again|so|well|okay|first|next|meanwhile|there|finally)$/.test(p.low[from]!));
}
