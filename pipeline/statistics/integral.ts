// What a sampled quantity adds up to over time.

export interface Integral {
  /** Σ (aᵢ + aᵢ₊₁)/2 · (tᵢ₊₁ − tᵢ). */
  area: number;
  /** From the first finite sample of each stretch to its last. */
  time: number;
  /** How much of that time lies in steps longer than `gap`, over which a straight line stands for what was not sampled, and how many such steps there are. */
  bridged: number;
  gaps: number;
}

/** By trapezoids over the actual times, within each of `rows` [from, to) and never between two of them; a sample that is not finite is passed over, as if it were not there. */
export function integral(times: ArrayLike<number>, values: ArrayLike<number>, rows: readonly (readonly [from: number, to: number])[], gap = Infinity): Integral {
  const sum: Integral = { area: 0, time: 0, bridged: 0, gaps: 0 };
  for (const [from, to] of rows) {
    let before = -1;
    for (let i = from; i < to; i++) {
      if (!Number.isFinite(values[i]!)) continue;
      if (before >= 0) {
        const step = times[i]! - times[before]!;
        sum.area += ((values[before]! + values[i]!) / 2) * step;
        sum.time += step;
        if (step > gap) {
          sum.bridged += step;
          sum.gaps++;
        }
      }
      before = i;
    }
  }
  return sum;
}
