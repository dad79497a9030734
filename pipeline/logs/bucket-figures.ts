// What the samples of each bucket of a column give together: exact sums, extremes, scatter.
import { Exact } from '../quantities/index.js';
import { type Decimal, exact, plus, zero } from './decimals.js';
import { powers } from './plain-row.js';
import { widened } from './widened.js';

/** Sums of whole numbers below this lose nothing. */
export const exactBelow = 2 ** 53;
/** Samples are held as whole numbers of the last decimal as long as they are below this. */
export const wholeBelow = 2 ** 50;

/** What some samples give together. Extremes, first and last are NaN where there are none. */
export interface Span {
  count: number;
  sum: Exact;
  min: number;
  max: number;
  first: number;
  last: number;
  /** Sum of 10^(x/10), for levels. */
  energy: number;
  /** Sum of squared distances from the mean. */
  squares: number;
}

export abstract class BucketFigures {
  /** Held as whole numbers, samples are multiples of ten to the minus this; -1 where some have too many digits for that: then sums are kept as decimals, the rest as binary numbers. */
  protected scale = 0;
  /** Buckets, one that is being filled included. */
  protected used = 0;
  protected sums: Float64Array;
  /** About the origin. */
  protected squares: Float64Array;
  protected min: Float64Array;
  protected max: Float64Array;
  protected first: Float64Array;
  protected last: Float64Array;
  protected counts: Float64Array;
  protected energies: Float64Array | undefined;
  protected wideSums: Decimal[] = [];

  constructor(levels: boolean, size: number) {
    const numbers = (): Float64Array => new Float64Array(size);
    [this.sums, this.squares, this.min, this.max, this.first, this.last, this.counts] = [numbers(), numbers(), numbers(), numbers(), numbers(), numbers(), numbers()];
    if (levels) this.energies = numbers();
  }

  /** A sample near the others, held as they are: squares about it stay small. */
  protected abstract get origin(): number;

  grow(size: number): void {
    const [sums, squares, min, max, first, last, counts, energies] = this.lists().map((from) => widened(from, size));
    [this.sums, this.squares, this.min, this.max, this.first, this.last, this.counts] = [sums!, squares!, min!, max!, first!, last!, counts!];
    this.energies = energies;
  }

  /** The buckets of these stretches [from, to) together. */
  span(stretches: readonly (readonly [from: number, to: number])[]): Span {
    let [count, energy, squares] = [0, 0, 0];
    let sum: Decimal = { n: 0n, decimals: this.wide ? 0 : this.scale };
    let exactSquares = 0n;
    let [min, max, first, last] = [NaN, NaN, NaN, NaN];
    for (const [from, to] of stretches) for (let b = from; b < to; b++) {
      if (this.counts[b] === 0) continue;
      if (count === 0) [min, max, first] = [this.min[b]!, this.max[b]!, this.first[b]!];
      last = this.last[b]!;
      if (this.min[b]! < min) min = this.min[b]!;
      if (this.max[b]! > max) max = this.max[b]!;
      count += this.counts[b]!;
      if (this.energies) energy += this.energies[b]!;
      if (!this.wide && this.squares[b]! < exactBelow) exactSquares += BigInt(this.squares[b]!);
      else squares += this.squares[b]!;
      sum = plus(sum, this.wide ? this.wideSums[b]! : { n: BigInt(this.sums[b]!), decimals: this.scale });
    }
    const value = (x: number): number => this.value(x);
    return { count, energy, sum: exact(sum), min: value(min), max: value(max), first: value(first), last: value(last), squares: count === 0 ? 0 : this.#aboutMean(count, sum, squares, exactSquares) };
  }

  /** From squares about the origin: exactly, as long as all of them are whole numbers. */
  #aboutMean(count: number, sum: Decimal, squares: number, exactSquares: bigint): number {
    if (this.wide) return Math.max(0, squares - count * (exact(sum).toNumber() / count - this.origin) ** 2);
    const off = sum.n - BigInt(count) * BigInt(this.origin);
    const unit = powers[this.scale]! ** 2;
    if (squares === 0) return Exact.of(exactSquares * BigInt(count) - off * off, BigInt(count)).toNumber() / unit;
    return Math.max(0, squares + Number(exactSquares) - Number(off) ** 2 / count) / unit;
  }

  /** The mean of a bucket, which is the sample itself where it has but one; NaN where it has none. */
  mean(b: number): number {
    const n = this.counts[b]!;
    if (n <= 1) return n === 0 ? NaN : this.value(this.first[b]!);
    return this.wide ? exact(this.wideSums[b]!).toNumber() / n : this.value(this.sums[b]! / n);
  }

  /** How many of a bucket's samples have a value. */
  filledIn(b: number): number {
    return this.counts[b]!;
  }

  firstIn(b: number): number {
    return this.value(this.first[b]!);
  }

  lastIn(b: number): number {
    return this.value(this.last[b]!);
  }

  /** Of a bucket that lasts so long: by trapezoids, its samples being evenly apart. */
  area(b: number, seconds: number): number {
    const n = this.counts[b]!;
    return n < 2 ? 0 : ((this.mean(b) * n - (this.firstIn(b) + this.lastIn(b)) / 2) * seconds) / (n - 1);
  }

  low(b: number): number {
    return this.counts[b] === 0 ? NaN : this.value(this.min[b]!);
  }

  high(b: number): number {
    return this.counts[b] === 0 ? NaN : this.value(this.max[b]!);
  }

  protected tooLargeTogether(a: number, b: number): boolean {
    return !this.wide && Math.abs(this.sums[a]! + this.sums[b]!) >= exactBelow;
  }

  /** Makes bucket `to` of bucket `a` and, unless it is the same, the one behind it. */
  protected foldFigures(to: number, a: number, b: number): void {
    const [m, n] = [this.counts[a]!, a === b ? 0 : this.counts[b]!];
    const one = m === 0 ? b : a;
    const other = n === 0 ? a : b;
    const both = m > 0 && n > 0;
    if (this.wide) this.wideSums[to] = both ? plus(this.wideSums[a]!, this.wideSums[b]!) : this.wideSums[one]!;
    this.sums[to] = both ? this.sums[a]! + this.sums[b]! : this.sums[one]!;
    this.squares[to] = both ? this.squares[a]! + this.squares[b]! : this.squares[one]!;
    if (this.energies) this.energies[to] = both ? this.energies[a]! + this.energies[b]! : this.energies[one]!;
    this.first[to] = this.first[one]!;
    this.last[to] = this.last[other]!;
    this.min[to] = both ? Math.min(this.min[a]!, this.min[b]!) : this.min[one]!;
    this.max[to] = both ? Math.max(this.max[a]!, this.max[b]!) : this.max[one]!;
    this.counts[to] = m + n;
  }

  protected get wide(): boolean {
    return this.scale < 0;
  }

  protected value(x: number): number {
    return this.wide ? x : x / powers[this.scale]!;
  }

  /** Holds all with more decimals; false, and nothing done, where that is not possible without loss. */
  protected finerFigures(scale: number): boolean {
    const by = powers[scale - this.scale]!;
    for (let b = 0; b < this.used; b++) {
      if (this.counts[b] === 0) continue;
      const largest = Math.max(Math.abs(this.min[b]!), Math.abs(this.max[b]!));
      if (largest * by >= wholeBelow || Math.abs(this.sums[b]! * by) >= exactBelow) return false;
    }
    for (const list of [this.sums, this.min, this.max, this.first, this.last]) for (let b = 0; b < this.used; b++) list[b]! *= by;
    for (let b = 0; b < this.used; b++) this.squares[b]! *= by * by;
    this.scale = scale;
    return true;
  }

  protected widenFigures(): void {
    const unit = powers[this.scale]!;
    this.wideSums = Array.from(this.sums.subarray(0, this.used), (s, b) => (this.counts[b] === 0 ? zero : { n: BigInt(s), decimals: this.scale }));
    for (const list of [this.min, this.max, this.first, this.last]) for (let b = 0; b < this.used; b++) list[b]! /= unit;
    for (let b = 0; b < this.used; b++) this.squares[b]! /= unit * unit;
    this.scale = -1;
  }

  protected lists(): Float64Array[] {
    return [this.sums, this.squares, this.min, this.max, this.first, this.last, this.counts, ...(this.energies ? [this.energies] : [])];
  }
}
