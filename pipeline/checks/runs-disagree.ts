// Runs of one reading that are no repetitions of each other.
import { isIdle } from '../facts/index.js';
import { differenceUnit, Exact, mean as meanOf, show } from '../quantities/index.js';
import type { Reading } from '../records/index.js';
import { likelySlip } from '../slips/index.js';
import { dixon, dixonLimit, grubbs, grubbsLimit, modifiedZ } from '../statistics/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { idleUnlikeOf } from './idle-unlike.js';
import { type Measured, measured } from './measured.js';
import { oddRun } from './odd-run.js';
import { allowedSpread, rangeOf, stepOf } from './run-spread.js';
import { count, listed, readingPlaces, runsOf, tell } from './words.js';

/** Mean range of three normal values in standard deviations: the control chart constant d2, from memory. */
const d2ofThree = 1.693;
/** One clean reading in a hundred is flagged; at 5 % a record of a hundred readings would always have some. */
const significance = 0.01;
/** Several bad runs widen the standard deviation and hide from Grubbs. From this many runs on, distances from the median beyond this limit show them; one clean sample in a hundred of that size passes it (40,000 drawn), larger ones more rarely. */
const hidden = { least: 20, limit: 5.2 };

export const runsDisagree: Check = {
  name: 'runs-disagree',
  says: 'The runs of one reading lie further apart than repetitions should.',
  why: 'A mean of runs that disagree is a mean of different tests. With two to five runs the range is judged, because with three the test of Grubbs can hardly tell one bad run; of four and five, Dixon’s Q says whether one is an outlier. From six runs on single runs are judged by the test of Grubbs, from twenty on several by their distance from the median, and the others by their standard deviation.',
  severity: 'warning',
  thresholds: ['runs-disagree', 'runs-disagree-extreme', 'runs-disagree-temperature', 'runs-disagree-level', 'runs-disagree-steps', 'outlier-least-runs'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 67 67 68 °C}, power/board: {load: 247.6 248.3 251.1 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 64 56 56 °C} # expect
        power/board: {load: 247.6 248.3 274.1 W} # expect
        frame_rate/average: {load: 98.2 98.3 98.1 98.2 98.4 96.1 98.3 fps} # expect
  `) },
  run: (context) => measured(context.facts).flatMap((m) => judge(m, context)),
};

function judge(m: Measured, context: Context): Report[] {
  const { readings, mean } = m;
  if (!mean || readings.length < 2) return [];
  if (isIdle(m.at.phase) && idleUnlikeOf(m, context)) return [];
  const allowed = allowedSpread(readings, mean, context);
  const { width } = rangeOf(readings);
  const shown = (x: Exact): string => show(x, differenceUnit(mean.unit), mean.decimals);
  const report = (message: string, bad = oddRun(readings)?.run): Report => {
    const rest = readings.filter((r) => r !== bad);
    const guess = bad && likelySlip(bad.quantity, { ...mean, value: meanOf(rest.map((r) => r.quantity.value)), readings: rest });
    return {
      place: (bad ?? readings[0]!).place, subject: m.key, said: runsOf(readings), recorded: mean.shown, derivation: `${mean.formula} = ${mean.shown}`, message,
      ...(guess && ['transposed', 'decimal-point', 'wrong-unit'].includes(guess.kind) && { slip: guess.says }),
      related: readingPlaces(readings),
    };
  };
  const name = tell(context.facts.about, m.key);
  if (readings.length < context.limits.number('outlier-least-runs')) {
    if (width.compare(allowed.by) <= 0) return [];
    const odd = oddRun(readings);
    return [report(`${name}: ${count(readings.length, 'run')} (${runsOf(readings)}) lie ${shown(width)} apart; up to five runs may span ${allowed.rule}${odd ? `. Run ${odd.run.run} is the odd one${byDixon(readings)}` : ''}`)];
  }
  const values = readings.map((r) => r.quantity.value.toNumber());
  const found = grubbs(values);
  const limit = grubbsLimit(values.length, significance);
  const odd = found && readings[found.index]!;
  const away = odd && rangeOf(readings.filter((r) => r !== odd));
  const gap = away && [odd.quantity.value.minus(away.high), away.low.minus(odd.quantity.value)].reduce((a, b) => (a.compare(b) > 0 ? a : b));
  if (found && gap && found.g > limit && gap.compare(stepOf(readings, context).times(Exact.of(2))) > 0) {
    return [report(`${name}: run ${odd!.run} (${runsOf([odd!])}) is an outlier among ${readings.length} runs by the test of Grubbs (${found.g.toFixed(2)} standard deviations, limit ${limit.toFixed(2)})`, odd)];
  }
  const apart = values.length < hidden.least ? [] : modifiedZ(values).flatMap((z, i) => (Math.abs(z) > hidden.limit ? [readings[i]!] : []));
  if (apart.length > 1 && width.compare(allowed.by) > 0) {
    return [report(`${name}: runs ${listed(apart.map((r) => r.run))} (${runsOf(apart)}) are outliers among ${readings.length} runs by their distance from the median`, apart[0])];
  }
  const sd = mean.spread?.sd ?? 0;
  if (sd * d2ofThree <= allowed.by.toNumber()) return [];
  return [report(`${name}: ${readings.length} runs have a standard deviation of ${sd.toPrecision(2)} ${differenceUnit(mean.unit).symbol}; three runs drawn from them would span more than ${allowed.rule}`)];
}

/** Of three runs one would have to lie 32 times as far away as the others from each other: that is not asked. */
function byDixon(readings: readonly Reading[]): string {
  const found = readings.length > 3 ? dixon(readings.map((r) => r.quantity.value.toNumber())) : undefined;
  const limit = dixonLimit(readings.length);
  return found && limit !== undefined && found.q > limit ? `, an outlier by Dixon’s Q (${found.q.toFixed(2)}, limit ${limit.toFixed(2)})` : '';
}
