// How fast a temperature goes to its level, where its logs tell: "settled with a time constant of thirty-eight seconds".
import { approachesOf, isFact } from '../../facts/index.js';
import type { Scene, Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';
import { subject } from '../subject.js';

export function timeConstants(stage: Stage, scene: Scene, section: string): Draft[] {
  return scene.points.flatMap((point): Draft[] => {
    const constant = approachesOf(stage.facts, point.key).find((f) => f.variant === 'time-constant');
    const value = stage.facts.value(point.key);
    if (!constant || !isFact(value)) return [];
    return [{ section, facts: [constant], text: (v) => `${stage.opening(point.parts)}${subject(stage, point.parts, value.unit)} settled with a time constant of ${v.say(constant)} ${stage.when(point)}` }];
  });
}
