// Differences, percent, shares, ratios, points: one thing held against another.
import { Exact } from '../../../pipeline/quantities/index.js';
import { number, turn, type Piece } from './say.js';
import { type Scene, t, type Template } from './scene.js';
import type { Quantity, Thing } from './record.js';

interface Pair { q: Quantity; a: Thing; b: Thing; gap: Exact; up: boolean }
const hundred = Exact.of(100);

function pair(make: (s: Scene, p: Pair) => Piece[] | undefined, fits?: (q: Quantity) => boolean): Template {
  return (s) => {
    const q = s.quantity((x) => x.measure !== 'ratio' && (fits?.(x) ?? true));
    const gap = q && s.gap(s.a, s.b, q);
    return q && gap && make(s, { q, a: s.a, b: s.b, gap, up: gap.sign() > 0 });
  };
}
function percent(make: (s: Scene, p: Pair & { change: Exact }) => Piece[] | undefined, fits?: (q: Quantity) => boolean): Template {
  return pair((s, p) => { const change = s.change(p.a, p.b, p.q); return change && make(s, { ...p, change }); }, fits);
}
const compared = (p: Pair): Piece => (p.up ? turn(p.q.more, p.q.less) : turn(p.q.less, p.q.more));
const either = (p: Pair, up: string, down: string): Piece => (p.up ? turn(up, down) : turn(down, up));
const upper = (x: string): string => x[0]!.toUpperCase() + x.slice(1);
const power = (q: Quantity): boolean => q.measure === 'power';
const rate = (q: Quantity): boolean => q.measure === 'frame_rate';
const noise = (q: Quantity): boolean => q.measure === 'noise';

export const differences: Record<string, Template> = {
  'louder than': pair((s, p) => t`${s.in}${p.a.name} is ${s.say(p.gap, p.q)} ${compared(p)} than ${p.b.name}.`, noise),
  'faster than': pair((s, p) => t`${s.in}${p.a.name} is ${s.say(p.gap, p.q)} ${compared(p)} than ${p.b.name}.`, rate),
  'draws more than': pair((s, p) => t`${s.in}${p.a.name} draws ${s.say(p.gap, p.q)} ${either(p, 'more', 'less')} than ${p.b.name}.`, power),
  'core hotter than': pair((s, p) => t`${s.in}${s.products ? `the core of ${p.a.name}` : `${p.a.with} the core`} is ${s.say(p.gap, p.q)} ${either(p, 'hotter', 'cooler')} than ${s.products ? `that of ${p.b.name}` : p.b.with}.`, (q) => q.noun === 'core temperature'),
  'is higher than': pair((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${s.say(p.gap, p.q)} ${either(p, 'higher', 'lower')} than ${s.products ? `that of ${p.b.name}` : p.b.with}.`),
  'is above': pair((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${s.say(p.gap, p.q)} ${either(p, 'above', 'below')} that of ${p.b.name}.`, undefined),
  'compared with': pair((s, p) => t`${s.in}compared with ${p.b.name}, ${s.of(p.a, p.q)} is ${s.say(p.gap, p.q)} ${either(p, 'higher', 'lower')}.`),
  'difference between': pair((s, p) => t`${s.in}the difference in ${p.q.noun} between ${p.a.name} and ${p.b.name} is ${s.say(p.gap, p.q)}.`),
  'lie apart': pair((s, p) => t`${s.in}in ${p.q.noun}, ${p.a.name} and ${p.b.name} are ${s.say(p.gap, p.q)} apart.`),
  'switching': pair((s, p) => t`${s.in}going from ${p.b.name} to ${p.a.name} ${either(p, 'raises', 'lowers')} the ${p.q.noun} by ${s.say(p.gap, p.q)}.`),
  'value, then more': pair((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${s.say(s.value(p.a, p.q), p.q)}, ${s.say(p.gap, p.q, { bare: s.int(2) === 0 })} ${either(p, 'more', 'less')} than ${s.products ? 'that of ' : ''}${s.products ? p.b.name : p.b.with}.`),
  'then that is': pair((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${s.say(s.value(p.a, p.q), p.q)}. That is ${s.say(p.gap, p.q)} ${either(p, 'more', 'less')} than ${p.b.name}.`),
  'both values, then the gap': pair((s, p) => t`${s.in}${s.of(p.b, p.q)} is ${s.say(s.value(p.b, p.q), p.q)}, ${p.a.name} has ${s.say(s.value(p.a, p.q), p.q, { bare: true })}. The gap is ${s.say(p.gap, p.q)}.`),
  'it is more': pair((s, p) => t`${s.in}${s.of(p.b, p.q)} is ${s.say(s.value(p.b, p.q), p.q)}. ${upper(s.products ? `that of ${p.a.name}` : `${p.a.with}, it`)} is ${s.say(p.gap, p.q)} ${either(p, 'higher', 'lower')}.`),
  'base in words before': pair((s, p) => t`${s.in}${p.b.name} shows ${s.say(s.value(p.b, p.q), p.q)} of ${p.q.noun}; ${p.a.name} is ${s.say(p.gap, p.q)} ${either(p, 'above', 'below')} it.`),
  'changes from to': pair((s, p) => t`${s.in}the ${p.q.noun} goes from ${s.say(s.value(p.b, p.q), p.q, { bare: true })} ${s.products ? 'on' : ''}${s.products ? ` ${p.b.name}` : p.b.with} to ${s.say(s.value(p.a, p.q), p.q)} ${s.products ? `on ${p.a.name}` : p.a.with}.`),
  'between places': (s) => {
    const [x, y] = s.w.places;
    const q = s.quantity((z) => z.measure !== 'ratio');
    if (!x || !y || !q) return undefined;
    const gap = s.value(s.a, q, 'load', y.id).minus(s.value(s.a, q, 'load', x.id));
    if (gap.round(q.decimals).sign() === 0) return undefined;
    return t`${s.a.with}, ${y.in}, the ${q.noun} is ${s.say(gap, q)} ${gap.sign() > 0 ? turn('higher', 'lower') : turn('lower', 'higher')} than ${x.in}.`;
  },
  'over room': (s) => {
    const q = s.the('temperature', 'core');
    if (!q || !s.w.room) return undefined;
    const over = s.value(s.a, q).minus(s.value(s.a, { ...q, part: 'room' }));
    return t`${s.in}${s.of(s.a, q)} is ${s.say(over, q, { decimals: 1 })} ${s.pick(['over room', 'above the room', 'over the room'])}.`;
  },
  'below its limit': (s) => {
    const q = s.the('power');
    const gap = q && Exact.of(s.w.limit).minus(s.value(s.a, q));
    return q && gap!.round(1).sign() > 0 ? t`${s.in}${s.of(s.a, q)} stays ${s.say(gap!, q)} ${turn('below', 'above')} its limit.` : undefined;
  },
};

export const proportions: Record<string, Template> = {
  'percent higher': percent((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${s.percent(p.change)} ${either(p, 'higher', 'lower')} than ${s.products ? `that of ${p.b.name}` : p.b.with}.`),
  'percent going from to': percent((s, p) => t`${s.in}going from ${p.b.name} to ${p.a.name}, the ${p.q.noun} ${either(p, 'rises', 'falls')} by ${s.percent(p.change)}.`),
  'percent more power': percent((s, p) => t`${s.in}${p.a.name} draws ${s.percent(p.change)} ${either(p, 'more', 'less')} power than ${p.b.name}.`, power),
  'percent faster': percent((s, p) => t`${s.in}${p.a.name} is ${s.percent(p.change)} ${either(p, 'faster', 'slower')} than ${p.b.name}.`, rate),
  'percent compared with': percent((s, p) => t`${s.in}compared with ${p.b.name}, ${s.of(p.a, p.q)} is ${either(p, 'up', 'down')} by ${s.percent(p.change)}.`),
  'percent cuts': percent((s, p) => t`${s.in}relative to ${p.b.name}, ${p.a.name} ${either(p, 'raises', 'cuts')} the ${p.q.noun} by ${s.percent(p.change)}.`),
  'percent gains': percent((s, p) => t`${s.in}${p.a.name} ${either(p, 'gains', 'loses')} ${s.percent(p.change)} of average frame rate against ${p.b.name}.`, rate),
  'a change of percent': percent((s, p) => t`${s.in}the ${p.q.noun} goes from ${s.say(s.value(p.b, p.q), p.q, { bare: true })} ${s.products ? 'with ' + p.b.name : p.b.with} to ${s.say(s.value(p.a, p.q), p.q)} ${s.products ? 'with ' + p.a.name : p.a.with}, ${either(p, 'an increase', 'a reduction')} of ${s.percent(p.change)}.`),
  'value, then percent': percent((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${s.say(s.value(p.a, p.q), p.q)}, ${s.percent(p.change)} ${either(p, 'more', 'less')} than ${s.products ? p.b.name : p.b.with}.`),
  'that is percent': percent((s, p) => t`${s.in}${s.of(p.b, p.q)} is ${s.say(s.value(p.b, p.q), p.q)}. ${upper(s.products ? `that of ${p.a.name}` : `${p.a.with}, it`)} is ${s.percent(p.change)} ${either(p, 'higher', 'lower')}.`),
  'difference, or percent': percent((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${s.say(p.gap, p.q)}, or ${s.percent(p.change)}, ${either(p, 'higher', 'lower')} than ${s.products ? `that of ${p.b.name}` : p.b.with}.`),
  'share of another': percent((s, p) => t`${s.in}${s.of(p.a, p.q)} is ${share(s, p, s.value(p.b, p.q))} of ${s.products ? `that of ${p.b.name}` : `what it is ${p.b.with}`}.`),
  'share of the limit': (s) => {
    const q = s.the('power');
    return q && t`${s.in}${s.of(s.a, q)} is ${s.percent(s.value(s.a, q).over(Exact.of(s.w.limit)).times(hundred), 0)} of the ${number(Exact.of(s.w.limit), 0, { ...s.form, symbol: false }, ' watt')} limit.`;
  },
  'draws, share of its limit': (s) => {
    const q = s.the('power');
    return q && t`${s.in}${s.a.name} draws ${s.say(s.value(s.a, q), q)}, ${s.percent(s.value(s.a, q).over(Exact.of(s.w.limit)).times(hundred), 0)} of its limit.`;
  },
  'times': percent((s, p) => {
    const ratio = s.value(p.a, p.q).over(s.value(p.b, p.q));
    if (ratio.toNumber() < 1.25) return undefined;
    const said = number(ratio, 1, { ...s.form, words: false }, ' times');
    return t`${s.in}${s.of(p.a, p.q)} is ${{ ...said, wrong: pick(said.wrong, ['ten', 'swap']) }} that of ${p.b.name}.`;
  }),
  'twice, half, three times': (s) => {
    const q = s.the('fan_speed');
    const [x, y] = s.things;
    const ratio = q && s.value(y!, q).over(s.value(x!, q)).toNumber();
    const words = ratio && (Math.abs(ratio / 2 - 1) < 0.01 ? ['twice', 'half'] : Math.abs(ratio / 3 - 1) < 0.01 ? ['three times', 'twice'] : Math.abs(ratio * 2 - 1) < 0.01 ? ['half', 'a third of'] : undefined);
    return q && words ? t`${s.in}${s.of(y!, q)} is ${{ text: words[0]!, wrong: { ten: words[1]! } }} that of ${x!.name}.` : undefined;
  },
  'frames per watt': (s) => {
    const [r, p] = [s.the('frame_rate'), s.the('power')];
    return r && p && t`${s.in}${s.a.name} delivers ${number(s.value(s.a, r).over(s.value(s.a, p)), 2, s.form, ' frames per second per watt')}.`;
  },
  'points': (s) => {
    const q = s.the('ratio');
    const gap = q && s.gap(s.a, s.b, q);
    return q && gap && t`${s.in}going from ${s.b.name} to ${s.a.name}, fan duty ${gap.sign() > 0 ? turn('rises', 'falls') : turn('falls', 'rises')} by ${number(gap.abs(), 0, s.form, ' percentage points', ' percent')}.`;
  },
  'points higher': (s) => {
    const q = s.the('ratio');
    const gap = q && s.gap(s.a, s.b, q);
    return q && gap && t`${s.in}${s.of(s.a, q)} is ${number(gap.abs(), 0, s.form, ' percentage points', ' percent')} ${gap.sign() > 0 ? turn('higher', 'lower') : turn('lower', 'higher')} than ${s.products ? `that of ${s.b.name}` : s.b.with}.`;
  },
};

function share(s: Scene, p: Pair, base: Exact): Piece {
  const said = s.percent(s.value(p.a, p.q).over(base).times(hundred), 0);
  return { ...said, wrong: pick(said.wrong, ['up', 'down', 'swap', 'ten']) };
}

function pick<T extends object>(from: T, keys: readonly (keyof T)[]): Partial<T> {
  return Object.fromEntries(keys.filter((k) => from[k] !== undefined).map((k) => [k, from[k]])) as Partial<T>;
}
