// The heat that a coolant carries, test by test, beside the electrical power that heats it.
import { splitKey, withFields } from '../records/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';

export interface HeatBalance {
  heat: Fact;
  flow: Fact;
  warm: Fact;
  cold: Fact;
  /** What goes in, where the record names it and has it: read, or as set or rated. */
  power?: Fact;
  /** Heat in percent of it. */
  share?: Fact;
}

const given = ['set', 'rated'] as const;

/** One for every test of which the record has all that the heat needs, in its order. */
export function heatBalances(facts: Facts): HeatBalance[] {
  const { coolant } = facts.about;
  if (!coolant?.flow || !coolant.warm || !coolant.cold) return [];
  const at = (key: string, path: string) => {
    const [measure = '', part = ''] = path.split('/');
    return withFields(key, { measure, part });
  };
  return facts.keys().flatMap((key): HeatBalance[] => {
    const parts = splitKey(key);
    if (!parts || `${parts.measure}/${parts.part}` !== coolant.flow || facts.readings(key).length === 0) return [];
    const keys = [key, at(key, coolant.warm!), at(key, coolant.cold!)];
    const [heat, flow, warm, cold] = [facts.derive('heat', keys), ...keys.map((k) => facts.value(k))];
    if (!isFact(heat) || !isFact(flow) || !isFact(warm) || !isFact(cold)) return [];
    const wanted = coolant.power && at(key, coolant.power);
    const powerKey = wanted && (facts.readings(wanted).length ? wanted : given.map((phase) => facts.constantFor(wanted, phase)).find((k) => k !== undefined));
    const power = powerKey ? facts.value(powerKey) : undefined;
    const share = powerKey ? facts.derive('percent_of', [`(${heat.id})`, powerKey]) : undefined;
    return [{ heat, flow, warm, cold, ...(isFact(power) && { power }), ...(isFact(share) && { share }) }];
  });
}
