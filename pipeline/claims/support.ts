// What an alarm rests on. A reading is the best only beside the others; before a number is called wrong, the words must say
// by themselves what kind of quantity it is and what it is about, and leave no word of comparison unread.
//   "The Ardent draws 214 watts."                   unit said, subject said
//   "18.6 and 18.9 kelvin", "24 percent, then 36"   the unit is that of the list
//   "The drive is at 67.4."                         no unit: the measure must be named, or just have been spoken of
//   "9 degrees for the price of a box"              nothing of the record is named, here or before
//   "multiplies the flow by 2.6", "3.90 a watt"     a multiple, a quotient: no plain reading is meant
//   "does twice as much for the one as …"           a multiple of changes, not of values
import { comparatives, stretch } from '../script/index.js';
import { isFact } from '../facts/index.js';
import { fit } from './decide.js';
import { fits } from '../wording/index.js';
import { baseWords } from './bases.js';
import { type Candidate, type Context, oddlySized } from './context.js';
import type { Cell } from './grid.js';
import { wanted } from './read-condition.js';
import { otherQuantity } from './share-said.js';
import { firstCell } from './terms.js';

/** Why an alarm lacks support; undefined where it stands. */
export function unsupported(c: Context, index: number, x: Candidate, ranked: readonly { candidate: Candidate }[]): string | undefined {
  if (x.kind === 'rank' || x.kind === 'count' || /the record gives it in/.test(x.why)) return undefined;
  if (!anythingNamed(c, x)) return 'nothing of the record was named';
  if (x.subject?.fixed && x.kind === 'constant' && !roleSaid(c, x.subject)) return 'a limit, target or rating would have to be named';
  if (openSubject(c, index, x, ranked)) return 'the words leave open what it speaks of';
  return unread(c, index, x) ?? (kindSaid(c, index, x) ? undefined : 'the words do not say what kind of quantity it is');
}

/** "From 17 to 71 watts" is of all there is only where a word says so. */
export function saysAll(c: Context): boolean {
  return c.parsed.low.some((w) => total.test(w));
}

/** Words that speak of a whole set. */
const total = /^(?:all|every|everything|everyone|each|both|whole|entire|throughout|overall|field|pack|bunch|lot|table|always|any|none|stay|stays|stayed|remained|runs|ranged|ranges|spans|spanned|varies|varied)$/;

/** What the sentence or those before it named is what the reading is about. */
function anythingNamed(c: Context, x: Candidate): boolean {
  const g = c.grid;
  return c.hits.hits.some((h) => !x.subject || h.value === x.subject.at[h.slot] || h.value === x.base?.at[h.slot]) || c.now.topics.some((t, i) => t.length > 0 && g.slots[i]!.field !== 'measure' && g.slots[i]!.field !== 'part' && g.slots[i]!.field !== 'phase');
}

function roleSaid(c: Context, cell: Cell): boolean {
  const g = c.grid;
  return c.hits.roles.some((r) => r.role === cell.role) || !(g.byMeasure.get(cell.at[g.of.measure[0]!]!) ?? []).some((y) => !y.fixed && g.of.part.every((i) => y.at[i] === cell.at[i])) || c.now.constant === cell.key || c.hits.hits.some((h) => (h.slot === g.of.phase[0] || (g.slots[h.slot]!.field === 'setup' && g.holders.has(h.value))) && h.value === cell.at[h.slot]);
}

/** Three things or more go with the words just as well, and somewhere the number is right. */
function openSubject(c: Context, index: number, x: Candidate, ranked: readonly { candidate: Candidate }[]): boolean {
  if (x.kind !== 'mean' || !x.subject) return false;
  const equal = ranked.map((r) => r.candidate).filter((y) => y.kind === x.kind && y.subject && y.cost <= x.cost + 0.05);
  if (!c.grid.of.setup.some((i) => new Set(equal.map((y) => y.subject!.at[i])).size > 2)) return false;
  const m = c.parsed.said[index]!.mention;
  return (c.grid.byMeasure.get(x.subject.at[c.grid.of.measure[0]!]!) ?? []).some((cell) => { const f = c.facts.value(cell.key); return isFact(f) && fit(m, { ...x, fact: f }); });
}

/** The unit is said, the measure is named in the clause, or goes on from the figure or the sentence before. */
function kindSaid(c: Context, index: number, x: Candidate): boolean {
  const g = c.grid;
  const { mention: m, cue } = c.parsed.said[index]!;
  const measure = g.of.measure[0]!;
  const at = x.subject?.at;
  if (!at || x.why === otherQuantity || (m.unit && m.unit.id !== '%' && m.unit.id !== 'points')) return true;
  const of = at[measure]!;
  // "The one, 4.6": what was set is not told by a bare figure alone.
  if (!m.unit && x.kind === 'constant' && !c.done.some((d) => d?.subject?.at[measure] === of) && !(c.now.said[0] && firstCell(g, c.now.said[0])?.at[measure] === of) && !c.hits.roles.some((r) => r.segment <= index) && !c.hits.hits.some((h) => h.segment <= index && h.value === at[h.slot] && (h.slot === measure || g.of.part.includes(h.slot) || h.slot === g.of.phase[0] || g.holders.has(h.value)))) return false;
  const dims = g.measureUnits.get(of);
  if (cue.of?.some((d) => dims?.has(d))) return true;
  // "still leads with 42.8": in what the table was of.
  if (leading(c, index) && c.now.leads!.of === [measure, ...g.of.part].map((i) => at[i]).join('/')) return true;
  // "19.6 and 19.8 decibels, … the empty room with its 18.4": a bare figure goes on in the unit said last.
  const last = c.parsed.said.slice(0, index).reverse().find((s) => s.mention.unit && !s.named && !(s.mention.unit.dimension === 'duration' && /^(?:for|after|in|within)$/.test(c.parsed.low[s.mention.from - 1] ?? '')))?.mention.unit;
  if (!m.unit && last && last.id !== '%' && m.type === 'cardinal' && !dims?.has(last.dimension) && !(last.dimension.startsWith('temperature') && (dims?.has('temperature') || dims?.has('temperature-difference'))) && !ofOneSize(c, index, of) && !c.hits.hits.some((h) => h.segment === index && (h.slot === measure || (g.of.part.includes(h.slot) && onlyWith(c, h, of))))) return false;
  const previous = c.done[index - 1]?.subject;
  if (m.unit?.id === '%' && x.kind !== 'mean' && previous && previous.at[measure] !== of && !c.hits.hits.some((h) => h.segment === index && h.baseOf < 0 && (h.slot === measure || g.of.part.includes(h.slot)) && h.value === at[h.slot])) return false;
  // "takes twice as much as the other": as much of what was spoken of last.
  if (cue.op === 'ratio' && /^as much as\b/.test(stretch(c.parsed.low, m.to, m.to + 3)) && c.now.said[0] && firstCell(g, c.now.said[0])?.at[measure] !== of) return false;
  if (cue.op === 'ratio' && !c.hits.hits.some((h) => h.segment <= index && (h.slot === measure || g.of.part.includes(h.slot)) && h.value === at[h.slot]) && c.now.said[0] && firstCell(g, c.now.said[0])?.at[measure] !== of) return false;
  const own = [measure, ...g.of.part];
  if (c.hits.hits.some((h) => h.segment <= index && own.includes(h.slot) && h.value === at[h.slot])) return true;
  if (c.hits.dimensions.some((d) => d.segment <= index && d.dimension.some((y) => dims?.has(y)))) return true;
  if (c.done.slice(0, index).some((d) => d?.subject?.at[measure] === of)) return true;
  const lately = c.now.said.some((t) => firstCell(g, t)?.at[measure] === of);
  return lately || (c.now.topics[measure]![0] === of && c.before.ages[measure]! <= 3) || (!m.unit && ofOneSize(c, index, of));
}

/** "The Ardent still leads with 42.8", where whoever comes first was said before. */
export function leading(c: Context, index: number): boolean {
  return c.now.leads !== undefined && /^(?:leads?|led|leading|wins?|won|winning|trails?|trailed|trailing|follows|followed) (?:with|at)$/.test(stretch(c.parsed.low, Math.max(0, c.parsed.said[index]!.mention.from - 2), c.parsed.said[index]!.mention.from));
}

/** A part that no other measure has. */
function onlyWith(c: Context, h: { slot: number; value: string }, of: string): boolean {
  return [...c.grid.valuesWith].every(([m, slots]) => slots[h.slot]!.has(h.value) === (m === of));
}

/** "17,520": nothing else in the record is of that size. */
function ofOneSize(c: Context, index: number, of: string): boolean {
  const m = c.parsed.said[index]!.mention;
  const value = Math.abs(m.value.toNumber());
  if (m.type !== 'cardinal' || value < 100) return false;
  return [...c.grid.scale].every(([name, s]) => (name === of) === (value <= s.high * 2 && value >= s.low / 2));
}

/** "doesn't hit", "never reaches": what is not come to. */
const notReached = /\b(?:doesn't|didn't|don't|never|won't|can't|cannot|does not|did not|not) (?:(?:even|quite|ever|actually|really) )?(?:hits?|reach(?:es|ed)?|makes?|gets? to|touch(?:es|ed)?|sees?|saw|manages?|cracks?|breaks?)$/;

/** "Nobody … above", "none of these … more than", "it isn't under". */
function boundOfAll(before: readonly string[]): boolean {
  const clause = before.slice(Math.max(before.lastIndexOf(','), before.lastIndexOf(';'), before.lastIndexOf(':')) + 1).join(' ');
  if (notReached.test(clause)) return true;
  return /\b(?:nobody|no ?one|none|nothing|neither|no \p{L}+|not one(?: \p{L}+)?|never|isn't|wasn't|aren't|weren't|doesn't|didn't|is not|was not)\b.*\b(?:over|above|under|below|past|beyond|more than|less than|fewer than|within|closer than|nearer than|at least|at most|as much as|as many as)$/u.test(clause);
}

/** A word of comparison, multiplication or division in the clause that the reading leaves out. */
function unread(c: Context, index: number, x: Candidate): string | undefined {
  const { cue, mention, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const plain = x.kind === 'mean' || x.kind === 'raw' || x.kind === 'constant';
  // "30 percent more than the Dunnock's 1,100": what it is compared with is a plain figure.
  const compared = cue.op !== 'change' && c.parsed.said.some((s, k) => k < index && s.cue.base && mention.from >= s.cue.base.from && mention.from < s.cue.base.to) && c.hits.hits.some((h) => h.to === mention.from && ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field));
  if (plain && !compared && x.term.kind === 'mean' && (cue.op === 'change' || cue.elided?.op === 'change') && !/the record gives it in/.test(x.why)) return 'the words speak of a change, and no reading of it was found';
  // "Nobody idles above 40 degrees", "none of them needs more than a minute"
  if ((plain || low[mention.from - 1] === 'within') && !compared && boundOfAll(low.slice(0, mention.from))) return 'a bound, not a reading';
  if (low[mention.from - 1] === 'than' && comparatives.has(low[mention.from - 2] ?? '') && plain && !outright(c, index, x)) return 'a bound, not a reading';
  // "The median crate, at the low flame, gives 14", of a weight: not of its size.
  if (x.term.kind === 'median' && !mention.unit && x.subject && oddlySized(c, index, x.subject)) return 'it is of a size that no reading has';
  if (plain && perWatt(c, index) && !/\/W$/.test(mention.unit?.id ?? '')) return 'it speaks of something per watt';
  if (plain && mention.unit?.id === '%' && cue.op === 'share') return 'it speaks of a share';
  if (plain && /\bdivided by\b/.test(low.join(' '))) return 'it speaks of a quotient';
  if (x.subject?.fixed && x.kind === 'constant' && c.hits.roles.some((r) => r.role === x.subject!.role && r.from > mention.to && r.segment <= index + 1 && beside.test(stretch(low, Math.max(mention.to, r.from - 3), r.from)))) return 'the limit is what it is compared with';
  // "between that and the windy one there are 9 decibels": how far two lie apart, of which one was not understood.
  if ((plain || (x.why === 'from the lowest to the highest' && cue.because !== 'from end to end')) && bothNamed(c, mention.from) < 2 && /\bbetween\b.*\band\b.*\b(?:there|lies?|lay|is|are|was|were|there's|it's|that's|makes|leaves|comes|sits?)(?: (?:about|only|nearly|almost|just|still|a|some|around|roughly|is|are|was|were))*$/.test(stretch(low, Math.max(segment.from, mention.from - 14), mention.from))) return 'how far two things lie apart';
  // "I put on 3 grams of fresh grease": what people did, and no reading.
  if (handled(low, segment.from, mention)) return 'what was put there';
  // "the meter a metre from the lid": where it stood.
  if (cue.because === 'from' && mention.unit?.dimension === 'length') return 'a distance at which something stood';
  // "80 millimetres long": of a length that is no part of what was said to be measured.
  if (plain && mention.unit?.dimension === 'length' && /^(?:long|wide|tall|deep|thick|high|across)$/.test(low[mention.to] ?? '') && !lengthwise(c, x, low[mention.to]!)) return 'a length of something that was not measured';
  if ((plain || x.kind === 'range') && segmentHas(c, index, /^(?:ratio|factor|quotient)$/)) return 'it speaks of a ratio';
  // "it slips under my 30": a mark of the speaker's own, and nothing that was measured.
  if (plain && !x.subject?.fixed && /^(?:my|our|your)$/.test(low[mention.from - 1] ?? '')) return 'a mark of one\'s own';
  // "2 beyond the 78 we call comfortable"
  if (cue.base && !x.base?.fixed && c.parsed.said.some((s, k) => s.mention.from >= cue.base!.from && s.mention.from < cue.base!.to && wanted(c, k))) return 'compared with a mark of one\'s own';
  // "with 25 to spare": what is left to something that was not said.
  if (low[mention.to] === 'to' && low[mention.to + 1] === 'spare' && !x.base?.fixed) return 'what it is left to was not said';
  if ((cue.op === 'ratio' || cue.op === 'share') && !x.firm && baseWords(c, index).low.some((w) => /^(?:whole|total|entire)$/.test(w))) return 'it speaks of a part of a whole';
  if (follows(c, index) && !fits(mention, x.fact, { size: true })) return 'it follows from the two figures said before';
  if ((cue.op === 'ratio' || cue.op === 'share') && pointsBack(c, index) && !(c.done[index - 1] && !fit(c.parsed.said[index - 1]!.mention, c.done[index - 1]!) ? [] : c.now.said).slice(0, 2).some((t) => x.subject && firstCell(c.grid, t) === x.subject)) return 'it speaks of what was said last';
  // "nearly halved the time": of what is called by a word that names nothing of the record.
  if (cue.op === 'ratio' && /^(?:halv|doubl|tripl)/.test(low[mention.from]!) && /^(?:the|its|that|your|my|our)$/.test(low[mention.to] ?? '') && !c.parsed.names.some((n) => n.from <= mention.to + 1 && mention.to + 1 < n.to)) return 'it speaks of something that was not named';
  const best = c.parsed.said.some((s, k) => k < index && s.mention.superlative && low[s.mention.from - 1] === 'the' && low[s.mention.from - 2] !== 'at' && !(c.done[k]?.kind === 'rank' && c.done[k]!.subject === x.subject) && (s.mention.from >= segment.from || (k === index - 1 && mention.from - s.mention.to <= 2)));
  const named = c.hits.hits.some((h) => h.segment === index && ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field) && !c.grid.holders.has(h.value));
  return best && !named ? 'it speaks of whichever is the extreme' : undefined;
}

/** "229 watts, 116 frames, 0.51 per watt": what stands right after another number is said of that one. */
export function perWatt(c: Context, index: number): boolean {
  const { low, said } = c.parsed;
  const at = [...low.keys()].filter((k) => /^(?:per watt|for each watt|for every watt)\b/.test(stretch(low, k, k + 3)));
  return at.some((k) => { const of = said.findIndex((s) => s.mention.to <= k && k - s.mention.to <= 2); return of < 0 || of === index || said[of]!.mention.unit !== undefined && said[of]!.mention.unit === said[index]!.mention.unit; });
}

/** How many things and settings are named right before the number. */
function bothNamed(c: Context, at: number): number {
  return new Set(c.hits.hits.filter((h) => h.to <= at && h.from >= at - 14 && ['setup', 'setting', 'workload', 'part'].includes(c.grid.slots[h.slot]!.field)).map((h) => h.value)).size;
}

/** People put, pour or spend so much of something: no reading, and no change of one. */
function handled(low: readonly string[], from: number, m: { from: number; to: number }): boolean {
  const before = stretch(low, Math.max(0, Math.min(from, m.from - 8)), m.from);
  return low[m.to] === 'of' && /\b(?:put|putting|applied|apply|applying|added|adding|poured|pouring|squeezed|squeezing|smeared|dabbed|spread|squirted|filled|filling|poured|mixed|rubbed|brushed|used up|bought)(?: (?:on|in|it|them|to|with|another|some|about|only|just|roughly|nearly|a|the|all|full))*$/.test(before) && /^(?:new|fresh|more|paste|grease|oil|water|glue|tape|the same|some|my|our)\b/.test(stretch(low, m.to + 1, m.to + 3));
}

const ways: Readonly<Record<string, RegExp>> = { long: /long|length/, wide: /wide|width/, deep: /deep|depth/, thick: /thick/, tall: /tall|height/, high: /high|height/, across: /across|width|diameter/ };

/** What is measured is called as the word after the number has it, or was named. */
function lengthwise(c: Context, x: Candidate, word: string): boolean {
  const own = [...c.grid.of.measure, ...c.grid.of.part].map((i) => x.subject?.at[i] ?? '');
  const parts = c.grid.of.part.map((i) => x.subject?.at[i] ?? '').filter(Boolean);
  return (parts.length ? parts : own).some((v) => ways[word]!.test(v)) || own.some((v) => v !== 'length' && ways[word]!.test(v)) || c.hits.hits.some((h) => c.grid.of.part.includes(h.slot) && x.subject?.at[h.slot] === h.value);
}

function segmentHas(c: Context, index: number, word: RegExp): boolean {
  const { segment } = c.parsed.said[index]!;
  return c.parsed.low.slice(segment.from, segment.to).some((w) => word.test(w));
}

/** Thing and measure both stand in the same clause as the number, in so many words. */
function outright(c: Context, index: number, x: Candidate): boolean {
  const at = x.subject?.at;
  if (!at || x.cost > 0.1) return false;
  const said = (fields: readonly string[]): boolean => c.hits.hits.some((h) => h.segment === index && h.baseOf < 0 && fields.includes(c.grid.slots[h.slot]!.field) && h.value === at[h.slot]);
  return said(['setup', 'setting']) && said(['measure', 'part']);
}

const beside = /\b(?:at|near|under|below|above|over|to|from|against|of|reaching|touching) (?:its|the|my|our|their)\b/;

/** "81 percent against 83, and for two points …": right by what was just said; if anything is wrong, it is one of those. */
function follows(c: Context, index: number): boolean {
  const { mention: m, cue } = c.parsed.said[index]!;
  const [b, a] = [c.parsed.said[index - 1]?.mention, c.parsed.said[index - 2]?.mention];
  if (!a || !b || a.type !== 'cardinal' || b.type !== 'cardinal' || (cue.op !== 'change' && cue.op !== 'points')) return false;
  if ((m.unit?.id === '%') || (m.unit?.id === 'points' && (b.unit ?? a.unit)?.id !== '%')) return false;
  return a.value.minus(b.value).abs().equals(m.value.abs());
}

/** "…, and that's more than a third of it". */
function pointsBack(c: Context, index: number): boolean {
  const { mention, segment } = c.parsed.said[index]!;
  const from = Math.max(segment.from, mention.from - 6);
  // "at that same point": which one, and not what was said.
  return c.parsed.low.slice(from, mention.from).some((w, k) => /^(?:that's|that|which|it's)$/.test(w) && !(w === 'that' && /^(?:at|in|on|under|for|with|by|during|to|from)$/.test(c.parsed.low[from + k - 1] ?? '')));
}

/** What a multiple is of is said: by name, by a limit, or as that just spoken of. */
export function ratioSure(c: Context, index: number): boolean {
  const words = baseWords(c, index);
  return words.overrides.size > 0 || words.roles.length > 0 || words.leader || c.parsed.low[c.parsed.said[index]!.mention.to] === 'as' || words.low.slice(0, 5).some((w) => /^(?:much|many|that|it|as)$/.test(w)) || c.now.pair !== undefined || c.hits.course !== undefined;
}
