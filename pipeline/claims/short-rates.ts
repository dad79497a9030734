// "Flow is now 2.3 litres": a rate said without its time, where the record measures the rate and nothing in the unit that was said.
//   flow 2.31 L/min     "the flow is 2.31 litres"        2.31 L/min
//   speed 480 MB/s      "it writes at 480 megabytes"      480 MB/s, where the write speed is named
import { type Unit, unit } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import type { Lexicon, Name } from './lexicon.js';

const rates: Readonly<Record<string, readonly string[]>> = { L: ['L/min', 'L/h'], mL: ['mL/min'], m3: ['m3/h'], MB: ['MB/s'], GB: ['GB/s'] };

/** What is as large as so many cubic metres. With none of these, they are of the air that is moved. */
const spaces = new Set('room rooms office garage chamber cupboard hall house flat tent volume space'.split(' '));

/** Sets the unit of such mentions to that of the rate, in place. Litres and bytes need the name of the rate in the sentence, words of a change ("another 4 litres"), or a verb for it ("moves 38 cubic metres"). */
export function shortRates(all: readonly Mention[], names: readonly Name[], low: readonly string[], lex: Lexicon): void {
  for (const m of all) {
    const wanted = m.unit && rates[m.unit.id];
    if (!wanted || m.adjectival) continue;
    const measures = [...lex.unitOf];
    if (measures.some(([, u]) => u.dimension === m.unit!.dimension)) continue;
    const named = (measure: string): boolean => names.some((n) => n.meanings.some((x) => x.own && x.slots.some((s) => s.slot === lex.measureSlot && s.value === measure)) || n.meanings.some((x) => x.dimension?.some((d) => d === lex.unitOf.get(measure)!.dimension)));
    const rate = measures.find(([measure, u]: readonly [string, Unit]) => wanted.includes(u.id) && (named(measure) || changing(low, m) || (m.unit!.id === 'm3' && !low.some((w) => spaces.has(w)))));
    if (rate) Object.assign(m, { unit: unit(rate[1].id) });
  }
}

function changing(low: readonly string[], m: Mention): boolean {
  if (low.slice(Math.max(0, m.from - 5), m.from).some((w) => /^(?:moves?|moved|moving|pushes|push|pushed|shifts?|shifted|pumps|pumped|pumping|passes|passed|circulates?|circulated|delivers?|delivered|flows?|flowing|breathes?)$/.test(w))) return true;
  return /^(?:another|further|extra|additional)$/.test(low[m.from - 1] ?? '') || /^(?:more|less|fewer|faster|slower|ahead|behind|up|down|extra)$/.test(low[m.to] ?? '');
}
