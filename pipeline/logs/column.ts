// One column of a log as figures of its buckets (stretches of equally many samples): exact sums, extremes, scatter.
import { Exact } from '../quantities/index.js';
import { type Decimal, decimalOf, exact, isStep, plus, zero } from './decimals.js';
import { odd, type PlainRow, powers, safeDigits } from './plain-row.js';
import { widened } from './widened.js';

/** Sums of whole numbers below this lose nothing. */
const exactBelow = 2 ** 53;
/** Samples are held as whole numbers of the last decimal as long as they are below this. */
const wholeBelow = 2 ** 50;

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

/** Of the bucket that is being filled, and of the whole column, in one array: what each sample touches lies together. */
const Now = { sum: 0, squares: 1, count: 2, min: 3, max: 4, first: 5, energy: 6, previous: 7, origin: 8, firstValue: 9, filled: 10, grown: 11, fell: 12 } as const;

export class Column {
  /** Most decimals written in any cell, and most that any value needs. */
  decimals = 0;
  own = 0;
  /** Cells that hold something else than a number. */
  bad = 0;
  /** Line of the first value, and the first value that differs from it. */
  firstLine = 0;
  changed: { line: number; value: number } | undefined;
  /** Held as whole numbers, they are multiples of ten to the minus this; -1 where some have too many digits for that: then sums are kept as decimals, the rest as binary numbers. */
  #scale = 0;
  readonly #now = new Float64Array(13);
  #steady = true;
  #sums: Float64Array;
  #squares: Float64Array;
  #min: Float64Array;
  #max: Float64Array;
  #first: Float64Array;
  #last: Float64Array;
  #counts: Float64Array;
  #energies: Float64Array | undefined;
  #wideSums: Decimal[] = [];
  /** Buckets, the one that is being filled included. */
  #used = 0;

  constructor(levels: boolean, size = 1024) {
    const numbers = (): Float64Array => new Float64Array(size);
    [this.#sums, this.#squares, this.#min, this.#max, this.#first, this.#last, this.#counts] = [numbers(), numbers(), numbers(), numbers(), numbers(), numbers(), numbers()];
    if (levels) this.#energies = numbers();
  }

  get filled(): number {
    return this.#now[Now.filled]!;
  }

  /** Steps between values, how many of them went up, and whether any went down. */
  get steps(): { all: number; grown: number; fell: boolean } {
    return { all: Math.max(0, this.filled - 1), grown: this.#now[Now.grown]!, fell: this.#now[Now.fell] === 1 };
  }

  get firstValue(): number {
    return this.#value(this.#now[Now.firstValue]!);
  }

  grow(size: number): void {
    const [sums, squares, min, max, first, last, counts, energies] = this.#lists().map((from) => widened(from, size));
    [this.#sums, this.#squares, this.#min, this.#max, this.#first, this.#last, this.#counts] = [sums!, squares!, min!, max!, first!, last!, counts!];
    this.#energies = energies;
  }

  /** Begins a bucket. */
  open(b: number): void {
    this.settle();
    this.#used = b + 1;
    this.#counts[b] = 0;
    if (this.#wide) this.#wideSums[b] = zero;
  }

  /** Takes note of the bucket that was being filled; to be called before figures are asked for. */
  settle(): void {
    const now = this.#now;
    const b = this.#used - 1;
    if (now[Now.count] === 0) return;
    this.#sums[b] = now[Now.sum]!;
    this.#squares[b] = now[Now.squares]!;
    this.#counts[b] = now[Now.count]!;
    this.#min[b] = now[Now.min]!;
    this.#max[b] = now[Now.max]!;
    this.#first[b] = now[Now.first]!;
    this.#last[b] = now[Now.previous]!;
    if (this.#energies) this.#energies[b] = now[Now.energy]!;
    for (let at = 0; at < Now.previous; at++) now[at] = 0;
  }

  /** Goes on filling the last bucket. */
  #resume(): void {
    const now = this.#now;
    const b = this.#used - 1;
    if (b < 0 || this.#counts[b] === 0) return;
    now[Now.sum] = this.#sums[b]!;
    now[Now.squares] = this.#squares[b]!;
    now[Now.count] = this.#counts[b]!;
    now[Now.min] = this.#min[b]!;
    now[Now.max] = this.#max[b]!;
    now[Now.first] = this.#first[b]!;
    if (this.#energies) now[Now.energy] = this.#energies[b]!;
  }

  /** Into the last bucket: `digits` without its point, of which `decimals` (15 at most) stand behind it. */
  add(_bucket: number, digits: number, decimals: number, line: number): void {
    let x = digits;
    if (decimals > this.own) this.#need(digits, decimals);
    if (decimals !== this.#scale) {
      x = this.#scaled(digits, decimals);
      if (this.#wide) return this.#addWide(digits / powers[decimals]!, line);
    }
    const now = this.#now;
    const sum = now[Now.sum]! + x;
    if (sum >= exactBelow || sum <= -exactBelow) {
      this.#widen();
      return this.#addWide(digits / powers[decimals]!, line);
    }
    now[Now.sum] = sum;
    this.#take(x, line);
    if (this.#energies) now[Now.energy]! += 10 ** (digits / powers[decimals]! / 10);
  }

  addPlain(bucket: number, plain: PlainRow, from: number, count: number, line: number): void {
    for (let i = 0; i < count; i++) {
      i += this.#addEven(plain, from + i, count - i, line + i);
      if (i === count) return;
      const d = plain.decimals[from + i]!;
      if (d < odd) this.add(bucket, plain.digits[from + i]!, d, line + i);
      else if (d === odd) this.addNumber(bucket, plain.digits[from + i]!, plain.oddDecimals[from + i]!, line + i);
    }
  }

  /** As `add` for as many as ask for nothing special, all in registers; gives how many. */
  #addEven({ digits, decimals }: PlainRow, from: number, count: number, line: number): number {
    const now = this.#now;
    const scale = this.#scale;
    if (scale !== this.own || this.#energies || now[Now.count] === 0) return 0;
    let sum = now[Now.sum]!;
    let squares = now[Now.squares]!;
    let min = now[Now.min]!;
    let max = now[Now.max]!;
    let previous = now[Now.previous]!;
    let grown = 0;
    let fell = 0;
    const origin = now[Now.origin]!;
    const end = from + count;
    let i = from;
    for (; i < end; i++) {
      const d = decimals[i]!;
      if (d > scale) break;
      const x = d === scale ? digits[i]! : digits[i]! * powers[scale - d]!;
      sum += x;
      squares += (x - origin) * (x - origin);
      if (x < min) min = x;
      if (x > max) max = x;
      if (x > previous) grown++;
      else if (x < previous) fell = 1;
      previous = x;
    }
    const n = i - from;
    // One of these sums may have been too large to be exact; one by one it will be seen which.
    if (Math.max(-min, max) >= wholeBelow || Math.abs(now[Now.sum]!) + n * Math.max(-min, max) >= exactBelow) return 0;
    if (this.#steady && (min !== now[Now.firstValue] || max !== min)) {
      let j = from;
      const value = (): number => digits[j]! * powers[scale - decimals[j]!]!;
      while (value() === now[Now.firstValue]) j++;
      this.#steady = false;
      this.changed = { line: line + j - from, value: this.#value(value()) };
    }
    now[Now.sum] = sum;
    now[Now.squares] = squares;
    now[Now.min] = min;
    now[Now.max] = max;
    now[Now.previous] = previous;
    now[Now.grown]! += grown;
    if (fell) now[Now.fell] = 1;
    now[Now.count]! += n;
    now[Now.filled]! += n;
    return n;
  }

  #take(x: number, line: number): void {
    const now = this.#now;
    const previous = now[Now.previous]!;
    if (now[Now.filled]!++ === 0) {
      now[Now.origin] = x;
      now[Now.firstValue] = x;
      this.firstLine = line;
    } else if (x > previous) now[Now.grown]!++;
    else if (x < previous) now[Now.fell] = 1;
    if (this.#steady && x !== now[Now.firstValue]) {
      this.#steady = false;
      this.changed = { line, value: this.#value(x) };
    }
    now[Now.previous] = x;
    if (now[Now.count]!++ === 0) {
      now[Now.min] = x;
      now[Now.max] = x;
      now[Now.first] = x;
    } else if (x < now[Now.min]!) now[Now.min] = x;
    else if (x > now[Now.max]!) now[Now.max] = x;
    const d = x - now[Now.origin]!;
    now[Now.squares]! += d * d;
  }

  /** A finite number written with an exponent or with more digits than `add` takes. */
  addNumber(bucket: number, value: number, decimals: number, line: number): void {
    const scaled = decimals <= safeDigits ? value * powers[decimals]! : Infinity;
    if (Math.abs(scaled) < wholeBelow) return this.add(bucket, Math.round(scaled), decimals, line);
    if (decimals > this.decimals) this.decimals = decimals;
    while (this.own < decimals && !isStep(value, this.own)) this.own++;
    if (!this.#wide) this.#widen();
    this.#addWide(value, line);
  }

  /** The buckets of these stretches [from, to) together. */
  span(stretches: readonly (readonly [from: number, to: number])[]): Span {
    let [count, energy, squares] = [0, 0, 0];
    let sum: Decimal = { n: 0n, decimals: this.#wide ? 0 : this.#scale };
    let exactSquares = 0n;
    let [min, max, first, last] = [NaN, NaN, NaN, NaN];
    for (const [from, to] of stretches) for (let b = from; b < to; b++) {
      if (this.#counts[b] === 0) continue;
      if (count === 0) [min, max, first] = [this.#min[b]!, this.#max[b]!, this.#first[b]!];
      last = this.#last[b]!;
      if (this.#min[b]! < min) min = this.#min[b]!;
      if (this.#max[b]! > max) max = this.#max[b]!;
      count += this.#counts[b]!;
      if (this.#energies) energy += this.#energies[b]!;
      if (!this.#wide && this.#squares[b]! < exactBelow) exactSquares += BigInt(this.#squares[b]!);
      else squares += this.#squares[b]!;
      sum = plus(sum, this.#wide ? this.#wideSums[b]! : { n: BigInt(this.#sums[b]!), decimals: this.#scale });
    }
    const value = (x: number): number => this.#value(x);
    return { count, energy, sum: exact(sum), min: value(min), max: value(max), first: value(first), last: value(last), squares: count === 0 ? 0 : this.#aboutMean(count, sum, squares, exactSquares) };
  }

  /** From squares about the origin: exactly, as long as all of them are whole numbers. */
  #aboutMean(count: number, sum: Decimal, squares: number, exactSquares: bigint): number {
    if (this.#wide) return Math.max(0, squares - count * (exact(sum).toNumber() / count - this.#now[Now.origin]!) ** 2);
    const off = sum.n - BigInt(count) * BigInt(this.#now[Now.origin]!);
    const unit = powers[this.#scale]! ** 2;
    if (squares === 0) return Exact.of(exactSquares * BigInt(count) - off * off, BigInt(count)).toNumber() / unit;
    return Math.max(0, squares + Number(exactSquares) - Number(off) ** 2 / count) / unit;
  }

  /** The mean of a bucket, which is the sample itself where it has but one; NaN where it has none. */
  mean(b: number): number {
    const n = this.#counts[b]!;
    if (n <= 1) return n === 0 ? NaN : this.#value(this.#first[b]!);
    return this.#wide ? exact(this.#wideSums[b]!).toNumber() / n : this.#value(this.#sums[b]! / n);
  }

  /** How many of a bucket's samples have a value. */
  filledIn(b: number): number {
    return this.#counts[b]!;
  }

  firstIn(b: number): number {
    return this.#value(this.#first[b]!);
  }

  lastIn(b: number): number {
    return this.#value(this.#last[b]!);
  }

  /** Of a bucket that lasts so long: by trapezoids, its samples being evenly apart. */
  area(b: number, seconds: number): number {
    const n = this.#counts[b]!;
    return n < 2 ? 0 : ((this.mean(b) * n - (this.firstIn(b) + this.lastIn(b)) / 2) * seconds) / (n - 1);
  }

  low(b: number): number {
    return this.#counts[b] === 0 ? NaN : this.#value(this.#min[b]!);
  }

  high(b: number): number {
    return this.#counts[b] === 0 ? NaN : this.#value(this.#max[b]!);
  }

  /** Begins and ends folding: between them `fold` goes from the first bucket to the last. */
  foldAll(fold: (column: Column) => number): void {
    this.settle();
    this.#used = fold(this);
    this.#resume();
  }

  /** Makes bucket `to` of bucket `a` and, unless it is the same, the one behind it. */
  fold(to: number, a: number, b: number): void {
    const [m, n] = [this.#counts[a]!, a === b ? 0 : this.#counts[b]!];
    if (n > 0 && !this.#wide && Math.abs(this.#sums[a]! + this.#sums[b]!) >= exactBelow) this.#widen();
    const one = m === 0 ? b : a;
    const other = n === 0 ? a : b;
    const both = m > 0 && n > 0;
    if (this.#wide) this.#wideSums[to] = both ? plus(this.#wideSums[a]!, this.#wideSums[b]!) : this.#wideSums[one]!;
    this.#sums[to] = both ? this.#sums[a]! + this.#sums[b]! : this.#sums[one]!;
    this.#squares[to] = both ? this.#squares[a]! + this.#squares[b]! : this.#squares[one]!;
    if (this.#energies) this.#energies[to] = both ? this.#energies[a]! + this.#energies[b]! : this.#energies[one]!;
    this.#first[to] = this.#first[one]!;
    this.#last[to] = this.#last[other]!;
    this.#min[to] = both ? Math.min(this.#min[a]!, this.#min[b]!) : this.#min[one]!;
    this.#max[to] = both ? Math.max(this.#max[a]!, this.#max[b]!) : this.#max[one]!;
    this.#counts[to] = m + n;
  }

  /** Makes two of bucket `b`: of these samples, which are the ones it was made of. NaN is none. */
  split(b: number, before: ArrayLike<number>, behind: ArrayLike<number>): void {
    if (this.#used === this.#sums.length) this.grow(this.#used + 64);
    for (const list of this.#lists()) list.copyWithin(b + 2, b + 1, this.#used);
    if (this.#wide) this.#wideSums.splice(b + 1, 0, zero);
    this.#used++;
    const part = new Column(this.#energies !== undefined, 1);
    [before, behind].forEach((values, i) => {
      part.#restart(this.#now[Now.origin]!, this.#scale);
      for (let j = 0; j < values.length; j++) {
        if (Number.isNaN(values[j]!)) continue;
        if (this.#wide) part.#addWide(values[j]!, 0);
        else part.add(0, Math.round(values[j]! * powers[this.#scale]!), this.#scale, 0);
      }
      part.settle();
      this.#lists().forEach((list, n) => (list[b + i] = part.#lists()[n]![0]!));
      if (this.#wide) this.#wideSums[b + i] = part.#wideSums[0]!;
    });
  }

  #restart(origin: number, scale: number): void {
    this.#scale = scale;
    this.#counts[0] = 0;
    this.#used = 1;
    this.#now.fill(0);
    this.#now[Now.filled] = 1;
    this.#now[Now.origin] = origin;
    this.#wideSums[0] = zero;
  }

  get #wide(): boolean {
    return this.#scale < 0;
  }

  #value(x: number): number {
    return this.#wide ? x : x / powers[this.#scale]!;
  }

  #need(digits: number, decimals: number): void {
    while (this.own < decimals && digits % powers[decimals - this.own]! !== 0) this.own++;
  }

  /** As a whole number of the column's decimals, of which there may be more from now on; wide, where that is not possible without loss. */
  #scaled(digits: number, decimals: number): number {
    if (decimals > this.decimals) this.decimals = decimals;
    if (!this.#wide && decimals > this.#scale) this.#finer(decimals);
    const x = this.#wide ? NaN : digits * powers[this.#scale - decimals]!;
    if (Math.abs(x) >= wholeBelow) this.#widen();
    return x;
  }

  #finer(scale: number): void {
    this.settle();
    const by = powers[scale - this.#scale]!;
    const all = [this.#sums, this.#min, this.#max, this.#first, this.#last];
    for (let b = 0; b < this.#used; b++) {
      if (this.#counts[b] === 0) continue;
      const largest = Math.max(Math.abs(this.#min[b]!), Math.abs(this.#max[b]!));
      if (largest * by >= wholeBelow || Math.abs(this.#sums[b]! * by) >= exactBelow) {
        this.#resume();
        return this.#widen();
      }
    }
    for (const list of all) for (let b = 0; b < this.#used; b++) list[b]! *= by;
    for (let b = 0; b < this.#used; b++) this.#squares[b]! *= by * by;
    for (const at of [Now.previous, Now.origin, Now.firstValue]) this.#now[at]! *= by;
    this.#scale = scale;
    this.#resume();
  }

  #widen(): void {
    this.settle();
    const unit = powers[this.#scale]!;
    this.#wideSums = Array.from(this.#sums.subarray(0, this.#used), (s, b) => (this.#counts[b] === 0 ? zero : { n: BigInt(s), decimals: this.#scale }));
    for (const list of [this.#min, this.#max, this.#first, this.#last]) for (let b = 0; b < this.#used; b++) list[b]! /= unit;
    for (let b = 0; b < this.#used; b++) this.#squares[b]! /= unit * unit;
    for (const at of [Now.previous, Now.origin, Now.firstValue]) this.#now[at]! /= unit;
    this.#scale = -1;
    this.#resume();
  }

  #addWide(value: number, line: number): void {
    const b = this.#used - 1;
    this.#wideSums[b] = plus(this.#wideSums[b]!, decimalOf(value));
    this.#take(value, line);
    if (this.#energies) this.#now[Now.energy]! += 10 ** (value / 10);
  }

  #lists(): Float64Array[] {
    return [this.#sums, this.#squares, this.#min, this.#max, this.#first, this.#last, this.#counts, ...(this.#energies ? [this.#energies] : [])];
  }
}
