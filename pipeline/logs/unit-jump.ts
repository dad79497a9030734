// A unit that changes in the middle of a file: from one line to the next a thousand times as much, or Fahrenheit instead of Celsius.

/** By how much one unit tells the same thing otherwise than another. */
export type Change = 'thousand' | 'sixty' | 'hundred' | 'fahrenheit' | 'kelvin';

export interface UnitJump {
  /** The first bucket that has a sample in the other unit. */
  row: number;
  before: number;
  after: number;
  how: Change;
}

/** Which changes of unit a quantity may have by mistake; rates of data and loads do grow a thousandfold. */
const changes: Readonly<Record<string, readonly Change[]>> = {
  power: ['thousand'], voltage: ['thousand'], current: ['thousand'], frequency: ['thousand'], energy: ['thousand'], duration: ['thousand'],
  flow: ['thousand', 'sixty'], share: ['hundred'], temperature: ['fahrenheit', 'kelvin'],
};

export const changeInWords: Readonly<Record<Change, string>> = {
  thousand: 'a thousand times as much or as little', sixty: 'sixty times as much or as little, as from a minute to an hour or back', hundred: 'as from a fraction to percent or back',
  fahrenheit: 'as from Celsius to Fahrenheit or back', kelvin: 'as from Celsius to kelvins or back',
};

/** Rows on each side whose medians are compared. */
const beside = 5;

/**
 * The first such jump. From standby to load is a thousandfold too, and Celsius and Fahrenheit differ by less than a sudden
 * load does, so it counts only where nothing else happens: no phase begins, and none of the `others` moves by a quarter.
 * Where a row is the mean of several samples (`isMixed`), the unit may change within it.
 */
export function unitJump(values: Float64Array, dimension: string, phases: readonly string[], others: readonly Float64Array[], isMixed: (row: number) => boolean = () => false): UnitJump | undefined {
  const possible = changes[dimension] ?? [];
  if (possible.length === 0) return undefined;
  const jumps = (a: number, b: number): Change | undefined => {
    for (const how of possible) if (isChange[how](a, b)) return how;
    return undefined;
  };
  const rows = filledRows(values);
  for (let k = beside; k + beside <= rows.length; k++) {
    const last = values[rows[k - 1]!]!;
    const within = !jumps(last, values[rows[k]!]!);
    if (within && !(isMixed(rows[k]!) && k + beside < rows.length && jumps(last, values[rows[k + 1]!]!))) continue;
    const behind = within ? k + 1 : k;
    const near = (list: Float64Array): [number, number] => [median(rows.subarray(k - beside, k), list), median(rows.subarray(behind, behind + beside), list)];
    const [before, after] = near(values);
    const quiet = (phases[rows[behind]!] ?? '') === (phases[rows[k - 1]!] ?? '') && others.every((o) => {
      const [a, b] = near(o);
      return !(Math.abs(b - a) > Math.abs(a) / 4);
    });
    const how = quiet ? jumps(before, after) : undefined;
    if (how) return { row: rows[k]!, before, after, how };
  }
  return undefined;
}

/** Whether one sample is in the other unit, its neighbour before having been in the first. */
export function isBeyond({ before, how }: UnitJump, sample: number): boolean {
  return isChange[how](before, sample);
}

function filledRows(values: Float64Array): Int32Array {
  const rows = new Int32Array(values.length);
  let n = 0;
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) rows[n++] = i;
  return rows.subarray(0, n);
}

const isChange: Readonly<Record<Change, (a: number, b: number) => boolean>> = {
  thousand: (a, b) => isTimes(1000, 0.25, a, b),
  sixty: (a, b) => isTimes(60, 0.05, a, b),
  // A load of 1 % may become one of 100 %; a fraction has decimals.
  hundred: (a, b) => isTimes(100, 0.1, a, b) && !Number.isInteger(Math.min(Math.abs(a), Math.abs(b))),
  fahrenheit: converted,
  kelvin: (a, b) => Math.abs(Math.abs(b - a) - 273.15) <= 2,
};

/** One is so many times the other, either way round, within a share of it. */
function isTimes(factor: number, within: number, a: number, b: number): boolean {
  if (a === 0 || b === 0 || a > 0 !== b > 0) return false;
  const ratio = Math.max(a / b, b / a);
  return ratio > factor / (1 + within) && ratio < factor * (1 + within);
}

/** 20 °C is 68 °F: one is the other within 2 degrees Celsius, either way round. */
function converted(a: number, b: number): boolean {
  const toFahrenheit = (c: number): number => 1.8 * c + 32;
  return Math.abs(b - toFahrenheit(a)) <= 3.6 && b - a > 20 || Math.abs(a - toFahrenheit(b)) <= 3.6 && a - b > 20;
}

function median(rows: Int32Array, list: Float64Array): number {
  const sorted = Float64Array.from(rows, (i) => list[i]!).filter((v) => !Number.isNaN(v)).sort();
  return sorted.length ? sorted[sorted.length >> 1]! : NaN;
}
