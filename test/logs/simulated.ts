// Logs whose truth is known: idle, then a load that warms towards a level, with noise that remembers itself, steps of the sensor, and dropouts.
import { random, type Random } from '../statistics/random.js';

export interface Simulated {
  csv: string;
  /** Samples of the load: seconds since it began, and what the sensor said (NaN for an empty cell). */
  times: number[];
  values: number[];
  /** The curve without noise, steps and dropouts. */
  curve(t: number): number;
  final: number;
  amplitude: number;
  tau: number;
  /** Step of the sensor, standard deviation of the noise, seconds that the load lasts, seconds between samples. */
  step: number;
  noise: number;
  load: number;
  every: number;
}

export interface Wanted {
  seed: number;
  /** Length of the load in time constants, or seconds. */
  lengths?: number;
  load?: number;
  step?: number;
}

export const idleSeconds = 30;

export function simulated({ seed, lengths, load: wanted, step: fixed }: Wanted): Simulated {
  const g = random(seed);
  const between = (low: number, high: number): number => low + (high - low) * g.uniform();
  const [final, rise, tau] = [between(55, 85), between(10, 40), between(15, 80)];
  const step = fixed ?? [0.01, 0.1, 0.1, 0.5][Math.floor(g.uniform() * 4)]!;
  const noise = Math.max(step, between(0.15, 0.8));
  const memory = between(0, 0.9);
  const every = 0.5;
  const load = wanted ?? (lengths ? lengths * tau : between(480, 720));
  const curve = (t: number): number => final - rise * Math.exp(-t / tau);
  const missing = between(0, 0.05);
  const decimals = step < 0.1 ? 2 : step < 1 ? 1 : 0;
  const lines = ['t,stage,core'];
  const [times, values]: [number[], number[]] = [[], []];
  const sample = remembering(g, noise, memory);
  let gap = 0;
  for (let i = 0; i * every < idleSeconds + load; i++) {
    const since = i * every - idleSeconds;
    const seen = Math.round((curve(Math.max(0, since)) + sample()) / step) * step;
    if (gap === 0 && g.uniform() < 0.002) gap = 2 + Math.floor(g.uniform() * 6);
    if (gap > 0) {
      gap--;
      continue;
    }
    const empty = g.uniform() < missing;
    lines.push(`${(i * every).toFixed(1)},${since < 0 ? 'idle' : 'load'},${empty ? '' : seen.toFixed(decimals)}`);
    if (since < 0) continue;
    times.push(since);
    values.push(empty ? NaN : seen);
  }
  return { csv: lines.join('\n') + '\n', times, values, curve, final, amplitude: -rise, tau, step, noise, load, every };
}

function remembering(g: Random, noise: number, memory: number): () => number {
  let x = g.normal();
  return () => {
    x = memory * x + Math.sqrt(1 - memory * memory) * g.normal();
    return noise * x;
  };
}
