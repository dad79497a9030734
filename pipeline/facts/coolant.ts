// What a litre of coolant carries: density and specific heat between the rows of the tables.
import { Exact } from '../quantities/index.js';
import { type Column, type Fluid, glycols, water } from './coolant-tables.js';

export interface CoolantProperties {
  /** kg/m³. */
  density: Exact;
  /** J/(kg·K). */
  heat: Exact;
}

/**
 * By straight lines between the rows, in temperature and in share (0 to 60 % by volume; below 10 % towards water). Water from
 * 5 to 60 °C, glycol from 10 to 60 °C; `why` in words outside of that.
 */
export function coolantAt(fluid: Fluid, percent: Exact, celsius: Exact): CoolantProperties | { why: string } {
  if (fluid === 'water' || percent.sign() === 0) return between(water, celsius, 'water');
  const columns: readonly (readonly [number, Column])[] = [[0, water], ...glycols[fluid]];
  const upper = columns.findIndex(([p]) => Exact.of(p).compare(percent) >= 0);
  if (upper < 1) return { why: `there are values of ${fluid} up to ${columns.at(-1)![0]} % by volume` };
  const [[p0, low], [p1, high]] = [columns[upper - 1]!, columns[upper]!];
  const [a, b] = [between(low, celsius, fluid), between(high, celsius, fluid)];
  if ('why' in a) return a;
  if ('why' in b) return b;
  const part = percent.minus(Exact.of(p0)).over(Exact.of(p1 - p0));
  return { density: along(a.density, b.density, part), heat: along(a.heat, b.heat, part) };
}

function between(column: Column, celsius: Exact, name: string): CoolantProperties | { why: string } {
  const upper = Math.max(1, column.findIndex(([t]) => Exact.of(t).compare(celsius) >= 0));
  const [[t0, d0, h0], [t1, d1, h1]] = [column[upper - 1]!, column[upper]!];
  const part = celsius.minus(Exact.of(t0)).over(Exact.of(t1 - t0));
  if (part.sign() < 0 || part.compare(Exact.of(1)) > 0) return { why: `there are values of ${name} from ${column[0]![0]} to ${column.at(-1)![0]} °C` };
  return { density: along(Exact.parse(d0)!, Exact.parse(d1)!, part), heat: along(Exact.parse(h0)!, Exact.parse(h1)!, part) };
}

function along(a: Exact, b: Exact, part: Exact): Exact {
  return a.plus(b.minus(a).times(part));
}
