// What makes a reading doubtful: the scatter of its runs, the steps of its instrument, and how far that may be off.
import { convert, differenceUnit } from '../quantities/index.js';
import { constantPhases, type Key, type Reading, splitKey } from '../records/index.js';
import { standardOfLimit, standardOfStep, type Term } from '../statistics/index.js';
import { uncertainOfFit } from './approach.js';
import type { Fact } from './fact.js';
import type { Facts } from './facts.js';
import { figure } from './figure.js';
import { channelOf, instrumentOf, limitsOfInstrument, stepOfInstrument } from './instruments.js';

export interface Doubts {
  /** By the name of what causes them, so that two facts with the same cause share it. */
  terms: Map<string, Term>;
  /** Causes of which nothing is known (the scatter of a single run), with their sensitivity. */
  unknown: Map<string, number>;
}

const parameters: ReadonlySet<string> = new Set(constantPhases);

/** Of a fact that rests on readings alone. What was set (limits, targets, prices, literals) is exact; what was read once is not known to scatter. */
export function doubtsOfReading(facts: Facts, fact: Fact): Doubts {
  const doubts: Doubts = { terms: new Map(), unknown: new Map() };
  const key = fact.keys[0];
  if (key === undefined || isSet(fact)) return doubts;
  const [first] = fact.readings;
  if (facts.isQuoted(key)) {
    if (first?.uncertain) doubts.terms.set(`quoted ${key}`, { source: `${key}, as it was in the other episode`, kind: 'B', ...first.uncertain, sensitivity: 1 });
    else doubts.unknown.set(`quoted ${key}`, 1);
    return doubts;
  }
  const fitted = fact.kind === 'approach';
  if (fact.spread?.sd === undefined) {
    doubts.unknown.set(`scatter of ${fact.id || key}`, 1);
    const own = fitted ? uncertainOfFit(facts, fact) : undefined;
    if (!own) return doubts;
    doubts.terms.set(`fit of ${fact.id}`, { source: `fit of ${fact.id}, by this run alone`, kind: 'A', ...own, sensitivity: 1 });
  } else {
    const scatter = scatterOf(fact, key);
    doubts.terms.set(scatter.source, scatter);
  }
  // No instrument of the record reads a time constant.
  if (fitted && fact.variant !== 'final') return doubts;
  for (const [id, term] of fromInstrument(facts, fact, key)) doubts.terms.set(id, term);
  return doubts;
}

function isSet(fact: Fact): boolean {
  const at = splitKey(fact.keys[0]!);
  return fact.kind === 'constant' && (parameters.has(at?.phase ?? '') || at?.measure === 'price');
}

/** JCGM 100, 4.2.3. Runs of the same names in the same test and phase were read at the same moments. */
function scatterOf(fact: Fact, key: Key): Term {
  const { sd = 0, runs } = fact.spread!;
  const named = [...fact.readings].sort((a, b) => (a.run < b.run ? -1 : a.run > b.run ? 1 : 0));
  const values = named.map((r) => inUnitOf(fact, r));
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const at = splitKey(key)!;
  const together = values.length === runs && new Set(named.map((r) => r.run)).size === runs;
  return {
    source: `scatter of ${fact.kind === 'mean' ? key : fact.id}`, kind: 'A', standard: sd / Math.sqrt(runs), sensitivity: 1, dof: runs - 1,
    ...(together && fact.kind === 'mean' && { group: [at.setup, at.setting, at.workload, at.phase, ...named.map((r) => r.run)].join('/'), deviations: values.map((v) => v - mean) }),
  };
}

function inUnitOf(fact: Fact, { quantity }: Reading): number {
  return (convert(quantity.value, quantity.unit, fact.unit) ?? quantity.value).toNumber();
}

function fromInstrument(facts: Facts, fact: Fact, key: Key): [string, Term][] {
  const { instruments } = facts.about;
  const between = differenceUnit(fact.unit);
  const instrument = instrumentOf(instruments, key, fact.unit);
  const step = (instrument && stepOfInstrument(instrument, fact.unit)?.toNumber()) ?? 10 ** -facts.writtenDecimals(key, fact);
  const terms: [string, Term][] = [[`step of ${key}`, { source: `steps of ${figure(step, 2)} ${between.symbol}, ${key}`, kind: 'B', standard: standardOfStep(step), sensitivity: 1, dof: Infinity }]];
  if (!instrument) return terms;
  const { share, constant } = limitsOfInstrument(instrument, fact.unit);
  const channel = channelOf(instruments, instrument, key);
  // A source keeps one size whatever the unit of the reading: the constant part in base units.
  const factor = between.factor.toNumber();
  if (share > 0) terms.push([`share ${channel}`, { source: `${instrument.name} (${instrument.accuracy}), in proportion`, kind: 'B', standard: standardOfLimit(share, instrument.level), sensitivity: fact.value.toNumber(), dof: Infinity }]);
  if (constant > 0) terms.push([`constant ${channel}`, { source: `${instrument.name} (${instrument.accuracy}), constant`, kind: 'B', standard: standardOfLimit(constant * factor, instrument.level), sensitivity: 1 / factor, dof: Infinity }]);
  return terms;
}
