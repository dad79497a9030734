// Against what the record sets: a share of a limit, the room left below it, a target met or missed.
import { type Fact, type Facts, isFact, type Key, splitKey, withFields } from '../../facts/index.js';
import { Exact } from '../../quantities/index.js';
import { boundOf } from '../bounds.js';
import { adverbial, namedOf } from '../names.js';
import type { Point, Scene, Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';
import { quantity, subject } from '../subject.js';
import { baseSetting } from './comparisons.js';

const bounds: { phase: string; noun: string }[] = [{ phase: 'limit', noun: 'limit' }, { phase: 'rated', noun: 'rating' }, { phase: 'target', noun: 'target' }];

export function limits(stage: Stage, scene: Scene, section: string): Draft[] {
  return scene.points.flatMap((point) => bounds.flatMap(({ phase, noun }) => against(stage, point, phase, noun, section)));
}

/** Whether a share of a limit is told of this key, and its value with it. */
export function shared(stage: Stage, key: Key): boolean {
  const value = stage.facts.value(key);
  return isFact(value) && bounds.some(({ phase }) => {
    const bound = boundOf(stage.facts, key, phase);
    return bound !== undefined && phase !== 'target' && shareOf(stage.facts, value, bound) !== undefined;
  });
}

function against(stage: Stage, point: Point, phase: string, noun: string, section: string): Draft[] {
  const { facts } = stage;
  const { key, parts } = point;
  const value = facts.value(key);
  const bound = boundOf(facts, key, phase);
  if (!isFact(value) || !bound) return [];
  const opening = `${stage.opening(parts)}${subject(stage, parts, value.unit)} ${stage.when(point)}`;
  const share = phase === 'target' ? undefined : shareOf(facts, value, bound);
  if (share) return [{ section, facts: [value, share, bound], text: (v) => `${opening} was ${v.say(value)}, which is ${nearly(share)}${v.say(share)} of its ${noun} of ${v.say(bound)}` }];
  const gap = facts.derive('difference', [key, bound.subject]);
  if (!isFact(gap)) return [];
  const level = gap.value.round(gap.decimals).sign();
  if (level === 0) return [{ section, facts: [bound], text: (v) => `${opening} was right at its ${noun} of ${v.say(bound)}` }];
  const room = value.unit.dimension === 'temperature' || (phase === 'limit' && ['temperature-difference', 'sound-level'].includes(value.unit.dimension));
  if (!room) return [{ section, facts: [value, bound], text: (v) => `${opening} was ${v.say(value)}, against its ${noun} of ${v.say(bound)}` }];
  return [{ section, facts: [gap, bound], text: (v) => `${opening} was ${v.size(gap)} ${level > 0 ? 'above' : 'below'} its ${noun} of ${v.number(bound)}` }];
}

/** "just under" where a rounded hundred would claim a whole that it is not. */
function nearly(share: Fact): string {
  const hundred = Exact.of(100);
  if (!share.value.round(share.decimals).equals(hundred) || share.value.equals(hundred)) return '';
  return share.value.compare(hundred) < 0 ? 'just under ' : 'just over ';
}

/** A share means something only where zero is nothing: no temperatures, no sound levels. */
function shareOf(facts: Facts, value: Fact, limit: Fact): Fact | undefined {
  if (['sound-level', 'temperature-difference', 'share'].includes(value.unit.dimension)) return undefined;
  const share = facts.derive('percent_of', [value.subject, limit.subject]);
  return isFact(share) ? share : undefined;
}

/** What a setting allows, against what the base setting allows. */
export function allowances(stage: Stage): Draft[] {
  const { facts } = stage;
  const base = baseSetting(facts, stage.points);
  const told = new Set<string>();
  return stage.points.flatMap((point): Draft[] => {
    const { parts } = point;
    const own = boundOf(facts, point.key, 'limit');
    const baseBound = base && parts.setting !== base ? boundOf(facts, withFields(point.key, { setting: base }), 'limit') : undefined;
    const share = own && baseBound && !own.value.equals(baseBound.value) ? shareOf(facts, own, baseBound) : undefined;
    if (!share || told.has(share.id) || !splitKey(own!.subject)?.setting) return [];
    told.add(share.id);
    const [with_, than] = [parts.setting, base!].map((id) => adverbial(namedOf(facts, 'setting', id), 'setting'));
    const section = 'How it was tested';
    const limit = `${with_}, the limit on ${quantity(stage, parts)} was`;
    const more = own!.value.compare(baseBound!.value) > 0 ? facts.derive('percent_change', [own!.subject, baseBound!.subject]) : undefined;
    if (isFact(more)) return [{ section, facts: [own!, more, baseBound!], text: (v) => `${limit} ${v.say(own!)}, which is ${v.say(more)} more than the ${v.say(baseBound!)} allowed ${than}` }];
    return [{ section, facts: [own!, share, baseBound!], text: (v) => `${limit} ${v.say(own!)}, which is ${v.say(share)} of the ${v.say(baseBound!)} allowed ${than}` }];
  });
}
