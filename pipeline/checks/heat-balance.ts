// Heat in the coolant against the power that heats it.
import { heatBalances, uncertaintyOf } from '../facts/index.js';
import { convert, Exact } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { derivation, readingPlaces, tell } from './words.js';

const record = (title: string, flow: string) => yaml(`
    title: ${title}
    setups: {loop: {name: Loop}}
    workloads: {heater: {name: Heater}}
    coolant: {fluid: ethylene glycol 30 %, flow: flow/loop, warm: temperature/out, cold: temperature/in, power: power/heater}
    readings:
      - for: {setup: loop, workload: heater}
        ${flow}
        temperature/out: {load: 35.6 35.6 35.7 °C}
        temperature/in: {load: 33.5 33.5 33.6 °C}
        power/heater: {load: 250.2 250.0 249.9 W}
`);

export const heatBalance: Check = {
  name: 'heat-balance',
  says: 'The coolant carries more heat than power goes in, or implausibly little.',
  why: 'Flow, two temperatures and the power hang together by the properties of the coolant: what goes in must come out, less what the parts around lose. Where it does not, one of the four is wrong, or the coolant is another.',
  severity: 'warning',
  thresholds: ['heat-above-power', 'heat-least'],
  right: { record: record('Right', 'flow/loop: {load: 1.80 1.81 1.80 L/min}') },
  wrong: { record: record('Wrong', 'flow/loop: {load: 3.60 3.62 3.60 L/min} # expect') },
  run({ facts, limits }) {
    return heatBalances(facts).flatMap(({ heat, flow, warm, cold, power }) => {
      const at = { place: flow.readings[0]!.place, subject: heat.subject, said: heat.shown, derivation: heat.formula, related: [...readingPlaces(warm.readings, () => 'the warm side'), ...readingPlaces(cold.readings, () => 'the cold side')] };
      const what = tell(facts.about, heat.subject);
      if (heat.value.sign() < 0) return [{ ...at, message: `${what}: the warm side of the coolant (${warm.shown}) is colder than the cold side (${cold.shown}); the two seem to have changed places` }];
      const input = power && convert(power.value, power.unit, heat.unit);
      if (!power || !input || input.sign() <= 0) return [];
      const doubt = Exact.fromNumber(uncertaintyOf(facts, heat)?.half95 ?? 0);
      const against = { ...at, recorded: power.shown, related: [...readingPlaces(power.readings, () => 'the power'), ...at.related] };
      const allowed = input.times(limits.share('heat-above-power'));
      if (heat.value.minus(input).compare(allowed.compare(doubt) > 0 ? allowed : doubt) > 0) {
        return [{ ...against, message: `${what}: the coolant would carry ${heat.shown} away (${derivation(heat)}), and only ${power.shown} go in` }];
      }
      if (heat.value.plus(doubt).compare(input.times(limits.share('heat-least'))) < 0) {
        return [{ ...against, message: `${what}: the coolant carries ${heat.shown} (${derivation(heat)}) of the ${power.shown} that go in; the rest would have to go elsewhere` }];
      }
      return [];
    });
  },
};
