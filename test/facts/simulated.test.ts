// Simulated truth: tests whose every error is drawn anew, and how often what is stated of them holds.
import { describe, expect, test } from 'vitest';
import { type FactKind, Facts, isFact, outcomeOf, uncertaintyOf } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { Exact, unit } from '../../pipeline/quantities/index.js';
import { readAccuracy } from '../../pipeline/records/accuracy.js';
import { bareEpisode, type Instrument, type Reading } from '../../pipeline/records/index.js';
import { type Random, random as randomOf } from '../statistics/random.js';

const place = new Source('r.csv', ' ').place(0);

interface World {
  runs: number;
  /** Standard deviation of single runs. */
  scatter: number;
  /** Step of the display. */
  step: number;
  /** Limits of the meter: a share of the reading and a constant, in watts. */
  share: number;
  constant: number;
  /** Whether one meter reads both, or each setup has its own. */
  meters: 'one' | 'two';
}

const truth = { a: 240, b: 200, idle: 60 };

/** Every error of the meter lies anywhere within its limits, and is the same through all readings of one meter. */
function measure(world: World, random: Random, values: Record<string, number>): Facts {
  const errors = new Map<string, { gain: number; offset: number }>();
  const errorOf = (setup: string) => {
    const id = world.meters === 'one' ? '' : setup;
    let e = errors.get(id);
    if (!e) errors.set(id, (e = { gain: world.share * (2 * random.uniform() - 1), offset: world.constant * (2 * random.uniform() - 1) }));
    return e;
  };
  const decimals = Math.max(0, Math.round(-Math.log10(world.step)));
  const readings: Reading[] = Object.entries(values).flatMap(([key, value]) => Array.from({ length: world.runs }, (_, i): Reading => {
    const { gain, offset } = errorOf(key.split('/')[0]!);
    const seen = (value + world.scatter * random.normal()) * (1 + gain) + offset;
    return { key, run: String(i + 1), quantity: { value: Exact.fromNumber(Math.round(seen / world.step)).times(Exact.fromNumber(world.step)), unit: unit('W'), decimals }, constant: false, place };
  }));
  const text = `±(${world.share * 100} % + ${world.constant} W)`;
  const limits = readAccuracy(text);
  const meter: Instrument = {
    name: 'meter', measures: ['power'], accuracy: text, ...(limits && !('why' in limits) && { limits }), resolution: { value: Exact.fromNumber(world.step), unit: unit('W'), decimals },
    ...(world.meters === 'two' && { perSetup: true }), place,
  };
  return new Facts({ ...bareEpisode(readings, [], place), instruments: [meter] });
}

const [a, b, idle] = ['a///power//load', 'b///power//load', 'a///power//idle'];
const figures: [FactKind, string[], number][] = [
  ['mean', [a], truth.a],
  ['mean', [a, b], (truth.a + truth.b) / 2],
  ['rise', [a, idle], truth.a - truth.idle],
  ['difference', [a, b], truth.a - truth.b],
  ['ratio', [a, b], 1.2],
  ['percent_of', [b, a], 250 / 3],
];

function coverage(world: World, trials: number, seed: number): Map<string, number> {
  const random = randomOf(seed);
  const held = new Map<string, number>();
  for (let t = 0; t < trials; t++) {
    const facts = measure(world, random, { [a]: truth.a, [b]: truth.b, [idle]: truth.idle });
    for (const [kind, operands, value] of figures) {
      const fact = facts.derive(kind, operands);
      const u = isFact(fact) && uncertaintyOf(facts, fact);
      if (!u) throw new Error(`${kind} has no uncertainty`);
      const name = `${kind} of ${operands.length}`;
      held.set(name, (held.get(name) ?? 0) + (Math.abs(fact.value.toNumber() - value) <= u.half95 ? 1 / trials : 0));
    }
  }
  return held;
}

const trials = 1000;
const seldom = { step: 0.01, share: 0.0002, constant: 0.02 };

describe('the stated 95 % interval holds the truth', () => {
  // Of two means of three runs each the 95 % of Welch and Satterthwaite are 96.5: more trials, so that chance does not carry them past 97.
  test.each<[string, number, World]>([
    ['three runs', 3 * trials, { ...seldom, runs: 3, scatter: 2, meters: 'one' }],
    ['ten runs, a meter each', trials, { ...seldom, runs: 10, scatter: 3, meters: 'two' }],
  ])('in 93 to 97 percent of cases, where scatter dominates: %s', (_what, times, world) => {
    for (const [name, share] of coverage(world, times, 20261125)) {
      expect(share, name).toBeGreaterThanOrEqual(0.93);
      expect(share, name).toBeLessThanOrEqual(0.97);
    }
  });

  test.each<[string, World]>([
    ['the meter dominates', { runs: 3, scatter: 0.1, step: 0.1, share: 0.01, constant: 1, meters: 'one' }],
    ['a meter each', { runs: 3, scatter: 0.1, step: 0.1, share: 0.01, constant: 1, meters: 'two' }],
    ['steps and next to no scatter', { runs: 3, scatter: 0.05, step: 1, share: 0, constant: 0, meters: 'one' }],
    // Standard uncertainties: 2/√3 of the scatter, 0.67/√3 of the meter; for two runs 2/√2 and 0.82/√3.
    ['three runs and a meter that adds a third', { runs: 3, scatter: 2, step: 0.01, share: 0, constant: 0.67, meters: 'one' }],
    ['two runs and a meter that adds a third', { runs: 2, scatter: 2, step: 0.01, share: 0, constant: 0.82, meters: 'one' }],
    ['two runs and a meter each that adds a third', { runs: 2, scatter: 2, step: 0.01, share: 0, constant: 0.82, meters: 'two' }],
    ['scatter and meter alike', { runs: 3, scatter: 1, step: 0.1, share: 0.005, constant: 0.5, meters: 'two' }],
  ])('in at least 93 percent of cases: %s', (_what, world) => {
    for (const [name, share] of coverage(world, trials, 30)) expect(share, name).toBeGreaterThanOrEqual(0.93);
  });
});

test.each<[string, World]>([
  ['three runs', { ...seldom, runs: 3, scatter: 2, meters: 'one' }],
  ['two runs, where what the meter adds would make intervals too narrow', { ...seldom, step: 1, runs: 2, scatter: 0.5, meters: 'one' }],
  ['steps', { runs: 3, scatter: 0.4, step: 1, share: 0, constant: 0, meters: 'one' }],
  ['next to no scatter', { runs: 3, scatter: 0.05, step: 1, share: 0, constant: 0, meters: 'one' }],
  ['a meter each', { runs: 3, scatter: 0.1, step: 0.1, share: 0.01, constant: 1, meters: 'two' }],
])('of two that are the same no difference is claimed in more than 5 percent of cases: %s', (_what, world) => {
  const random = randomOf(7);
  let claimed = 0;
  for (let t = 0; t < trials; t++) {
    // What both truly draw lies anywhere between two steps of the display.
    const watts = 199 + 2 * random.uniform();
    const facts = measure(world, random, { [a]: watts, [b]: watts });
    const difference = facts.derive('difference', [a, b]);
    if (isFact(difference) && ['higher', 'lower'].includes(outcomeOf(facts, difference)!)) claimed++;
  }
  expect(claimed / trials).toBeLessThanOrEqual(0.05);
});

// A median picks its operand; what lies close by must not make its interval too narrow, nor let differences from it be claimed that are none.
test.each<[string, number[], number]>([
  ['five alike', [200, 200, 200, 200, 200], 3], ['four alike', [200, 200, 200, 200], 3], ['three close by', [199, 200, 201], 3], ['five of which two are close by', [180, 199, 200, 220, 240], 3], ['six, two runs each', [180, 190, 199, 201, 230, 240], 2],
])('the median of %s', (_what, watts, runs) => {
  const random = randomOf(11);
  const sorted = [...watts].sort((x, y) => x - y);
  const middle = (sorted[(watts.length - 1) >> 1]! + sorted[watts.length >> 1]!) / 2;
  let [held, claimed] = [0, 0];
  for (let t = 0; t < trials; t++) {
    const facts = measure({ ...seldom, runs, scatter: 2, meters: 'one' }, random, Object.fromEntries([...watts, middle].map((w, i) => [`s${i}///power//load`, w])));
    const keys = watts.map((_, i) => `s${i}///power//load`);
    const median = facts.derive('median', keys);
    const u = isFact(median) && uncertaintyOf(facts, median);
    if (!isFact(median) || !u) throw new Error('the median has no uncertainty');
    if (Math.abs(median.value.toNumber() - middle) <= u.half95) held++;
    // What draws as much as the median, and is none of them.
    const difference = facts.derive('difference', [`s${watts.length}///power//load`, `(${median.id})`]);
    if (!isFact(difference)) throw new Error(difference.why);
    if (['higher', 'lower'].includes(outcomeOf(facts, difference)!)) claimed++;
  }
  expect(held / trials).toBeGreaterThanOrEqual(0.93);
  expect(claimed / trials).toBeLessThanOrEqual(0.05);
});
