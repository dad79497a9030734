// What kind of mistake turns the recorded value into the one that was said.
import { convert, Exact, show, type Unit, unit, units } from '../quantities/index.js';
import type { Fact } from '../facts/index.js';

export type SlipKind =
  | 'rounding' | 'rounded-too-early' | 'direction' | 'wrong-base' | 'swapped' | 'points-for-percent' | 'percent-for-points'
  | 'wrong-operation' | 'wrong-subject' | 'wrong-unit' | 'temperature-for-difference' | 'transposed' | 'decimal-point' | 'digit';

export interface Slip {
  kind: SlipKind;
  /** In plain words, no full stop: "taken of the undervolt instead of stock". */
  says: string;
  /** The fact that gives the value said, where it is another one. */
  gives?: Fact;
  /** The unit in which the number said is right. */
  unit?: Unit;
}

/** A number as it was said; `decimals` is the precision said. Without a unit it is taken in that of the fact. */
export interface Said {
  value: Exact;
  decimals: number;
  unit?: Unit;
}

/** Another fact that might have been meant, likeliest first. */
export interface Alternative {
  kind: SlipKind;
  says: string;
  fact: Fact;
  /** Where it can only be meant by what was said with so many decimals. */
  decimals?: number;
}

/** The likeliest slip, or undefined when none explains the value. Pure: nothing but its arguments is looked at. */
export function likelySlip(said: Said, recorded: Fact, alternatives: Iterable<Alternative> = []): Slip | undefined {
  const own = inUnitOf(recorded, said);
  let looked = false;
  for (const a of alternatives) {
    if (!looked && a.kind !== 'rounded-too-early') {
      looked = true;
      const near = own && nearOwn(said, own);
      if (near) return near;
    }
    if ((a.decimals ?? said.decimals) === said.decimals && gives(said, a.fact)) return { kind: a.kind, says: a.says, gives: a.fact };
  }
  return (!looked && own && nearOwn(said, own)) || convertedAsTemperature(said, recorded) || percentForPoints(said, recorded) || otherUnit(said, recorded) || (own && otherDigits(said, own)) || undefined;
}

/** Slips in the value itself, likelier than that another one was meant. */
function nearOwn(said: Said, own: Exact): Slip | undefined {
  return misrounded(said, own) ?? (own.sign() !== 0 && same(said, own.negated()) ? { kind: 'direction', says: 'the right size in the wrong direction' } : undefined);
}

/** Whether a fact, rounded half away from zero as far as was said, is the value said. */
export function gives(said: Said, fact: Fact): boolean {
  const own = inUnitOf(fact, said);
  return own !== undefined && same(said, own);
}

/** The fact's value in the unit that was said; a difference said in °C or °F is a difference. Undefined when the units are of two kinds. */
export function inUnitOf(fact: Fact, said: Said): Exact | undefined {
  return said.unit ? convert(fact.value, fact.unit, asDifference(said.unit, fact.unit)) : fact.value;
}

/** °C and °F stand for degrees of difference where the fact is one. */
export function asDifference(said: Unit, of: Unit): Unit {
  return of.dimension === 'temperature-difference' && said.dimension === 'temperature' ? unit(said.difference!) : said;
}

function same(said: Said, value: Exact): boolean {
  return value.round(said.decimals).equals(said.value);
}

function misrounded(said: Said, own: Exact): Slip | undefined {
  const step = Exact.of(1).over(Exact.of(10n ** BigInt(said.decimals)));
  if (own.minus(said.value).abs().compare(step) >= 0 || said.value.sign() * own.sign() < 0) return undefined;
  return own.abs().compare(said.value.abs()) > 0
    ? { kind: 'rounding', says: 'cut off instead of rounded' }
    : { kind: 'rounding', says: 'rounded up where it rounds down' };
}

function convertedAsTemperature(said: Said, fact: Fact): Slip | undefined {
  if (fact.unit.dimension !== 'temperature-difference' || !said.unit) return undefined;
  const celsius = convert(fact.value, fact.unit, unit('K'))!;
  const wrong = said.unit.id === 'degF' || said.unit.id === 'delta-degF' ? convert(celsius, unit('degC'), unit('degF'))!
    : said.unit.id === 'K' ? celsius.plus(Exact.of(27315, 100)) : undefined;
  if (!wrong || wrong.minus(said.value).abs().compare(Exact.of(1)) > 0) return undefined;
  return { kind: 'temperature-for-difference', says: 'a difference was converted as if it were a temperature' };
}

function percentForPoints(said: Said, fact: Fact): Slip | undefined {
  if (said.unit?.id !== 'points' || fact.unit.id !== '%' || !same(said, fact.value)) return undefined;
  return { kind: 'percent-for-points', says: 'these are percent, not percentage points' };
}

function otherUnit(said: Said, fact: Fact): Slip | undefined {
  for (const u of units.values()) {
    if (u.dimension !== fact.unit.dimension || u.id === (said.unit ?? fact.unit).id || u.dimension === 'share') continue;
    const value = convert(fact.value, fact.unit, u);
    if (value && value.sign() !== 0 && same(said, value)) return { kind: 'wrong-unit', says: `the number is right in ${u.symbol}: ${show(said.value, u, said.decimals)}`, unit: u };
  }
  return undefined;
}

function otherDigits(said: Said, own: Exact): Slip | undefined {
  const a = said.value.abs().toFixed(said.decimals);
  const b = own.abs().toFixed(said.decimals);
  if (a === b || said.value.sign() !== own.sign()) return undefined;
  for (let i = 0; i + 1 < b.length; i++) {
    const j = b[i + 1] === '.' ? i + 2 : i + 1;
    if (b[i] === '.' || b[i] === b[j] || j >= b.length) continue;
    const letters = [...b];
    [letters[i], letters[j]] = [letters[j]!, letters[i]!];
    if (letters.join('') === a) return { kind: 'transposed', says: 'two digits have changed places' };
  }
  for (const power of [10n, 100n, 1000n]) {
    if (same(said, own.times(Exact.of(power))) || same(said, own.over(Exact.of(power)))) return { kind: 'decimal-point', says: 'the decimal point has moved' };
  }
  const x = a.replace('.', '');
  const y = b.replace('.', '');
  if (y.length > 2 && x.length === y.length && [...x].filter((c, i) => c !== y[i]).length === 1) return { kind: 'digit', says: 'one digit is another' };
  return undefined;
}
