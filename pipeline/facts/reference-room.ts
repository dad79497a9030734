// Temperatures corrected to the room that the record names, beside what was read and never in its place.
import { type Key, splitKey } from '../records/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { isMeasured } from './measured.js';
import { roomParts } from './neighbours.js';

/** Undefined where the record asks for none, where the room was not read, and for what is no temperature of a thing. */
export function atReferenceRoom(facts: Facts, key: Key): Fact | undefined {
  const { referenceRoom } = facts.about;
  const at = splitKey(key);
  const room = facts.roomFor(key);
  if (!referenceRoom || !at || roomParts.includes(at.part) || room === undefined || !isMeasured(facts, key)) return undefined;
  const { value, unit, decimals } = referenceRoom;
  const corrected = facts.derive('at_room', [key, room, `=${value.toFixed(decimals)}${unit.id}`]);
  return isFact(corrected) ? corrected : undefined;
}

/** Of every temperature that was read, in the order of the record. */
export function atReferenceRooms(facts: Facts): Fact[] {
  return facts.about.referenceRoom ? facts.keys().flatMap((key) => atReferenceRoom(facts, key) ?? []) : [];
}
