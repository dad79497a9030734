// "9 percent cooler": of a temperature in °C or °F there is no percentage, as their zero is arbitrary.
import type { Context } from './context.js';

export const ofTemperature = 'a percentage of a temperature in °C or °F says nothing, as their zero is arbitrary; tell the difference, or a percentage of the rise over the room';

/** A percentage that can be of nothing but a temperature: a rise over the room has a zero of its own. */
export function isOfTemperature(c: Context, index: number): boolean {
  const { mention, cue } = c.parsed.said[index]!;
  if (mention.unit?.id !== '%' || cue.op !== 'change' || cue.overRoom || !cue.of?.includes('temperature')) return false;
  return ![...c.grid.measureUnits.values()].some((dimensions) => dimensions.has('temperature-difference')) && !c.now.said.some((t) => t.kind === 'over_room');
}
