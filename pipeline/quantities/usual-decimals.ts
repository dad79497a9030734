// Decimals with which a quantity is usually told. Common practice, no published source: what meters of the trade resolve.
import type { Unit } from './units.js';

const byUnit: Record<string, number> = {
  degC: 1, degF: 1, K: 1, 'delta-degF': 1,
  mW: 0, W: 1, kW: 3, uV: 0, mV: 0, V: 3, mA: 0, A: 2, mOhm: 1, Ohm: 2,
  Hz: 0, kHz: 1, MHz: 0, GHz: 3, 'MT/s': 0, rpm: 0, fps: 1, 'dB(A)': 1,
  mWh: 0, Wh: 1, kWh: 3, J: 0, kJ: 1, mAh: 0, Ah: 2,
  us: 0, ms: 2, s: 1, min: 1, h: 2, d: 1, '%': 1, points: 1, x: 2,
  g: 0, mm: 1, um: 0, 'L/min': 2, 'L/h': 0, 'gal/min': 2, 'm3/h': 1, 'ft3/min': 1, 'MB/s': 0, 'GB/s': 2, Pa: 1, '1': 0, score: 0,
};

/** For values that were computed (averaged from a log) and bear more decimals than anybody measured; 2 where the table is silent. */
export function usualDecimals(unit: Unit): number {
  return byUnit[unit.id] ?? 2;
}
