// A fact that writes its id and its words when they are asked for: a proof compares thousands of facts and shows a few.
import { convert, convertedDecimals, type Exact, secondUnit, show, speak, type Unit } from '../quantities/index.js';
import type { Key, Reading } from '../records/index.js';
import type { Fact, FactKind } from './fact.js';
import type { About } from './facts.js';
import { type FactId, subjectKey, writeId } from './id.js';
import { operations, type Result } from './operations.js';
import { sofaNote } from './sofa.js';

export class Derived implements Fact {
  readonly kind: FactKind;
  readonly variant: string;
  readonly value: Exact;
  readonly unit: Unit;
  readonly spread?: NonNullable<Fact['spread']>;
  private idKnown?: string;
  private decimalsKnown?: number;
  private shownKnown?: string;
  private spokenKnown?: string;
  private formulaKnown?: string;
  private keysKnown?: Key[];
  private readingsKnown?: Reading[];
  private secondKnown?: Fact['second'] | null;
  private sofaKnown?: string | null;

  constructor(private readonly as: FactId, private readonly result: Result, private readonly inputs: readonly Fact[], private readonly about: About, private readonly decimalsOf: () => number) {
    this.kind = as.kind;
    this.variant = as.variant;
    this.value = result.value;
    this.unit = result.unit;
    if (result.spread) this.spread = result.spread;
  }

  get id(): string { return (this.idKnown ??= writeId(this.as)); }
  get decimals(): number { return (this.decimalsKnown ??= this.decimalsOf()); }
  get shown(): string { return (this.shownKnown ??= show(this.value, this.unit, this.decimals)); }
  get spoken(): string { return (this.spokenKnown ??= speak(this.value, this.unit, this.decimals)); }
  get formula(): string { return (this.formulaKnown ??= this.result.formula); }
  get subject(): Key { return subjectKey(this.as.operands[0]!) ?? ''; }
  get against(): string[] { return this.as.operands.slice(1); }
  get keys(): Key[] { return (this.keysKnown ??= this.inputs.length === 1 ? this.inputs[0]!.keys : [...new Set(this.inputs.flatMap((f) => f.keys))]); }
  get readings(): Reading[] { return (this.readingsKnown ??= this.inputs.length === 1 ? this.inputs[0]!.readings : [...new Set(this.inputs.flatMap((f) => f.readings))]); }

  get second(): Fact['second'] {
    if (this.secondKnown === undefined) this.secondKnown = besides(this.value, this.unit, this.decimals, this.about.secondUnits) ?? null;
    return this.secondKnown ?? undefined;
  }

  get sofa(): string | undefined {
    if (this.sofaKnown === undefined) this.sofaKnown = sofaNote(operations[this.kind], this.inputs, this, this.about) ?? null;
    return this.sofaKnown ?? undefined;
  }
}

function besides(value: Exact, u: Unit, decimals: number, seconds: ReadonlyMap<string, string>): Fact['second'] {
  const other = seconds.size ? secondUnit(u, seconds) : undefined;
  const converted = other && convert(value, u, other);
  if (!other || !converted) return undefined;
  const places = convertedDecimals(decimals, u, other);
  return { value: converted, unit: other, decimals: places, shown: show(converted, other, places), spoken: speak(converted, other, places) };
}
