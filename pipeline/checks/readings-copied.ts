// The same runs in two tests.
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, type Measured, measured, quantityOf } from './measured.js';
import { rangeOf } from './run-spread.js';
import { listed, readingPlaces, runsOf, tell } from './words.js';

export const readingsCopied: Check = {
  name: 'readings-copied',
  says: 'Two tests have the same runs of several quantities, digit for digit.',
  why: 'Runs with several digits do not repeat by chance in the same order. A block was copied to be overwritten later, and was not.',
  severity: 'warning',
  thresholds: ['copied-least-digits'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, power/board: {load: 247.6 248.3 248.1 W}, frequency/core: {load: 2457 2461 2468 MHz}}
      - {for: {setup: case, workload: scene}, power/board: {load: 247.9 248.0 248.4 W}, frequency/core: {load: 2431 2440 2436 MHz}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, power/board: {load: 247.6 248.3 248.1 W}, frequency/core: {load: 2457 2461 2468 MHz}}
      - {for: {setup: case, workload: scene}, power/board: {load: 247.6 248.3 248.1 W}, frequency/core: {load: 2457 2461 2468 MHz}} # expect
  `) },
  run(context) {
    const telling = measured(context.facts).filter((m) => m.readings.length >= 3 && !m.readings.some((r) => r.log) && saysMuch(m, context));
    const copies = [...grouped(telling, (m) => `${quantityOf(m.at)} ${m.mean!.unit.id} ${runsOf(m.readings)}`).values()]
      .flatMap((alike) => alike.slice(1).map((copy) => ({ first: alike[0]!, copy })));
    return [...grouped(copies, ({ first, copy }) => `${test(first)} ${test(copy)}`).values()].filter((all) => all.length >= 2).map((all): Report => {
      const { first, copy } = all[0]!;
      return {
        place: copy.readings[0]!.place, subject: copy.key, said: runsOf(copy.readings), recorded: runsOf(first.readings),
        message: `${tell(context.facts.about, copy.key)} has the very runs of ${tell(context.facts.about, first.key)} (${runsOf(copy.readings)}), and so has ${listed(all.slice(1).map((c) => tell(context.facts.about, c.copy.key).split(' (')[0]!.toLowerCase()))}`,
        slip: 'a block copied and not overwritten', related: readingPlaces(first.readings.slice(0, 1), () => 'the same runs'),
      };
    });
  },
};

/** Enough digits, and spread over enough steps, that an equal order of runs is no chance. */
function saysMuch({ readings, mean }: Measured, { limits }: Context): boolean {
  if (!mean) return false;
  const digits = Math.min(...readings.map((r) => r.quantity.value.toFixed(r.quantity.decimals).replace(/\D|^0+/g, '').length));
  const steps = rangeOf(readings).width.toNumber() * 10 ** Math.max(...readings.map((r) => r.quantity.decimals));
  return digits >= limits.number('copied-least-digits') && steps >= 4;
}

function test({ at }: Measured): string {
  return `${at.setup}/${at.setting}/${at.workload}`;
}
