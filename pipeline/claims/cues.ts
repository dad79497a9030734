// What the words around a mention say it is: a value, a change, a share, a ratio, a place in a ranking, a count, a range.
import { earlierThan } from './before-another.js';
import { changeNouns, changeTrailers, changeVerbs, comparatives, gradables, type Mention, phraseAt, superlatives, takingVerbs, type Token, type Way, stretch, WordClass } from '../script/index.js';
import type { Dimension } from '../quantities/index.js';
import { lastVerb, nounEnding, nounIn, unsure, verbBefore } from './change-words.js';
import type { Segment } from './clauses.js';
import { medianOpens } from './median-opens.js';
import { baseScope, nearTo, notTrailer, ratioBase, shareEnd } from './cue-base.js';
import { endToEndAfter, fromEndToEnd, toldInOrder } from './end-to-end.js';
import { acquired, givenBy } from './given-by.js';
import { arrives, keeps } from './keeping.js';
import { measuredAgainst } from './measured-against.js';
import type { Cover } from './cover.js';
import type { Name } from './lexicon.js';
import { following, placed } from './placed.js';
import { aboveRoom, hasPhrase } from './over-room.js';
import { isRange } from './range-words.js';
import { multipliedBy, namesRatio, secondAs } from './ratio-words.js';
import { signBefore } from './sign-before.js';
import { duringWork, standsBehind } from './stands-behind.js';
import { addedOn, traded } from './traded.js';
import { farChange } from './whose-change.js';

export type Operation = 'value' | 'change' | 'share' | 'ratio' | 'rank' | 'count' | 'range' | 'points';

export interface Cue {
  op: Operation;
  /** Which way a change goes; undefined when the words do not say. */
  way?: Way;
  /** Dimensions that a comparative speaks of ("quieter"). */
  of?: readonly Dimension[];
  /** Token range of what it is compared with. */
  base?: { from: number; to: number };
  /** The name of whatever changes, where it stands apart from the number. */
  whose?: { from: number; to: number };
  /** The words that decided, for --explain. */
  because: string;
  overRoom: boolean;
  median: boolean;
  /** "another 4", "a further 4". */
  another: boolean;
  /** Whether a bare number can be a figure here: no noun follows that it counts. */
  placed: boolean;
  /** A word follows that might be a noun. */
  doubtful: boolean;
  perWatt: boolean;
  /** The verb is that of the mention before ("gives the one 11 watts and the other 8"). */
  elided?: Cue;
}

/** "The whole field fits into seven kelvin": the verb, and who. */
const holds = new WordClass(/^(?:fits|fit|within|inside|covers|cover|separates|separate|spans|span|bunched|packed|spread)$/);
const everybody = new WordClass(/^(?:field|pack|bunch|everyone|everything|lot|all|table|group|rest)$/);

const adverbs = new Set(['only', 'just', 'another', 'a', 'an', 'further', 'even', 'yet', 'about', 'around', 'roughly', 'nearly', 'almost', 'the', 'some', 'full', 'good', 'extra', 'bit', 'little', 'touch', 'over', 'under', 'than', 'more', 'less', 'more than', 'well', 'exactly', 'precisely', 'barely', 'close', 'shade', 'hair', 'approximately', 'still', 'not', 'quite', 'at', 'least', 'most', 'mere', 'scant', 'whole', 'fully', 'solid', 'healthy', 'comfortable', 'generous', 'massive', 'tiny', 'huge', 'modest', 'measly', 'paltry', 'slim', 'meagre', 'meager', 'whopping', 'clear', 'handy', 'cool']);
const adverbial = new Set(['only', 'just', 'even', 'still', 'also', 'actually', 'some', 'bit', 'a', 'much', 'far', 'again', 'whole', 'or', 'so', 'no']);

const wattPhrases = [['per', 'watt'], ['a', 'watt'], ['for', 'each', 'watt'], ['for', 'every', 'watt']];

export function cueOf(t: readonly Token[], low: readonly string[], m: Mention, seg: Segment, reach: number, names: readonly Name[], cover: Cover): Cue {
  const covered = (k: number): boolean => cover.own[k] === 1;
  const cue: Cue = { op: 'value', because: '', overRoom: false, median: false, another: false, placed: false, doubtful: false, perWatt: false };
  const segment = low.slice(seg.from, seg.to);
  cue.overRoom = aboveRoom(low, segment);
  // "temperature over room" may be the name of a measure itself.
  if (cue.overRoom && names.some((n) => n.to - n.from > 1 && n.from < seg.to && (n.from >= seg.from || n.from < 5) && n.meanings.some((x) => x.own && x.slots.length > 0) && low.slice(n.from, n.to - 1).some((w, k) => /^(?:over|above)$/.test(w) && /^(?:room|ambient|intake|air|the)$/.test(low[n.from + k + 1]!)))) cue.overRoom = false;
  cue.median = low.includes('median') && (segment.includes('median') || (m.from > 0 && low.slice(Math.max(0, seg.from - 8), m.from).includes('median') && !low.slice(Math.max(0, seg.from - 8), m.from).some((w, k, all) => /^(?:is|was|climbs|rises|falls|sits)$/.test(w) && k < all.length - 3) && (/^(?:is|was|of|at|to|:)$/.test(low[m.from - 1] ?? '') || /(?:^| )median (?:of|over|for|across) (?:the|all|our|these)(?: [\p{L}\d]+){1,2} ,$/u.test(stretch(low, Math.max(0, m.from - 7), m.from)))));
  if (!cue.median && m.type === 'cardinal') cue.median = medianOpens(low, m);
  cue.perWatt = hasPhrase(low.slice(m.to, Math.min(seg.to, m.to + 4)), wattPhrases);
  cue.another = /^(?:another|further|additional|extra)$/.test(low[m.from - 1] ?? '');
  cue.placed = placed(t, m);
  cue.doubtful = cue.placed && !m.unit && m.decimals === 0 && t[m.to]?.kind === 'word' && !following.has(t[m.to]!.low);
  if (m.type === 'superlative' || m.type === 'ordinal') {
    cue.op = 'rank';
    if (m.superlative) { cue.way = m.superlative.way; cue.of = m.superlative.of; }
    return cue;
  }
  // A verb inside a name ("heat sink") is none.
  const plain = low.map((w, k) => ((covered(k) || (w === 'sink' && low[k - 1] === 'heat')) && (k < m.from || k >= m.to) && !(k >= m.to && k <= m.to + 1 && comparatives.has(w)) ? (cover.measured[k] === 1 ? '\u0000' : '\u0001') : w));
  const earlier = earlierThan(low, m, names);
  if (earlier) return { ...cue, op: 'change', ...earlier };
  const given = givenBy(low, m, names);
  const found = given ? undefined : changeOf(plain, m, seg, covered);
  const moves = found?.after && (found.because === 'under' || found.because === 'over') && duringWork(low, m.to, m, names) ? undefined : found;
  const change = moves?.before && !cue.placed && acquired(moves.because) ? undefined : moves && addedOn(low, m, moves.because) ? { ...moves, way: 'apart' as const } : moves;
  // "a wash costs 620 grams of it in the one against 480 in the other": a figure beside another, and no change.
  const beside = change?.way === 'apart' && change.before && m.unit && m.unit.id !== '%' ? low.findIndex((w, k) => k >= m.to && k < m.to + 6 && /^(?:against|versus|vs)$/.test(w) && t[k + 1]?.kind === 'number') : -1;
  if (beside > 0) return cue;
  const base = given || (change?.after && change.because === 'from end to end') ? undefined : baseScope(low, m, seg, Math.max(seg.to, reach), names, covered);
  if (base) cue.base = base;
  // "just 6 seconds off the Larch": near it, on whichever side.
  if (change?.because === 'off' && change.after && base && base.to > base.from) change.way = 'apart';
  if (change) { cue.because = change.because; if (change.of?.length) cue.of = change.of; if (change.whose) cue.whose = change.whose; }
  if (!m.unit && multipliedBy(low, m)) return { ...cue, op: 'ratio' };
  if (namesRatio(low, m)) return { ...cue, op: 'ratio', way: undefined, base: undefined };
  if (m.type === 'multiplier' && m.decimals <= 0 && t[m.to - 1]!.low === 'times' && !/^(?:as|what|the|that|more|less|of|its|an?|his|our|higher|lower|faster|slower|louder|quieter|hotter|longer|shorter|heavier|lighter|over|better|worse)$/.test(low[m.to] ?? '') && !/^(?:is|'s|it's|that's|was|about|almost|nearly|exactly|roughly|than|worth|by|over|at|factor|some|around|well)$/.test(low[m.from - 1] ?? '')) {
    cue.op = 'count';
    return cue;
  }
  if (m.type === 'multiplier' || (m.type === 'fraction' && !m.unit)) {
    cue.op = 'ratio';
    if (!cue.base || secondAs(low, m, Math.max(seg.to, reach)) > 0) cue.base = multiplying.test(t[m.from]!.low) ? undefined : ratioBase(low, m, Math.max(seg.to, reach));
    if (change?.after) cue.way = change.way;
    cue.doubtful = /^(?:twice|double|triple|thrice)$/.test(t[m.from]!.low) && !/^(?:as|the|what|that|its|of|his|an?|more|less)$/.test(low[m.to] ?? '') && !/^(?:is|was|'s|it's|that's|than|almost|nearly|about|exactly|roughly|over|quite|not|by|to|a|at)$/.test(low[m.from - 1] ?? '');
    return cue;
  }
  if (m.unit?.id === 'points') {
    cue.op = 'points';
    if (change) cue.way = change.way;
    return cue;
  }
  if (m.unit?.id === '%') {
    const of = m.to;
    const shared = measuredAgainst(low, m, seg);
    // "As a share of its bare weight the Cobble has gone up by 14 percent"
    if (shared && change && !cue.base) return { ...cue, op: 'change', way: change.way, base: shared };
    if (shared && !change) return { ...cue, op: 'share', base: shared, because: 'measured against' };
    const lost = low[of] === 'of' ? low.slice(of, Math.min(seg.to, of + 6)).find((w) => /^(?:gone|lost|missing|saved|less|off)$/.test(w)) : undefined;
    if (lost) return { ...cue, op: 'change', way: 'down', because: lost };
    const taken = low[of] === 'of' && /^(?:your|my|our|its|their)$/.test(low[of + 1] ?? '') ? low.slice(Math.max(seg.from, m.from - 4), m.from).findLast((w) => takingVerbs.has(w)) : undefined;
    if (taken) return { ...cue, op: 'change', way: 'down', because: taken };
    // "costs you 4 percent of the Marten's pace": what it is taken from is named.
    const whose = low[of] === 'of' && !cue.base && change?.before ? names.find((n) => n.from > of && n.from <= of + 2 && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting'))) : undefined;
    if (whose && low.slice(Math.max(seg.from, m.from - 4), m.from).some((w) => takingVerbs.has(w))) return { ...cue, op: 'change', way: 'down', because: change!.because, base: { from: whose.from, to: whose.to } };
    const against = low[of] === 'of' ? low.slice(of, Math.min(Math.max(seg.to, reach), of + 8)).findIndex((w) => /^(?:compared|versus|than|against|relative)$/.test(w)) : -1;
    if (against > 0) return { ...cue, op: 'change', way: change?.way, because: 'compared', base: { from: of + against + 1, to: Math.max(seg.to, reach) } };
    if (low[of] === 'of' && (!change?.before || change.way === 'apart' && /^(?:get|leave|left|leaving|put|take|change|mov|buy|bought)/.test(change.because))) {
      cue.op = 'share';
      cue.base = { from: of + 1, to: shareEnd(low, of + 1, Math.max(seg.to, reach)) };
      return cue;
    }
    // "of what I paid for, eighty-two percent …"
    for (let i = m.from - 1; !change?.after && i >= Math.max(0, m.from - 10); i--) {
      if (low[i] !== 'of' || !/^(?:|so|and|but|,|that|then)$/.test(low[i - 1] ?? '')) continue;
      const comma = low.indexOf(',', i);
      if (comma > i && comma < m.from) return { ...cue, op: 'share', base: { from: i + 1, to: comma } };
    }
    if (!change && keeps(low, m, seg)) return { ...cue, op: 'share', because: 'keeps' };
    if (arrives(low, m)) return { ...cue, op: 'share', because: 'arrives' };
    if (change) { cue.op = 'change'; cue.way = change.way; return cue; }
    const signed = signBefore(t, m);
    return signed ? { ...cue, op: 'change', way: signed, because: signed === 'up' ? '+' : '−' } : cue;
  }
  if (change) { cue.op = 'change'; cue.way = change.way; return cue; }
  const sign = m.unit && signBefore(t, m);
  if (sign) return { ...cue, op: 'change', way: sign, because: sign === 'up' ? '+' : '−' };
  if (cue.another) { cue.op = 'change'; return cue; }
  if (isRange(low, m, seg)) cue.op = 'range';
  return cue;
}

/** What two things just told are called together. */
const betweenThem = /^(?:them|(?:the|these|those) (?:two|pair|extremes|ends|rivals|neighbours|neighbors)|(?:these|those|both|themselves)(?:$| (?:[.,;:!?)—–]|and|but|so|which|in|on|at)))/;

/** "doubles the power of the one": what is named after the verb is spoken of, and not compared with. */
const multiplying = /^(?:doubl|tripl|quadrupl|halv)(?:es|ed|ing)$/;

interface Change { way: Way | undefined; because: string; before?: boolean; after?: boolean; of?: readonly Dimension[]; whose?: Cue['whose'] }

function changeOf(low: readonly string[], m: Mention, seg: Segment, covered: (k: number) => boolean): Change | undefined {
  if (endToEndAfter(low, m.to)) return { way: 'apart', because: 'from end to end', after: true };
  // After the number: "… warmer", "… less than", "… behind", "… percent more efficient".
  let i = m.to;
  // "320 to one below the leader"
  const toOne = low[i] === 'to' && low[i + 1] === 'one' ? 2 : 0;
  i += toOne;
  while (i < seg.to && adverbial.has(low[i]!)) i++;
  if (low[i] === '-' ) i++;
  const word = low[i] ?? '';
  // "and three days on it has sunk to a quarter": no later than anything.
  const passing = m.unit?.dimension === 'duration' && /^(?:later|earlier)$/.test(word) && /^\p{L}/u.test(low[i + 1] ?? '') && low[i + 1] !== 'than' && low.slice(seg.from, m.from).every((w) => /^(?:,|;|—|–|:|and|but|then|so|just|only|about|barely|some|yet)$/.test(w));
  const comparative = passing ? undefined : comparatives.get(word);
  if (comparative && !(word === 'more' && low[i + 1] === 'or' && low[i + 2] === 'less') && !(word === 'better' && low[i - 1] === 'or')) {
    const adjective = gradables.get(low[i + 1] ?? '');
    if ((word === 'more' || word === 'less') && adjective) return { way: word === 'less' ? opposite[adjective.way] : adjective.way, because: `${word} ${low[i + 1]}`, after: true, of: adjective.of };
    // "takes off five degrees more": which way it goes, the verb has said.
    const verb = (word === 'more' || word === 'further') && low[i + 1] !== 'than' ? verbBefore(low, seg.from, m.from - 1) : undefined;
    if (verb) return { way: verb.way, because: verb.word, before: true };
    return { way: comparative.way, because: word, after: true, of: comparative.of };
  }
  // "idles at 910 behind the grille": where something is, and not how far it lags.
  if (standsBehind(low, m)) return undefined;
  // "4 degrees of headroom", "35 to spare", but not "under load" or "over room", which are names.
  const trailer = phraseAt(changeTrailers, low, i);
  // "you get 8.8 decibels back", "it hands 3 back": no place behind a leader.
  if (trailer && trailer.words[0] === 'back' && !covered(i) && low.slice(Math.max(0, m.from - 9), m.from).some((w) => /^(?:give|gives|gave|hand|hands|handed|win|wins|won|get|gets|got|take|takes|took|bring|brings|claw|claws|clawed|have|has|want)$/.test(w))) return { way: 'apart', because: 'back', after: true };
  // "gains 9 seconds over the plain one": which way it goes, the verb has said.
  const said = trailer?.words[0] === 'over' ? verbBefore(low, seg.from, m.from - 1) : undefined;
  if (said) return { way: said.way, because: said.word, before: true };
  if (trailer && !covered(i) && i <= m.to + toOne + 1 && !notTrailer(low, i, trailer.words.length)) return { way: trailer.value, because: trailer.words.join(' '), after: true };
  // "four hundred grams, near enough, separate the two"
  const apart = low.slice(m.to, m.to + 5).findIndex((w) => /^(?:separates?|separated|divides?|divided)$/.test(w));
  if (apart >= 0 && low.slice(m.to, m.to + apart).every((w) => /^(?:,|near|enough|or|so|about|roughly|give|take|now|still|only|that|which)$/.test(w))) return { way: 'apart', because: 'separate', after: true };
  if (nearTo(low, m)) return { way: 'apart', because: 'within', before: true };
  // "0.7 cubic metres of flow between them"
  for (let j = m.to; j < Math.min(seg.to, m.to + 5); j++) if (low[j] === 'between' && betweenThem.test(stretch(low, j + 1, j + 4))) return { way: 'apart', because: 'between them', after: true };
  // "a third more", "a rise", "39 percent faster"
  if (m.unit?.id === '%' || m.type === 'fraction') {
    const later = low.slice(m.to, Math.min(seg.to, m.to + 3)).findIndex((w) => comparatives.has(w));
    if (later >= 0) return { way: comparatives.get(low[m.to + later]!)!.way, because: low[m.to + later]!, after: true, of: comparatives.get(low[m.to + later]!)!.of };
    const noun = phraseAt(changeNouns, low, m.to);
    if (noun) return { way: noun.value, because: noun.words.join(' '), after: true };
  } else {
    const noun = phraseAt(changeNouns, low, m.to);
    if (noun && m.adjectival) return { way: noun.value, because: noun.words.join(' '), after: true };
  }
  if (traded(low, m, seg)) return { way: 'apart', because: 'for the sake of', before: true };
  // Before it: "by", a noun with "of" or "is", a verb.
  let k = m.from - 1;
  while (k >= seg.from && adverbs.has(low[k]!) && !(low[k] === 'at' && !/^(?:least|most)$/.test(low[k + 1] ?? ''))) k--;
  if (low[k] === 'by') {
    // "the rail dips by 142", where the dip itself is what is measured.
    let j = k - 1;
    while (j > seg.from && /^[,]$/.test(low[j]!)) j--;
    if (low[j] === '\u0000' && !lastVerb(low, seg.from, j)) return undefined;
    // "The plain one is over by 3.1"
    const side = /^(?:over|above|past|beyond)$/.test(low[j] ?? '') ? 'up' : /^(?:under|below|beneath|short)$/.test(low[j] ?? '') ? 'down' : undefined;
    if (side) return { way: side, because: `${low[j]} by`, before: true };
    const verb = lastVerb(low, seg.from, k) ?? lastVerb(low, Math.max(0, seg.from - 12), seg.from);
    return { way: verb?.way, because: `${verb?.word ?? ''} by`.trim(), before: true };
  }
  if (/^(?:of|is|was|:|=|to|at|about|comes|being|were|are)$/.test(low[k] ?? '')) {
    let j = k - 1;
    while (j >= seg.from && /^(?:of|is|was|only|just|comes|works|out|again|a|there|here|then|in|to|down|up|at|about)$/.test(low[j]!)) j--;
    const direct = nounEnding(low, seg.from, j);
    if (direct && (low[k] !== 'to' && low[k] !== 'at' || low[k - 1] === 'comes')) return { way: direct.way, because: direct.word, before: true };
    if (low[k] !== 'of') {
      const subject = nounIn(low, seg.from, j);
      if (subject && /^(?:is|was|:|=)$/.test(low[k]!)) return { way: subject.way, because: subject.word, before: true };
    }
  }
  // "the lead of 90 has become one of 25": one of the kind named before.
  if (low[k] === 'of' && low[k - 1] === 'one') {
    const kind = nounIn(low, 0, k - 2);
    if (kind) return { way: kind.way, because: kind.word, before: true };
  }
  if (k >= seg.from) {
    const direct = nounEnding(low, seg.from, k);
    if (direct && k >= m.from - 3) return { way: direct.way, because: direct.word, before: true };
  }
  if (low[k] === 'back' && low.slice(seg.from, k).some((w) => /^(?:give|gives|gave|given|hand|hands|handed|win|wins|won|get|gets|got|take|takes|took|bring|brings|claw|claws)$/.test(w))) return { way: 'apart', because: 'back', before: true };
  // "the 1.4 that the Corvane gives up"
  if (/^(?:the|that|those|its)$/.test(low[m.from - 1] ?? '')) {
    const relative = low.slice(m.to, Math.min(low.length, m.to + 9));
    const that = relative.findIndex((w) => w === 'that' || w === 'which' || w === 'it' || w === 'we');
    if (that >= 0 && that <= 2) for (let i = m.to + that; i < Math.min(low.length, m.to + 9); i++) {
      const p = phraseAt(changeVerbs, low, i);
      if (p && !unsure.has(p.words.join(' '))) return { way: p.value, because: p.words.join(' '), after: true };
    }
  }
  // "from best to worst it's 5.2", "fastest against slowest: 112"
  for (let i = Math.max(0, m.from - 8); i + 2 < m.from; i++) {
    if (toldInOrder(low, i + 3, m.from, covered)) break;
    const ends = superlatives.has(low[i]!) && superlatives.has(low[i + 2]!) && /^(?:to|against|versus|vs|minus)$/.test(low[i + 1]!);
    if (ends || (low[i + 1] === 'to' && /^(?:top|first|bottom)$/.test(low[i]!) && /^(?:bottom|last|top)$/.test(low[i + 2]!))) return { way: 'apart', because: 'from end to end', before: true };
  }
  if (fromEndToEnd(low, m.from)) return { way: 'apart', because: 'from end to end', before: true };
  // "they spread over seven kelvin"
  if ((low[k] === 'over' || low[k] === 'across') && /(?:^| )(?:spreads?|stretch(?:es|ed)?|extends?|ranges?|ranged|fans?)(?: out)? (?:over|across)$/.test(stretch(low, Math.max(seg.from, k - 3), k + 1)) || (/^(?:over|across)$/.test(low[m.from - 1] ?? '') && /^(?:spreads?|stretch(?:es|ed)?|ranges?|ranged)$/.test(low[m.from - 2] ?? ''))) return { way: 'apart', because: 'the whole field', before: true };
  // "the whole field fits into seven kelvin"
  if (holds.in(low, seg.from, m.from) && everybody.in(low, seg.from, m.from)) return { way: 'apart', because: 'the whole field', before: true };
  const verb = verbBefore(low, seg.from, k);
  if (verb) return { way: verb.way, because: verb.word, before: true };
  return farChange(low, m.from, covered);
}

const opposite = { up: 'down', down: 'up', better: 'worse', worse: 'better', lost: 'lost', gained: 'gained', apart: 'apart' } as const;
