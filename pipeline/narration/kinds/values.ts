// Plain values, several parts of one measure together: "the hotspot and the memory reached 81 and 79 degrees under load, respectively".
import { type Fact, isFact } from '../../facts/index.js';
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
  const names = list(points.map((p) => subject(stage, p.parts, p.fact.unit)));
  const verb = first.fact.unit.dimension === 'temperature' ? 'reached' : points.length > 1 || plural(names) ? 'were' : 'was';
  const facts = points.map((p) => p.fact);
  const opening = stage.opening(first.parts);
  if (points.length === 1) return { section, facts, text: (v) => `${opening}${names} ${verb} ${v.say(first.fact)} ${when}` };
  return { section, facts, text: (v) => `${opening}${names} ${verb} ${v.numbers(facts)} ${when}, respectively` };
}

/** Groups of at most three, none left alone where it can be helped. */
function inBreaths<T>(points: T[]): T[][] {
  if (points.length <= most) return [points];
  const size = points.length === most + 1 ? 2 : most;
  return [points.slice(0, size), ...inBreaths(points.slice(size))];
}

function plural(name: string): boolean {
  return /[^s]s$/.test(name);
}
