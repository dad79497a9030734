// Heat that a coolant carries, against tables of its properties and worked balances. Water: computed with IAPWS R7-97(2012);
// glycol: ASHRAE Handbook, Fundamentals (2001), as CoolProp carries it. The balances are Q = ρ · V̇ · c · ΔT, turned round.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { explain, Facts, isFact, uncertaintyOf } from '../../pipeline/facts/index.js';
import { coolantAt } from '../../pipeline/facts/coolant.js';
import { Exact } from '../../pipeline/quantities/index.js';
import { oracle } from '../oracles/table.js';
import { episodeOf } from './episode.js';

const exact = (t: string | number) => Exact.parse(String(t))!;
const at = (fluid: Parameters<typeof coolantAt>[0], percent: number, celsius: number) => {
  const p = coolantAt(fluid, exact(percent), exact(celsius));
  if ('why' in p) throw new Error(p.why);
  return { density: p.density.toNumber(), heat: p.heat.toNumber() };
};

test.each(oracle('water_if97_101325Pa.csv'))('water at $temperature_degC °C', (row) => {
  const { density, heat } = at('water', 0, Number(row['temperature_degC']));
  expect(density).toBeCloseTo(Number(row['density_kg_per_m3']), 3);
  expect(heat / 1000).toBeCloseTo(Number(row['cp_kJ_per_kgK']), 4);
  expect(Math.abs((density * heat) / 1e6 - Number(row['rho_cp_kJ_per_L_K']))).toBeLessThan(1e-4); // printed from values with more digits
});

test.each(oracle('glycol_water_ashrae.csv'))('$glycol, $volume_percent % at $temperature_degC °C', (row) => {
  const { density, heat } = at(row['glycol'] as 'ethylene glycol', Number(row['volume_percent']), Number(row['temperature_degC']));
  expect(density).toBeCloseTo(Number(row['density_kg_per_m3']), 2);
  expect(heat).toBeCloseTo(Number(row['cp_J_per_kgK']), 0);
});

// Kell's equation for the density of water (J. Chem. Eng. Data 20, 1975), recalled: another formula, within 0.01 kg/m³ of the
// table at its rows; a straight line over 5 K strays by another 0.04 at most, four parts in 100,000.
test('between the rows the density of water keeps to a smooth curve', () => {
  const kell = (t: number) => (999.83952 + 16.945176 * t - 7.9870401e-3 * t ** 2 - 46.170461e-6 * t ** 3 + 105.56302e-9 * t ** 4 - 280.54253e-12 * t ** 5) / (1 + 16.87985e-3 * t);
  for (let t = 5; t <= 60; t += 0.5) expect(Math.abs(at('water', 0, t).density - kell(t))).toBeLessThan(0.05);
});

test('more glycol carries less, and every value lies between its rows', () => {
  fc.assert(fc.property(fc.constantFrom('ethylene glycol' as const, 'propylene glycol' as const), fc.integer({ min: 0, max: 500 }), fc.integer({ min: 100, max: 600 }), (fluid, share, t) => {
    const [a, b] = [at(fluid, share / 10, t / 10), at(fluid, share / 10 + 10, t / 10)];
    expect(a.density * a.heat).toBeGreaterThan(b.density * b.heat);
  }));
});

test.each([['water', 0, 4.9, 'from 5 to 60 °C'], ['water', 0, 61, 'from 5 to 60 °C'], ['ethylene glycol', 61, 20, 'up to 60 % by volume'], ['propylene glycol', 30, 9, 'from 10 to 60 °C']] as const)('%s, %d %% at %d °C: %s', (fluid, share, t, why) => {
  expect(coolantAt(fluid, exact(share), exact(t))).toEqual({ why: expect.stringContaining(why) as string });
});

describe('worked balances (coolant_heat_balance.csv): the warming that the power gives gives the power back', () => {
  test.each(oracle('coolant_heat_balance.csv'))('$fluid, $Q_W W', (row) => {
    const m = /^(water|ethylene glycol|propylene glycol)(?: (\d+) vol%)? (\d+) C/.exec(row['fluid']!)!;
    const e = episodeOf(`a///flow/loop/load: ${row['flow_L_per_min']} L/min`);
    e.coolant = { fluid: m[1] as 'water', share: exact(m[2] ?? 0), place: e.place };
    const heat = new Facts(e).derive('heat', ['a///flow/loop/load', `=${row['dT_K']} K`, `=${m[3]} °C`]);
    expect(isFact(heat)).toBe(true);
    // The warming is printed to 0.0001 K: 5 parts in 100,000 of the smallest.
    if (isFact(heat)) expect(Math.abs(heat.value.toNumber() / Number(row['Q_W']) - 1)).toBeLessThan(6e-5);
  });
});

describe('in an episode', () => {
  const e = episodeOf(`
a/s/w/flow/loop/load: 2.00 2.01 1.99 L/min
a/s/w/temperature/out/load: 41.0 41.0 41.1 °C
a/s/w/temperature/in/load: 39.0 39.1 39.0 °C
`.trim());
  e.coolant = { fluid: 'ethylene glycol', share: Exact.of(30), place: e.place };
  const facts = new Facts(e);
  const heat = facts.derive('heat', ['a/s/w/flow/loop/load', 'a/s/w/temperature/out/load', 'a/s/w/temperature/in/load']);
  test('says how it came about', () => {
    expect(isFact(heat) && [heat.id, heat.shown, heat.formula]).toEqual([
      'heat:a/s/w/flow/loop/load~a/s/w/temperature/out/load~a/s/w/temperature/in/load', '256 W',
      '2.00 L/min × (41.03 − 39.03) K × 3.838 kJ/(L·K), ethylene glycol, 30 % by volume at 40.0 °C',
    ]);
    expect(explain(facts, isFact(heat) ? heat.id : '').toString()).toContain('2.00 L/min');
  });
  // JCGM 100:2008, 5.1: relative shares of a product add in squares; u(ΔT) of two means of three, with their steps of 0.1 K.
  test('and how sure it is', () => {
    if (!isFact(heat)) throw new Error(heat.why);
    const sides = ['out', 'in'].map((part) => uncertaintyOf(facts, facts.value(`a/s/w/temperature/${part}/load`) as typeof heat)!.standard);
    const flow = uncertaintyOf(facts, facts.value('a/s/w/flow/loop/load') as typeof heat)!.standard;
    const expected = heat.value.toNumber() * Math.hypot(flow / 2, Math.hypot(...sides) / 2);
    expect(Math.abs(uncertaintyOf(facts, heat)!.standard / expected - 1)).toBeLessThan(0.25);
  });
  test('a setup may hold another coolant', () => {
    const own = { ...e, setups: new Map([...e.setups].map(([id, s]) => [id, { ...s, coolant: { fluid: 'water' as const, share: Exact.zero, place: e.place } }])) };
    const f = new Facts(own).derive('heat', ['a/s/w/flow/loop/load', 'a/s/w/temperature/out/load', 'a/s/w/temperature/in/load']);
    expect(isFact(f) && f.shown).toBe('276 W');
    expect(isFact(f) && f.formula).toContain('4.146 kJ/(L·K), water at 40.0 °C');
  });
  test('without a coolant there is none', () => {
    const { coolant: _, ...bare } = e;
    expect(new Facts(bare).derive('heat', ['a/s/w/flow/loop/load', 'a/s/w/temperature/out/load', 'a/s/w/temperature/in/load'])).toEqual({ why: 'the record does not say what the coolant is (coolant: water)' });
  });
});
