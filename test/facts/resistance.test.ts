import { expect, test } from 'vitest';
import { kelvinPerWatt, uncertaintyOf } from '../../pipeline/facts/index.js';
import { factsOf } from './episode.js';

const core = 'a//w/temperature/core/load';
const bench = `
${core}: 65.0 65.2 64.8 °C
a//w/temperature/room/load: 20.0 20.0 20.0 °C
a//w/power/board/load: 300.0 300.2 299.8 W
`.trim();
const told = (text: string, key = core) => { const found = kelvinPerWatt(factsOf(text), key); return found && [found.fact.shown, found.power, found.own]; };

// (65 − 20) K ÷ 300 W = 0.15 K/W.
test('the power of the same part, else the one with a limit', () => {
  expect(told(bench)).toBeUndefined();
  expect(told(`${bench}\n///power/board/limit: = 320 W`)).toEqual(['0.150 K/W', 'a//w/power/board/load', false]);
  expect(told(`${bench}\na//w/power/core/load: 225 225 225 W`)).toEqual(['0.200 K/W', 'a//w/power/core/load', true]);
});

// JEDEC JESD51-1: (T_J − T_A)/P of 75 °C, 25 °C and 200 W is 0.25 K/W; here a neutral name, as the box and the air are no JEDEC ones.
test('the worked example of a junction over ambient', () => {
  expect(told(`${core}: 75.0 75.0 75.0 °C\na//w/temperature/room/load: 25.0 25.0 25.0 °C\na//w/power/core/load: 200.0 200.0 200.0 W`)![0]).toBe('0.250 K/W');
});

test('no room, no power under the same phase, a thing below the room, and the room itself have none', () => {
  const lines = `${bench}\n///power/board/limit: = 320 W`;
  expect(told(lines.replace(/.*room.*\n/, ''))).toBeUndefined();
  expect(told(lines.replace('board/load', 'board/idle'))).toBeUndefined();
  expect(told(lines.replace('65.0 65.2 64.8', '18.0 18.2 17.8'))).toBeUndefined();
  expect(told(lines, 'a//w/temperature/room/load')).toBeUndefined();
});

// u(ΔT)² = 0.2²/3 + (0.1/√12)² + (0.1/√12)², u(P)² = 0.2²/3 + (0.1/√12)²; relative parts in squares (JCGM 100, 5.1.6).
test('is as uncertain as both', () => {
  const facts = factsOf(`${bench}\n///power/board/limit: = 320 W`);
  const step = 0.01 / 12;
  const relative = Math.hypot(Math.sqrt(0.04 / 3 + 2 * step) / 45, Math.sqrt(0.04 / 3 + step) / 300);
  const { fact } = kelvinPerWatt(facts, core)!;
  // Runs of the same names were read at the same moments: here they move together, up and down by 0.2 K and by 0.2 W.
  const together = Math.hypot((0.2 / Math.sqrt(3)) * (1 / 45 - 1 / 300), Math.sqrt(2 * step) / 45, Math.sqrt(step) / 300);
  expect(uncertaintyOf(facts, fact)!.standard).toBeCloseTo(0.15 * together, 7);
  expect(together).toBeLessThan(relative);
});
