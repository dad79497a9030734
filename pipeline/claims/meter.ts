// "My meter is good to 1.4 decibels", "the probes are accurate to half a degree": how well an instrument reads is nothing that was measured with it.
import { stretch, WordClass } from '../script/index.js';
import type { Context } from './context.js';

const instrument = new WordClass(/^(?:meters?|sensors?|probes?|thermocouples?|thermometers?|scales?|gauges?|instruments?|microphones?|clamps?|multimeters?|loggers?)$/);
const reads = /(?:^| )(?:good|accurate|precise|calibrated|true|reliable|specified|rated|trustworthy)(?: only| just)? (?:to|within|to within|down to)(?: (?:about|around|roughly|plus or minus|only|just|within))?$|(?:^| )(?:accuracy|resolution|tolerance|error|uncertainty|repeatability|steps?) (?:is|of|are|at|sits at)(?: (?:about|around|roughly|plus or minus))?$|(?:^| )(?:plus or minus|give or take)$|(?:^| )(?:resolves?|reads?|rounds?|counts?)(?: only)? (?:to|in steps of|in)(?: (?:about|the nearest))?$/;

export function isOfMeter(c: Context, index: number): boolean {
  const { low, said } = c.parsed;
  const { from } = said[index]!.mention;
  return instrument.in(low, 0, from) && reads.test(stretch(low, Math.max(0, from - 6), from));
}
