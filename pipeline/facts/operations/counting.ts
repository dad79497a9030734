// What is told in whole numbers: places and counts.
import { Exact, showNumber, unit } from '../../quantities/index.js';
import { splitKey } from '../../records/index.js';
import { type Fact, runsOf } from '../fact.js';
import type { About, Underivable } from '../facts.js';
import { ascending, inOneUnit, widest, written } from './arithmetic.js';
import type { Result } from './operation.js';

export function rank(inputs: Fact[], variant: string, about: About): Result | Underivable {
  const better = about.measures.get(splitKey(inputs[0]!.subject)?.measure ?? '')?.better ?? 'neither';
  if (variant === 'better' && better === 'neither') return { why: 'the record does not say which end of this measure is better' };
  const high = variant === 'highest' || (variant === 'better' && better === 'higher');
  const all = inOneUnit(inputs);
  if ('why' in all) return all;
  const own = all.values[0]!;
  const place = 1 + all.values.slice(1).filter((v) => (high ? v.compare(own) > 0 : v.compare(own) < 0)).length;
  return {
    value: Exact.of(place), unit: unit('1'),
    get formula() {
      const finest = widest(inputs);
      const decimals = Math.max(...all.values.map((v) => written(v, finest)));
      const sorted = ascending(all.values).map((v) => showNumber(v, decimals));
      return `place ${place} from the ${high ? 'highest' : 'lowest'} of ${inputs.length}: ${(high ? sorted.reverse() : sorted).join(', ')}`;
    },
  };
}

export function count(inputs: Fact[], variant: string): Result | Underivable {
  const tell = (n: number, formula: () => string): Result => ({ value: Exact.of(n), unit: unit('1'), get formula() { return formula(); } });
  const test = { 'at-most': (c: number) => c <= 0, 'at-least': (c: number) => c >= 0, below: (c: number) => c < 0, above: (c: number) => c > 0 }[variant];
  if (test) {
    const limit = inputs.at(-1)!;
    const all = inOneUnit([limit, ...inputs.slice(0, -1)]);
    if ('why' in all) return all;
    const met = all.values.slice(1).filter((v) => test(v.compare(limit.value))).length;
    return tell(met, () => `${met} of ${inputs.length - 1} are ${variant.replace('-', ' ')} ${limit.shown}`);
  }
  if (variant === 'runs') {
    const runs = Math.max(...inputs.map(runsOf));
    return tell(runs, () => runs === 1 ? '1 run' : `${runs} runs`);
  }
  const field = { setups: 'setup', settings: 'setting', workloads: 'workload' }[variant] as 'setup' | undefined;
  const names = new Set(inputs.map((f) => (field ? splitKey(f.subject)?.[field] : f.subject)));
  const noun = variant === 'keys' ? 'values' : variant;
  return tell(names.size, () => `${names.size} ${names.size === 1 ? noun.slice(0, -1) : noun}`);
}
