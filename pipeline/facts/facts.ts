// All facts of an episode, derived when asked for and kept by id.
import { convert, convertedDecimals, Exact, type Quantity, readQuantity, show, speak, type Unit, unit } from '../quantities/index.js';
import { type Episode, type Key, type KeyField, type Reading, splitKey, type Trace, withFields } from '../records/index.js';
import { Alike } from './alike.js';
import { type Fact, type FactKind, factKinds } from './fact.js';
import { Derived } from './derived.js';
import { earnedDecimals } from './earned-digits.js';
import { type FactId, readId } from './id.js';
import { Neighbours, priceKey } from './neighbours.js';
import { asDifference } from './named-differences.js';
import { operations } from './operations.js';
import { roundingRules } from './rounding.js';
import { uncertaintyOf } from './uncertainty.js';

/** What a fact could not be derived for, in words. */
export interface Underivable {
  why: string;
}

export function isFact(x: Fact | Underivable | undefined): x is Fact {
  return x !== undefined && 'id' in x;
}

/** What the record says about the episode besides its readings: title, names, method, disclosures … for all who show or say it. */
export type About = Omit<Episode, 'readings' | 'traces' | 'stated' | 'accept' | 'thresholds' | 'severities'>;

interface Step {
  facts: Map<string, Fact | Underivable>;
  next?: Map<string, Step>;
}

function step(from: Map<string, Step>, by: string): Step {
  let next = from.get(by);
  if (!next) from.set(by, (next = { facts: new Map() }));
  return next;
}

export class Facts {
  readonly about: About;
  readonly traces: Episode['traces'];
  readonly #byKey = new Map<Key, Reading[]>();
  readonly #made = new Map<string, Step>();
  readonly #byId = new Map<string, Fact | Underivable>();
  readonly #values = new Map<Key, Fact | Underivable>();
  readonly #prices = new Map<Key, Reading[]>();
  readonly #quoted: ReadonlySet<Key>;
  readonly #stated: Episode['stated'];
  readonly #thresholds: ReadonlyMap<string, string>;
  #beside: Neighbours | undefined;
  #alike: Alike | undefined;

  constructor(episode: Episode) {
    this.about = episode;
    this.traces = episode.traces;
    this.#stated = episode.stated;
    this.#thresholds = new Map(episode.thresholds.map((t) => [t.name, t.value]));
    this.#quoted = new Set(episode.quotes.map((q) => q.as));
    for (const written of episode.readings) {
      const r = asDifference(written);
      const list = this.#byKey.get(r.key);
      if (list) list.push(r);
      else this.#byKey.set(r.key, [r]);
    }
    for (const s of episode.setups.values()) {
      if (s.price) this.#prices.set(priceKey(s.id), [{ key: priceKey(s.id), run: '', quantity: s.price.amount, constant: true, place: s.price.place }]);
    }
  }

  /** Every key that has at least one reading (set-aside ones included), in the order of the record. */
  keys(): Key[] {
    return [...this.#byKey.keys()];
  }

  /** The readings of a key that count: those set aside are left out unless asked for. */
  readings(key: Key, options: { aside?: boolean } = {}): Reading[] {
    const all = this.#byKey.get(key) ?? this.#prices.get(key) ?? [];
    return options.aside ? all : all.filter((r) => !r.aside);
  }

  /** The key of the constant that holds for a key (`limit`, `target`, `rated` …), looked up from the specific to the general. */
  constantFor(key: Key, phase: string): Key | undefined {
    return this.#neighbours().constantFor(key, phase);
  }

  /** The key of the same quantity at idle. */
  idleOf(key: Key): Key | undefined {
    return this.#neighbours().idleOf(key);
  }

  /** The key of the room temperature of the same test. */
  roomFor(key: Key): Key | undefined {
    return this.#neighbours().roomFor(key);
  }

  /** The key of a setup's price. */
  priceOf(setup: string): Key | undefined {
    return this.#neighbours().priceOf(setup) ?? (this.#prices.has(priceKey(setup)) ? priceKey(setup) : undefined);
  }

  /** Whether a key's value comes from another episode. */
  isQuoted(key: Key): boolean {
    return this.#quoted.has(key);
  }

  /** The other keys that differ from this one in nothing but `field`, in the order of the record. */
  sameBut(key: Key, field: KeyField): Key[] {
    return this.#neighbours().sameBut(key, field);
  }

  /** Setups that have nothing but constants (a test plan): no things tested. */
  holders(): string[] {
    return this.#neighbours().holders();
  }

  /** The log over time that a run of a key was averaged from. */
  traceOf(key: Key, run: string): Trace | undefined {
    const id = this.#byKey.get(key)?.find((r) => r.run === run)?.log?.trace ?? `${key.slice(0, key.lastIndexOf('/'))}#${run}`;
    return this.traces.find((t) => t.id === id);
  }

  /** A threshold as the record has it; undefined where it leaves the house's. */
  threshold(name: string): string | undefined {
    return this.#thresholds.get(name);
  }

  /** Decimals that the runs of a key were written with; of one quantity noted by hand the finest counts, as a spreadsheet drops final zeros. */
  writtenDecimals(key: Key, { readings, unit: u }: Pick<Fact, 'readings' | 'unit'>): number {
    const own = Math.max(0, ...readings.map(({ quantity: q }) => convertedDecimals(q.decimals, q.unit, u)));
    const most = (this.#alike ??= new Alike(this.#byKey)).most(key, u.id);
    return most === Infinity ? own : most;
  }

  #neighbours(): Neighbours {
    return (this.#beside ??= new Neighbours([...this.#byKey].map(([key, readings]) => ({ key, constant: readings.every((r) => r.constant) && !this.#quoted.has(key) }))));
  }

  /**
   * The operand that a person means who names a workload where there is a reading of none: what is read at idle by hand belongs
   * to no workload. A key that has readings, and one of an unknown workload, means itself.
   */
  meant(operand: string): string {
    if (/^[(=]/.test(operand)) return operand;
    const [key, run] = operand.split('#') as [Key, string?];
    const at = splitKey(key);
    if (!at?.workload || this.#byKey.has(key)) return operand;
    const without = withFields(key, { workload: '' });
    if (!this.#byKey.has(without) || !this.#isWorkload(at.workload)) return operand;
    return run === undefined ? without : `${without}#${run}`;
  }

  #isWorkload(id: string): boolean {
    return this.about.workloads.has(id) || this.keys().some((k) => splitKey(k)?.workload === id);
  }

  /**
   * The fact with this id, derived now if need be; undefined when the id cannot be read. Where there is none, that of the
   * operands that are meant: its own id is the canonical one, whatever was asked for.
   */
  get(id: string): Fact | Underivable | undefined {
    const known = this.#byId.get(id);
    if (known) return known;
    const parsed = readId(id);
    let fact = parsed && this.derive(parsed.kind, parsed.operands, parsed.variant);
    if (parsed && !isFact(fact)) {
      const meant = this.derive(parsed.kind, parsed.operands.map((o) => this.meant(o)), parsed.variant);
      if (isFact(meant)) fact = meant;
    }
    if (fact) this.#byId.set(id, fact);
    return fact;
  }

  /** The plain value of a key: a constant, or the mean over its runs. */
  value(key: Key): Fact | Underivable {
    let fact = this.#values.get(key);
    if (!fact) {
      const all = this.readings(key);
      fact = this.derive(all.length > 0 && all.every((r) => r.constant) ? 'constant' : 'mean', [key]);
      this.#values.set(key, fact);
    }
    return fact;
  }

  /** Operands: subject first, base last; keys, `key#run`, bracketed fact ids, or literals (`=1000g`). */
  derive(kind: FactKind, operands: string[], variant = ''): Fact | Underivable {
    const chosen = variant || operations[kind].variants?.[0] || '';
    const asked = this.#asked(kind, chosen, operands);
    const last = operands[operands.length - 1]!;
    let made = asked.get(last);
    if (!made) asked.set(last, (made = this.#make({ kind, variant: chosen, operands })));
    return made;
  }

  /** Facts by their last operand, step by step from the kind: operands are found by identity, where one text of all would have to be put together. */
  #asked(kind: FactKind, variant: string, operands: readonly string[]): Map<string, Fact | Underivable> {
    let at = step(this.#made, variant ? `${kind}.${variant}` : kind);
    for (let i = 0; i < operands.length - 1; i++) at = step((at.next ??= new Map()), operands[i]!);
    return at.facts;
  }

  #make(as: FactId): Fact | Underivable {
    const { kind, variant, operands } = as;
    const op = operations[kind];
    if (op.variants && !op.variants.includes(variant)) return { why: `${kind} has no form "${variant}"` };
    if (operands.length < op.least || operands.length > (op.most ?? Infinity)) return { why: `${kind} takes ${op.takes}` };
    // An id in brackets may be one that a person typed; in this one's it stands as its own.
    const own = operands.map((o) => (o.startsWith('(') ? this.#ownId(o) : o));
    if (own.some((o, i) => o !== operands[i])) return this.derive(kind, own, variant);
    const inputs: Fact[] = [];
    for (const o of operands) {
      const f = this.#operand(o, op.leaf ?? false);
      if (!isFact(f)) return f;
      inputs.push(f);
    }
    const result = op.run(inputs, variant, this.about, this);
    if ('why' in result) return result;
    const { value, unit: u } = result;
    const made: Derived = new Derived(as, result, inputs, this.about, () => {
      const earned = this.about.digits === 'earned' ? uncertaintyOf(this, made)?.half95 : undefined;
      if (earned !== undefined) return earnedDecimals(earned);
      const own = roundingRules[kind].decimals(value, u, inputs);
      return kind === 'mean' && inputs.length === 1 ? Math.min(own, (this.#alike ??= new Alike(this.#byKey)).most(inputs[0]!.subject, u.id)) : own;
    });
    return made;
  }

  /** What the person has already said or written, as far as it can be derived. */
  stated(): Fact[] {
    const known = factKinds as readonly string[];
    return this.#stated.map((s) => ({ operands: s.operands, kind: s.kind.split('.') })).filter(({ kind }) => known.includes(kind[0]!))
      .map(({ kind, operands }) => this.derive(kind[0] as FactKind, operands, kind[1])).filter(isFact)
      .concat(this.about.corrections.map((c) => this.get(c.fact)).filter(isFact));
  }

  #ownId(bracketed: string): string {
    const fact = this.get(bracketed.slice(1, -1));
    return isFact(fact) && fact.id ? `(${fact.id})` : bracketed;
  }

  /** A leaf operation (raw, mean, constant) is handed its readings; all others are handed facts. */
  #operand(operand: string, leaf: boolean): Fact | Underivable {
    if (operand.startsWith('(')) return this.get(operand.slice(1, -1)) ?? { why: `${operand} is no fact id` };
    if (operand.startsWith('=')) return literal(operand);
    if (!leaf) return operand.includes('#') ? this.derive('raw', [operand]) : this.value(operand);
    const [key, run] = operand.split('#') as [string, string?];
    if (!splitKey(key)) return { why: `"${key}" is not setup/setting/workload/measure/part/phase` };
    if (/[~()=,]|#.*#/.test(operand)) return { why: `"${operand}" cannot be named in a fact: ~ ( ) = , # have a meaning there` };
    const counting = this.readings(key);
    const runs = counting.some((r) => !r.constant) ? counting.filter((r) => !r.constant) : counting.slice(0, 1);
    const readings = run === undefined ? runs : counting.filter((r) => r.run === run);
    if (readings.length === 0) return { why: run === undefined ? missing(key, this.#byKey.get(key)) : `no run ${run} of ${key}` };
    const first = readings[0]!.quantity.unit;
    const odd = readings.find((r) => !convert(r.quantity.value, r.quantity.unit, first));
    if (odd) return { why: `${key} is given in ${first.id} and in ${odd.quantity.unit.id}` };
    return runsAsFact(key, readings);
  }

  /** The facts that an id names as its operands, for those who explain it; a leaf has none. */
  operands(fact: Fact): Fact[] {
    const parsed = readId(fact.id);
    if (!parsed || operations[fact.kind].leaf && parsed.operands.length === 1) return [];
    return parsed.operands.map((o) => this.#operand(o, false)).filter(isFact);
  }
}

function missing(key: Key, all: readonly Reading[] | undefined): string {
  return all?.length ? `every run of ${key} is set aside` : `no reading of ${key}`;
}

function runsAsFact(key: Key, readings: Reading[]): Fact {
  const first = readings[0]!.quantity;
  const decimals = readings.map(({ quantity: { decimals, unit: u } }) => convertedDecimals(decimals, u, first.unit));
  return {
    ...blank(first.unit, Math.max(...decimals)),
    subject: key, keys: [key], readings, value: first.value,
  };
}

function literal(operand: string): Fact | Underivable {
  const q = readQuantity(operand.slice(1), unit('1'));
  if ('why' in q) return q;
  const { value, unit: u, decimals }: Quantity = q.quantity;
  return { ...blank(u, decimals), id: operand, kind: 'constant', value, shown: show(value, u, decimals), spoken: speak(value, u, decimals), formula: show(value, u, decimals) };
}

function blank(u: Unit, decimals: number): Fact {
  return { id: '', kind: 'mean', variant: '', value: Exact.zero, unit: u, decimals, shown: '', spoken: '', subject: '', against: [], keys: [], readings: [], formula: '' };
}
