// "28.4 above the room", "Against ambient, that is 40": a rise over the air around.
import { stretch } from '../script/index.js';
const roomPhrases = [['over', 'room'], ['over', 'the', 'room'], ['above', 'room'], ['above', 'the', 'room'], ['above', 'ambient'], ['over', 'ambient'], ['over', 'the', 'ambient'], ['above', 'the', 'ambient'], ['over', 'air'], ['warmer', 'than', 'the', 'room'], ['hotter', 'than', 'the', 'room'], ['over', 'intake'], ['above', 'intake'], ...['the room', 'room', 'ambient', 'the ambient'].flatMap((w) => ['against', 'relative to', 'compared with', 'compared to', 'measured from', 'on top of'].map((o) => `${o} ${w}`.split(' ')))];
const roomWords = new Set(roomPhrases.map((p) => p.at(-1)!));

/** Whether the words of a stretch, or those that open its sentence, set a figure against the room. */
export function aboveRoom(low: readonly string[], segment: readonly string[]): boolean {
  return low.some((w) => roomWords.has(w)) && (withoutRoom(low) || hasPhrase([...stretch(low, 0, 7).match(/^(?:(?:so|and|but|now|then|,) )*(?:over|above|against|relative to|compared (?:with|to)|measured (?:from|against)|on top of) (?:the )?(?:room|ambient|intake)/) ? ['over', 'room'] : [], ...segment], roomPhrases));
}

/** "Take off the room and …", "With the room taken out, …", "Minus the room, …": what opens the sentence takes it from all that follows. */
function withoutRoom(low: readonly string[]): boolean {
  const opening = stretch(low, 0, 14);
  return /^(?:(?:so|and|but|now|then|or|,|if|once|when|you|we|i|let's|just) )*(?:take|takes|taking|subtract|subtracting|deduct|deducting|without|minus|less|leave|leaving|strip|stripping|knock|count|counting)(?: (?:off|away|out|from))?(?: of)? (?:the |our )?(?:room|ambient)\b/.test(opening)
    || /^(?:(?:so|and|but|now|then|,) )*with (?:the )?(?:room|ambient)(?: temperature)?(?: (?:taken|subtracted|deducted|left|knocked|stripped))(?: (?:off|away|out))?\b/.test(opening);
}

export function hasPhrase(low: readonly string[], phrases: readonly (readonly string[])[]): boolean {
  return phrases.some((p) => { for (let i = low.indexOf(p[0]!); i >= 0; i = low.indexOf(p[0]!, i + 1)) if (p.every((w, k) => low[i + k] === w)) return true; return false; });
}
