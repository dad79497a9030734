// Numbers with their units as they are shown (a real minus, a space before the unit) and as they are spoken.
import { Exact } from './exact.js';
import type { Unit } from './units.js';
import { inWords } from './words.js';

/** "2,480 MHz", "−12.4 K", "83 %", "$499.00". ISO 80000-1: a space before every symbol but ° ′ ″; money by common practice. */
export function show(value: Exact, unit: Unit, decimals: number): string {
  const number = showNumber(value, decimals);
  if (isSign(unit)) return number.startsWith('−') ? `−${unit.symbol}${number.slice(1)}` : unit.symbol + number;
  if (unit.symbol === '×' || unit.symbol === ':1') return number + unit.symbol;
  return unit.symbol ? `${number} ${unit.symbol}` : number;
}

/** "2,480", "−0.95": grouped in threes from 1,000 on, a real minus. */
export function showNumber(value: Exact, decimals: number): string {
  const [whole, rest] = value.toFixed(decimals).split('.');
  const grouped = whole!.replace(/\B(?=(\d{3})+$)/g, ',').replace('-', '−');
  return rest ? `${grouped}.${rest}` : grouped;
}

export interface Speaking {
  /** Digits with the unit word: "2,480 megahertz". */
  digits?: boolean;
  /** The British form: "one hundred and five", "nought point five". */
  and?: boolean;
}

/** "two thousand four hundred eighty megahertz", "minus one degree", "four hundred ninety-nine dollars". */
export function speak(value: Exact, unit: Unit, decimals: number, options: Speaking = {}): string {
  if (isSign(unit) && decimals === 2) return speakMoney(value, unit, options);
  const text = value.toFixed(decimals);
  const number = say(value, decimals, options);
  const word = unit.id === ':1' ? 'to one' : unit.id === 'degC' ? plural(text, 'degree', 'degrees') : plural(text, unit.one, unit.many);
  return word ? `${number} ${word}` : number;
}

const small: Record<string, [one: string, many: string]> = { GBP: ['penny', 'pence'] };

function speakMoney(value: Exact, unit: Unit, options: Speaking): string {
  const hundredths = value.abs().round(2).times(Exact.of(100)).n;
  const whole = Exact.of(hundredths / 100n);
  const rest = Exact.of(hundredths % 100n);
  const [one, many] = small[unit.id] ?? ['cent', 'cents'];
  const sign = value.sign() < 0 && hundredths ? 'minus ' : '';
  const main = `${sign}${say(whole, 0, options)} ${plural(whole.toFixed(0), unit.one, unit.many)}`;
  return rest.sign() ? `${main} and ${say(rest, 0, options)} ${plural(rest.toFixed(0), one, many)}` : main;
}

function say(value: Exact, decimals: number, options: Speaking): string {
  return options.digits ? showNumber(value, decimals).replace('−', 'minus ') : inWords(value.toFixed(decimals), options.and);
}

/** A currency with a sign of one character, which stands before the number. */
function isSign(unit: Unit): boolean {
  return unit.dimension === 'money' && /^\p{Sc}$/u.test(unit.symbol);
}

function plural(text: string, one: string, many: string): string {
  return text === '1' || text === '-1' ? one : many;
}
