// A column whose sums and extremes an engine gives: of its samples only count, order, decimals, first and last are taken here.
import { exactBelow, wholeBelow } from './bucket-figures.js';
import { Column, Now } from './column.js';
import { missing, odd, type PlainRow, powers } from './plain-row.js';

/** Figures of one bucket as the engine gives them: whole numbers of the last decimal, the squares about zero. */
export interface Given {
  count: number;
  sum: number;
  min: number;
  max: number;
  squares: bigint;
}

export class AskedColumn extends Column {
  /** Counted as `Column` does; once that needs no look at the values any more, only the cells that have one are. */
  override addPlain(bucket: number, plain: PlainRow, from: number, count: number, line: number): void {
    for (let i = 0; i < count; i++) {
      // Of a constant, of a counter and of what is written with idle decimals each value counts.
      if (this.scale !== this.own || this.steady || this.now[Now.fell] === 0) return super.addPlain(bucket, plain, from + i, count - i, line + i);
      i += this.#pass(plain, from + i, count - i);
      if (i === count) return;
      const d = plain.decimals[from + i]!;
      if (d < odd) this.add(bucket, plain.digits[from + i]!, d, line + i);
      else if (d === odd) this.addNumber(bucket, plain.digits[from + i]!, plain.oddDecimals[from + i]!, line + i);
    }
  }

  /** Passes over as many as need no look, and gives how many. */
  #pass({ digits, decimals }: PlainRow, from: number, count: number): number {
    const { now, scale } = this;
    if (now[Now.count] === 0) return 0;
    const end = from + count;
    let filled = 0;
    let last = -1;
    let i = from;
    for (; i < end; i++) {
      const d = decimals[i]!;
      if (d <= scale) {
        filled++;
        last = i;
      } else if (d !== missing) break;
    }
    if (filled === 0) return i - from;
    now[Now.previous] = digits[last]! * powers[scale - decimals[last]!]!;
    now[Now.count]! += filled;
    now[Now.filled]! += filled;
    return i - from;
  }

  /** Takes over what the engine says of bucket `b`; false where `Column` would have held other numbers, or counts other samples. */
  take(b: number, { count, sum, min, max, squares }: Given): boolean {
    if (this.wide || count !== this.counts[b]) return false;
    if (count === 0) return true;
    const largest = Math.max(Math.abs(min), Math.abs(max));
    const [first, last] = [this.first[b]!, this.last[b]!];
    if (largest >= wholeBelow || largest * count >= exactBelow / 8 || Math.min(first, last) < min || Math.max(first, last) > max) return false;
    const origin = BigInt(this.origin);
    this.sums[b] = sum;
    this.min[b] = min;
    this.max[b] = max;
    this.squares[b] = Number(squares - 2n * origin * BigInt(sum) + BigInt(count) * origin * origin);
    return true;
  }

  /** Whether the engine, told of so many decimals, lost none. */
  hasDecimals(decimals: number): boolean {
    return !this.wide && this.decimals === decimals && this.scale === decimals;
  }
}
