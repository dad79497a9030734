// One choice of things, quantity and form in a generated record, with the words for them.
import { Exact } from '../../../pipeline/quantities/index.js';
import { type Form, number, type Piece, type Said } from './say.js';
import { type Quantity, type Thing, valueAt, type World } from './record.js';

const others: Record<string, [symbol: string, words: string]> = { W: [' kW', ' kilowatts'], V: [' mV', ' millivolts'], MHz: [' GHz', ' gigahertz'], degC: [' °F', ' degrees Fahrenheit'] };

export type Template = (s: Scene) => Piece[] | undefined;

/** Text and statements of a template: t`${subject} is ${number}.` */
export function t(parts: TemplateStringsArray, ...pieces: (Piece | Piece[])[]): Piece[] {
  return parts.flatMap((p, i) => (i < pieces.length ? [p, pieces[i]!].flat() : [p]));
}

export class Scene {
  readonly place: World['places'][number] | undefined;
  readonly a: Thing;
  readonly b: Thing;
  readonly form: Form;
  #next = 0;

  constructor(readonly w: World, readonly choices: readonly number[]) {
    this.place = w.places.length > 0 ? this.pick(w.places) : undefined;
    const first = this.int(w.things.length);
    this.a = w.things[first]!;
    this.b = w.things[(first + 1 + this.int(w.things.length - 1)) % w.things.length]!;
    this.form = { words: this.int(3) === 0, commas: this.int(2) === 0, symbol: this.int(3) === 0 };
  }

  int(n: number): number {
    return this.choices[this.#next++ % this.choices.length]! % n;
  }

  pick<T>(list: readonly T[]): T {
    return list[this.int(list.length)]!;
  }

  /** "on the open bench, " in a record with places. */
  get in(): string {
    return this.place ? `${this.place.in}, ` : '';
  }

  get products(): boolean {
    return this.w.kind === 'products';
  }

  get things(): readonly Thing[] {
    return this.w.things;
  }

  /** "products" or "settings". */
  get kind(): string {
    return this.w.kind;
  }

  /** A measured quantity that the template can speak of. */
  quantity(fits: (q: Quantity) => boolean = () => true): Quantity | undefined {
    const list = this.w.measured.filter(fits);
    return list.length > 0 ? this.pick(list) : undefined;
  }

  the(measure: string, part?: string): Quantity | undefined {
    return this.w.measured.find((q) => q.measure === measure && (part === undefined || q.part === part));
  }

  value(x: Thing, q: Quantity, phase = 'load', place = this.place?.id): Exact {
    return valueAt(this.w, place, x, q, phase);
  }

  /** "the Varnel's core temperature", "the core temperature with the undervolt". */
  of(x: Thing, q: Quantity): string {
    return this.products ? (this.int(2) ? `${x.name}'s ${q.noun}` : `the ${q.noun} of ${x.name}`) : `the ${q.noun} ${x.with}`;
  }

  /** A value or difference of a quantity, with its unit or without. */
  say(value: Exact, q: Quantity, options: { bare?: boolean; decimals?: number } = {}): Said {
    const symbol = this.form.symbol && !this.form.words;
    const unit = symbol ? q.symbol : ` ${q.words}`;
    const other = others[q.unit]?.[symbol ? 0 : 1];
    return number(value.abs(), options.decimals ?? q.decimals, this.form, options.bare ? '' : unit, options.bare ? undefined : other);
  }

  /** How much one is above the other; undefined where that is nothing worth saying. */
  gap(x: Thing, y: Thing, q: Quantity): Exact | undefined {
    const gap = this.value(x, q).minus(this.value(y, q));
    return gap.round(q.decimals).sign() === 0 ? undefined : gap;
  }

  /** `x` as percent of `y`, or more or less than it. */
  percent(value: Exact, decimals = value.abs().compare(Exact.of(8)) < 0 ? 1 : 0): Said {
    return number(value.abs(), decimals, this.form, this.form.symbol && !this.form.words ? ' %' : ' percent', ' percentage points');
  }

  /** Percent change from y to x, unless too small to be said. */
  change(x: Thing, y: Thing, q: Quantity): Exact | undefined {
    if (q.unit === 'degC' || q.unit === 'dB(A)' || q.unit === '%') return undefined;
    const change = this.value(x, q).over(this.value(y, q)).minus(Exact.of(1)).times(Exact.of(100));
    return change.abs().compare(Exact.of(2)) < 0 ? undefined : change;
  }

  /** The things from least to most of a quantity; undefined where two are alike. */
  order(q: Quantity): Thing[] | undefined {
    const list = [...this.things].sort((x, y) => this.value(x, q).compare(this.value(y, q)));
    return list.some((x, i) => i > 0 && this.value(x, q).equals(this.value(list[i - 1]!, q))) ? undefined : list;
  }
}

export function list(items: readonly string[]): string {
  return items.length === 1 ? items[0]! : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
