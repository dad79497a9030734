// How long a clock was held back: seconds and their share in one sentence.
import { isFact, type Key, splitKey, withFields } from '../../facts/index.js';
import { namedOf, noun } from '../names.js';
import type { Scene, Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';

const [time, share] = ['throttled_time', 'throttled_share'];

export function throttling(stage: Stage, scene: Scene, section: string): Draft[] {
  return scene.points.flatMap(({ key, parts }): Draft[] => {
    const lasted = parts.measure === time ? stage.facts.value(key) : undefined;
    if (!isFact(lasted)) return [];
    const part = withFields(key, { measure: share });
    const of = stage.facts.readings(part).length ? stage.facts.value(part) : undefined;
    const held = `${stage.opening(parts)}${noun(namedOf(stage.facts, 'part', parts.part)) ?? 'the clock'} was`;
    const when = stage.when({ key, parts });
    if (lasted.value.sign() === 0) return [{ section, facts: [], text: () => `${held} never throttled ${when}` }];
    if (!isFact(of)) return [{ section, facts: [lasted], text: (v) => `${held} throttled for ${v.say(lasted)} ${when}` }];
    return [{ section, facts: [lasted, of], text: (v) => `${held} throttled for ${v.say(lasted)} ${when}, which is ${v.say(of)} of the time` }];
  });
}

/** Whether a key is told here and nowhere else. */
export function throttlingTold(stage: Stage, key: Key): boolean {
  const at = splitKey(key);
  return at?.measure === time || (at?.measure === share && stage.facts.readings(withFields(key, { measure: time })).length > 0);
}
