// Plain values, several parts of one measure together: "the hotspot reached 81 degrees under load and the memory 79".
import { type Fact, isFact } from '../../facts/index.js';
import { inWords } from '../../quantities/index.js';
import type { Point, Scene, Stage } from '../scenes.js';
import { type Draft, list } from '../sentence.js';
import { shared } from './limits.js';
import { risen } from './rises.js';
import { throttlingTold } from './throttling.js';
import { subject } from '../subject.js';

interface Valued extends Point {
  fact: Fact;
}

/** Most parts that a listener can keep apart in one breath. Common practice, no published source. */
const most = 3;

export function values(stage: Stage, scene: Scene, section: string): Draft[] {
  const groups = new Map<string, Valued[]>();
  for (const point of scene.points) {
    const fact = stage.facts.value(point.key);
    if (!isFact(fact)) continue;
    const id = `${point.parts.measure}/${point.parts.phase}/${fact.unit.id}`;
    const open = groups.get(id) ?? [];
    open.push({ ...point, fact });
    groups.set(id, open);
  }
  const untold = (group: Valued[]) => group.length > 1 || !toldElsewhere(stage, group[0]!);
  return [...groups.values()].filter(untold).flatMap((group) => inBreaths(group).map((points) => sentence(stage, points, section)));
}

/** A value on its own that a ranking, a rise or a share of a limit says anyway. */
function toldElsewhere(stage: Stage, { key }: Valued): boolean {
  return throttlingTold(stage, key) || stage.ranked(key) || risen(stage, key) || shared(stage, key);
}

function sentence(stage: Stage, points: Valued[], section: string): Draft {
  const first = points[0]!;
  const when = stage.when(first);
  const [name, ...others] = points.map((p) => subject(stage, p.parts, p.fact.unit)) as [string, ...string[]];
  const verb = first.fact.unit.dimension === 'temperature' ? 'reached' : plural(name) ? 'were' : 'was';
  const facts = points.map((p) => p.fact);
  const opening = stage.opening(first.parts);
  // "The drive three forty-one" would be heard as one number.
  if (others.some((other) => endsInNumber(other))) return { section, facts, text: (v) => `${opening}${list([name, ...others])} ${verb === 'reached' ? verb : 'were'} ${v.numbers(facts)} ${when}, respectively` };
  return { section, facts, text: (v) => list([`${opening}${name} ${verb} ${v.say(first.fact)} ${when}`, ...others.map((other, i) => `${other} ${v.number(facts[i + 1]!)}`)]) };
}

/** Groups of at most three, none left alone where it can be helped. */
function inBreaths<T>(points: T[]): T[][] {
  if (points.length <= most) return [points];
  const size = points.length === most + 1 ? 2 : most;
  return [points.slice(0, size), ...inBreaths(points.slice(size))];
}

const smallNumbers = new Set(Array.from({ length: 21 }, (_, i) => inWords(String(i))));

function endsInNumber(name: string): boolean {
  const last = name.split(' ').at(-1)!;
  return /\d$/.test(last) || smallNumbers.has(last.toLowerCase());
}

function plural(name: string): boolean {
  return /[^s]s$/.test(name);
}
