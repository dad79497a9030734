// Exact numbers: fractions of whole numbers of any size, so that 0.1 is a tenth and a mean of three is a third.

/** Immutable; always in lowest terms with a positive denominator. */
export class Exact {
  readonly n: bigint;
  readonly d: bigint;

  private constructor(n: bigint, d: bigint) {
    this.n = n;
    this.d = d;
  }

  static readonly zero = new Exact(0n, 1n);

  static of(n: bigint | number, d: bigint | number = 1): Exact {
    let a = BigInt(n);
    let b = BigInt(d);
    if (b === 0n) throw new RangeError('division by zero');
    if (b < 0n) [a, b] = [-a, -b];
    const g = gcd(a < 0n ? -a : a, b);
    return g === 1n ? new Exact(a, b) : new Exact(a / g, b / g);
  }

  /** Reads a plain decimal ("-12.50", "1e3"); undefined for anything else (no spaces, no separators, no "Infinity"). */
  static parse(text: string): Exact | undefined {
    const m = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d{1,3}))?$/.exec(text);
    if (!m || (!m[2] && !m[3])) return undefined;
    const digits = BigInt(m[2]! + (m[3] ?? '') || '0') * (m[1] === '-' ? -1n : 1n);
    const power = (m[4] ? Number(m[4]) : 0) - (m[3]?.length ?? 0);
    return power >= 0 ? Exact.of(digits * 10n ** BigInt(power)) : Exact.of(digits, 10n ** BigInt(-power));
  }

  /** The exact value of the shortest decimal form of a finite binary number. Throws RangeError on NaN and infinities. */
  static fromNumber(x: number): Exact {
    const parsed = Number.isFinite(x) ? Exact.parse(String(x)) : undefined;
    if (!parsed) throw new RangeError(`not a finite number: ${x}`);
    return parsed;
  }

  plus(o: Exact): Exact { return this.d === o.d ? Exact.of(this.n + o.n, this.d) : Exact.of(this.n * o.d + o.n * this.d, this.d * o.d); }
  minus(o: Exact): Exact { return this.d === o.d ? Exact.of(this.n - o.n, this.d) : Exact.of(this.n * o.d - o.n * this.d, this.d * o.d); }
  times(o: Exact): Exact { return Exact.of(this.n * o.n, this.d * o.d); }
  /** Throws RangeError when `o` is zero. */
  over(o: Exact): Exact { return Exact.of(this.n * o.d, this.d * o.n); }
  negated(): Exact { return new Exact(-this.n, this.d); }
  abs(): Exact { return this.n < 0n ? this.negated() : this; }
  sign(): -1 | 0 | 1 { return this.n < 0n ? -1 : this.n > 0n ? 1 : 0; }
  compare(o: Exact): number {
    const left = this.n * o.d;
    const right = o.n * this.d;
    return left < right ? -1 : left > right ? 1 : 0;
  }
  equals(o: Exact): boolean { return this.n === o.n && this.d === o.d; }

  /** Rounded half away from zero to `decimals` places (negative: to tens, hundreds …). */
  round(decimals: number): Exact {
    const steps = this.#steps(decimals);
    return decimals >= 0 ? Exact.of(steps, 10n ** BigInt(decimals)) : Exact.of(steps * 10n ** BigInt(-decimals));
  }

  /** Rounded half away from zero, written with exactly `decimals` places and an ASCII minus; never "-0". */
  toFixed(decimals: number): string {
    const places = Math.max(0, decimals);
    const steps = this.#steps(decimals) * (decimals < 0 ? 10n ** BigInt(-decimals) : 1n);
    const digits = (steps < 0n ? -steps : steps).toString().padStart(places + 1, '0');
    const text = places ? `${digits.slice(0, -places)}.${digits.slice(-places)}` : digits;
    return steps < 0n ? `-${text}` : text;
  }

  /** How many steps of ten to the minus `decimals` it is, rounded half away from zero. */
  #steps(decimals: number): bigint {
    const n = decimals > 0 ? this.n * 10n ** BigInt(decimals) : this.n;
    const d = decimals < 0 ? this.d * 10n ** BigInt(-decimals) : this.d;
    const size = (2n * (n < 0n ? -n : n) + d) / (2n * d);
    return n < 0n ? -size : size;
  }

  /** The plain decimal, exact where it ends, else rounded to `significant` digits. */
  toString(significant = 15): string {
    let d = this.d;
    let twos = 0;
    let fives = 0;
    while (d % 2n === 0n) { d /= 2n; twos++; }
    while (d % 5n === 0n) { d /= 5n; fives++; }
    const places = Math.max(twos, fives);
    if (d === 1n && places <= 18) return this.toFixed(places);
    const whole = this.abs().toFixed(0);
    const size = whole === '0' || whole === '1' ? Math.ceil(Math.log10(Math.abs(this.toNumber()) || 1)) : whole.length;
    return trim(this.toFixed(Math.max(0, significant - size)));
  }

  /** The nearest binary number, give or take its last bit. */
  toNumber(): number {
    const x = Number(this.n) / Number(this.d);
    if (Number.isFinite(x) && Number.isFinite(Number(this.d))) return x;
    const excess = BigInt(Math.max(0, Math.max(this.n.toString(16).length, this.d.toString(16).length) * 4 - 1000));
    return Number(this.n >> excess) / Number((this.d >> excess) || 1n);
  }
}

/** Values of one denominator (all written with as many decimals) are added without reducing in between. */
export function sum(values: readonly Exact[]): Exact {
  const d = values[0]?.d ?? 1n;
  if (values.some((v) => v.d !== d)) return values.reduce((a, b) => a.plus(b), Exact.zero);
  let n = 0n;
  for (const v of values) n += v.n;
  return Exact.of(n, d);
}

/** Throws RangeError on an empty list. */
export function mean(values: readonly Exact[]): Exact {
  return sum(values).over(Exact.of(values.length));
}

function trim(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

function gcd(a: bigint, b: bigint): bigint {
  while (b) [a, b] = [b, a % b];
  return a || 1n;
}
