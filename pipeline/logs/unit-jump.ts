// A unit that changes in the middle of a file: from one line to the next a thousand times as much, or Fahrenheit instead of Celsius.

export interface UnitJump {
  /** The first bucket that has a sample in the other unit. */
  row: number;
  before: number;
  after: number;
  how: 'thousand' | 'fahrenheit';
}

/** Rows on each side whose medians are compared. */
const beside = 5;

/**
 * The first such jump. From standby to load is a thousandfold too, and Celsius and Fahrenheit differ by less than a sudden
 * load does, so it counts only where nothing else happens: no phase begins, and none of the `others` moves by a quarter.
 * Where a row is the mean of several samples (`isMixed`), the unit may change within it.
 */
export function unitJump(values: Float64Array, isTemperature: boolean, phases: readonly string[], others: readonly Float64Array[], isMixed: (row: number) => boolean = () => false): UnitJump | undefined {
  const rows = filledRows(values);
  const jumps = isTemperature ? converted : thousandfold;
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
    if (quiet && jumps(before, after)) return { row: rows[k]!, before, after, how: isTemperature ? 'fahrenheit' : 'thousand' };
  }
  return undefined;
}

/** Whether one sample is in the other unit, its neighbour before having been in the first. */
export function isBeyond({ before, how }: UnitJump, sample: number): boolean {
  return how === 'fahrenheit' ? converted(before, sample) : thousandfold(before, sample);
}

function filledRows(values: Float64Array): Int32Array {
  const rows = new Int32Array(values.length);
  let n = 0;
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) rows[n++] = i;
  return rows.subarray(0, n);
}

function thousandfold(a: number, b: number): boolean {
  if (a === 0 || b === 0 || a > 0 !== b > 0) return false;
  const ratio = Math.abs(b / a);
  return (ratio > 800 && ratio < 1250) || (ratio > 1 / 1250 && ratio < 1 / 800);
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
