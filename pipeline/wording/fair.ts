// Whether a number, as it was said, is a fair way to give an exact value.
import { convert, Exact, type Unit, unit } from '../quantities/index.js';
import type { Fact } from '../facts/index.js';
import type { Mention } from '../script/index.js';

const hundred = Exact.of(100);
/** Ratios said plainly ("twice", "2.3 times") may be this far off; common practice, no published source. */
const ratioSlack = 0.03;
/** "Nearly twice", "just over three times": hedged and whole; common practice, no published source. */
const timesSlack = 0.08;
/** The same of a hedged fraction ("about a half"). */
const partSlack = 0.12;

/** The value in the unit that was said; without a unit, in that of the fact. Undefined when the two are of different kinds. */
export function inSaidUnit(fact: Fact, m: Mention): Exact | undefined {
  const said = m.unit;
  if (!said) return fact.value;
  // "degrees" may be of any scale, but of temperature.
  if (m.loose) return /^temperature/.test(fact.unit.dimension) ? fact.value : undefined;
  return convertLoosely(fact.value, fact.unit, said);
}

function convertLoosely(value: Exact, from: Unit, to: Unit): Exact | undefined {
  if (from.dimension === 'temperature-difference' && to.dimension === 'temperature') return convert(value, from, unit(to.difference!));
  if (from.dimension === 'temperature' && to.dimension === 'temperature-difference') return from.id === 'degC' && to.id === 'K' ? value : undefined;
  if (from.id === 'x' && to.id === '%') return value.times(hundred);
  if (from.id === 'points' && to.id === '%') return undefined;
  if (from.id === '%' && to.id === 'points') return undefined;
  return convert(value, from, to);
}

/** `size` leaves the sign out: a fall is said without its minus. */
export function fits(m: Mention, fact: Fact, options: { size: boolean; exact?: boolean }): boolean {
  const own = inSaidUnit(fact, m);
  if (!own) return false;
  const value = options.size ? own.abs() : own;
  const said = options.size ? m.value.abs() : m.value;
  if (options.exact) return value.equals(said);
  const constant = fact.readings.length === 1 && fact.readings[0]!.constant && fact.kind === 'constant';
  if (constant && value.equals(said)) return true;
  const ratio = fact.unit.id === 'x' && m.unit?.id !== '%';
  if (m.hedge) {
    const h = m.hedge;
    const part = ratio && m.type === 'fraction';
    if (!part && h.low < 1 && h.high > 1 && roundsTo(value, said, m)) return true;
    if (said.sign() === 0) return false;
    const share = value.over(said).toNumber();
    // "about a half" is no third, however few fractions there are to say.
    if (part && h.low < 1 && h.high > 1) return Math.abs(share - 1) <= partSlack;
    // … and "just over half" is as far above it at most.
    if (part && h.low === 1 && h.high < 1 + partSlack) return share >= 1 && share <= 1 + partSlack;
    if (part && h.high === 1 && h.low > 1 - partSlack) return share <= 1 && share >= 1 - partSlack;
    // A hedged small number may be off by half its own step even where that is more than its share.
    const slack = !h.rounds && !ratio && m.decimals === 0 && said.abs().toNumber() <= 3 ? 0.75 : h.rounds && !ratio ? stepOf(m).over(Exact.of(2)).over(said.abs()).toNumber() : 0;
    // "nearly twice" is said of a little less than a number with places would be.
    const whole = ratio && m.type === 'multiplier' && m.decimals <= 0 ? timesSlack : 0;
    const low = h.low < 1 ? Math.min(h.low, 1 - slack, 1 - whole) : 1;
    const high = h.high > 1 ? Math.max(h.high, 1 + slack, 1 + whole) : 1;
    return (h.low === 1 ? share > 1 || (h.rounds && share >= 1) : share >= low) && (h.high === 1 ? share < 1 || (h.rounds && share <= 1) : share <= high);
  }
  if (ratio || (m.type === 'fraction' && !m.unit)) {
    return Math.abs(value.over(said).toNumber() - 1) <= ratioSlack || (m.type !== 'fraction' && m.decimals > 0 && roundsTo(value, said, m));
  }
  return roundsTo(value, said, m) || roundHundreds(value, said, m);
}

/** "1500 rpm" for 1503: whole hundreds in digits are said of what is this near; common practice, no published source. */
const hundredsSlack = 0.02;

function roundHundreds(value: Exact, said: Exact, m: Mention): boolean {
  if (m.form !== 'digits' || m.decimals !== 0 || m.step || !m.unit || m.unit.dimension === 'share' || said.toNumber() < 1000) return false;
  return said.over(hundred).d === 1n && value.over(hundred).round(0).times(hundred).equals(said) && Math.abs(value.over(said).toNumber() - 1) <= hundredsSlack;
}

export function stepOf(m: Mention): Exact {
  if (m.step) return m.step;
  return m.decimals >= 0 ? Exact.of(1n, 10n ** BigInt(m.decimals)) : Exact.of(10n ** BigInt(-m.decimals));
}

/** Half away from zero to the last place said. */
export function roundsTo(value: Exact, said: Exact, m: Mention): boolean {
  // A number is told in whole steps of its last place, unless the step itself was said.
  if (!m.step && value.equals(said)) return true;
  const step = stepOf(m);
  return value.over(step).round(0).times(step).equals(said);
}
