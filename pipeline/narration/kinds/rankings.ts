// Three or more of a kind side by side: first to last, the gap to the first, the median, the width of the field.
import { type Closeness, type Fact, isFact, isIdle, type Key, withFields, tooClose, whyClose } from '../../facts/index.js';
import { ordinalInWords } from '../../quantities/index.js';
import { matched } from '../bounds.js';
import { onceRead } from '../closeness.js';
import { adverbial, namedOf, noun } from '../names.js';
import type { Point, Stage } from '../scenes.js';
import { capital, type Draft, list } from '../sentence.js';
import { quantity } from '../subject.js';
import { addsUp, subtracts } from '../voice.js';

type Field = 'setup' | 'setting';

interface Placed {
  key: Key;
  /** "the Umbry"; undefined where the record has none but an adverbial. */
  name: string | undefined;
  /** "with the Umbry". */
  manner: string;
  value: Fact;
}

interface Table {
  stage: Stage;
  field: Field;
  section: string;
  opening: string;
  /** "loop flow". */
  what: string;
  /** The highest comes first. */
  high: boolean;
  placed: Placed[];
  /** In the order of the record, as a fact lists them. */
  keys: Key[];
  count: Fact;
}

export function rankings(stage: Stage): Draft[] {
  return [...tables(stage, 'setup'), ...tables(stage, 'setting')].flatMap((t) => {
    const places = t.field === 'setup' ? t.placed.map((_, i) => i) : [0, t.placed.length - 1];
    return [...places.flatMap((i) => place(t, i)), ...(t.field === 'setup' ? middle(t) : [])];
  });
}

/** Groups of three or more points that differ in one field alone, unless it was matched; settings only where setups are too few to rank. */
function tables(stage: Stage, field: Field): Table[] {
  if (field === 'setting' && stage.count('setup') > 2) return [];
  const groups = new Map<string, Point[]>();
  for (const point of stage.points) {
    if (!point.parts[field] || isIdle(point.parts.phase)) continue;
    const id = withFields(point.key, { [field]: '' });
    groups.set(id, [...(groups.get(id) ?? []), point]);
  }
  return [...groups.values()].filter((g) => g.length > 2 && !matched(stage.facts, g.map((p) => p.key))).flatMap((points) => tableOf(stage, field, points) ?? []);
}

/** Read from the low end where the record does not say which end is better. */
const lowFirst: ReadonlySet<string> = new Set(['temperature', 'temperature-difference', 'sound-level']);

function tableOf(stage: Stage, field: Field, points: Point[]): Table | undefined {
  const first = points[0]!;
  const placed: Placed[] = [];
  for (const p of points) {
    const value = stage.facts.value(p.key);
    if (!isFact(value) || (placed[0] && placed[0].value.unit.id !== value.unit.id)) return undefined;
    const named = namedOf(stage.facts, field, p.parts[field]);
    placed.push({ key: p.key, name: noun(named), manner: adverbial(named, field), value });
  }
  const keys = points.map((p) => p.key);
  const count = stage.facts.derive('count', keys, `${field}s`);
  if (!isFact(count)) return undefined;
  const better = stage.facts.about.measures.get(first.parts.measure)?.better ?? 'neither';
  const high = better === 'higher' || (better === 'neither' && !lowFirst.has(placed[0]!.value.unit.dimension));
  placed.sort((a, b) => (high ? -1 : 1) * a.value.value.compare(b.value.value));
  const what = quantity(stage, first.parts);
  const section = capital(`${what} ${stage.where(first.parts, [field])}`.trim() + (field === 'setup' ? ', ranked' : ', the settings ranked'));
  return { stage, field, section, opening: stage.setting(first, [field]), what, high, placed, keys, count };
}

function place(t: Table, i: number): Draft[] {
  const own = t.placed[i]!;
  const equal = t.placed.filter((p) => p.value.value.equals(own.value.value));
  if (equal.length > 1) return equal[0] === own ? [shared(t, equal)] : [];
  const next = t.placed[i + 1];
  const close = next && tooClose(t.stage.facts, own.value, next.value);
  if (next && close && close !== 'single') return [undecided(t, own, next, close)];
  const before = t.placed[i - 1];
  const closeBefore = before && tooClose(t.stage.facts, before.value, own.value);
  if (closeBefore && closeBefore !== 'single') return [];
  return placeAlone(t, i, own, close ?? closeBefore);
}

function placeAlone(t: Table, i: number, own: Placed, close?: Closeness): Draft[] {
  const last = i === t.placed.length - 1;
  const end = t.high === last ? 'lowest' : 'highest';
  const order = i === 0 || last ? end : `${ordinalInWords(i + 1)} ${end}`;
  const rank = t.stage.facts.derive('rank', [own.key, ...t.keys.filter((k) => k !== own.key)], end);
  if (!isFact(rank)) return [];
  const leader = t.placed[0]!;
  const gap = i > 0 && !last && leader.name && subtracts(own.value) ? t.stage.facts.derive('difference', [own.key, leader.key]) : undefined;
  const behind = isFact(gap) && addsUp(gap, own.value, leader.value) ? gap : undefined;
  return [{
    section: t.section,
    ...resultOf(t, i, close === undefined),
    facts: [rank, t.count, own.value, ...(behind ? [behind] : [])],
    text: (v) => {
      const field = `the ${v.count(t.count)}${t.field === 'setting' ? ' settings' : ''}`;
      const claim = own.name ? `${own.name} had the ${order} ${t.what} of ${field}` : `${t.what} was the ${order} of ${field} ${own.manner}`;
      return `${t.opening}${claim}, at ${v.say(own.value)}${behind ? `, ${v.size(behind)} ${t.high ? 'below' : 'above'} ${leader.name}` : ''}${onceRead(t.stage.facts, close, t.placed.map((p) => p.value))}`;
    },
  }];
}

/** First and last of the setups are results, as large as the field is wide; how settings compare is told against the base setting. */
function resultOf({ field, placed }: Table, i: number, decided: boolean): Pick<Draft, 'result'> {
  const last = placed.length - 1;
  if (field !== 'setup' || (i > 0 && (i < last || !decided))) return {};
  return { result: { between: field, decided, size: Math.abs(placed[0]!.value.value.minus(placed[last]!.value.value).toNumber()) } };
}

function shared(t: Table, equal: Placed[]): Draft {
  const value = equal[0]!.value;
  return { section: t.section, facts: [value], text: (v) => `${t.opening}${t.what} was the same ${list(equal.map((p) => p.manner))}: ${v.say(value)}` };
}

function undecided(t: Table, a: Placed, b: Placed, close: Closeness): Draft {
  const why = `${whyClose[close].says}${onceRead(t.stage.facts, close, [a.value, b.value])}`;
  const call = close === 'matters' ? 'about level' : 'too close to call';
  return {
    section: t.section,
    ...resultOf(t, t.placed.indexOf(a), false),
    facts: [a.value, b.value],
    text: (v) => {
      if (v.say(a.value) === v.say(b.value)) return `${t.opening}${t.what} was ${v.say(a.value)} both ${a.manner} and ${b.manner}${close === 'matters' ? '' : `, ${call}`}: ${why}`;
      if (a.name && b.name) return `${t.opening}${a.name} and ${b.name} are ${call} on ${t.what}, at ${v.numbers([a.value, b.value])}: ${why}`;
      return `${t.opening}${t.what} was ${v.say(a.value)} ${a.manner} and ${v.number(b.value)} ${b.manner}, which is ${call}: ${why}`;
    },
  };
}

/** The median of the field, how far its ends lie from it where that can be told, and its width. */
function middle(t: Table): Draft[] {
  const { facts } = t.stage;
  const median = facts.derive('median', t.keys);
  const width = facts.derive('range', t.keys, 'width');
  if (!isFact(median) || !isFact(width)) return [];
  const drafts: Draft[] = [{ section: t.section, facts: [median], text: (v) => `${t.opening}the median ${t.what} was ${v.say(median)}` }];
  if (!subtracts(median)) return drafts;
  for (const p of [t.placed[0]!, t.placed.at(-1)!]) {
    const gap = facts.derive('difference', [p.key, `(${median.id})`]);
    if (!isFact(gap) || !addsUp(gap, p.value, median) || gap.value.round(gap.decimals).sign() === 0) continue;
    const close = tooClose(facts, p.value, median);
    if (close !== undefined && close !== 'single') continue;
    drafts.push({ section: t.section, facts: [gap], text: (v) => `${t.opening}${t.what} ${p.manner} was ${v.size(gap)} ${gap.value.sign() > 0 ? 'above' : 'below'} the median${onceRead(facts, close, [p.value, ...facts.operands(median)])}` });
  }
  if (width.value.round(width.decimals).sign() !== 0) {
    const small = tooClose(facts, t.placed[0]!.value, t.placed.at(-1)!.value) === 'matters' ? ', which is too small to matter' : '';
    drafts.push({ section: t.section, facts: [width], text: (v) => `${t.opening}the spread in ${t.what} from top to bottom was ${v.say(width)}${small}` });
  }
  return drafts;
}
