// A place in a ranking in the writer's own form: "second coolest", "the coolest", "third".
import { ordinalInWords } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { cased } from './number.js';
import type { Told } from './told.js';
import { opposite } from './way.js';

/** "second coolest", "2nd-coolest", "coolest", "least efficient". */
const placed = /^(?:(\d+(?:st|nd|rd|th)|second|third|\w+th)([ -]))?((?:most|least) \w+|\w+)$/i;

/** The mention's text with the place put right; undefined where it says more than a place. */
export function rightPlace(m: Mention, text: string, { fact }: Told): string | undefined {
  const place = fact.value.toNumber();
  if (!Number.isInteger(place) || place < 1) return undefined;
  if (m.type === 'ordinal') return m.form === 'words' ? cased(text, ordinalInWords(place)) : text.replace(/^\d+(?:st|nd|rd|th)/, `${place}${suffix(place)}`);
  const said = placed.exec(text);
  if (!said || m.type !== 'superlative') return undefined;
  const [, ordinal, join = ' ', word] = said;
  if (place === 1) return cased(text, word!.toLowerCase());
  // The last of many is told from the other end.
  const last = place === fact.keys.length && !ordinal ? opposite(word!.toLowerCase()) : undefined;
  if (last) return cased(text, last);
  const digits = ordinal && /^\d/.test(ordinal);
  return cased(text, `${digits ? `${place}${suffix(place)}` : ordinalInWords(place)}${join}${word!.toLowerCase()}`);
}

function suffix(n: number): string {
  const tens = n % 100;
  return tens > 10 && tens < 14 ? 'th' : ['th', 'st', 'nd', 'rd'][n % 10] ?? 'th';
}
