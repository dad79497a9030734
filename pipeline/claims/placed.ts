// Whether a bare number is a figure or counts the noun that follows: "it is at 64 now" against "64 screws".
import type { Mention, Token } from '../script/index.js';
import type { Parsed } from './parse.js';

/** Whether a bare number can be a figure here. */
export function placed(t: readonly Token[], m: Mention): boolean {
  if (m.unit || m.decimals > 0) return true;
  const next = t[m.to];
  if (next?.low === '-' && next.tight && t[m.to + 1]?.tight) return false;
  return !next || next.kind !== 'word' || following.has(next.low) || !/(?:[^s'’]s|people|men|women|feet|children)$/.test(next.low);
}
export const following = new Set(['in', 'on', 'at', 'under', 'for', 'with', 'and', 'or', 'to', 'when', 'while', 'but', 'so', 'which', 'as', 'from', 'after', 'before', 'by', 'over', 'above', 'below', 'than', 'flat', 'respectively', 'against', 'up', 'down', 'here', 'there', 'now', 'instead', 'the', 'it', 'that', 'this', 'then', 'idle', 'full', 'once', 'versus', 'plus', 'if', 'where', 'because', 'of', 'is', 'was', 'across', 'through', 'more', 'less', 'behind', 'ahead', 'again', 'per', 'a', 'an', 'without', 'inside', 'during', 'only', 'still', 'too', 'mark', 'that\'s', 'it\'s', 'there\'s', 'is', 'this', 'we', 'you', 'they', 'i', 'he', 'she', 'what', 'are', 'has', 'have', 'not', 'even', 'also', 'either', 'though', 'compared', 'vs', 'meaning', 'making', 'pretty', 'quite', 'really', 'right', 'okay', 'ok', 'well', 'almost', 'just', 'nearly', 'about', 'although', 'yet', 'since', 'until', 'between', 'at', 'these', 'those', 'his', 'its', 'my', 'our', 'your', 'their', 'apart', 'back', 'away', 'off', 'down', 'between', 'versus', 'plus', 'minus', 'times', 'done', 'long', 'later', 'ahead', 'overall', 'respectively', 'total', 'as', 'was', 'were', 'will', 'would', 'can', 'could', 'does', 'did', 'do', 'no', 'all', 'both', 'each', 'never', 'always', 'already', 'basically', 'actually', 'honestly', 'there', 'here', 'let\'s', 'let', 'because', 'than', 'fewer', 'higher', 'lower', 'better', 'worse', 'cooler', 'warmer', 'hotter', 'quieter', 'louder', 'faster', 'slower', 'points', 'less', 'versus', 'less']);

/** "The quietest is the Kestrel on slow, 31.5 decibels": a figure behind a comma alone is that of what was named just before. */
export function apposed(p: Parsed, index: number, at: number): boolean {
  const { mention, segment } = p.said[index]!;
  const before = p.said[index - 1];
  return before?.mention.superlative !== undefined && mention.type === 'cardinal' && segment.from === mention.from - 1 && p.low[segment.from] === ',' && at >= before.mention.to && p.low.slice(before.mention.to, at).some((w) => /^(?:is|was|:)$/.test(w));
}
