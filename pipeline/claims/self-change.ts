// "rose 31 degrees, from 40 to 70": a change and its two ends, said in one sentence, that do not go together.
import { Exact, inWords, showNumber, type Unit } from '../quantities/index.js';
import { changeNouns, changeVerbs, type Mention, phraseAt } from '../script/index.js';
import { stepOf } from '../wording/index.js';
import type { Parsed } from './parse.js';
import { plain, verbBeforeFrom, wayAfter, type WrongWay, wrongWays } from './said-direction.js';
import { eachSentence, type SelfCheck, type SelfFault } from './self-check.js';

export const selfChange: SelfCheck = {
  code: 'self-change',
  says: 'A change does not go with the two ends said beside it',
  help: 'Subtract the ends, or take the percentage of the first; then say one of the three numbers otherwise.',
  right: [
    'The core rose thirty degrees, from forty to seventy.',
    'Power fell 14 percent, from 415 to 355 watts.',
    'It went from 40 to 70 degrees, a rise of 30.',
    'The share climbed 12 points, from 71 to 83 percent.',
    'Limited, it is 5 degrees cooler, and it went from 40 at idle to 70 under load.',
    'It slipped about two percent, from 118.4 to 116.1.',
    'The drop grows from 3 to 5 degrees.',
    'Lowering the fans takes it from 40 to 44 degrees.',
    'It is 2 degrees cooler, 40 after 42.',
    'The low goes from 40 to 36 frames, 4 more than the other card loses.',
  ],
  wrong: [
    ['The core rose 31 degrees, from 40 to 70.', '31 degrees'],
    ['Power fell 17 percent, from 415 to 355 watts.', '17 percent'],
    ['It went from forty to seventy degrees, a rise of thirty-five.', 'thirty-five'],
    ['Noise fell from 37.2 to 43.9 decibels.', '43.9 decibels'],
    ['The core rose thirty degrees, from seventy at idle to forty under load.', 'forty'],
    ['The new profile lowers the share from 71 to 83 percent.', '83 percent'],
    ['It goes from 1,690 to 1,480 rpm, up by 14 percent.', '1,480 rpm'],
    ['It is 2 degrees warmer, 40 after 42.', '40'],
    ['Noise climbs to 40 from 44 decibels.', '40'],
  ],
  run: eachSentence(look),
};

const half = Exact.of(1n, 2n);

function look(p: Parsed): SelfFault[] {
  const out: SelfFault[] = [];
  for (const [first, second] of pairs(p)) {
    const [a, b] = [p.said[first]!.mention, p.said[second]!.mention];
    const before = changeBefore(p, first);
    const found = before ?? changeAfter(p, second);
    const way = before?.way ?? verbBeforeFrom(p, a.from - 1) ?? wayAfter(p, second);
    const wrongWay = (way === 'up' && b.value.compare(a.value) < 0) || (way === 'down' && b.value.compare(a.value) > 0);
    if (wrongWay) {
      out.push(cannotGo(p, { from: a, to: b, way: way! }));
      continue;
    }
    if (!found) continue;
    const fault = compare(p, found.mention, a, b);
    if (fault) out.push(fault);
  }
  return [...out, ...wrongWays(p).map((w) => cannotGo(p, w))];
}

/** Each number may be right for an end of its own: the word of direction and their order contradict each other all the same. */
function cannotGo(p: Parsed, { from, to, way }: WrongWay): SelfFault {
  return { ...span(to), code: 'self-change', certain: true, message: `It cannot go ${way} from ${p.text.slice(from.start, from.end)} to ${p.text.slice(to.start, to.end)}`, against: [{ ...span(from), label: 'from here' }] };
}

/** "from A … to B" with no other figure between. */
function pairs(p: Parsed): [number, number][] {
  const out: [number, number][] = [];
  for (let i = 0; i + 1 < p.said.length; i++) {
    const [a, b] = [p.said[i]!.mention, p.said[i + 1]!.mention];
    if (!plain(a) || !plain(b) || p.said[i]!.named || p.said[i + 1]!.named) continue;
    const between = p.low.slice(a.to, b.from);
    if (p.low[a.from - 1] !== 'from' || between.at(-1) !== 'to' || between.length > 8 || between.some((w) => /^[,;:.]$/.test(w)) || between.filter((w) => w === 'to').length > 1) continue;
    if (a.unit && b.unit && !alike(a.unit, b.unit)) continue;
    out.push([i, i + 1]);
  }
  return out;
}

/** "rose 31 degrees, from": the change stands right before the pair. */
function changeBefore(p: Parsed, first: number): { mention: Mention; way: 'up' | 'down' | undefined } | undefined {
  const said = p.said[first - 1];
  if (!said || !plain(said.mention) || said.cue.op !== 'change' && said.cue.op !== 'points') return undefined;
  const gap = p.low.slice(said.mention.to, p.said[first]!.mention.from - 1);
  if (gap.some((w) => !/^[,:(—–-]$/.test(w))) return undefined;
  const verb = verbAt(p, said.mention.from - 1) ?? verbAt(p, said.mention.from - 2);
  return verb || nounBefore(p, said.mention) ? { mention: said.mention, way: verb } : undefined;
}

/** "from 40 to 70, a rise of 31": the noun says that it is this change. */
function changeAfter(p: Parsed, second: number): { mention: Mention } | undefined {
  const said = p.said[second + 1];
  if (!said || !plain(said.mention) || !nounBefore(p, said.mention)) return undefined;
  const gap = p.low.slice(p.said[second]!.mention.to, said.mention.from);
  if (gap.length > 7 || gap.some((w) => /^(?:and|but|while|than|against|over|with|;)$/.test(w)) || !gap.includes('a') && !gap.includes('an')) return undefined;
  return /^(?:than|over|against|compared|more|less|better|worse|on|in)$/.test(p.low[said.mention.to] ?? '') ? undefined : { mention: said.mention };
}

function nounBefore(p: Parsed, m: Mention): boolean {
  return p.low[m.from - 1] === 'of' && changeNouns.get(p.low[m.from - 2] ?? '') !== undefined;
}

function verbAt(p: Parsed, at: number): 'up' | 'down' | undefined {
  for (const from of [at - 1, at]) {
    const v = phraseAt(changeVerbs, p.low, from);
    if (v && from + v.words.length === at + 1 && (v.value === 'up' || v.value === 'down') && !/^(?:cut|save|lose|loss|top|lower|heat|warm|cool|over|above|under|below|off|down|up)$/.test(v.words[0]!)) return v.value;
  }
  return undefined;
}

function alike(a: Unit, b: Unit): boolean {
  const kind = (u: Unit): string => (u.dimension === 'temperature-difference' ? 'temperature' : u.dimension);
  return kind(a) === kind(b);
}

function compare(p: Parsed, d: Mention, a: Mention, b: Mention): SelfFault | undefined {
  const ends = b.unit ?? a.unit;
  const text = (m: Mention): string => p.text.slice(m.start, m.end);
  const unit = d.unit ?? ends;
  const inEnds = (m: Mention): Exact => (m.unit && ends && m.unit !== ends ? m.value.times(m.unit.factor).over(ends.factor) : m.value);
  const difference = inEnds(b).minus(inEnds(a)).abs();
  const slack = stepOf(a).plus(stepOf(b)).times(half);
  let expected: Exact;
  let room: Exact;
  if (unit?.id === '%' && ends?.id !== '%') {
    if (a.value.sign() === 0) return undefined;
    expected = difference.over(inEnds(a).abs()).times(Exact.of(100));
    room = slack.over(inEnds(a).abs()).times(Exact.of(200));
  } else if (unit && ends && !alike(unit, ends) && !(unit.id === 'points' && ends.id === '%')) return undefined;
  else if (unit?.id === '%') {
    // "from 71 to 83 percent, up 17 percent": of 71, or in points; both are in use.
    const relative = a.value.sign() === 0 ? difference : difference.over(a.value.abs()).times(Exact.of(100));
    if (near(relative, d, slack.times(Exact.of(3)))) return undefined;
    [expected, room] = [difference, slack];
  } else {
    const scale = unit && ends && unit.id !== 'points' ? ends.factor.over(unit.factor) : Exact.of(1);
    [expected, room] = [difference.times(scale), slack.times(scale)];
  }
  const shown = rounded(expected, d);
  if (shown.equals(d.value.abs())) return undefined;
  const explained = near(expected, d, room);
  // A percentage of rounded ends is only as exact as they are.
  if (explained && unit?.id === '%') return undefined;
  const words = d.form === 'words' ? inWords(shown.toFixed(Math.max(0, d.decimals))) : showNumber(shown, Math.max(0, d.decimals));
  return {
    ...span(d), code: 'self-change', against: [{ ...span(a), label: 'from here' }, { ...span(b), label: 'to here' }],
    message: `From ${text(a)} to ${text(b)} is ${words}${unit?.id === '%' ? ` percent` : ''}, not ${text(d)}${explained ? '; rounding may hide behind it, but listeners subtract' : ''}`,
    ...(explained && { byRounding: true as const }),
  };
}

function near(expected: Exact, d: Mention, room: Exact): boolean {
  return expected.minus(d.value.abs()).abs().compare(room.plus(stepOf(d).times(half))) <= 0;
}

function rounded(value: Exact, d: Mention): Exact {
  const step = stepOf(d);
  return value.over(step).round(0).times(step);
}

function span(m: Mention): { start: number; end: number } {
  return { start: m.start, end: m.end };
}
