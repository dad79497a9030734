// What a figure is about, in the few words that a graphic has room for.
import { betterWords, type Fact, type Facts, type KeyField, type KeyParts, nameOf, splitKey } from '../facts/index.js';
import { showNumber } from '../quantities/index.js';

const circumstances = ['setup', 'setting', 'workload'] as const;

/** "Closed case, Power limit 75 %, Test scene"; only the given fields. */
export function where(facts: Facts, parts: KeyParts, fields: readonly KeyField[] = circumstances): string {
  return fields.filter((f) => parts[f]).map((f) => nameOf(facts.about, f, parts[f])).join(', ');
}

/** The circumstances in which keys differ, phase included. */
export function differing(keys: readonly string[]): KeyField[] {
  const all = keys.map((k) => splitKey(k)).filter((p) => p !== undefined);
  return (['setup', 'setting', 'workload', 'phase'] as const).filter((f) => new Set(all.map((p) => p[f]).filter(Boolean)).size > 1);
}

/** What they have in common of setup, setting and workload. */
export function inCommon(facts: Facts, parts: KeyParts, differs: readonly KeyField[]): string {
  return where(facts, parts, circumstances.filter((f) => !differs.includes(f)));
}

/** Number and unit apart, for two sizes of type; "$499" and "12×" stay whole. */
export function numberAndUnit(fact: Fact): { number: string; unit: string } {
  const number = showNumber(fact.value, fact.decimals);
  return fact.shown.startsWith(number) && fact.unit.symbol !== '×' ? { number, unit: fact.unit.symbol } : { number: fact.shown, unit: '' };
}

/** What is left of a limit: no change from one to the other. */
function isRoom(fact: Fact): boolean {
  return fact.kind === 'difference' && splitKey(fact.subject)?.phase === 'limit' && splitKey(fact.keys[1] ?? '')?.phase !== 'limit';
}

/** A sign before differences, so that their direction is seen. */
export function signed(fact: Fact, text: string): string {
  return !isRoom(fact) && ['difference', 'points', 'percent_change'].includes(fact.kind) && fact.value.sign() > 0 ? `+${text}` : text;
}

/** "from 38 °C to 66 °C", "250 W of 300 W", "frame rate 99.1 fps at 297.8 W": what the figure was made of. */
export function madeOf(fact: Fact, operands: Fact[]): string {
  const [a, b] = operands;
  if (!a || !b || operands.length > 2) return '';
  if (isRoom(fact)) return `${b.shown}, limit ${a.shown}`;
  switch (fact.kind) {
    case 'rise': case 'difference': case 'points': case 'percent_change': return `from ${b.shown} to ${a.shown}`;
    case 'percent_of': return `${a.shown} of ${b.shown}`;
    case 'over_room': return `${a.shown} in a room of ${b.shown}`;
    case 'per_watt': case 'per_price': case 'ratio': return `${a.shown} for ${b.shown}`;
    default: return '';
  }
}

export function betterOf(facts: Facts, fact: Fact): string {
  return betterWords(facts.about, splitKey(fact.subject)?.measure ?? '');
}

export function sentence(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
