// A time constant, or the level that a course approaches: the mean over the fits of its runs.
import { differenceUnit, Exact, unit } from '../../quantities/index.js';
import { approachIn, courseInWords } from '../approach.js';
import type { Fact } from '../fact.js';
import type { About, Facts, Underivable } from '../facts.js';
import { spreadOf } from '../spread.js';
import type { Result } from './operation.js';

/** More digits than a fit ever bears; without the last bits, which differ between machines. */
const digits = 6;

export function approach([a]: Fact[], variant: string, _: About, facts?: Facts): Result | Underivable {
  if (!facts) return { why: 'an approach is fitted to the logs of a record' };
  const values: Exact[] = [];
  const courses: string[] = [];
  const step = differenceUnit(a!.unit).symbol;
  for (const reading of a!.readings) {
    if (reading.quantity.unit.id !== a!.unit.id) return { why: `${a!.subject} is logged in ${a!.unit.id} and in ${reading.quantity.unit.id}` };
    const fit = approachIn(facts, reading);
    if ('why' in fit) return fit;
    values.push(Exact.fromNumber(Number((variant === 'final' ? fit.final : fit.timeConstant).value.toPrecision(digits))));
    courses.push(`${a!.readings.length > 1 ? `run ${reading.run}: ` : ''}${courseInWords(fit, a!.unit.symbol, step)}`);
  }
  const sum = values.reduce((x, y) => x.plus(y), Exact.zero);
  const what = variant === 'final' ? 'level' : 'time constant';
  return {
    value: sum.over(Exact.of(values.length)), unit: variant === 'final' ? a!.unit : unit('s'), spread: spreadOf(values),
    get formula() { return `${values.length > 1 ? `mean ${what} of the least-squares fits` : `${what} of the least-squares fit`} ${courses.join('; ')}`; },
  };
}
