// Weighs each value that the record says was told elsewhere against its readings; every check on stated values takes its own kind of fault from here.
import { correctionsOf, type Fact, type FactKind, factKinds, type Facts, isFact, readId } from '../facts/index.js';
import { Exact, mean, show } from '../quantities/index.js';
import { type Key, splitKey, type Stated } from '../records/index.js';
import { alternativesTo, asDifference, gives, inUnitOf, likelySlip, type Slip } from '../slips/index.js';
import { energyMean, mean as meanNumber } from '../statistics/index.js';
import type { Context, Report } from './check.js';
import { meanIsPossible } from './grim.js';
import { derivation, readingPlaces, tell } from './words.js';

export type Fault =
  | 'underivable' | 'temperature-percent' | 'percent-or-points' | 'unit' | 'as-temperature' | 'direction' | 'wrong-base'
  | 'rounded-too-early' | 'decibels' | 'mean-of-rates' | 'impossible-mean' | 'value';

export interface Weighed {
  stated: Stated;
  fact?: Fact;
  fault?: Fault;
  why?: string;
  slip?: Slip;
  suggest?: string;
}

const seen = new WeakMap<Facts, Weighed[]>();

/** Each stated value once, with its fault where it has one. Kept per episode, as many checks ask. */
export function weighStated({ episode, facts }: Context): Weighed[] {
  let all = seen.get(facts);
  if (!all) seen.set(facts, (all = [...episode.stated, ...toldAsRight(facts)].map((s) => weigh(s, facts))));
  return all;
}

/** What a correction told as right is as much stated as what it corrects. */
function toldAsRight(facts: Facts): Stated[] {
  return correctionsOf(facts).flatMap(({ correction: c, fact }) => {
    const id = c.is && readId(fact.id);
    return id ? [{ kind: id.variant ? `${id.kind}.${id.variant}` : id.kind, operands: id.operands, quantity: c.is!.quantity, where: `correction of ${c.where}`, place: c.place, valuePlace: c.is!.place }] : [];
  });
}

/** The findings of one kind of fault; `message` is handed what is the same in all of them. */
export function reportStated(context: Context, fault: Fault, message: (w: Weighed & { said: string; recorded: string }) => string): Report[] {
  return weighStated(context).filter((w) => w.fault === fault).map((w) => {
    const q = w.stated.quantity;
    const said = show(q.value, q.unit, q.decimals);
    const recorded = w.fact?.shown ?? '';
    return {
      place: w.stated.valuePlace,
      subject: w.fact?.id ?? w.stated.operands[0]!,
      said,
      message: `${w.stated.where ? `${w.stated.where}: ` : ''}${message({ ...w, said, recorded })}`,
      ...(w.fact && { recorded, derivation: derivation(w.fact), related: readingPlaces(w.fact.readings, (r) => tell(context.facts.about, r.key)) }),
      ...(w.slip && { slip: w.slip.says }),
      ...(w.suggest && { suggest: w.suggest }),
    };
  });
}

function weigh(stated: Stated, facts: Facts): Weighed {
  const [kind, variant] = stated.kind.split('.') as [FactKind, string?];
  if (!factKinds.includes(kind)) return { stated, fault: 'underivable', why: `"${stated.kind}" is no kind of fact` };
  const first = operandFact(stated.operands[0]!, facts);
  if (['percent_change', 'percent_of', 'ratio'].includes(kind) && isFact(first) && first.unit.dimension === 'temperature') {
    return { stated, fault: 'temperature-percent', ...(stated.operands.length === 2 && suggestDifference(stated, facts)) };
  }
  const fact = facts.derive(kind, stated.operands, variant);
  if (kind === 'points' && !isFact(fact)) return { stated, fault: 'percent-or-points', why: fact.why };
  if (!isFact(fact)) return { stated, fault: 'underivable', why: fact.why };
  return { stated, fact, ...judge(stated, fact, facts) };
}

function judge(stated: Stated, fact: Fact, facts: Facts): Partial<Weighed> {
  const q = stated.quantity;
  const suggest = inSameForm(stated, fact);
  const mixed = percentOrPoints(stated, fact, facts);
  if (mixed) return mixed;
  if (fact.kind === 'mean') {
    const special = badMean(stated, fact);
    if (special) return special;
  }
  if (gives(q, fact)) return {};
  const rates = meanOfFrameRates(fact, facts);
  if (rates !== undefined && rates.round(q.decimals).equals(q.value) && q.unit.id === fact.unit.id) {
    return { fault: 'mean-of-rates', why: 'frames over time', suggest };
  }
  if (!inUnitOf(fact, q)) return { fault: 'unit', suggest: fact.shown };
  const slip = likelySlip(q, fact, alternativesTo(fact, facts));
  const faults: Partial<Record<Slip['kind'], Fault>> = {
    'wrong-unit': 'unit', 'temperature-for-difference': 'as-temperature', direction: 'direction', swapped: 'direction', 'wrong-base': fact.unit.dimension === 'share' ? 'wrong-base' : 'value',
    'rounded-too-early': 'rounded-too-early', 'points-for-percent': 'percent-or-points', 'percent-for-points': 'percent-or-points',
  };
  const fault = (slip && faults[slip.kind]) ?? 'value';
  if (fault === 'value' && impossible(stated, fact)) return { fault: 'impossible-mean', suggest, ...(slip && { slip }) };
  return { fault, suggest, ...(slip && { slip }) };
}

/** Percent said of what lies between two percentages, or points said of a change in percent. */
function percentOrPoints(stated: Stated, fact: Fact, facts: Facts): Partial<Weighed> | undefined {
  const said = stated.quantity.unit;
  if (fact.unit.id === 'points' && said.id === '%') {
    const percent = facts.derive('percent_change', stated.operands);
    return { fault: 'percent-or-points', why: `percentages lie points apart${isFact(percent) ? `; in percent it is ${percent.shown}` : ''}`, suggest: fact.shown };
  }
  if (fact.kind === 'percent_change' && said.id === 'points') {
    const other = facts.derive('points', stated.operands);
    return { fault: 'percent-or-points', why: 'this is a change in percent, not in points', suggest: isFact(other) ? other.shown : fact.shown };
  }
  return undefined;
}

function badMean(stated: Stated, fact: Fact): Partial<Weighed> | undefined {
  const q = stated.quantity;
  if (fact.against.length === 0 || fact.variant || q.unit.id !== fact.unit.id) return undefined;
  const values = partMeans(fact);
  const plain = mean(values);
  if (!plain.round(q.decimals).equals(q.value)) return undefined;
  if (fact.unit.dimension === 'sound-level') {
    const right = Exact.fromNumber(energyMean(values.map((v) => v.toNumber()))).round(q.decimals);
    if (right.equals(q.value)) return undefined;
    return { fault: 'decibels', why: `10 lg of the mean of 10^(L/10) over ${values.map((v) => v.toString(4)).join(', ')}`, suggest: show(right, q.unit, q.decimals) };
  }
  if (fact.unit.dimension === 'frame-rate' && values.every((v) => v.sign() > 0)) {
    const harmonic = Exact.of(values.length).over(values.map((v) => Exact.of(1).over(v)).reduce((a, b) => a.plus(b)));
    if (!harmonic.round(q.decimals).equals(q.value)) return { fault: 'mean-of-rates', why: `${values.length} ÷ (sum of 1 ÷ rate)`, suggest: show(harmonic, q.unit, q.decimals) };
  }
  return undefined;
}

/** What averaging 1 ÷ time over the frames would have given, where the log keeps each frame. */
function meanOfFrameRates(fact: Fact, facts: Facts): Exact | undefined {
  if (fact.kind !== 'mean' || fact.against.length || fact.unit.dimension !== 'frame-rate') return undefined;
  const at = splitKey(fact.subject)!;
  const runs = facts.traces.filter((t) => t.unit.dimension === 'duration' && /frame/.test(t.measure) && t.setup === at.setup && t.setting === at.setting && t.workload === at.workload && fact.readings.some((r) => r.run === t.run));
  if (runs.length !== fact.readings.length || runs.some((t) => t.lows)) return undefined;
  const rates = runs.map((t) => t.values.filter((v) => v > 0).map((v) => 1 / (v * t.unit.factor.toNumber())));
  return Exact.fromNumber(meanNumber(rates.map(meanNumber)));
}

function partMeans(fact: Fact): Exact[] {
  return fact.keys.map((key) => mean(fact.readings.filter((r) => r.key === key).map((r) => r.quantity.value)));
}

/** Whether no whole-number runs of that number could have the mean at all. Only where every run is a whole number. */
function impossible(stated: Stated, fact: Fact): boolean {
  const whole = fact.kind === 'mean' && !fact.against.length && fact.readings.length > 1 && fact.readings.every((r) => r.quantity.value.d === 1n && r.quantity.decimals === 0 && r.quantity.unit.id === stated.quantity.unit.id);
  return whole && !meanIsPossible(stated.quantity.value, stated.quantity.decimals, fact.readings.length);
}

function suggestDifference(stated: Stated, facts: Facts): { suggest?: string } {
  const difference = facts.derive('difference', stated.operands);
  return isFact(difference) ? { suggest: difference.shown } : {};
}

/** The recorded value as far as was said, in the unit that was said. */
function inSameForm(stated: Stated, fact: Fact): string {
  const q = stated.quantity;
  const value = inUnitOf(fact, q);
  return value ? show(value, asDifference(q.unit, fact.unit), q.decimals) : fact.shown;
}

function operandFact(operand: string, facts: Facts): Fact | undefined {
  const fact = operand.startsWith('(') ? facts.get(operand.slice(1, -1)) : splitKey(operand as Key) ? facts.value(operand) : undefined;
  return isFact(fact) ? fact : undefined;
}
