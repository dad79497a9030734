// What is said of a whole field: places, superlatives, ranges, spreads, counts.
import { Exact } from '../../../pipeline/quantities/index.js';
import { count, ordinal, turn, type Piece } from './say.js';
import { type Scene, t, type Template } from './scene.js';
import type { Quantity, Thing } from './record.js';

interface Field { q: Quantity; order: Thing[]; low: Exact; high: Exact }

function field(make: (s: Scene, f: Field) => Piece[] | undefined, fits?: (q: Quantity) => boolean): Template {
  return (s) => {
    const q = s.quantity(fits);
    const order = q && s.order(q);
    return q && order && make(s, { q, order, low: s.value(order[0]!, q), high: s.value(order.at(-1)!, q) });
  };
}
const adjective = (q: Quantity): boolean => q.most !== undefined;
const measured = (q: Quantity): boolean => q.measure !== 'ratio';

export const fields: Record<string, Template> = {
  'loudest of all': field((s, f) => t`${s.in}${f.order.at(-1)!.name} is the ${turn(f.q.most!, f.q.least!)} of the ${count(s.things.length, 9)}.`, adjective),
  'quietest of all, with value': field((s, f) => t`${s.in}the ${turn(f.q.least!, f.q.most!)} of all is ${f.order[0]!.name}, at ${s.say(f.low, f.q)}.`, adjective),
  'has the highest': field((s, f) => { const up = s.int(2) === 0; return t`${s.in}${f.order.at(up ? -1 : 0)!.name} has the ${up ? turn('highest', 'lowest') : turn('lowest', 'highest')} ${f.q.noun} of the ${count(s.things.length, 9)}.`; }),
  'the highest belongs to': field((s, f) => t`${s.in}the highest ${f.q.noun} is ${s.say(f.high, f.q)}, ${s.products ? `from ${f.order.at(-1)!.name}` : f.order.at(-1)!.with}.`),
  'the lowest is': field((s, f) => t`${s.in}the lowest ${f.q.noun} is ${s.say(f.low, f.q)}${s.products ? `, on ${f.order[0]!.name}` : `, ${f.order[0]!.with}`}.`),
  'second loudest': field((s, f) => (s.things.length < 3 ? undefined : t`${s.in}${f.order.at(-2)!.name} is the ${{ text: 'second', wrong: { up: 'third' } }} ${f.q.most!} of the ${count(s.things.length, 9)}.`), adjective),
  'nth highest': field((s, f) => {
    const i = s.int(s.things.length - 1) + 1;
    return s.things.length < 3 || i >= s.things.length ? undefined : t`${s.in}${f.order.at(-1 - i)!.name} has the ${ordinal(i + 1, s.things.length)} highest ${f.q.noun}.`;
  }),
  'from quietest to loudest': field((s, f) => {
    const i = s.int(s.things.length);
    return s.things.length < 3 ? undefined : t`${s.in}from quietest to loudest, ${f.order[i]!.name} comes ${ordinal(i + 1, s.things.length)}.`;
  }, adjective),
  'ranges from to': field((s, f) => t`${s.in}across ${all(s)}, the ${f.q.noun} ranges from ${s.say(f.low, f.q, { bare: true })} to ${s.say(f.high, f.q)}.`),
  'lies between': field((s, f) => t`${s.in}the ${f.q.noun} of ${all(s)} lies between ${s.say(f.low, f.q, { bare: true })} and ${s.say(f.high, f.q)}.`),
  'the spread is': field((s, f) => t`${s.in}from lowest to highest, the ${f.q.noun} spans ${s.say(f.high.minus(f.low), f.q)}.`, measured),
  'first and last apart': field((s, f) => t`${s.in}the highest and the lowest ${f.q.noun} are ${s.say(f.high.minus(f.low), f.q)} apart.`, measured),
  'count below': field((s, f) => {
    const k = 1 + s.int(s.things.length - 1);
    const bound = between(s.value(f.order[k - 1]!, f.q), s.value(f.order[k]!, f.q));
    return bound && t`${s.in}${count(k, s.things.length)} of the ${count(s.things.length, 9)} ${s.kind} ${k === 1 ? 'has' : 'have'} ${/^[aeiou]/.test(f.q.noun) ? 'an' : 'a'} ${f.q.noun} ${turn('below', 'above')} ${bound.text} ${f.q.words}.`;
  }),
  'how many draw more': field((s, f) => {
    const k = 1 + s.int(s.things.length - 1);
    const bound = between(s.value(f.order.at(-k - 1)!, f.q), s.value(f.order.at(-k)!, f.q));
    return bound && t`${s.in}${count(k, s.things.length)} of the ${count(s.things.length, 9)} ${k === 1 ? 'draws' : 'draw'} more than ${bound.text} watts.`;
  }, (q) => q.measure === 'power'),
  'how many were tested': (s) => {
    const n = count(s.things.length, 12);
    return t`we tested ${n} ${s.kind}${s.place ? ` ${s.place.in}` : ''}.`;
  },
  'runs': (s) => { const q = s.quantity(); return q && t`the ${q.noun} is the mean of ${{ text: 'three', wrong: { up: 'four', down: 'two' } }} runs.`; },
  'percent between ends': field((s, f) => {
    const change = s.change(f.order.at(-1)!, f.order[0]!, f.q);
    return change && t`${s.in}the highest ${f.q.noun}, ${s.products ? `that of ${f.order.at(-1)!.name}` : `the one ${f.order.at(-1)!.with}`}, is ${s.percent(change)} ${turn('above', 'below')} the lowest.`;
  }),
  'median': field((s, f) => (s.things.length % 2 === 0 ? undefined : t`${s.in}the median ${f.q.noun} of ${all(s)} is ${s.say(s.value(f.order[(s.things.length - 1) / 2]!, f.q), f.q)}.`)),
};

function all(s: Scene): Piece[] | string {
  return ['all ', count(s.things.length, 9), ` ${s.kind}`];
}

/** A round bound between two values that lie well apart. */
function between(low: Exact, high: Exact): { text: string } | undefined {
  const [a, b] = [low.toNumber(), high.toNumber()];
  for (const step of [500, 100, 50, 10, 5, 1]) {
    const n = Math.ceil((a + (b - a) * 0.2) / step) * step;
    if (n > a && n < b - (b - a) * 0.1) return { text: String(n) };
  }
  return undefined;
}

