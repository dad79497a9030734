// One setting against the base setting, one setup against the first: "233 watts, sixty-five watts lower than at stock, or twenty-two percent less".
import { type Fact, type Facts, isFact, isIdle, withFields, tooClose, whyClose } from '../../facts/index.js';
import { matched } from '../bounds.js';
import { onceRead } from '../closeness.js';
import { adverbial, namedOf, noun } from '../names.js';
import type { Point, Stage } from '../scenes.js';
import { capital, type Draft } from '../sentence.js';
import { addsUp, subtracts } from '../voice.js';
import { comparative, subject } from '../subject.js';

/** Every setting against the base setting in the same setup. */
export function betweenSettings(stage: Stage): Draft[] {
  const base = baseSetting(stage.facts, stage.points);
  if (!base) return [];
  return compareAll(stage, 'setting', base, (parts) => `The settings ${stage.where(parts, ['setting', 'workload'])} against ${calledBy(stage, 'setting', base)}`.replace(/\s+/g, ' '));
}

/** Two setups (more are ranked instead): the other against the first at the same setting. */
export function betweenSetups(stage: Stage): Draft[] {
  const setups = [...new Set(stage.points.map((p) => p.parts.setup))].filter(Boolean);
  if (setups.length !== 2) return [];
  const [base, other] = setups as [string, string];
  return compareAll(stage, 'setup', base, () => capital(`${calledBy(stage, 'setup', other)} against ${calledBy(stage, 'setup', base)}`));
}

function calledBy(stage: Stage, field: 'setup' | 'setting', id: string): string {
  const named = namedOf(stage.facts, field, id);
  return noun(named) ?? `“${adverbial(named, field)}”`;
}

function compareAll(stage: Stage, field: 'setup' | 'setting', base: string, heading: (parts: Point['parts']) => string): Draft[] {
  return stage.points.filter((p) => p.parts[field] && p.parts[field] !== base && !isIdle(p.parts.phase)).flatMap((p) => compare(stage, p, field, base, heading(p.parts)));
}

function compare(stage: Stage, { key, parts }: Point, field: 'setup' | 'setting', base: string, section: string): Draft[] {
  const { facts } = stage;
  const baseKey = withFields(key, { [field]: base });
  const a = facts.value(key);
  const b = facts.value(baseKey);
  if (!isFact(a) || !isFact(b) || matched(facts, [key, baseKey])) return [];
  const difference = facts.derive(a.unit.id === '%' ? 'points' : 'difference', [key, baseKey]);
  if (!isFact(difference)) return [];
  const opening = stage.opening(parts);
  const what = `${subject(stage, parts, a.unit)} ${stage.when({ key, parts })}`;
  const than = adverbial(namedOf(facts, field, base), field);
  const result = (decided: boolean) => ({ between: field, decided, size: Math.abs(difference.value.toNumber()) });
  if (a.value.equals(b.value)) return [{ section, result: result(false), facts: [a], text: (v) => `${opening}${what} was the same as ${than}, at ${v.say(a)}` }];
  const [less, more] = comparative(a.unit);
  const close = tooClose(facts, a, b);
  const word = difference.value.sign() > 0 ? more : less;
  if (close === 'matters') {
    return [{ section, result: result(false), facts: [difference], text: () => `${opening}${what} was about the same as ${than}: ${whyClose.matters.says}${onceRead(facts, close, [a, b])}` }];
  }
  if (difference.value.round(difference.decimals).sign() === 0) {
    return [{ section, result: result(false), facts: [difference], text: () => `${opening}whether ${what} was ${more} or ${less} than ${than} is too close to call: ${whyClose[close ?? 'matters'].says}` }];
  }
  const percent = changeIn(facts, a, b);
  // Of two ratios "to one" only the percentage can be said.
  if (!subtracts(difference)) {
    if (!percent || (close && close !== 'single')) return [];
    return [{ section, result: result(close === undefined), facts: [a, percent], text: (v) => `${opening}${what} was ${v.say(a)}, ${v.size(percent)} ${word} than ${than}${onceRead(facts, close, [a, b])}` }];
  }
  if (close === 'spread' || close === 'scatter') {
    return [{ section, result: result(false), facts: [difference], text: (v) => `${opening}${what} was about ${v.size(difference)} ${word} than ${than}, which is within the spread of the runs and too close to call` }];
  }
  const at = addsUp(difference, a, b) ? a : undefined;
  // Where a percentage closes the sentence, the value opens it.
  const [first, last] = percent || a.unit.id === '%' ? [at, undefined] : [undefined, at];
  return [{
    section,
    result: result(close === undefined),
    facts: [first, difference, percent, last].filter((f) => f !== undefined),
    text: (v) => `${opening}${what} was ${first ? `${v.say(first)}, ` : ''}${v.size(difference)} ${word} than ${than}${percent ? `, or ${v.size(percent)} ${difference.value.sign() > 0 ? 'more' : 'less'}` : ''}${last ? `, at ${v.say(last)}` : ''}${onceRead(facts, close, [a, b])}`,
  }];
}

/** The percent change, where one means something and is not nothing: never of temperatures, decibels or percentages. */
function changeIn(facts: Facts, a: Fact, b: Fact): Fact | undefined {
  if (['temperature', 'temperature-difference', 'sound-level', 'share', 'points'].includes(a.unit.dimension)) return undefined;
  const change = facts.derive('percent_change', [a.subject, b.subject]);
  return isFact(change) && change.value.round(change.decimals).sign() !== 0 ? change : undefined;
}

/** The stock setting, or else the first one of the record; undefined when there are not two. */
export function baseSetting(facts: Facts, points: readonly Point[]): string | undefined {
  const used = [...new Set(points.map((p) => p.parts.setting))].filter(Boolean);
  if (used.length < 2) return undefined;
  return used.find((id) => facts.about.settings.get(id)?.kind === 'stock') ?? used.find((id) => id === 'stock') ?? used[0];
}
