// How far above the air of the room: what can be compared between warm days and cool ones.
import { type Fact, isFact } from '../../facts/index.js';
import type { Point, Scene, Stage } from '../scenes.js';
import { type Draft, list } from '../sentence.js';
import { subject } from '../subject.js';
import { inBreaths } from './values.js';

export function overRoom(stage: Stage, scene: Scene, section: string): Draft[] {
  const phases = new Map<string, { point: Point; over: Fact; name: string }[]>();
  for (const point of scene.points) {
    const room = stage.facts.roomFor(point.key);
    const over = room === undefined ? undefined : stage.facts.derive('over_room', [point.key, room]);
    const value = stage.facts.value(point.key);
    if (!isFact(over) || !isFact(value) || value.unit.dimension !== 'temperature' || over.value.round(over.decimals).sign() <= 0) continue;
    phases.set(point.parts.phase, [...(phases.get(point.parts.phase) ?? []), { point, over, name: subject(stage, point.parts, value.unit) }]);
  }
  return [...phases.values()].flatMap(inBreaths).map((group) => {
    const { point } = group[0]!;
    const facts = group.map((g) => g.over);
    const opening = `${stage.opening(point.parts)}${list(group.map((g) => g.name))}`;
    const when = stage.when(point);
    if (facts.length === 1) return { section, facts, text: (v) => `${opening} was ${v.say(facts[0]!)} over the room ${when}` };
    return { section, facts, text: (v) => `${opening} were ${v.numbers(facts)} over the room ${when}, respectively` };
  });
}
