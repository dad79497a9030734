// The thresholds in force for one episode: the house's own, with what the record overrides.
import { type Finding, nearest } from '../places/index.js';
import { Exact, type Quantity, readQuantity, unit } from '../quantities/index.js';
import type { Episode } from '../records/index.js';
import { type ThresholdName, type ThresholdRow, thresholds } from './thresholds.js';

export class Limits {
  readonly #set = new Map<string, string>();
  readonly #read = new Map<string, Quantity[]>();

  constructor(overrides: ReadonlyMap<string, string> = new Map()) {
    for (const [name, value] of overrides) this.#set.set(name, value);
  }

  /** The value as a record writes it. */
  written(name: ThresholdName): string {
    return this.#set.get(name) ?? thresholds[name].value;
  }

  /** The number in the unit it is written in. */
  exact(name: ThresholdName): Exact {
    return this.#quantities(name)[0]!.value;
  }

  number(name: ThresholdName): number {
    return this.exact(name).toNumber();
  }

  /** "3 %" as 0.03. */
  share(name: ThresholdName): Exact {
    const q = this.#quantities(name)[0]!;
    return q.value.times(q.unit.factor);
  }

  /** Both ends of a range, in base units. */
  range(name: ThresholdName): { low: Exact; high: Exact; written: string } {
    const [low, high] = this.#quantities(name).map((q) => q.value.times(q.unit.factor).plus(q.unit.offset));
    return { low: low!, high: high!, written: this.written(name) };
  }

  #quantities(name: ThresholdName): Quantity[] {
    let quantities = this.#read.get(name);
    if (!quantities) this.#read.set(name, (quantities = read(this.written(name))!));
    return quantities;
  }
}

/** Unknown names and values that do not fit are findings; the house's own value then stays in force. */
export function readLimits(episode: Episode): { limits: Limits; findings: Finding[] } {
  const findings: Finding[] = [];
  const overrides = new Map<string, string>();
  for (const { name, value, place } of episode.thresholds) {
    const row = (thresholds as Record<string, ThresholdRow>)[name];
    if (!row) {
      const near = nearest(name, Object.keys(thresholds));
      findings.push({ code: 'threshold-unknown', severity: 'error', place, subject: name, said: name, message: `there is no threshold "${name}"${near ? `; did you mean "${near}"?` : ''}`, ...(near && { suggest: near }) });
      continue;
    }
    const why = misfit(value, row.value);
    if (why) findings.push({ code: 'threshold-value', severity: 'error', place, subject: name, said: value, message: `"${value}" cannot be the threshold ${name}: ${why}; it is written like "${row.value}"` });
    else overrides.set(name, value);
  }
  return { limits: new Limits(overrides), findings };
}

function misfit(value: string, like: string): string | undefined {
  const own = read(value);
  const other = read(like)!;
  if (!own) return 'it is not a quantity';
  if (own.length !== other.length) return other.length === 2 ? 'a range has two ends' : 'it is one quantity';
  if (own.some((q) => q.unit.dimension !== other[0]!.unit.dimension || (q.unit.dimension === 'compound' && q.unit.id !== other[0]!.unit.id))) return `${own[0]!.unit.symbol || 'a plain number'} is another kind of unit`;
  if (own.length === 1 && own[0]!.value.sign() < 0) return 'it is negative';
  if (own.length === 2 && own[0]!.value.times(own[0]!.unit.factor).compare(own[1]!.value.times(own[1]!.unit.factor)) >= 0) return 'its ends are the wrong way round';
  return undefined;
}

function read(text: string): Quantity[] | undefined {
  const parts = text.split(/\s+to\s+/);
  const found = parts.map((p) => readQuantity(p, unit('1')));
  if (parts.length > 2 || found.some((f) => 'why' in f)) return undefined;
  return found.map((f) => (f as { quantity: Quantity }).quantity);
}
