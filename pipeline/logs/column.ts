// One column of a log as figures of its buckets (stretches of equally many samples): exact sums, extremes, scatter.
import { Exact } from '../quantities/index.js';
import { powers, safeDigits } from './plain-row.js';

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

export class Column {
  /** Most decimals written in any cell, and most that any value needs. */
  decimals = 0;
  own = 0;
  filled = 0;
  /** Cells that hold something else than a number. */
  bad = 0;
  /** Never fell so far; steps between values, and how many went up. */
  fell = false;
  steps = 0;
  grown = 0;
  /** Where the first value stands, and the first that differs from it. */
  firstLine = 0;
  changed: { line: number; value: number } | undefined;
  /** Held as whole numbers, they are multiples of ten to the minus this. */
  #scale = 0;
  /** Some have too many digits for that: sums are kept as fractions, the rest as binary numbers. */
  #wide = false;
  #largest = 0;
  #origin = NaN;
  #previous = NaN;
  #firstValue = NaN;
  #sums: Float64Array;
  #squares: Float64Array;
  #min: Float64Array;
  #max: Float64Array;
  #first: Float64Array;
  #last: Float64Array;
  #counts: Float64Array;
  #energies: Float64Array | undefined;
  #wideSums: Decimal[] = [];
  #used = 0;

  constructor(levels: boolean, size = 1024) {
    const numbers = (): Float64Array => new Float64Array(size);
    [this.#sums, this.#squares, this.#min, this.#max, this.#first, this.#last, this.#counts] = [numbers(), numbers(), numbers(), numbers(), numbers(), numbers(), numbers()];
    if (levels) this.#energies = numbers();
  }

  grow(size: number): void {
    const [sums, squares, min, max, first, last, counts, energies] = this.#lists().map((from) => widened(from, size));
    [this.#sums, this.#squares, this.#min, this.#max, this.#first, this.#last, this.#counts] = [sums!, squares!, min!, max!, first!, last!, counts!];
    this.#energies = energies;
  }

  /** Begins a bucket. */
  open(b: number): void {
    this.#used = b + 1;
    this.#clear(b);
  }

  #clear(b: number): void {
    this.#sums[b] = 0;
    this.#squares[b] = 0;
    this.#counts[b] = 0;
    if (this.#energies) this.#energies[b] = 0;
    if (this.#wide) this.#wideSums[b] = zero;
  }

  /** `digits` without its point, of which `decimals` (15 at most) stand behind it. */
  add(b: number, digits: number, decimals: number, line: number): void {
    if (decimals > this.decimals) this.decimals = decimals;
    if (decimals > this.own) this.#need(digits, decimals);
    let x = digits;
    if (this.#wide || (decimals !== this.#scale && (decimals < this.#scale || !this.#finer(decimals)))) {
      if (this.#wide) return this.#addWide(b, digits / powers[decimals]!, line);
      x = digits * powers[this.#scale - decimals]!;
    }
    const size = x < 0 ? -x : x;
    if (size > this.#largest) {
      if (size >= wholeBelow) {
        this.#widen();
        return this.#addWide(b, digits / powers[decimals]!, line);
      }
      this.#largest = size;
    }
    if (this.filled === 0) this.#origin = x;
    this.#note(x, line);
    this.#put(b, x);
  }

  #put(b: number, x: number): void {
    const before = this.#sums[b]!;
    const sum = before + x;
    if (sum >= exactBelow || sum <= -exactBelow) {
      const value = this.#value(x);
      this.#widen();
      return this.#putWide(b, value);
    }
    this.#sums[b] = sum;
    const d = x - this.#origin;
    this.#squares[b]! += d * d;
    this.#extend(b, x);
    if (this.#energies) this.#energies[b]! += 10 ** (this.#value(x) / 10);
  }

  #extend(b: number, x: number): void {
    if (this.#counts[b]!++ === 0) {
      this.#min[b] = x;
      this.#max[b] = x;
      this.#first[b] = x;
    } else if (x < this.#min[b]!) this.#min[b] = x;
    else if (x > this.#max[b]!) this.#max[b] = x;
    this.#last[b] = x;
  }

  /** A finite number written with an exponent or with more digits than `add` takes. */
  addNumber(b: number, value: number, decimals: number, line: number): void {
    const scaled = decimals <= safeDigits ? value * powers[decimals]! : Infinity;
    if (Math.abs(scaled) < wholeBelow) return this.add(b, Math.round(scaled), decimals, line);
    if (decimals > this.decimals) this.decimals = decimals;
    while (this.own < decimals && !isStep(value, this.own)) this.own++;
    if (!this.#wide) this.#widen();
    this.#addWide(b, value, line);
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
    if (this.#wide) return Math.max(0, squares - count * (exact(sum).toNumber() / count - this.#origin) ** 2);
    const off = sum.n - BigInt(count) * BigInt(this.#origin);
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
    this.#used = to + 1;
  }

  /** Makes two of bucket `b`: of these samples, which are the ones it was made of. NaN is none. */
  split(b: number, before: ArrayLike<number>, behind: ArrayLike<number>): void {
    if (this.#used === this.#sums.length) this.grow(this.#used + 64);
    for (const list of this.#lists()) list.copyWithin(b + 2, b + 1, this.#used);
    if (this.#wide) this.#wideSums.splice(b + 1, 0, zero);
    this.#used++;
    [before, behind].forEach((values, i) => {
      this.#clear(b + i);
      for (let j = 0; j < values.length; j++) {
        const v = values[j]!;
        if (Number.isNaN(v)) continue;
        if (this.#wide) this.#putWide(b + i, v);
        else this.#put(b + i, Math.round(v * powers[this.#scale]!));
      }
    });
  }

  #value(x: number): number {
    return this.#wide ? x : x / powers[this.#scale]!;
  }

  #note(x: number, line: number): void {
    if (this.filled++ === 0) {
      this.firstLine = line;
      this.#firstValue = x;
    } else {
      this.steps++;
      if (x > this.#previous) this.grown++;
      else if (x < this.#previous) this.fell = true;
      if (!this.changed && x !== this.#firstValue) this.changed = { line, value: this.#value(x) };
    }
    this.#previous = x;
  }

  get firstValue(): number {
    return this.#value(this.#firstValue);
  }

  #need(digits: number, decimals: number): void {
    while (this.own < decimals && digits % powers[decimals - this.own]! !== 0) this.own++;
  }

  /** Holds all with more decimals; false, and wide, where that is not possible without loss. */
  #finer(scale: number): boolean {
    const by = powers[scale - this.#scale]!;
    if (this.#largest * by >= wholeBelow || this.#sums.subarray(0, this.#used).some((s) => Math.abs(s * by) >= exactBelow)) {
      this.#widen();
      return false;
    }
    for (let b = 0; b < this.#used; b++) {
      this.#sums[b]! *= by;
      this.#squares[b]! *= by * by;
      this.#min[b]! *= by;
      this.#max[b]! *= by;
      this.#first[b]! *= by;
      this.#last[b]! *= by;
    }
    this.#largest *= by;
    this.#origin *= by;
    this.#previous *= by;
    this.#firstValue *= by;
    this.#scale = scale;
    return true;
  }

  #widen(): void {
    const unit = powers[this.#scale]!;
    this.#wideSums = Array.from(this.#sums.subarray(0, this.#used), (s) => ({ n: BigInt(s), decimals: this.#scale }));
    for (const list of [this.#min, this.#max, this.#first, this.#last]) list.forEach((x, b) => (list[b] = x / unit));
    this.#squares.forEach((x, b) => (this.#squares[b] = x / unit / unit));
    this.#origin /= unit;
    this.#previous /= unit;
    this.#firstValue /= unit;
    this.#wide = true;
  }

  #addWide(b: number, value: number, line: number): void {
    if (this.filled === 0) this.#origin = value;
    this.#note(value, line);
    this.#putWide(b, value);
  }

  #putWide(b: number, value: number): void {
    this.#extend(b, value);
    this.#squares[b]! += (value - this.#origin) ** 2;
    if (this.#energies) this.#energies[b]! += 10 ** (value / 10);
    this.#wideSums[b] = plus(this.#wideSums[b]!, decimalOf(value));
  }

  #lists(): Float64Array[] {
    return [this.#sums, this.#squares, this.#min, this.#max, this.#first, this.#last, this.#counts, ...(this.#energies ? [this.#energies] : [])];
  }
}

export function widened(from: Float64Array, size: number): Float64Array<ArrayBuffer> {
  const to = new Float64Array(size);
  to.set(from);
  return to;
}

/** A decimal fraction without a common denominator to look for. */
interface Decimal {
  n: bigint;
  decimals: number;
}

/** The shortest decimal that means this very binary number. */
function decimalOf(value: number): Decimal {
  const [digits = '', power = '0'] = String(value).split('e');
  const point = digits.indexOf('.');
  const decimals = (point < 0 ? 0 : digits.length - point - 1) - Number(power);
  const n = BigInt(digits.replace('.', ''));
  return decimals < 0 ? { n: n * 10n ** BigInt(-decimals), decimals: 0 } : { n, decimals };
}

function plus(a: Decimal, b: Decimal): Decimal {
  if (a.decimals === b.decimals) return { n: a.n + b.n, decimals: a.decimals };
  return a.decimals < b.decimals ? plus(b, a) : { n: a.n + b.n * 10n ** BigInt(a.decimals - b.decimals), decimals: a.decimals };
}

const zero: Decimal = { n: 0n, decimals: 0 };

function exact({ n, decimals }: Decimal): Exact {
  return Exact.of(n, 10n ** BigInt(decimals));
}

function isStep(v: number, decimals: number): boolean {
  const scaled = v * 10 ** decimals;
  return Math.abs(scaled - Math.round(scaled)) <= Math.abs(scaled) * 2 ** -50;
}
