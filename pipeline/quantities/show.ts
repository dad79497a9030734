// Numbers with their units as they are shown (a real minus, a thin space) and as they are spoken.
import type { Exact } from './exact.js';
import type { Unit } from './units.js';
import { inWords } from './words.js';

const thin = ' ';

/** "2,480 MHz", "−12.4 K", "83 %", "$499.00". ISO 80000-1: a space before every symbol but ° ′ ″; money by common practice. */
export function show(value: Exact, unit: Unit, decimals: number): string {
  const number = showNumber(value, decimals);
  if (unit.dimension === 'money' && /^\p{Sc}$/u.test(unit.symbol)) return number.startsWith('−') ? `−${unit.symbol}${number.slice(1)}` : unit.symbol + number;
  if (unit.symbol === '×') return `${number}×`;
  return unit.symbol ? `${number}${thin}${unit.symbol}` : number;
}

/** "2,480", "−0.95": grouped in threes from 1,000 on, a real minus. */
export function showNumber(value: Exact, decimals: number): string {
  const [whole, rest] = value.toFixed(decimals).split('.');
  const grouped = whole!.replace(/\B(?=(\d{3})+$)/g, ',').replace('-', '−');
  return rest ? `${grouped}.${rest}` : grouped;
}

/** "two thousand four hundred eighty megahertz"; digits with the unit word when `digits` is set ("2,480 megahertz"). */
export function speak(value: Exact, unit: Unit, decimals: number, options: { digits?: boolean; and?: boolean } = {}): string {
  const text = value.toFixed(decimals);
  const number = options.digits ? showNumber(value, decimals).replace('−', 'minus ') : inWords(text, options.and);
  const word = unit.id === 'degC' ? plural(text, 'degree', 'degrees') : plural(text, unit.one, unit.many);
  return word ? `${number} ${word}` : number;
}

function plural(text: string, one: string, many: string): string {
  return text === '1' || text === '-1' ? one : many;
}
