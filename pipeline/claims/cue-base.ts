// What a number is compared with, by the words that open it.
import { drawing } from './change-words.js';
import { comesFrom } from './comes-from.js';
import { duringWork, standsBehind } from './stands-behind.js';
import { baseOpeners, comparatives, type Mention, stretch } from '../script/index.js';
import { bearing, type Segment } from './clauses.js';
import { endOfIdle } from './idle-base.js';
import type { Name } from './lexicon.js';
import { secondAs } from './ratio-words.js';

const openers = new Map<string, { opener: string; words: string[] }[]>();
for (const opener of baseOpeners) {
  const words = opener.split(' ');
  openers.set(words[0]!, [...(openers.get(words[0]!) ?? []), { opener, words }]);
}

const likeness = new Set(['same', 'identical', 'equal', 'equivalent']);
/** Words that may open what is compared with, before the number. */
const before = new Set('than versus vs against beats beat beating misses missed trails trailing trailed leads led leading behind outperforms outperform outruns outrun outpaces outpace overtakes overtake undercuts undercut outdoes outlasts outscores compared relative ahead higher lower above below from beside next'.split(' '));

const gains = new Set('improvement gain increase rise saving reduction advance jump drop fall cut'.split(' '));

/** "Set beside the limit, it is 12 ahead", "put next to it". */
const putBeside = /\b(?:set|put|held|hold|placed|laid|seen|taken|stood)(?: (?:it|that|them|this|side))?$/;

export const ownBest = /^(?:best|top|peak|highest|fastest|quickest|maximum|finest)$/;

function standsAt(low: readonly string[], words: readonly string[], at: number): boolean {
  return words.every((w, k) => low[at + k] === w);
}

/** What the number is compared with: from the word that opens it to the end of its stretch. */
export function baseScope(low: readonly string[], m: Mention, seg: Segment, end: number, names: readonly Name[], covered: (k: number) => boolean): { from: number; to: number } | undefined {
  // "At 115.8 frames per second, the rate is the same as at stock."
  for (let i = m.to; i + 1 < low.length; i++) if (likeness.has(low[i]!) && /^(?:as|to)$/.test(low[i + 1]!) && !/^(?:do|does|did|doing|done)$/.test(low[i - 2] ?? '')) return { from: i + 2, to: endOfBase(low, i + 2, low.length) };
  for (let i = m.to; i < end; i++) {
    const opening = openers.get(low[i]!);
    if (opening) for (const { opener, words } of opening) {
      if (!standsAt(low, words, i)) continue;
      // "I shaved 40 grams off the Larch", "took 3 watts off the Larch's draw": what loses it, and nothing that it is compared with.
      if (opener === 'off' && i === m.to && losing(low, seg, m, names)) continue;
      // "takes 12 degrees off the memory": what is lowered, and not what it is compared with.
      if (opener === 'off' && names.some((n) => n.from > i && n.from <= i + 2 && n.meanings.every((x) => x.fields.length > 0 && x.fields.every((f) => f === 'part' || f === 'measure' || f === 'workload')))) continue;
      // "4,700 under both lids and 30 less under the flat one": where it is so; what a comparative compares with opens with "than".
      if (/^(?:over|under|above|below|beneath)$/.test(opener) && i > m.to && comparatives.has(low[i - 1]!)) continue;
      if (covered(i) || (i === m.to && standsBehind(low, m)) || duringWork(low, i, m, names) || (/^(?:over|under|above|below|past|beyond|from|off)$/.test(opener) && (i > m.to + 4 || notTrailer(low, i, 1)))) continue;
      // "still four below it in the sun": where that is, and not what it is compared with.
      const pronoun = /^(?:over|under|above|below|beneath|inside|past|beyond)$/.test(opener) && /^(?:it|them)$/.test(low[i + words.length] ?? '') ? i + words.length + 1 : end;
      return { from: i + words.length, to: (opener === 'from' ? endOfIdle(low, i + 1, m, seg, names) : undefined) ?? endOfBase(low, i + words.length, pronoun) };
    }
  }
  // "gains 2.6 frames on the plain one": a setting gained on is the base; on a bench, one only stands.
  if (low[m.to] === 'on' && names.some((n) => n.from > m.to && n.from <= m.to + 2 && n.meanings.some((x) => x.own && x.fields.length === 1 && x.fields[0] === 'setting')) && low.slice(Math.max(seg.from, m.from - 3), m.from).some((w) => /^(?:gain|gains|gained|lose|loses|lost)$/.test(w))) return { from: m.to + 1, to: endOfBase(low, m.to + 1, end) };
  // "up 2.2 on the gentle one"
  if (low[m.to] === 'on' && names.some((n) => n.from > m.to - 1 && n.from <= m.to + 2 && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting'))) && /^(?:up|down)$/.test(low[m.from - 1] ?? '') && /^(?:|,|:|is|are|was|were|and|but)$/.test(low[m.from - 2] ?? '')) return { from: m.to + 1, to: endOfBase(low, m.to + 1, end) };
  // "stays within one volt of the first"
  if (nearTo(low, m)) return { from: m.to + 1, to: endOfBase(low, m.to + 1, end) };
  // "is up 5 percent on what it was before"
  if (low[m.to] === 'on' && /^(?:what|last)$/.test(low[m.to + 1] ?? '') && low.slice(Math.max(seg.from, m.from - 4), m.from).some((w) => /^(?:up|down|better|worse|more|less|higher|lower)$/.test(w))) return { from: m.to + 1, to: endOfBase(low, m.to + 1, end) };
  // "a saving of 12 percent on the old one", "an improvement of 39 percent on its normal figure"
  if (low[m.to] === 'on' && m.unit?.id === '%' && low.slice(Math.max(seg.from, m.from - 6), m.from).some((w, k, all) => gains.has(w) && all.slice(k + 1).includes('of')) && names.some((n) => n.from > m.to && n.from <= m.to + 3 && n.meanings.some((x) => x.own && x.fields.some((f) => f !== 'measure' && f !== 'part')))) return { from: m.to + 1, to: endOfBase(low, m.to + 1, end) };
  // "leaves 182 millivolts to the limit", "seven degrees left to the limit"
  const to = toMark(low, low[m.to] === 'left' ? m.to + 1 : m.to);
  if (to > 0) return { from: to, to: endOfBase(low, to, end) };
  // "Over the foam, that is 12 percent extra for the one, 3 for the other", "Compared with the foam, mind, it's …": what opens the sentence is what all of it is compared with.
  // … and "Put that next to the foam, which we just had, and it's 12 decibels quieter".
  const opening = openingWords.exec(stretch(low, 0, 7) + ' ')?.[0].split(' ').length ?? 0;
  const opened = opening && seg.to > 0 && !low.slice(m.to, m.to + 3).includes('between') ? openingName(low, m, names, opening) : undefined;
  if (opened) return { from: opening, to: opened };
  for (let i = seg.from; i < m.from; i++) {
    if (!before.has(low[i]!)) continue;
    const opener = low[i] === 'beside' && putBeside.test(stretch(low, Math.max(0, i - 2), i)) ? 1 : /^(?:than|versus|vs|against|beats|beat|beating|misses|missed|trails|trailing|trailed|leads|led|leading|behind|outperforms|outperform|outruns?|outpaces?|overtakes?|undercuts?|outdoes|outlasts|outscores)$/.test(low[i]!) ? 1 : (low[i] === 'compared' && /^(?:with|to)$/.test(low[i + 1] ?? '')) || (low[i] === 'relative' && low[i + 1] === 'to') || (low[i] === 'ahead' && low[i + 1] === 'of') || (low[i] === 'next' && low[i + 1] === 'to' && putBeside.test(stretch(low, Math.max(0, i - 2), i))) || (/^(?:higher|lower|above|below)$/.test(low[i]!) && low[i + 1] === 'than') ? 2 : low[i] === 'from' && /^(?:rise|rises|up|climb|drop|measured|gain|increase|counted|distance|gap|change|step|jump)$/.test(low[i - 1] ?? '') && !/\d/.test(low[i + 1] ?? '') ? 1 : 0;
    if (!opener || i + opener >= m.from) continue;
    // "nothing sinks lower than the Wadham, with 12 less": it is the Wadham that is told of.
    if (low[i] === 'than' && low.slice(Math.max(0, i - 7), i).some((w) => /^(?:nobody|nothing|none|neither|no|never)$/.test(w)) && low.slice(i, m.from).some((w) => /^(?:,|with|at|:)$/.test(w))) continue;
    // "against its target of 0.9 volts": the number is what the target is.
    if (low[m.from - 1] === 'of' && /^(?:limit|target|cap|rating|ceiling|threshold|goal|setpoint|budget|allowance|maximum|minimum)$/.test(low[m.from - 2] ?? '')) continue;
    const stop = low.slice(i + opener, m.from).findIndex((w) => w === 'by' || w === ',' || w === ':' || (w === 'to' && /^(?:step|jump)$/.test(low[i - 1] ?? '')));
    // Without a joint the comparison ends with the first thing named: "against the higher speed the Alderwick loses 36".
    const named = names.find((n) => n.from >= i + opener && n.to <= m.from && n.meanings.some((x) => x.own && x.slots.length > 0));
    return { from: i + opener, to: stop >= 0 ? i + opener + stop : named ? named.to : m.from };
  }
  return undefined;
}

const openingWords = /^(?:(?:over|above|beyond|against|versus|compared (?:with|to)|relative to|measured against|next to|beside)|(?:(?:and|so|but|now|then|just|or) )*(?:compare|put|set|hold|stack|weigh|pit|line|place|lay|match|measure) (?:that|this|it|those|these|them)(?: up| down)? (?:with|to|against|beside|alongside|(?:right )?next to))(?= )/;

/** Where what "Against the Larch, …" or "Over the Larch on peat it …" opens with ends: behind the name, and the setting it has. */
function openingName(low: readonly string[], m: Mention, names: readonly Name[], opening: number): number | undefined {
  const first = names.find((n) => n.from <= opening + 1 && n.from >= opening && n.to < m.from && n.meanings.some((x) => (x.own && x.fields.some((f) => f === 'setup' || f === 'setting')) || x.role?.role === 'idle'));
  if (!first) return undefined;
  const joint = /^(?:with|on|at|in|under)$/.test(low[first.to] ?? '');
  const second = joint ? names.find((n) => n.from > first.to && n.from <= first.to + 2 && n.to < m.from && n.meanings.some((x) => x.own && x.fields.includes('setting'))) : undefined;
  const end = (second ?? first).to;
  if (low[end] === ',') return opening < 3 && /^(?:which|who|whose|where|at|with)$/.test(low[end + 1] ?? '') ? undefined : end;
  if (opening >= 3 && /^(?:which|and|it|it's|that's|they|you|we|then)$/.test(low[end] ?? '')) return end;
  return second && /^(?:it|it's|that|that's|they|he|she|this|we|i)$/.test(low[end] ?? '') ? end : undefined;
}

/** "6 below where it gives up, which is 80": a clause of its own says what it is compared with. */
export function whole(low: readonly string[], scope: { from: number; to: number } | undefined): { from: number; to: number } | undefined {
  if (!scope || scope.to > scope.from || low[scope.from] !== 'where') return scope;
  const end = low.findIndex((w, k) => k > scope.from && /^[,;:.]$/.test(w));
  return { from: scope.from, to: end < 0 ? low.length : end };
}

const taking = /^(?:take|takes|took|taken|taking|shave[sd]?|shaving|knock(?:s|ed|ing)?|cut|cuts|cutting|trim(?:s|med|ming)?|chop(?:s|ped)?|lop(?:s|ped)?|pull(?:s|ed)?|strip(?:s|ped)?|scrape[sd]?|clip(?:s|ped)?|get|gets|got)$/;

/** People take it off something, or it is taken off something that a thing has. */
function losing(low: readonly string[], seg: Segment, m: Mention, names: readonly Name[]): boolean {
  // "takes 9 off the former and 12 off the latter": the verb is said once.
  let lead = m.from - 1;
  while (/^(?:only|just|about|around|nearly|almost|a|mere|another|some)$/.test(low[lead] ?? '')) lead--;
  const again = /^(?:and|but|,)$/.test(low[lead] ?? '');
  for (let i = m.from - 1; i >= Math.max(again ? 0 : seg.from, again ? lead - 9 : m.from - 4); i--) {
    if (!taking.test(low[i]!)) continue;
    if (/^(?:i|we|you|i've|we've)$/.test(low[i - 1] ?? '')) return true;
    const of = names.find((n) => n.from > m.to && n.from <= m.to + 2);
    if (of && low[of.to - 1]!.endsWith("'s")) return true;
    // "The blanket takes 9 off the former": one kind of thing does it to another.
    const fields = (n: Name): readonly string[] => n.meanings.flatMap((x) => x.fields);
    // "An hour of filing takes 9 seconds off the Ashlar": what does it is no thing that was measured.
    const start = again ? low.slice(0, i).findLastIndex((w) => /^[.,;:]$/.test(w)) + 1 : seg.from;
    const subject = low.slice(start, i);
    if (of && fields(of).every((f) => f === 'setup') && subject.length > 0 && !/^(?:it|that|this|which|they|he|she|one|other|and|but|also|so|,)$/.test(subject.at(-1)!) && !names.some((n) => n.from >= start && n.to <= i && n.meanings.some((x) => x.own))) return true;
    const by = names.find((n) => n.to === i && fields(n).includes('setting'));
    return by !== undefined && (of ? !fields(of).includes('setting') : /^the (?:former|latter|one|other)$/.test(stretch(low, m.to + 1, m.to + 3)));
  }
  return false;
}

/** "within one volt of the first", "inside a degree of the other": how near to it. */
export function nearTo(low: readonly string[], m: Mention): boolean {
  return /^(?:within|inside)$/.test(low[m.from - 1] ?? '') && low[m.to] === 'of' && m.unit !== undefined && !/^(?:each|one|its|my|our|your)$/.test(low[m.to + 1] ?? '');
}

function endOfBase(low: readonly string[], from: number, to: number): number {
  for (let i = from; i < to; i++) if (low[i] === ',' || low[i] === ';' || low[i] === '.') return i;
  return to;
}

/** "twice what …", "half the …", "as much as …", "two thirds of that". */
export function ratioBase(low: readonly string[], m: Mention, reach: number): { from: number; to: number } | undefined {
  const end = relativeEnd(low, reach);
  const as = secondAs(low, m, end);
  if (as > 0) return { from: as + 1, to: end };
  let i = m.to;
  if (low[i] === 'of' || low[i] === 'what' || low[i] === 'the' || low[i] === 'an' || low[i] === 'a' || low[i] === 'as' || low[i] === 'that') return { from: i, to: end };
  while (i < end && i < m.to + 3) { if (low[i] === 'of' || low[i] === 'as') return { from: i + 1, to: end }; i++; }
  return m.to < end ? { from: m.to, to: end } : undefined;
}

const endOfPair = /\bfrom (?:\S+ )?[\d.,]+(?: [\p{L}%°]+){0,2} to (?:\S+ )?[\d.,]+(?: [\p{L}%°]+){0,2}$/u;

/** Where the mark begins that "to the limit" leads to; 0 where it leads to none. */
function toMark(low: readonly string[], at: number): number {
  return low[at] === 'to' && /^(?:the|my|its|our|that|their)$/.test(low[at + 1] ?? '') && low.slice(at, at + 5).some((w) => /^(?:limit|target|ceiling|cap|threshold|maximum|goal|specification|spec)$/.test(w)) ? at + 1 : 0;
}

export function notTrailer(low: readonly string[], i: number, length: number): boolean {
  const w = low[i]!;
  const next = low[i + length] ?? '';
  // "from 1,012 to 908 under the old rules": where it ends, and what that is so under.
  if (/^(?:under|over)$/.test(w) && endOfPair.test(stretch(low, Math.max(0, i - 9), i))) return true;
  if (/^(?:under|over|above)$/.test(w) && /^(?:load|stress|full|pressure|the|room|ambient|time|there)$/.test(next)) return next !== 'the' || /^(?:load|same|room|ambient|render|course|week|night|run|day|hour|hours|days|weeks|months|morning|afternoon|evening|whole)$/.test(low[i + length + 1] ?? '');
  if (w === 'from' && /^(?:the|a|our|my|its)$/.test(next) && /^(?:start|meter|sensor|wall|outset|beginning|log|outlet|socket|mains|plug|grid|battery|tap|supply)$/.test(low[i + length + 1] ?? '')) return true;
  if (w === 'from' && /^(?:the|a|our|my|its)$/.test(next) && low[i + length + 1] === '\u0000') return true;
  // "sips 14 from the rail": where it comes from, and nothing that it differs from.
  if (w === 'from' && low.slice(Math.max(0, i - 5), i).some((v) => drawing.has(v))) return true;
  if (w === 'from' && comesFrom(low, i)) return true;
  // "61 up from 48": where it stands, and where it stood.
  if (/^(?:up|down)$/.test(w) && next === 'from' && /^\d/.test(low[i + length + 1] ?? '')) return true;
  if (w === 'left' && toMark(low, i + length) > 0) return false;
  if (/^(?:up|down|back|left|off)$/.test(w) && /^(?:there|here|to|from|at|in|with)$/.test(next)) return w !== 'up' && w !== 'down' ? /^(?:to|there|here)$/.test(next) : next !== 'from' && next !== 'at';
  if (w === 'between') return true;
  if (w === 'from' && /^(?:full|empty)$/.test(next)) return true;
  return w === 'back' && next === 'on';
}

/** Where what a share is of ends: "of the pace at which it copies, …" takes in what says which rate; "of the light is left to the other" ends before the verb. */
export function shareEnd(low: readonly string[], from: number, to: number): number {
  // "of its best pace from the cheap tray": where that is, and not what it is of.
  const own = /^(?:its|their|his|her)$/.test(low[from] ?? '') ? low.findIndex((w, k) => k > from + 2 && k < to && /^(?:from|with|on|in|at|under|using|by)$/.test(w)) : -1;
  if (own > 0 && low.slice(from + 1, from + 3).some((w) => ownBest.test(w))) return own;
  // "61 percent of the one's pace on 45 percent of its draw": another share begins.
  const other = low.findIndex((w, k) => k > from && k + 2 < to && bearing.has(w) && /^(?:\d|\p{L}+$)/u.test(low[k + 1]!) && low.slice(k + 2, k + 6).some((x, j, all) => /^(?:%|percent|cent)$/.test(x) && all[j + 1] === 'of'));
  if (other > 0) return other;
  const verb = low.findIndex((w, k) => k > from && k < to && /^(?:is|are|was|were|remains?|remained|stays?|stayed|survives?|survived)$/.test(w));
  if (verb > 0 && !low.slice(from, verb).some((w) => /^(?:what|that|which|who|it|he|she|they|we|you|i|whatever)$/.test(w))) return verb;
  return relativeEnd(low, to);
}

/** "two thirds of the pace at which it copies": the words that say which rate belong to what it is compared with. */
function relativeEnd(low: readonly string[], to: number): number {
  const which = low[to] === 'which' ? to : low[to - 1] === 'which' ? to - 1 : -1;
  if (which < 0 || !/^(?:at|in|on|with|from|to)$/.test(low[which - 1] ?? '')) return to;
  const end = low.findIndex((w, k) => k > which && /^(?:,|;|\.|:|and|but|so)$/.test(w));
  return end < 0 ? low.length : end;
}
