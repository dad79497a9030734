// What stands for several values: means, the median, the ends of a range.
import { differenceUnit, Exact, mean, show, showNumber } from '../../quantities/index.js';
import { energyMean, geometricMean } from '../../statistics/index.js';
import type { Fact } from '../fact.js';
import type { Underivable } from '../facts.js';
import { spreadOf } from '../spread.js';
import { arbitraryZero, ascending, inOneUnit, runsInOneUnit, runsOf, same, widest, written } from './arithmetic.js';
import type { Result } from './operation.js';

export const meanVariants = ['', 'arithmetic', 'energy', 'harmonic', 'geometric'] as const;

/**
 * Runs of one reading are averaged arithmetically, decibels too: repetitions of one level lie so close that the energy
 * mean (ISO 3744) differs by a few hundredths. Several readings in decibels are different levels: they are averaged as
 * energy, 10·lg of the mean of 10^(L/10), to six decimals. The variants ask for one or the other: `arithmetic`, `energy`,
 * `harmonic` (rates over equal amounts of work, such as as many frames of each) and `geometric` (ratios over several workloads).
 */
export function average(inputs: Fact[], variant: string): Result | Underivable {
  const first = inputs[0]!;
  const one = inputs.length === 1;
  const energy = variant === 'energy' || (variant === '' && !one && first.unit.dimension === 'sound-level');
  const kind = energy ? 'energy' : variant;
  if (energy && first.unit.dimension !== 'sound-level') return { why: 'only sound levels are averaged as energy' };
  const groups: Exact[][] = [];
  for (const f of inputs) {
    const values = valuesOf(f, first);
    if (!values) return { why: `${first.unit.id} and ${f.unit.id} cannot be averaged` };
    groups.push(values);
  }
  if (kind === 'harmonic' || kind === 'geometric') {
    if (first.unit.dimension === 'temperature') return arbitraryZero(`${kind} mean`);
    if (first.unit.dimension === 'sound-level') return { why: `a ${kind} mean of levels means nothing: they are averaged as energy` };
    if (groups.flat().some((v) => v.sign() <= 0)) return { why: `a ${kind} mean needs values above zero` };
  }
  // Runs of one reading repeat one thing and are averaged as it asks for only where they are all there is.
  const averaged = one ? groups[0]! : groups.map((g) => (variant === 'energy' ? meanLevel(g) : mean(g)));
  return {
    value: kind === 'energy' ? meanLevel(averaged) : kind === 'harmonic' ? harmonic(averaged) : kind === 'geometric' ? geometric(averaged) : mean(averaged), unit: first.unit,
    get formula() {
      const decimals = widest(inputs);
      const places = Math.max(...averaged.map((x) => written(x, decimals)));
      const name = ['energy', 'harmonic', 'geometric'].includes(kind) ? `${kind} mean` : 'mean';
      return averaged.length === 1 ? show(averaged[0]!, first.unit, decimals) : `${name} of ${averaged.map((v) => showNumber(v, places)).join(', ')}`;
    },
    spread: one ? spreadOf(averaged) : undefined,
  };
}

/** The runs of a key; of a fact that was derived, its value. */
function valuesOf(f: Fact, first: Fact): Exact[] | undefined {
  if (f.id === '') return runsOf(f, first.unit);
  const x = same(first, f);
  return 'why' in x ? undefined : [x.b];
}

function meanLevel(levels: readonly Exact[]): Exact {
  return Exact.fromNumber(energyMean(levels.map((l) => l.toNumber()))).round(6);
}

function harmonic(values: readonly Exact[]): Exact {
  return Exact.of(1).over(mean(values.map((v) => Exact.of(1).over(v))));
}

/** To twelve digits, as roots seldom end. */
function geometric(values: readonly Exact[]): Exact {
  return Exact.fromNumber(Number(geometricMean(values.map((v) => v.toNumber())).toPrecision(12)));
}

export function median(inputs: Fact[]): Result | Underivable {
  const all = inOneUnit(inputs);
  if ('why' in all) return all;
  const sorted = ascending(all.values);
  const half = sorted.length >> 1;
  const value = sorted.length % 2 ? sorted[half]! : mean([sorted[half - 1]!, sorted[half]!]);
  return { value, unit: inputs[0]!.unit, get formula() { return `median of ${sorted.map((v) => showNumber(v, widest(inputs))).join(', ')}`; } };
}

export function range(inputs: Fact[], variant: string): Result | Underivable {
  const u = inputs[0]!.unit;
  const all = variant.endsWith('-run') ? runsInOneUnit(inputs) : inOneUnit(inputs);
  if ('why' in all) return all;
  const sorted = ascending(all.values);
  const low = sorted[0]!;
  const high = sorted.at(-1)!;
  const width = variant === 'width';
  return {
    value: width ? high.minus(low) : variant.startsWith('low') ? low : high, unit: width ? differenceUnit(u) : u,
    get formula() { return `from ${showNumber(low, widest(inputs))} to ${showNumber(high, widest(inputs))}`; },
  };
}
