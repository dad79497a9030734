// How far above the air of the room: what can be compared between warm days and cool ones.
import { atReferenceRoom, isFact } from '../../facts/index.js';
import type { Scene, Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';
import { subject } from '../subject.js';

export function overRoom(stage: Stage, scene: Scene, section: string): Draft[] {
  const { facts } = stage;
  return scene.points.flatMap((point): Draft[] => {
    const room = facts.roomFor(point.key);
    const over = room === undefined ? undefined : facts.derive('over_room', [point.key, room]);
    const value = facts.value(point.key);
    if (!isFact(over) || !isFact(value) || value.unit.dimension !== 'temperature' || over.value.round(over.decimals).sign() <= 0) return [];
    return [{ section, facts: [over], text: (v) => `${stage.opening(point.parts)}${subject(stage, point.parts, value.unit)} was ${v.say(over)} over the room ${stage.when(point)}` }];
  });
}

/** What was read, as it would have been in the room that the record names; said as such, and where it differs from what was read. */
export function corrected(stage: Stage, scene: Scene, section: string): Draft[] {
  return scene.points.flatMap((point): Draft[] => {
    const fact = atReferenceRoom(stage.facts, point.key);
    const value = stage.facts.value(point.key);
    if (!fact || !isFact(value) || fact.shown === value.shown) return [];
    return [{ section, facts: [fact], text: (v) => `${stage.opening(point.parts)}${subject(stage, point.parts, value.unit)} was ${v.say(fact)} ${stage.when(point)}, corrected to the reference room` }];
  });
}
