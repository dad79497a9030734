// Plain values, hedged values, rises, lists, and what rests on headings and sentences before.
import { Exact } from '../../../pipeline/quantities/index.js';
import { list, type Scene, t, type Template } from './scene.js';
import { loose, type Piece } from './say.js';
import type { Quantity, Thing } from './record.js';

const any = (s: Scene): Quantity | undefined => s.quantity();
const upper = (x: string): string => x[0]!.toUpperCase() + x.slice(1);

/** A template about one quantity of one thing. */
function of(make: (s: Scene, q: Quantity, a: Thing) => Piece[] | undefined, choose = any): Template {
  return (s) => { const q = choose(s); return q && make(s, q, s.a); };
}

const sole = (s: Scene): Quantity | undefined => s.quantity((q) => q.sole === true);
const heated = (s: Scene): Quantity | undefined => (s.w.idle ? s.quantity((q) => q.idle === true) : undefined);
const heading = (s: Scene, x: Thing): string => `## ${upper(x.name)}${s.place ? ` ${s.place.in}` : ''}\n`;

export const values: Record<string, Template> = {
  'is': of((s, q, a) => t`${s.in}${s.of(a, q)} is ${s.say(s.value(a, q), q)}.`),
  'under load': of((s, q, a) => t`${s.in}${s.of(a, q)} is ${s.say(s.value(a, q), q)} under load.`),
  'settles at': of((s, q, a) => t`${s.in}${s.of(a, q)} ${s.pick(['settles at', 'comes out at', 'averages', 'ends up at', 'reaches', 'stays at'])} ${s.say(s.value(a, q), q)}.`),
  'for the thing': of((s, q, a) => t`${s.in}we measured ${s.say(s.value(a, q), q)} for ${s.of(a, q)}.`),
  'figure first': of((s, q, a) => t`${s.say(s.value(a, q), q)} is ${s.of(a, q)}${s.place ? ` ${s.place.in}` : ''}.`),
  'unit tells': of((s, q, a) => t`${s.in}${a.name} ${s.pick(['comes in at', 'gives us', 'shows'])} ${s.say(s.value(a, q), q)}.`, sole),
  'draws': of((s, q, a) => t`${s.in}${a.name} ${s.pick(['draws', 'pulls', 'takes'])} ${s.say(s.value(a, q), q)}${s.pick(['', ' under load'])}.`, (s) => s.the('power')),
  'renders': of((s, q, a) => t`${s.in}${a.name} ${s.pick(['renders', 'manages', 'averages', 'delivers'])} ${s.say(s.value(a, q), q)}.`, (s) => s.the('frame_rate')),
  'question': of((s, q, a) => t`${s.in}how high is ${s.of(a, q)}? ${s.say(s.value(a, q), q)}.`),
  'at idle': of((s, q, a) => t`${s.in}${s.of(a, q)} is ${s.say(s.value(a, q, 'idle'), q)} at idle.`, heated),
  'idle and load': of((s, q, a) => t`${s.in}${s.of(a, q)} is ${s.say(s.value(a, q, 'idle'), q, { bare: true })} at idle and ${s.say(s.value(a, q), q)} under load.`, heated),
  'about': of((s, q, a) => hedged(s, q, a, 'about')),
  'roughly … or so': of((s, q, a) => hedged(s, q, a, 'or so')),
  'just under': of((s, q, a) => hedged(s, q, a, 'just under')),
  'just over': of((s, q, a) => hedged(s, q, a, 'just over')),
  'nearly': of((s, q, a) => hedged(s, q, a, 'nearly')),
  'more than': of((s, q, a) => hedged(s, q, a, 'more than')),
  'less than': of((s, q, a) => hedged(s, q, a, 'less than')),
  'rises from to': of((s, q, a) => t`${s.in}${s.of(a, q)} rises from ${s.say(s.value(a, q, 'idle'), q, { bare: true })} to ${s.say(s.value(a, q), q)}.`, heated),
  'rises by': of((s, q, a) => t`${s.in}${s.of(a, q)} ${s.pick(['rises', 'climbs', 'goes up'])} by ${s.say(rise(s, q, a), q)} from idle to load.`, heated),
  'climbs between': of((s, q, a) => t`${s.in}between idle and load, ${s.of(a, q)} climbs ${s.say(rise(s, q, a), q)}.`, heated),
  'a rise of': of((s, q, a) => t`${s.in}${s.of(a, q)} goes from ${s.say(s.value(a, q, 'idle'), q, { bare: true })} at idle to ${s.say(s.value(a, q), q, { bare: true })} under load, a rise of ${s.say(rise(s, q, a), q)}.`, heated),
  'the rise is': of((s, q, a) => t`${s.in}the rise from idle to load in ${s.of(a, q).replace(/^the /, '')} is ${s.say(rise(s, q, a), q)}.`, (s) => (s.products ? heated(s) : undefined)),
  'so it rose': of((s, q, a) => t`${s.in}${s.of(a, q)} was ${s.say(s.value(a, q, 'idle'), q, { bare: true })} at idle and ${s.say(s.value(a, q), q, { bare: true })} under load, so it rose ${s.say(rise(s, q, a), q)}.`, heated),
  'respectively': (s) => lists(s, (q, things) => t`${s.in}the ${q.noun} of ${list(things.map((x) => x.name))} is ${listed(s, things, q)} respectively.`),
  'list with one unit': (s) => lists(s, (q, things) => t`${s.in}${list(things.map((x) => x.name))} reach ${listed(s, things, q)} of ${q.noun}.`, (q) => q.sole === true),
  'one after the other': (s) => lists(s, (q, things) => [`${s.in}for ${q.noun}, `, ...things.flatMap((x, i): Piece[] => [i === 0 ? '' : i === things.length - 1 ? ' and ' : ', ', `${x.name} reads `, s.say(s.value(x, q), q, { bare: i > 0 })]), '.']),
  'core and hotspot': (s) => {
    const [c, h] = [s.the('temperature', 'core'), s.the('temperature', 'hotspot')];
    return c && h && t`${s.in}${s.a.with}, the core and the hotspot reach ${s.say(s.value(s.a, c), c, { bare: true })} and ${s.say(s.value(s.a, h), h)}.`;
  },
  'heading, then its': of((s, q, a) => [heading(s, a), `Its ${q.noun} is `, s.say(s.value(a, q), q), '.'], (s) => (s.products ? any(s) : undefined)),
  'heading, then the': of((s, q, a) => [heading(s, a), `The ${q.noun} ${s.pick(['is', 'reaches', 'settles at'])} `, s.say(s.value(a, q), q), '.']),
  'heading and colon': of((s, q, a) => [heading(s, a), `${upper(q.noun)}: `, s.say(s.value(a, q), q), '.']),
  'heading and two figures': (s) => {
    const [q, r] = [s.w.measured[0]!, s.w.measured[1]!];
    return [heading(s, s.a), `The ${q.noun} is `, s.say(s.value(s.a, q), q), `. The ${r.noun} is `, s.say(s.value(s.a, r), r), '.'];
  },
  'pronoun': of((s, q, a) => t`${s.in}let us look at ${a.name}. Its ${q.noun} is ${s.say(s.value(a, q), q)}.`),
  'next thing': of((s, q, a) => t`${s.in}${s.of(a, q)} is ${s.say(s.value(a, q), q)}. ${s.products ? `That of ${s.b.name}` : `${upper(s.b.with)} it`} is ${s.say(s.value(s.b, q), q, { bare: s.int(2) === 0 })}.`),
  'ellipsis': of((s, q, a) => t`${s.in}${s.of(a, q)} is ${s.say(s.value(a, q), q)}. ${upper(s.b.name)}: ${s.say(s.value(s.b, q), q, { bare: true })}.`),
  'topic, then things': of((s, q, a) => t`## ${upper(q.noun)}${s.place ? ` ${s.place.in}` : ''}
${a.name}: ${s.say(s.value(a, q), q)}. ${s.b.name}: ${s.say(s.value(s.b, q), q)}.`),
  'two places': (s) => {
    const q = any(s);
    const [x, y] = s.w.places;
    return q && x && y && t`${x.in}, ${s.of(s.a, q)} is ${s.say(s.value(s.a, q, 'load', x.id), q)}. ${upper(y.in)}, it is ${s.say(s.value(s.a, q, 'load', y.id), q)}.`;
  },
};

function rise(s: Scene, q: Quantity, a: Thing): Exact {
  return s.value(a, q).minus(s.value(a, q, 'idle'));
}

function lists(s: Scene, make: (q: Quantity, things: readonly Thing[]) => Piece[], fits?: (q: Quantity) => boolean): Piece[] | undefined {
  const q = s.quantity(fits);
  return q && s.things.length > 1 ? make(q, s.things.slice(0, 3)) : undefined;
}

/** Figures with the unit after the last. */
function listed(s: Scene, things: readonly Thing[], q: Quantity): Piece[] {
  return things.flatMap((x, i): Piece[] => [i === 0 ? '' : i === things.length - 1 ? ' and ' : ', ', s.say(s.value(x, q), q, { bare: i < things.length - 1 })]);
}

/** A round figure near the value on the side that the hedge says. */
function hedged(s: Scene, q: Quantity, a: Thing, hedge: string): Piece[] | undefined {
  const value = s.value(a, q);
  const size = value.toNumber();
  const step = size >= 1000 ? 50 : size >= 100 ? 5 : size >= 2 ? 1 : 0.05;
  const up = /under|nearly|less/.test(hedge);
  const round = up ? Math.ceil(size / step) : Math.floor(size / step);
  const n = step === 0.05 ? (round * 0.05).toFixed(2) : String(round * step);
  if (Number(n) === size || Math.abs(Number(n) / size - 1) > 0.045) return undefined;
  const words = hedge === 'or so' ? (x: string) => `${x} ${q.words} or so` : (x: string) => `${hedge} ${x} ${q.words}`;
  const other = step === 0.05 ? (Number(n) * 10).toFixed(1) : String(Number(n) * 10);
  return t`${s.in}${s.of(a, q)} is ${loose(words(n), words(other))}.`;
}
