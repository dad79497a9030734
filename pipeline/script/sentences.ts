// Sentences of a script, in order, with the section they stand in.
import { type Block, blocks } from './blocks.js';
import { withoutMarkup } from './markup.js';

export interface Sentence {
  /** Markup within is blanked out; as long as what stands in the script. */
  text: string;
  /** Offset of its first character in the whole text. */
  start: number;
  kind: 'text' | 'heading' | 'direction' | 'comment';
  depth: number;
  /** First of its line; a new paragraph or section begins with `opens`. */
  newLine: boolean;
  opens: boolean;
}

const abbreviations = /(?:^|[\s(])(?:e\.g|i\.e|vs|approx|ca|no|nr|fig|min|max|mr|mrs|dr|st|etc|resp|incl|excl|ca|sec|temp|avg)$/i;

/** A transcript without full stops can be one line of thousands of words; no sentence is longer than this. */
const longest = 600;

/** Where a stretch that is too long is best cut: before the last clause of it, else at a space. */
function breakIn(text: string, from: number, to: number): number {
  for (const joint of [/[,;:—](?=\s)(?!.*[,;:—]\s)/s, /\s(?=(?:and|but|so|while|then)\s)(?!.*\s(?:and|but|so|while|then)\s)/s, /\s(?!.*\s)/s]) {
    const half = from + Math.floor((to - from) / 2);
    const m = joint.exec(text.slice(half, to));
    if (m) return half + m.index + 1;
  }
  return to;
}

export function sentences(text: string): Sentence[] {
  const out: Sentence[] = [];
  for (const b of blocks(text)) {
    if (b.kind === 'other') continue;
    if (b.kind !== 'text') {
      out.push({ text: text.slice(b.start, b.end), start: b.start, kind: b.kind, depth: b.depth, newLine: true, opens: b.opens });
      continue;
    }
    splitLine(text, b, out);
  }
  return out;
}

function splitLine(text: string, b: Block, out: Sentence[]): void {
  let from = b.start;
  let newLine = true;
  const push = (to: number): void => {
    let s = from;
    while (s < to && /\s/.test(text[s]!)) s++;
    let e = to;
    while (e > s && /\s/.test(text[e - 1]!)) e--;
    if (e > s) {
      out.push({ text: withoutMarkup(text.slice(s, e)), start: s, kind: 'text', depth: 0, newLine, opens: newLine && b.opens });
      newLine = false;
    }
    from = to;
  };
  for (let i = b.start; i < b.end; i++) {
    const c = text[i]!;
    if (i - from >= longest) {
      push(breakIn(text, from, i));
      i--;
      continue;
    }
    if (c !== '.' && c !== '?' && c !== '!' && c !== '…') continue;
    let j = i + 1;
    while (j < b.end && /[.?!…"'”’)\]*_]/.test(text[j]!)) j++;
    if (j < b.end && !/\s/.test(text[j]!)) continue;
    if (c === '.' && abbreviations.test(text.slice(Math.max(from, i - 12), i))) continue;
    push(j);
    i = j - 1;
  }
  push(b.end);
}
