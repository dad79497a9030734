// One column of a log, filled sample by sample into buckets (stretches of equally many samples).
import { BucketFigures, exactBelow, wholeBelow } from './bucket-figures.js';
import { decimalOf, isStep, plus, zero } from './decimals.js';
import { odd, type PlainRow, powers, safeDigits } from './plain-row.js';

/** Of the bucket that is being filled, and of the whole column, in one array: what each sample touches lies together. */
export const Now = { sum: 0, squares: 1, count: 2, min: 3, max: 4, first: 5, energy: 6, previous: 7, origin: 8, firstValue: 9, filled: 10, grown: 11, fell: 12 } as const;

export class Column extends BucketFigures {
  /** Most decimals written in any cell, and most that any value needs. */
  decimals = 0;
  own = 0;
  /** Cells that hold something else than a number. */
  bad = 0;
  /** Line of the first value, and the first value that differs from it. */
  firstLine = 0;
  changed: { line: number; value: number } | undefined;
  protected readonly now = new Float64Array(13);
  protected steady = true;

  constructor(levels: boolean, size = 1024) {
    super(levels, size);
  }

  get filled(): number {
    return this.now[Now.filled]!;
  }

  /** Steps between values, how many of them went up, and whether any went down. */
  get steps(): { all: number; grown: number; fell: boolean } {
    return { all: Math.max(0, this.filled - 1), grown: this.now[Now.grown]!, fell: this.now[Now.fell] === 1 };
  }

  get firstValue(): number {
    return this.value(this.now[Now.firstValue]!);
  }

  protected get origin(): number {
    return this.now[Now.origin]!;
  }

  /** Begins a bucket. */
  open(b: number): void {
    this.settle();
    this.used = b + 1;
    this.counts[b] = 0;
    if (this.wide) this.wideSums[b] = zero;
  }

  /** Takes note of the bucket that was being filled; to be called before figures are asked for. */
  settle(): void {
    const now = this.now;
    const b = this.used - 1;
    if (now[Now.count] === 0) return;
    this.sums[b] = now[Now.sum]!;
    this.squares[b] = now[Now.squares]!;
    this.counts[b] = now[Now.count]!;
    this.min[b] = now[Now.min]!;
    this.max[b] = now[Now.max]!;
    this.first[b] = now[Now.first]!;
    this.last[b] = now[Now.previous]!;
    if (this.energies) this.energies[b] = now[Now.energy]!;
    for (let at = 0; at < Now.previous; at++) now[at] = 0;
  }

  /** Goes on filling the last bucket. */
  #resume(): void {
    const now = this.now;
    const b = this.used - 1;
    if (b < 0 || this.counts[b] === 0) return;
    now[Now.sum] = this.sums[b]!;
    now[Now.squares] = this.squares[b]!;
    now[Now.count] = this.counts[b]!;
    now[Now.min] = this.min[b]!;
    now[Now.max] = this.max[b]!;
    now[Now.first] = this.first[b]!;
    if (this.energies) now[Now.energy] = this.energies[b]!;
  }

  /** Into the last bucket: `digits` without its point, of which `decimals` (15 at most) stand behind it. */
  add(_bucket: number, digits: number, decimals: number, line: number): void {
    let x = digits;
    if (decimals > this.own) this.#need(digits, decimals);
    if (decimals !== this.scale) {
      x = this.#scaled(digits, decimals);
      if (this.wide) return this.#addWide(digits / powers[decimals]!, line);
    }
    const now = this.now;
    const sum = now[Now.sum]! + x;
    if (sum >= exactBelow || sum <= -exactBelow) {
      this.#widen();
      return this.#addWide(digits / powers[decimals]!, line);
    }
    now[Now.sum] = sum;
    this.#take(x, line);
    if (this.energies) now[Now.energy]! += 10 ** (digits / powers[decimals]! / 10);
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
    const now = this.now;
    const scale = this.scale;
    if (scale !== this.own || this.energies || now[Now.count] === 0) return 0;
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
    if (this.steady && (min !== now[Now.firstValue] || max !== min)) {
      let j = from;
      const value = (): number => digits[j]! * powers[scale - decimals[j]!]!;
      while (value() === now[Now.firstValue]) j++;
      this.steady = false;
      this.changed = { line: line + j - from, value: this.value(value()) };
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
    const now = this.now;
    const previous = now[Now.previous]!;
    if (now[Now.filled]!++ === 0) {
      now[Now.origin] = x;
      now[Now.firstValue] = x;
      this.firstLine = line;
    } else if (x > previous) now[Now.grown]!++;
    else if (x < previous) now[Now.fell] = 1;
    if (this.steady && x !== now[Now.firstValue]) {
      this.steady = false;
      this.changed = { line, value: this.value(x) };
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
    if (!this.wide) this.#widen();
    this.#addWide(value, line);
  }

  /** Begins and ends folding: between them `fold` goes from the first bucket to the last. */
  foldAll(fold: (column: Column) => number): void {
    this.settle();
    this.used = fold(this);
    this.#resume();
  }

  /** Makes bucket `to` of bucket `a` and, unless it is the same, the one behind it. */
  fold(to: number, a: number, b: number): void {
    if (a !== b && this.counts[b]! > 0 && this.tooLargeTogether(a, b)) this.#widen();
    this.foldFigures(to, a, b);
  }

  /** Makes two of bucket `b`: of these samples, which are the ones it was made of. NaN is none. */
  split(b: number, before: ArrayLike<number>, behind: ArrayLike<number>): void {
    if (this.used === this.sums.length) this.grow(this.used + 64);
    for (const list of this.lists()) list.copyWithin(b + 2, b + 1, this.used);
    if (this.wide) this.wideSums.splice(b + 1, 0, zero);
    this.used++;
    this.refill(b, before);
    this.refill(b + 1, behind);
  }

  /** Makes bucket `b` of these samples anew. NaN is none. */
  refill(b: number, values: ArrayLike<number>): void {
    const part = new Column(this.energies !== undefined, 1);
    part.#restart(this.now[Now.origin]!, this.scale);
    for (let j = 0; j < values.length; j++) {
      if (Number.isNaN(values[j]!)) continue;
      if (this.wide) part.#addWide(values[j]!, 0);
      else part.add(0, Math.round(values[j]! * powers[this.scale]!), this.scale, 0);
    }
    part.settle();
    this.lists().forEach((list, n) => (list[b] = part.lists()[n]![0]!));
    if (this.wide) this.wideSums[b] = part.wideSums[0]!;
  }

  #restart(origin: number, scale: number): void {
    this.scale = scale;
    this.counts[0] = 0;
    this.used = 1;
    this.now.fill(0);
    this.now[Now.filled] = 1;
    this.now[Now.origin] = origin;
    this.wideSums[0] = zero;
  }

  #need(digits: number, decimals: number): void {
    while (this.own < decimals && digits % powers[decimals - this.own]! !== 0) this.own++;
  }

  /** As a whole number of the column's decimals, of which there may be more from now on; wide, where that is not possible without loss. */
  #scaled(digits: number, decimals: number): number {
    if (decimals > this.decimals) this.decimals = decimals;
    if (!this.wide && decimals > this.scale) this.#finer(decimals);
    const x = this.wide ? NaN : digits * powers[this.scale - decimals]!;
    if (Math.abs(x) >= wholeBelow) this.#widen();
    return x;
  }

  #finer(scale: number): void {
    this.settle();
    const by = powers[scale - this.scale]!;
    if (this.finerFigures(scale)) for (const at of [Now.previous, Now.origin, Now.firstValue]) this.now[at]! *= by;
    this.#resume();
    if (this.scale !== scale) this.#widen();
  }

  #widen(): void {
    this.settle();
    const unit = powers[this.scale]!;
    this.widenFigures();
    for (const at of [Now.previous, Now.origin, Now.firstValue]) this.now[at]! /= unit;
    this.#resume();
  }

  #addWide(value: number, line: number): void {
    const b = this.used - 1;
    this.wideSums[b] = plus(this.wideSums[b]!, decimalOf(value));
    this.#take(value, line);
    if (this.energies) this.now[Now.energy]! += 10 ** (value / 10);
  }
}
