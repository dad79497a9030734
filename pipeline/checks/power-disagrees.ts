// Power, voltage and current of one place that do not multiply.
import { convert, show, unit } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { grouped, measured, testOf } from './measured.js';
import { readingPlaces, tell } from './words.js';

export const powerDisagrees: Check = {
  name: 'power-disagrees',
  says: 'A power is not its voltage times its current.',
  why: 'For direct current the three hang together; where they do not, one was read at another place or time. Readings of alternating current have a power factor: accept the finding there.',
  severity: 'warning',
  thresholds: ['power-disagrees'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, voltage/connector: {load: 12.1 V}, current/connector: {load: 20.5 A}, power/connector: {load: 248 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        voltage/connector: {load: 12.1 V}
        current/connector: {load: 10.5 A}
        power/connector: {load: 248 W} # expect
  `) },
  run({ facts, limits }) {
    return [...grouped(measured(facts), ({ at }) => `${testOf(at)} ${at.part} ${at.phase}`).values()].flatMap((all) => {
      const of = (dimension: string) => all.find(({ mean }) => mean?.unit.dimension === dimension);
      const [power, voltage, current] = [of('power'), of('voltage'), of('current')];
      if (!power || !voltage || !current || /wall|mains|input/.test(power.at.part)) return [];
      const product = convert(voltage.mean!.value, voltage.mean!.unit, unit('V'))!.times(convert(current.mean!.value, current.mean!.unit, unit('A'))!);
      const watts = convert(power.mean!.value, power.mean!.unit, unit('W'))!;
      if (watts.minus(product).abs().compare(product.abs().times(limits.share('power-disagrees'))) <= 0) return [];
      const gives = show(product, unit('W'), power.mean!.decimals);
      return [{
        place: power.readings[0]!.place, subject: power.key, said: power.mean!.shown, recorded: gives, derivation: `${voltage.mean!.shown} × ${current.mean!.shown} = ${gives}`,
        message: `${tell(facts.about, power.key)} says ${power.mean!.shown}; ${voltage.mean!.shown} times ${current.mean!.shown} is ${gives}`,
        related: [...readingPlaces(voltage.readings, () => 'the voltage'), ...readingPlaces(current.readings, () => 'the current')],
      }];
    });
  },
};
