// How far above the air of the room: what can be compared between warm days and cool ones.
import { isFact } from '../../facts/index.js';
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
