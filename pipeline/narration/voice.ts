// How numbers are put: spelled out or in digits, American or British, with a second unit or without.
import type { Fact } from '../facts/index.js';
import { Exact, inWords, showNumber, speak } from '../quantities/index.js';

const large = Exact.of(200);

export interface VoiceOptions {
  form: 'words' | 'digits';
  /** "one hundred and five" instead of "one hundred five". */
  british?: boolean;
  /** Says the second unit as well, where the record asks for one. */
  second?: boolean;
}

export class Voice {
  readonly options: VoiceOptions;

  constructor(options: VoiceOptions) {
    this.options = options;
  }

  /** "sixty-seven degrees", "minus two watts". */
  say(fact: Fact): string {
    return this.#with(fact, fact.value);
  }

  /** The size without its sign, for "twenty-nine degrees lower". */
  size(fact: Fact): string {
    return this.#with(fact, fact.value.abs());
  }

  /** "sixty-seven": the unit is said elsewhere. */
  number(fact: Fact): string {
    return this.#digits(fact.value, spokenDecimals(fact));
  }

  /** "eighty-one and seventy-nine degrees": the unit once, after the last. All facts must share it. */
  numbers(facts: readonly Fact[]): string {
    const said = facts.map((f) => this.number(f));
    const u = facts[0]!.unit;
    const word = u.id === 'degC' ? 'degrees' : u.many;
    return `${said.slice(0, -1).join(', ')} and ${said.at(-1)}${word ? ` ${word}` : ''}`;
  }

  /** "two", "twelve": a count; spelled out up to twelve in either form, as style guides have it. */
  count(fact: Fact): string {
    return fact.value.compare(Exact.of(12)) <= 0 ? inWords(fact.value.toFixed(0)) : this.#digits(fact.value, 0);
  }

  #digits(value: Exact, decimals: number): string {
    return this.options.form === 'digits' ? showNumber(value, decimals).replace('−', 'minus ') : inWords(value.toFixed(decimals), this.options.british);
  }

  #with(fact: Fact, value: Exact): string {
    const options = { digits: this.options.form === 'digits', and: this.options.british };
    const first = speak(value, fact.unit, spokenDecimals(fact), options);
    const { second } = fact;
    if (!this.options.second || !second) return first;
    const other = value.sign() === fact.value.sign() ? second.value : second.value.abs();
    return `${first}, or ${speak(other, second.unit, second.decimals, options)},`;
  }
}

/**
 * Decimals that are said: none from two hundred on, and none that are noughts; volts keep theirs, since 0.90 and 0.9 are
 * heard as two settings. Common practice, no published source.
 */
export function spokenDecimals(fact: Fact): number {
  if (fact.unit.id === 'V') return fact.decimals;
  if (fact.value.abs().compare(large) >= 0) return 0;
  for (let d = 0; d < fact.decimals; d++) if (fact.value.round(d).equals(fact.value.round(fact.decimals))) return d;
  return fact.decimals;
}

/** Whether a difference in its unit can be said: what lies between 1,350 to one and 980 to one is not "370 to one". */
export function subtracts(fact: Fact): boolean {
  return fact.unit.id !== ':1';
}

/** Whether a listener who subtracts what is said gets what is said: high − low = change, each as spoken. */
export function addsUp(change: Fact, high: Fact, low: Fact): boolean {
  const said = (f: Fact) => f.value.round(spokenDecimals(f));
  if (high.unit.id !== low.unit.id) return false;
  return said(high).minus(said(low)).round(spokenDecimals(change)).equals(said(change));
}
