// How each kind of fact is computed: one small rule a kind. Differences are taken before rounding.
import { Exact, unit } from '../quantities/index.js';
import type { FactKind } from './fact.js';
import { approachVariants } from './approach.js';
import { approach } from './operations/approach.js';
import { minus, num, per, plain, quotient } from './operations/arithmetic.js';
import { average, meanVariants, median, range } from './operations/averages.js';
import { atRoom } from './operations/at-room.js';
import { count, rank } from './operations/counting.js';
import { energy, energyVariants, perEnergy, perEnergyVariants } from './operations/energy.js';
import { heat } from './operations/heat.js';
import type { Operation } from './operations/operation.js';
import { atDistance, levelSum, withoutBackground } from './operations/sound.js';

export type { Operation, Result } from './operations/operation.js';

const hundred = Exact.of(100);
const two = { least: 2, most: 2 } as const;

export const operations: Record<FactKind, Operation> = {
  raw: { takes: 'one run of one reading', least: 1, most: 1, leaf: true, run: ([a]) => plain(a!) },
  constant: { takes: 'one constant', least: 1, most: 1, leaf: true, run: ([a]) => plain(a!) },
  mean: { takes: 'one reading, or several to average', least: 1, leaf: true, variants: meanVariants, run: average },
  rise: { takes: 'the value under load and the value at idle', ...two, onTheSofa: true, run: ([a, b]) => minus(a!, b!) },
  over_room: { takes: 'a temperature and the room temperature', ...two, onTheSofa: true, run: ([a, b]) => minus(a!, b!) },
  at_room: { takes: 'a temperature, the room it was read in, and the room to correct it to', least: 3, most: 3, run: atRoom },
  difference: { takes: 'a subject and a base', ...two, onTheSofa: true, run: ([a, b]) => minus(a!, b!) },
  points: {
    takes: 'two shares in percent', ...two, onTheSofa: true,
    run: ([a, b]) => (a!.unit.id === '%' && b!.unit.id === '%' ? minus(a!, b!) : { why: 'percentage points lie between two percentages' }),
  },
  percent_change: {
    takes: 'the new value and the base', ...two, onTheSofa: true,
    run: ([a, b]) => quotient(a!, b!, 'percent', 'base', (x, y) => x.minus(y).over(y.abs()).times(hundred), unit('%'), () => `(${num(a!)} − ${num(b!, a!)}) ÷ ${num(b!, a!)}`),
  },
  percent_of: {
    takes: 'a part and its whole', ...two, onTheSofa: true,
    run: ([a, b]) => quotient(a!, b!, 'percent', 'whole', (x, y) => x.over(y).times(hundred), unit('%'), () => `${num(a!)} ÷ ${num(b!, a!)}`),
  },
  ratio: {
    takes: 'a subject and a base', ...two,
    run: ([a, b]) => quotient(a!, b!, 'ratio', 'base', (x, y) => x.over(y), unit('x'), () => `${num(a!)} ÷ ${num(b!, a!)}`),
  },
  rank: { takes: 'a subject and the others it is ranked with', least: 2, variants: ['better', 'highest', 'lowest'], run: rank },
  median: { takes: 'the values to take the median of', least: 1, run: median },
  range: { takes: 'the values whose range it is', least: 1, variants: ['width', 'low', 'high', 'low-run', 'high-run'], run: range },
  count: { takes: 'the things counted', least: 1, variants: ['keys', 'setups', 'settings', 'workloads', 'runs', 'at-most', 'at-least', 'below', 'above'], run: count },
  per_watt: { takes: 'a value and a power', ...two, run: ([a, b]) => (b!.unit.dimension === 'power' ? per(a!, b!) : { why: 'the second must be a power' }) },
  per_price: { takes: 'a value and a price', ...two, run: ([a, b]) => (b!.unit.dimension === 'money' ? per(a!, b!) : { why: 'the second must be a price' }) },
  energy: { takes: 'a power and how long it was drawn, or one energy', least: 1, most: 2, variants: energyVariants, run: energy },
  per_energy: { takes: 'an amount of work and an energy', ...two, variants: perEnergyVariants, run: perEnergy },
  heat: { takes: 'a flow, the warm side and the cold side', least: 3, most: 3, run: heat },
  level_sum: { takes: 'the sound levels of several sources', least: 2, run: levelSum },
  without_background: { takes: 'a sound level and its background', ...two, run: withoutBackground },
  approach: { takes: 'one logged reading', least: 1, most: 1, leaf: true, variants: approachVariants, run: approach },
  at_distance: { takes: 'a sound level, the distance it was read at, and another distance', least: 3, most: 3, run: atDistance },
};
