// Readings that are differences by their name, whatever unit they were written in.
import { differenceUnit } from '../quantities/index.js';
import { type Reading, splitKey } from '../records/index.js';

const saysSo = /(^|[-_.])(over|above|rise|delta|difference)([-_.]|$)/i;

/**
 * A temperature over the room ("over-room", "liquid-over-ambient", "rise") is a difference, though tables often give it in
 * °C: it may be doubled, shared and divided by watts. Written in °C it is taken in kelvins, in °F as a difference in °F.
 */
export function asDifference(reading: Reading): Reading {
  if (reading.quantity.unit.dimension !== 'temperature') return reading;
  const at = splitKey(reading.key);
  if (!at || !(saysSo.test(at.part) || saysSo.test(at.measure))) return reading;
  return { ...reading, quantity: { ...reading.quantity, unit: differenceUnit(reading.quantity.unit) } };
}
