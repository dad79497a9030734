// Figures that have an order by what they are.
import { convert } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { grouped, type Measured, measured, quantityOf, testOf } from './measured.js';
import { nameOf, readingPlaces, tell } from './words.js';

/** The first can never be above the second. */
const orders: readonly (readonly [lower: RegExp, upper: RegExp, dimension?: string])[] = [
  [/^(low|min|minimum|lowest|p0?\d|low[-_].*|p99|p95)$/, /^(average|mean|avg)$/, 'frame-rate'],
  [/^(average|mean|avg)$/, /^(max|maximum|peak|highest)$/],
  [/^(min|minimum|lowest)$/, /^(average|mean|avg|max|maximum|peak)$/],
  [/^(core|edge|die)$/, /^(hot-?_?spot|junction)$/, 'temperature'],
];

export const partsOutOfOrder: Check = {
  name: 'parts-out-of-order',
  says: 'A low is above its average, an average above its peak, or a core hotter than its hotspot.',
  why: 'These figures have an order by what they are. When it is broken, two columns were swapped or the definition is not what the name says.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, frame_rate/average: {load: 118 118 119 fps}, frame_rate/low: {load: 91 92 91 fps}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        frame_rate/average: {load: 91 92 91 fps}
        frame_rate/low: {load: 118 118 119 fps} # expect
        temperature/hotspot: {load: 66 67 66 °C}
        temperature/core: {load: 79 80 79 °C} # expect
  `) },
  run({ facts }) {
    return [...grouped(measured(facts), ({ at }) => `${testOf(at)} ${quantityOf({ ...at, part: '' })}`).values()].flatMap((all) =>
      orders.flatMap(([lower, upper, dimension]) => all.flatMap((low) => all.flatMap((high) => {
        if (!lower.test(low.at.part) || !upper.test(high.at.part) || !swapped(low, high, dimension)) return [];
        return [{
          place: low.readings[0]!.place, subject: low.key, said: low.mean!.shown, recorded: high.mean!.shown,
          message: `${tell(facts.about, low.key)} says ${low.mean!.shown}, above the ${high.mean!.shown} of ${nameOf(facts.about, 'part', high.at.part)}`,
          slip: 'the two may have changed places', related: readingPlaces(high.readings, (r) => `${nameOf(facts.about, 'part', high.at.part)}, run ${r.run}`),
        }];
      }))));
  },
};

function swapped(low: Measured, high: Measured, dimension: string | undefined): boolean {
  if (!low.mean || !high.mean || low.key === high.key || (dimension && low.mean.unit.dimension !== dimension)) return false;
  const top = convert(high.mean.value, high.mean.unit, low.mean.unit);
  return top !== undefined && low.mean.value.compare(top) > 0;
}
