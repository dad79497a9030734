// A unit that no such quantity has: volts in millivolts, a battery's charge in watts. The table is the place to add to;
// its ranges are common practice, no published source.
import { stretch } from '../script/index.js';
import type { Parsed } from './parse.js';
import { eachSentence, type SelfCheck, type SelfFault } from './self-check.js';

interface Impossible {
  unit: string;
  /** Words in the sentence that say which quantity it is. */
  about: RegExp;
  /** Words that make it another quantity. */
  unless?: RegExp;
  /** Values, in the unit said, that cannot be. */
  below?: number;
  above?: number;
  /** What it should be called. */
  meant: string;
  because: string;
}

const supply = /\b(?:voltage|core|vcore|rail|undervolt\w*|overvolt\w*|volts?|chip)\b/;
const apart = /\b(?:ripple|noise|offset|droop|sag|drop\w*|swing|difference|deviation|error|accuracy|resolution|shunt|less|more|lower\w*|higher|rise\w*|rose|fell|fall\w*|under|below|above|over|apart|by|minus|spread|step\w*|inside|within|margin|spare|short of|shy of)\b/;
const charge = /\b(?:battery|batteries|pack|power bank|cell|cells)\b/;
const holds = /\b(?:holds?|held|stores?|stored|capacity|charge of|rated capacity|contains?)\b/;
const clock = /\b(?:clock\w*|frequency|core|boost\w*|memory|overclock\w*)\b/;
const draw = /\b(?:draws?|drew|drawing|pulls?|pulled|power draw|consumption)\b/;
const heat = /\b(?:core|hotspot|memory|chip|coolant|die|junction|temperature)\b/;

const impossible: readonly Impossible[] = [
  { unit: 'mV', about: supply, unless: apart, below: 10, meant: 'volts', because: 'a supply voltage is hundreds of millivolts or more' },
  { unit: 'V', about: /\b(?:core|vcore|undervolt\w*|gpu|cpu|chip)\b/, unless: /\b(?:mains|wall|socket|outlet|grid|input|line)\b/, above: 100, meant: 'millivolts', because: 'no chip runs at that many volts' },
  { unit: 'W', about: charge, unless: /\b(?:draws?|drew|charges?|charging|charger|delivers?|puts? out|output|input|pulls?|at|per)\b/, meant: 'watt-hours', because: 'what a battery holds is energy' },
  { unit: 'mA', about: charge, unless: /\b(?:draws?|drew|charges?|charging|charger|delivers?|output|input|pulls?|at|per)\b/, meant: 'milliamp-hours', because: 'what a battery holds is charge' },
  { unit: 'Wh', about: draw, unless: /\b(?:hours?|minutes?|run|runs|session|total|over|per|during|whole|loop|pass|day|cycle|charge)\b/, meant: 'watts', because: 'what is drawn at a moment is power' },
  { unit: 'GHz', about: clock, above: 100, meant: 'megahertz', because: 'no clock runs that fast' },
  { unit: 'MHz', about: clock, unless: /\b(?:more|less|higher|lower|faster|slower|offset|by|plus|minus|bus|base clock|step\w*|spread|apart|within|drop\w*|gain\w*|rose|fell)\b/, below: 10, meant: 'gigahertz', because: 'a chip’s clock is hundreds of megahertz or more' },
  { unit: 'kW', about: /\b(?:card|board|chip|core|processor|cooler|pump|fan|adapter|laptop)\b/, above: 5, meant: 'watts', because: 'no such part draws kilowatts' },
  { unit: 'dB(A)', about: /./, above: 140, meant: 'another figure', because: 'that is louder than a jet engine' },
  { unit: 'degC', about: heat, above: 250, meant: 'another figure', because: 'nothing on a board survives that' },
  { unit: 's', about: /\bframe time\b/, above: 1, meant: 'milliseconds', because: 'a frame takes thousandths of a second' },
];

export const selfUnit: SelfCheck = {
  code: 'self-unit',
  says: 'A number is said in a unit that no such quantity has',
  help: 'Say the unit that was meant, or move the decimal point.',
  right: [
    'The core runs at 0.95 volts.', 'The core voltage is 950 millivolts.', 'Ripple on the rail is 8 millivolts.', 'The core voltage sits 5 millivolts lower.',
    'The battery holds 62 watt-hours.', 'The charger puts 65 watts into the battery.', 'The whole run drew 21 watt-hours.', 'The core clock is 2480 megahertz.', 'Memory runs 5 megahertz higher.',
    'The wall socket gives 230 volts.',
  ],
  wrong: [
    ['The core voltage is 1.05 millivolts.', '1.05 millivolts'], ['We undervolt the core to 950 volts.', '950 volts'], ['The battery holds 62 watts.', '62 watts'],
    ['The core clock is 2.48 megahertz.', '2.48 megahertz'], ['The core boosts to 2480 gigahertz.', '2480 gigahertz'], ['The card draws 240 watt-hours.', '240 watt-hours'], ['The battery holds 5000 milliamps.', '5000 milliamps'],
  ],
  run: eachSentence(look),
};

const byUnit = new Map<string, Impossible[]>();
for (const r of impossible) byUnit.set(r.unit, [...(byUnit.get(r.unit) ?? []), r]);

function look(p: Parsed): SelfFault[] {
  return p.said.flatMap(({ mention: m, segment }): SelfFault[] => {
    if (m.type !== 'cardinal' || !m.unit || m.adjectival || m.loose) return [];
    const rules = byUnit.get(m.unit.id);
    if (!rules) return [];
    const words = [...p.low.slice(segment.from, m.from), ...p.low.slice(m.to, segment.to)].join(' ');
    const rule = rules.find((r) => r.about.test(words) && !r.unless?.test(words) && (!storing(r) || holds.test(stretch(p.low, 0, segment.to))) && beyond(m.value.abs().toNumber(), r));
    if (!rule) return [];
    return [{ code: 'self-unit', start: m.start, end: m.end, against: [], message: `Says ${p.text.slice(m.start, m.end)}, which cannot be: ${rule.because}; ${rule.meant === 'another figure' ? 'another figure was meant' : `${rule.meant} may be meant`}` }];
  });
}

function storing(r: Impossible): boolean {
  return r.about === charge;
}

function beyond(value: number, { below, above }: Impossible): boolean {
  if (value === 0) return false;
  return (below === undefined && above === undefined) || (below !== undefined && value < below) || (above !== undefined && value > above);
}
