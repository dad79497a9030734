// "28.4 above the room", "Against ambient, that is 40": a rise over the air around.
import { stretch } from '../script/index.js';
const roomPhrases = [['over', 'room'], ['over', 'the', 'room'], ['above', 'room'], ['above', 'the', 'room'], ['above', 'ambient'], ['over', 'ambient'], ['over', 'the', 'ambient'], ['above', 'the', 'ambient'], ['over', 'air'], ['warmer', 'than', 'the', 'room'], ['hotter', 'than', 'the', 'room'], ['over', 'intake'], ['above', 'intake'], ...['the room', 'room', 'ambient', 'the ambient'].flatMap((w) => ['against', 'relative to', 'compared with', 'compared to', 'measured from', 'on top of'].map((o) => `${o} ${w}`.split(' ')))];
const roomWords = new Set(roomPhrases.map((p) => p.at(-1)!));

/** Whether the words of a stretch, or those that open its sentence, set a figure against the room. */
export function aboveRoom(low: readonly string[], segment: readonly string[]): boolean {
  return low.some((w) => roomWords.has(w)) && hasPhrase([...stretch(low, 0, 5).match(/^(?:over|above|against|relative to|compared (?:with|to)|measured (?:from|against)|on top of) (?:the )?(?:room|ambient|intake)/) ? ['over', 'room'] : [], ...segment], roomPhrases);
}

export function hasPhrase(low: readonly string[], phrases: readonly (readonly string[])[]): boolean {
  return phrases.some((p) => { for (let i = low.indexOf(p[0]!); i >= 0; i = low.indexOf(p[0]!, i + 1)) if (p.every((w, k) => low[i + k] === w)) return true; return false; });
}
