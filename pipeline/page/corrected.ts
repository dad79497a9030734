// Temperatures corrected to the room that the record names, beside what was read.
import { atReferenceRoom, type Fact, type Facts, isFact, quantityName, splitKey } from '../facts/index.js';
import { show } from '../quantities/index.js';
import type { SmallTable } from './conditions.js';
import { held } from './held.js';
import { whereShown } from './places-of.js';

/** Undefined where the record names no room to correct to, or nothing can be corrected. Adds the facts that it shows to `shown`. */
export function corrected(facts: Facts, shown: Fact[]): SmallTable | undefined {
  const { referenceRoom } = facts.about;
  if (!referenceRoom) return undefined;
  const rows = facts.keys().flatMap((key): string[][] => {
    const at = splitKey(key);
    const fact = atReferenceRoom(facts, key);
    const [read, room] = fact ? [facts.value(key), facts.value(facts.roomFor(key)!)] : [];
    if (!at || !fact || !isFact(read) || !isFact(room)) return [];
    shown.push(fact);
    return [[whereShown(facts, at) || 'All', quantityName(facts.about, at.measure, at.part), held(read.shown), held(room.shown), held(fact.shown)]];
  });
  const to = show(referenceRoom.value, referenceRoom.unit, referenceRoom.decimals);
  return rows.length === 0 ? undefined : { caption: `Corrected to a room of ${to}, one degree for each degree of room (common practice)`, head: ['Test', 'Of', 'Read', 'Room', 'Corrected'], rows };
}
