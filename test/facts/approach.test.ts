// Time constants and the levels approached, from logs whose truth is known.
import { describe, expect, test } from 'vitest';
import { approaches, explain, factRecord, Facts, isFact, listFacts, outcomeOf, uncertaintyOf } from '../../pipeline/facts/index.js';
import { narrate } from '../../pipeline/narration/index.js';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { readEpisode } from '../records/reading.js';
import { simulated } from '../logs/simulated.js';
import { random } from '../statistics/random.js';

/** Ten seconds of idle at 30 °C, then 60 °C − 30 K · e^(−t/tau) with noise. */
function log(tau: number, seed: number, lasts = 300, straight = false): string {
  const g = random(seed);
  const rows = Array.from({ length: 10 + lasts }, (_, i) => {
    const t = i - 10;
    const core = t < 0 ? 30 : straight ? 30 + 0.05 * t : 60 - 30 * Math.exp(-t / tau);
    return `${i},${t < 0 ? 'idle' : 'load'},${(core + 0.2 * g.normal()).toFixed(1)}`;
  });
  return `t,stage,core\n${rows.join('\n')}\n`;
}

function read(logs: Record<string, string>, more = ''): Facts {
  const { episode, findings } = readEpisode(`title: Warming
date: 2026-03-14
setups: {bench: {name: Bench, spoken: [the bench]}, cabinet: {name: Cabinet, spoken: [the cabinet]}}
measures: {temperature: {better: lower}}
parts: {core: Core}
layouts:
  sensors: {time: {column: t}, phases: {column: stage}, windows: {idle: from 0 s, load: last 60 s}, columns: {core: temperature/core °C}}
logs:
  - {files: "{setup}-{run}.csv", layout: sensors}
${more}`, logs);
  const wrong = findings.find((f) => f.severity === 'error');
  if (wrong) throw new Error(wrong.message);
  return new Facts(episode!);
}

const key = (setup: string) => `${setup}///temperature/core/load`;
const three = read({ 'bench-1.csv': log(40, 1), 'bench-2.csv': log(41, 2), 'bench-3.csv': log(39, 3), 'cabinet-1.csv': log(60, 4), 'cabinet-2.csv': log(61, 5), 'cabinet-3.csv': log(62, 6) });

describe('of three runs', () => {
  const tau = three.derive('approach', [key('bench')], 'time-constant');
  const final = three.derive('approach', [key('bench')], 'final');
  if (!isFact(tau) || !isFact(final)) throw new Error('underivable');
  test('the mean of the fits, the truth within its interval', () => {
    expect(tau.unit.id).toBe('s');
    expect(Math.abs(tau.value.toNumber() - 40)).toBeLessThan(uncertaintyOf(three, tau)!.half95);
    expect(Math.abs(final.value.toNumber() - 60)).toBeLessThan(uncertaintyOf(three, final)!.half95);
    expect(tau.spread!.runs).toBe(3);
    expect(uncertaintyOf(three, tau)!.dof).toBe(2);
  });
  test('explained down to the rows, and kept with its uncertainty', () => {
    const told = explain(three, tau.id).toString();
    expect(told).toMatch(/least-squares fits run 1: 6\d\.\d+ °C − \d+\.\d K · e\^\(−t\/\d+\.\d s\); run 2/);
    expect(told).toContain('bench-1.csv');
    for (const f of [tau, final]) {
      const kept = factRecord(listFacts(three).find((x) => x.id === f.id)!, three);
      expect(Number(kept.uncertainty)).toBeGreaterThan(0);
      expect(kept.coverageFactor).toBeGreaterThan(1.9);
    }
  });
  test('two are told apart', () => {
    const d = three.derive('difference', [`(${tau.id})`, `(approach.time-constant:${key('cabinet')})`]);
    expect(isFact(d) && outcomeOf(three, d)).toBe('lower');
  });
  test('a sentence says it, and is read back', () => {
    const said = narrate(three).filter((s) => s.facts.some((f) => f.startsWith('approach')));
    expect(said.map((s) => s.text.replace(/of .* seconds/, 'of … seconds'))).toEqual(['With the bench, the core settled with a time constant of … seconds under load.', 'With the cabinet, the core settled with a time constant of … seconds under load.']);
    for (const s of said) expect(proof(new Source('n.md', s.text), three).mentions.map((m) => [m.verdict, m.facts[0]])).toEqual([['agrees', s.facts[0]]]);
  });
});

test.each([
  ['The time constant of the core with the bench under load was 40 seconds.', 'agrees'],
  ['With the bench, the core has a time constant of 52 seconds under load.', 'disagrees'],
  ['A time constant of 12 seconds would be nothing new.', 'not-a-claim'],
])('%s', (script, verdict) => expect(proof(new Source('s.md', script), three).mentions.map((m) => m.verdict)).toEqual([verdict]));

test('a single run is as sure as its own course, and no difference rests on it', () => {
  const one = read({ 'bench-1.csv': log(40, 1), 'cabinet-1.csv': log(80, 2) });
  const fact = one.get(`approach.time-constant:${key('bench')}`);
  if (!isFact(fact)) throw new Error('underivable');
  expect(Math.abs(fact.value.toNumber() - 40)).toBeLessThan(uncertaintyOf(one, fact)!.half95);
  expect(uncertaintyOf(one, fact)!.half95).toBeLessThan(2);
  const d = one.derive('difference', [`(${fact.id})`, `(approach.time-constant:${key('cabinet')})`]);
  expect(isFact(d) && [outcomeOf(one, d), uncertaintyOf(one, d)]).toEqual(['undecided', undefined]);
});

test('what goes nowhere, or on and on, approaches nothing', () => {
  const other = read({ 'bench-1.csv': log(40, 1, 300, true), 'cabinet-1.csv': log(1e9, 2) });
  expect(approaches(other).map((f) => f.id)).toEqual([]);
  const why = other.get(`approach.final:${key('bench')}`);
  expect(why && 'why' in why && why.why).toContain('tells no approach to a level');
});

// Single runs, each error drawn anew: symmetrical intervals by the fit's own standard error.
test('intervals of a single run hold the truth in at least 93 of a hundred', () => {
  let [held, fits] = [0, 0];
  for (let seed = 12000; seed < 12300; seed++) {
    const s = simulated({ seed, lengths: 4 });
    const facts = new Facts(readEpisode(`title: S
layouts:
  sensors: {time: {column: t}, phases: {column: stage}, windows: {idle: from 0 s, load: last 30 s}, columns: {core: temperature/core °C}}
logs:
  - {files: log.csv, layout: sensors, for: {setup: bench}}
`, { 'log.csv': s.csv }).episode!);
    const fact = facts.get(`approach.time-constant:${key('bench')}`);
    if (!isFact(fact)) continue;
    fits++;
    if (Math.abs(fact.value.toNumber() - s.tau) <= uncertaintyOf(facts, fact)!.half95) held++;
  }
  expect(fits).toBeGreaterThan(270);
  expect(held / fits).toBeGreaterThanOrEqual(0.93);
});
