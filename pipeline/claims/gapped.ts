// Figures that go on in the unit of the one before, with a name and no verb between.
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';
import type { Name } from './lexicon.js';

/** "The Garrow holds 38 watt hours and the Lintel's 22": a name and a number alone go on in the unit before. */
export function gapped(low: readonly string[], live: readonly Mention[], names: readonly Name[]): void {
  for (const [k, b] of live.entries()) {
    const a = live[k - 1];
    if (!a?.unit || a.unit.id === 'points' || a.adjectival || a.type !== 'cardinal' || b.type !== 'cardinal' || b.unit || b.idle) continue;
    // "62 percent where it was 81", "40 decibels, where it had been 36": what it was before, in the unit of what it is.
    if (pastOf.test(stretch(low, a.to, b.from)) && /^(?:[,.;:!?)]|and|but|so|before|with|on|in)?$/.test(low[b.to] ?? '')) { Object.assign(b, { unit: a.unit, loose: a.loose, sharedUnit: true }); continue; }
    const own = names.find((n) => n.from > a.to && n.to <= b.from && n.from - a.to <= 6 && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting')));
    const [here, there] = [placed(low, names, a), placed(low, names, b)];
    if (here !== undefined && there !== undefined && (here === there || here === bare || there === bare) && !b.unit && /^(?:,|, and|and|, but|but)(?: (?:only|just|about|around|nearly|almost|still|even|a|mere))*$/.test(stretch(low, endOf(low, names, a), b.from))) { Object.assign(b, { unit: a.unit, loose: a.loose, sharedUnit: true }); continue; }
    // "5.1 litres, which is 18 percent more than before, and the other 9.2": the aside is over.
    const figure = live[k - 2];
    if (own && a.unit.id === '%' && figure?.unit && !(live[k + 1] && goesOnAsShare(low, b, live[k + 1]!)) && figure.unit.id !== '%' && b.decimals > 0 && figure.decimals === b.decimals && a.decimals !== b.decimals && /^,? ?(?:which|that's|that is|or)\b/.test(stretch(low, figure.to, a.from)) && /(?:^| )(?:and|but|while)(?: the)?$/.test(stretch(low, a.to, own.from)) && /^(?:'s|at|with|is|needs|takes)?$/.test(stretch(low, own.to, b.from))) { Object.assign(b, { unit: figure.unit, loose: figure.loose, sharedUnit: true }); continue; }
    if (!own || !/^(?:of (?:\p{L}+ ){1,2})?(?:, )?(?:and|but|while)(?: (?:the|poor|little|big|good|old|humble|mighty|tiny|cheap|dear)){0,2}$|^,(?: (?:the|poor|little|big|good|old|humble|mighty|tiny|cheap|dear)){0,2}$/u.test(stretch(low, a.to, own.from))) continue;
    if (!/^(?:'s)?(?: ?(?:at|with|is))?$/.test(stretch(low, own.to, b.from)) || !/^(?:[,.;:!?)]|and|but|so|which|while)?$/.test(low[b.to] ?? '')) continue;
    // "gave 31.4 grams, or 86 percent of it, and the other 28.9, which is 79": a figure and its share, and again.
    const first = a.unit.id === '%' && b.decimals === live[k - 2]?.decimals && live[k + 1] && !live[k + 1]!.unit && goesOnAsShare(low, b, live[k + 1]!) ? live[k - 2]! : a;
    // "needs 118 seconds, just under two minutes, and the other 203": the same figure told again in passing.
    const again = first === a && restated(low, live[k - 2], a) ? live[k - 2]! : first;
    if (again !== first) { Object.assign(b, { unit: again.unit, loose: again.loose, sharedUnit: true }); continue; }
    if (first !== a) Object.assign(live[k + 1]!, { unit: a.unit, sharedUnit: true });
    Object.assign(b, { unit: first.unit, loose: first.loose, sharedUnit: true });
  }
}

/** What leads from what something is to what it was. */
export const pastOf = /^(?:(?:of|on|at|with|in) (?:[^ ,;:.]+ ){1,3})?,? ?(?:where|when|while|and|but) (?:before )?(?:it|that|this|they|he|she) (?:was|were|had been|used to be|once was)(?: (?:only|just|about|still|at|nearly|almost))*$/;

/** The same quantity in another unit, set between commas. */
function restated(low: readonly string[], a: Mention | undefined, again: Mention): boolean {
  return a?.unit !== undefined && a.unit.dimension === again.unit!.dimension && a.unit.id !== again.unit!.id && low[again.to] === ',' && /^,(?: (?:or|so|just|about|a|bit|little|touch|over|under|nearly|almost|roughly|around|some|that's|which|is))*$/.test(stretch(low, a.to, again.from));
}

export function goesOnAsShare(low: readonly string[], of: Mention, share: Mention): boolean {
  return share.type === 'cardinal' && share.from - of.to <= 5 && /^,? ?(?:or|so|which is|that is|that's|which makes)\b/.test(stretch(low, of.to, share.from));
}

/** "96 minutes on Low, 58 on High": the word that leads to the name after a number. */
function placed(low: readonly string[], names: readonly Name[], m: Mention): string | undefined {
  const at = afterPart(low, names, m);
  if (names.some((n) => n.from === at && n.meanings.some((x) => x.own && x.fields[0] === 'setting') && !/^(?:in|on|with|for|at|off|from|to)$/.test(low[at]!))) return bare;
  return /^(?:in|on|with|for|at|off|from|to)$/.test(low[at] ?? '') && endOf(low, names, m) > 0 ? low[at] : undefined;
}

/** "2.9 volts tuned and 3.1 plain": a setting stands there without a word that leads to it. */
const bare = '';

/** "1.5 degrees on the core with the one": behind what of it is meant. */
function afterPart(low: readonly string[], names: readonly Name[], m: Mention): number {
  const part = /^(?:on|of|for|in|at|from)$/.test(low[m.to] ?? '') ? names.find((n) => n.from > m.to && n.from <= m.to + 2 && n.meanings.length > 0 && n.meanings.every((x) => x.own && x.fields.length > 0 && x.fields.every((f) => f === 'part' || f === 'measure'))) : undefined;
  return part ? part.to : m.to;
}

function endOf(low: readonly string[], names: readonly Name[], m: Mention): number {
  const at = afterPart(low, names, m);
  return names.find((n) => n.from >= at && n.from <= at + 2 && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting')))?.to ?? 0;
}
