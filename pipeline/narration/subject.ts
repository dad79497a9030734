// What a sentence is about, and the words for more and less of it.
import type { KeyParts } from '../facts/index.js';
import type { Unit } from '../quantities/index.js';
import { bare, definite, namedOf, noun, quantityNoun } from './names.js';
import type { Stage } from './scenes.js';

/** "the core" for a temperature of a part, "board power" or "the average frame rate" for anything else. */
export function subject(stage: Stage, parts: KeyParts, u: Unit): string {
  const part = u.dimension === 'temperature' && parts.part ? noun(namedOf(stage.facts, 'part', parts.part)) : undefined;
  return part && parts.measure === 'temperature' ? `the ${bare(part)}` : definite(quantityNoun(stage.facts, parts.measure, parts.part));
}

/** "coolant temperature": always with its measure. */
export function quantity(stage: Stage, parts: KeyParts): string {
  return quantityNoun(stage.facts, parts.measure, parts.part);
}

/** Comparatives by what is measured: [less, more]. */
export function comparative(u: Unit): [less: string, more: string] {
  if (u.dimension === 'temperature') return ['cooler', 'warmer'];
  if (u.dimension === 'sound-level') return ['quieter', 'louder'];
  return ['lower', 'higher'];
}
