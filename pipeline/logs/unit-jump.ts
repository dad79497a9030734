// A unit that changes in the middle of a file: from one line to the next a thousand times as much, or Fahrenheit instead of Celsius.

export interface UnitJump {
  /** The first row in the other unit. */
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
 */
export function unitJump(values: Float64Array, isTemperature: boolean, phases: readonly string[], others: readonly Float64Array[]): UnitJump | undefined {
  const rows: number[] = [];
  values.forEach((v, i) => {
    if (!Number.isNaN(v)) rows.push(i);
  });
  const near = (k: number, list: Float64Array): [number, number] => [median(rows.slice(k - beside, k).map((i) => list[i]!)), median(rows.slice(k, k + beside).map((i) => list[i]!))];
  for (let k = beside; k + beside <= rows.length; k++) {
    const [last, next] = [values[rows[k - 1]!]!, values[rows[k]!]!];
    if (isTemperature ? !converted(last, next) : !thousandfold(last, next)) continue;
    const [before, after] = near(k, values);
    const row = rows[k]!;
    const quiet = (phases[row] ?? '') === (phases[rows[k - 1]!] ?? '') && others.every((o) => {
      const [a, b] = near(k, o);
      return !(Math.abs(b - a) > Math.abs(a) / 4);
    });
    if (quiet && (isTemperature ? converted : thousandfold)(before, after)) return { row, before, after, how: isTemperature ? 'fahrenheit' : 'thousand' };
  }
  return undefined;
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

function median(list: number[]): number {
  const sorted = list.filter((v) => !Number.isNaN(v)).sort((a, b) => a - b);
  return sorted.length ? sorted[sorted.length >> 1]! : NaN;
}
