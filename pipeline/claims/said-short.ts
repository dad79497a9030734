// A bare number that stands where a name stands: "at 60", "Sixty:", "sixty costs more", where settings are called "60 percent" and "80 percent".
import { changeVerbs, type Mention, phraseAt, stretch } from '../script/index.js';
import type { Lexicon, Meaning, Name } from './lexicon.js';

/** The meanings of a setting or a load for whose name the number alone is said. */
export function saidShort(low: readonly string[], m: Mention, all: readonly Mention[], names: readonly Name[], lex: Lexicon): readonly Meaning[] | undefined {
  const own = short(lex, m);
  if (!own) return undefined;
  const before = stretch(low, Math.max(0, m.from - 2), m.from);
  if (/^(?:than|as|with) (?:at|on|with)$/.test(before)) return own;
  // "fans back at 1200"
  if (/^(?:at|back at|still at)$/.test(low[m.from - 1] ?? '') && m.value.toNumber() >= 100) return own;
  const beside = all.find((o) => o !== m && short(lex, o) && (o.from === m.to + 1 || o.to === m.from - 1) && low[Math.max(o.from, m.from) - 1] === 'to' && /^(?:from|going|go|goes|went|stepping)$/.test(low[Math.min(o.from, m.from) - 1] ?? ''));
  if (beside || isSet(low, m, lex) || parallel(low, m, names, own)) return own;
  return asLabel(low, m) || asSubject(low, m) || asCircumstance(low, m, all) ? own : undefined;
}

function short(lex: Lexicon, m: Mention): readonly Meaning[] | undefined {
  return m.type === 'cardinal' && !m.unit && m.decimals === 0 ? lex.short.get(`#${m.value.toString()}`) : undefined;
}

/** "Sixty: 31.2 decibels." */
function asLabel(low: readonly string[], m: Mention): boolean {
  return low[m.to] === ':' && low.slice(0, m.from).every((w) => /^(?:and|then|now|so|at|on|finally|-|–|—|\*)$/.test(w));
}

const running = /^(?:run|runs|ran|running|try|tries|tried|trying|set|sets|setting|nudge|nudges|nudged|turn|turns|turned|turning|crank|cranks|cranked|dial|dials|dialled|dialed|wind|winds|wound|park|parks|parked)$/;

/** "run the Cobble at thirty", "turn it down to thirty", "with the blower back on thirty": a verb of setting, or the noun that its name has, stands before it. */
function isSet(low: readonly string[], m: Mention, lex: Lexicon): boolean {
  if (m.form !== 'words' || !/^(?:at|on|to)$/.test(low[m.from - 1] ?? '') || !ends.test(low[m.to] ?? '')) return false;
  let i = m.from - 2;
  while (/^(?:up|down|back|still)$/.test(low[i] ?? '')) i--;
  if (low[m.from - 1] !== 'to' && lex.setNouns.has(low[i] ?? '')) return true;
  if (running.test(low[i] ?? '')) return true;
  if (/^(?:it|them|things|everything)$/.test(low[i] ?? '')) return running.test(low[i - 1] ?? '');
  while (i > m.from - 6 && /^\p{L}+$/u.test(low[i] ?? '') && !/^(?:the|its|my|your|both|either|and|but|is|was)$/.test(low[i]!)) i--;
  return /^(?:the|its|my|your|both|either)$/.test(low[i] ?? '') && running.test(low[i - 1] ?? '');
}

const opens = /^(?:|,|;|:|and|but|so|then|while|whereas|because|now)$/;
const singular = /^(?:is|isn't|was|wasn't|has|does|doesn't|takes|needs|gives|gets|draws|makes|runs|stays|sits|lands|reads|keeps|brings|holds|manages|reaches|hits|comes|goes|lasts|wants|means|averages|settles|ends|starts|leaves|loses)$/;

/** "Sixty adds 4.1", "and sixty is where I stay": one thing that does something, and no number of things, which do it in the plural. */
function asSubject(low: readonly string[], m: Mention): boolean {
  if (!opens.test(low[m.from - 1] ?? '')) return false;
  const next = low[m.to] ?? '';
  return singular.test(next) || (/[^s]s$/.test(next) && phraseAt(changeVerbs, low, m.to) !== undefined);
}

const ends = /^(?:|,|;|\.|:|\?|!|and|but|so|or|while|against|versus|with|it|it's|that|that's|i|we|you|they|the|this|there|there's|is|was|to|instead|of|too|already)$/;

/** "At sixty it hums", "31.2 at sixty, 36.0 at eighty": under what it was read, with the figure said before it or after. */
function asCircumstance(low: readonly string[], m: Mention, all: readonly Mention[]): boolean {
  if (low[m.from - 1] !== 'at') return false;
  const [next, at] = [low[m.to] ?? '', m.from - 1];
  const follows = all.some((o) => o.from === m.to);
  if (at === 0 || /^(?:[,;]|and|but|so|while)$/.test(low[at - 1]!)) return follows || /^(?:,|it|it's|that|that's|i|we|you|they|the|this|there|there's)$/.test(next);
  return all.some((o) => o.to === at && (o.decimals > 0 || o.unit !== undefined)) && (ends.test(next) || follows);
}

/** "With eighty percent it is 9 watts, and with thirty it is 2", "from two pads to five": another of the same row is named so in the sentence. */
function parallel(low: readonly string[], m: Mention, names: readonly Name[], own: readonly Meaning[]): boolean {
  const slots = new Set(own.flatMap((x) => x.slots.map((s) => s.slot)));
  const alike = (n: Name): boolean => n.to <= m.from && n.meanings.some((x) => x.own && x.slots.some((s) => slots.has(s.slot)) && !own.some((o) => o.slots.some((a) => x.slots.some((b) => a.slot === b.slot && a.value === b.value))));
  const lead = low[m.from - 1] ?? '';
  if (lead === 'to') return names.some((n) => n.to === m.from - 1 && alike(n) && low[n.from - 1] === 'from');
  if (!/^(?:at|on|with)$/.test(lead) || !/^(?:it|they|that|the|this|there|its|he|we|you|i|and|at|[,.;:!?])$/.test(low[m.to] ?? '.')) return false;
  return names.some((n) => alike(n) && [n.from, n.from - 1].some((k) => low[k] === lead));
}
