// The words around the figures of a chart.
import { basisOf, betterWords, type Fact, type Facts } from '../facts/index.js';
import type { Selection } from './rows.js';
import { showNumber } from '../quantities/index.js';

/** The figure alone, as its fact shows it; units stand once in the subtitle, where they are one and the same. */
export function figure(fact: Fact): string {
  return fact.unit.id === '%' || fact.unit.id === 'x' ? fact.shown : showNumber(fact.value, fact.decimals);
}

/** "°C · lower is better · Open bench, Harbour loop" */
export function subtitle(facts: Facts, { measure, ranks }: Pick<Selection, 'measure' | 'ranks'>, unit: string, common: string): string {
  return [unit, ranks ? betterWords(facts.about, measure) : '', common].filter(Boolean).join(' · ');
}

/** "Mean of 3 runs · room 21.0 °C", and the ids that it shows. */
export function foot(facts: Facts, shown: readonly Fact[], more: string[] = [], before = ''): { text: string; facts: string[] } {
  const basis = basisOf(facts, shown);
  const text = [before, basis.runs, basis.room, ...more].filter(Boolean).join(' · ');
  return { text: text.slice(0, 1).toUpperCase() + text.slice(1), facts: basis.facts };
}

/** One unit for the subtitle, when all agree. */
export function unitSymbol(shown: readonly Fact[]): string {
  const symbols = new Set(shown.map((f) => f.unit.symbol));
  return symbols.size === 1 ? [...symbols][0]! : '';
}

/** A name within a sentence: without its capital, unless it is one of several (an abbreviation). */
export function lower(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}
