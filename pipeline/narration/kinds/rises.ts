// From idle to load: "rose twenty-nine degrees, from thirty-eight at idle to sixty-seven under load". From nothing, what it rose to is the rise.
import { isFact, splitKey, tooClose } from '../../facts/index.js';
import type { Point, Scene, Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';
import { addsUp, subtracts } from '../voice.js';
import { subject } from '../subject.js';

/** Whether a rise is told and tells the value under load with it. */
export function risen(stage: Stage, key: string): boolean {
  const idle = stage.facts.idleOf(key);
  const change = idle === undefined ? undefined : stage.facts.derive('rise', [key, idle]);
  return isFact(change) && subtracts(change);
}

export function rises(stage: Stage, scene: Scene, section: string): Draft[] {
  return scene.points.flatMap((point) => rise(stage, point, section));
}

function rise(stage: Stage, { key, parts }: Point, section: string): Draft[] {
  const { facts } = stage;
  const idle = facts.idleOf(key);
  if (!idle) return [];
  const change = facts.derive('rise', [key, idle]);
  const high = facts.value(key);
  const low = facts.value(idle);
  if (!isFact(change) || !subtracts(change) || !isFact(high) || !isFact(low)) return [];
  const opening = `${stage.opening(parts)}${subject(stage, parts, high.unit)}`;
  const [before, after] = [stage.when({ key: idle, parts: splitKey(idle)! }), stage.when({ key, parts })];
  if (change.value.round(change.decimals).sign() === 0) {
    return [{ section, facts: [change, high], text: (v) => `${opening} did not change from idle: it stayed at ${v.say(high)} ${after}` }];
  }
  const verb = change.value.sign() > 0 ? 'rose' : 'fell';
  const small = tooClose(facts, high, low) === 'matters' ? ', which is too little to matter' : '';
  if (low.value.round(low.decimals).sign() === 0) return [{ section, facts: [low, high], text: (v) => `${opening} ${verb} from ${v.number(low)} ${before} to ${v.say(high)} ${after}${small}` }];
  if (!addsUp(change, high, low)) return [{ section, facts: [change, high], text: (v) => `${opening} ${verb} ${v.size(change)} from idle and ${verb === 'rose' ? 'reached' : 'came down to'} ${v.say(high)} ${after}${small}` }];
  return [{ section, facts: [change, low, high], text: (v) => `${opening} ${verb} ${v.size(change)}, from ${v.number(low)} ${before} to ${v.number(high)} ${after}${small}` }];
}
