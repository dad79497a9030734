// Heat that a coolant carries: flow × warming × what a litre of it takes up for each kelvin.
import { convert, convertedDecimals, Exact, show, showNumber, type Unit, unit } from '../../quantities/index.js';
import { splitKey } from '../../records/index.js';
import { coolantAt } from '../coolant.js';
import type { Fact } from '../fact.js';
import type { About, Underivable } from '../facts.js';
import { closer } from './arithmetic.js';
import type { Result } from './operation.js';

/** Flow, warm side and cold side; or flow, a warming in kelvins, and a temperature at which the coolant's properties are taken. */
export function heat([flow, warm, cold]: Fact[], _: string, about: About): Result | Underivable {
  if (flow!.unit.dimension !== 'flow') return { why: 'the first must be a flow' };
  const coolant = about.setups.get(splitKey(flow!.subject)?.setup ?? '')?.coolant ?? about.coolant;
  if (!coolant) return { why: 'the record does not say what the coolant is (coolant: water)' };
  const known = warm!.unit.dimension === 'temperature-difference';
  const [kelvins, celsius] = known ? warmingGiven(warm!, cold!) : warmingTaken(warm!, cold!);
  if (!kelvins || !celsius) return { why: 'heat comes of a flow, the temperature on the warm side and that on the cold side; or of a flow, a warming and a temperature' };
  const at = coolantAt(coolant.fluid, coolant.share, celsius);
  if ('why' in at) return { why: `${at.why}; the coolant has ${showNumber(celsius, 1)} °C` };
  const perLitre = at.density.times(at.heat).over(Exact.of(1000));
  const litres = convert(flow!.value, flow!.unit, unit('L/min'))!;
  return {
    value: perLitre.times(litres).over(Exact.of(60)).times(kelvins), unit: unit('W'),
    get formula() {
      const name = coolant.fluid === 'water' ? 'water' : `${coolant.fluid}, ${showNumber(coolant.share, coolant.share.d === 1n ? 0 : 1)} % by volume`;
      const decimals = kelvinDecimals(warm!);
      const taken = known ? show(kelvins, unit('K'), decimals) : `(${figure(warm!, warm!.unit)} − ${figure(cold!, warm!.unit)}) ${warm!.unit.symbol === '°C' ? 'K' : '°F'}`;
      return `${show(flow!.value, flow!.unit, closer(flow!))} × ${taken} × ${showNumber(perLitre.over(Exact.of(1000)), 3)} kJ/(L·K), ${name} at ${showNumber(celsius, 1)} °C`;
    },
  };
}

function warmingTaken(warm: Fact, cold: Fact): [Exact?, Exact?] {
  const [a, b] = [warm, cold].map((f) => (f.unit.dimension === 'temperature' ? convert(f.value, f.unit, unit('degC')) : undefined));
  return a && b ? [a.minus(b), a.plus(b).over(Exact.of(2))] : [];
}

function warmingGiven(warming: Fact, at: Fact): [Exact?, Exact?] {
  return at.unit.dimension === 'temperature' ? [convert(warming.value, warming.unit, unit('K')), convert(at.value, at.unit, unit('degC'))] : [];
}

function kelvinDecimals(f: Fact): number {
  return f.unit.dimension === 'temperature-difference' ? Math.max(closer(f), convertedDecimals(f.decimals, f.unit, unit('K'))) : closer(f);
}

function figure(f: Fact, u: Unit): string {
  return showNumber(convert(f.value, f.unit, u) ?? f.value, closer(f));
}
