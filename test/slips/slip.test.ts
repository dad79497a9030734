// What kind of mistake turns one value into another, over facts of a small invented episode.
import { expect, test } from 'vitest';
import { type Fact, isFact } from '../../pipeline/facts/index.js';
import { readQuantity, unit } from '../../pipeline/quantities/index.js';
import { alternativesTo, gives, likelySlip } from '../../pipeline/slips/index.js';
import { factsOf } from '../facts/episode.js';

const facts = factsOf(`
open-bench/stock//temperature/core/idle: 28 28 28 °C
open-bench/stock/scene/temperature/core/load: 49 49 49 °C
open-bench/limit/scene/temperature/core/load: 44 44 45 °C
open-bench/stock/scene/power/board/load: 415 415 415 W
open-bench/limit/scene/power/board/load: 355 355 355 W
///power/board/limit: = 450 W
open-bench/stock/scene/utilisation/core/load: 90 90 90 %
open-bench/limit/scene/utilisation/core/load: 72 72 72 %
closed-case/stock/scene/power/board/load: 410 410 410 W
closed-case/limit/scene/power/board/load: 350 350 350 W
`);

const cases: [id: string, said: string, kind: string | undefined, says: RegExp][] = [
  // 415 W to 355 W is 14 %, and 17 % when taken of 355 W: common practice, no published source.
  ['percent_change:open-bench/limit/scene/power/board/load~setting=stock', '-17 %', 'wrong-base', /taken of limit instead of stock/],
  ['percent_change:open-bench/limit/scene/power/board/load~setting=stock', '-11 %', undefined, /$/],
  ['percent_change:open-bench/limit/scene/power/board/load~setting=stock', '14 %', 'direction', /wrong direction/],
  ['percent_change:open-bench/limit/scene/power/board/load~setting=stock', '-21 %', 'wrong-base', /limit/],
  ['percent_of:open-bench/limit/scene/power/board/load~setting=stock', '79 %', 'wrong-base', /limit instead of/],
  ['percent_change:open-bench/limit/scene/utilisation/core/load~setting=stock', '-18 %', 'points-for-percent', /points/],
  ['points:open-bench/limit/scene/utilisation/core/load~setting=stock', '-20 points', 'percent-for-points', /percent/],
  ['rise:open-bench/stock/scene/temperature/core/load~workload=,phase=idle', '70 °F', 'temperature-for-difference', /as if it were a temperature/],
  ['rise:open-bench/stock/scene/temperature/core/load~workload=,phase=idle', '12 K', 'transposed', /changed places/],
  ['mean:open-bench/stock/scene/power/board/load', '410 W', 'wrong-subject', /closed case/],
  ['mean:open-bench/stock/scene/power/board/load', '0.415 W', 'wrong-unit', /kW/],
  ['mean:open-bench/stock/scene/power/board/load', '41.5 W', 'decimal-point', /point/],
  ['mean:open-bench/stock/scene/power/board/load', '418 W', 'digit', /digit/],
  ['mean:open-bench/limit/scene/temperature/core/load', '45 °C', 'rounding', /rounds down/],
];

for (const [id, said, kind, says] of cases) {
  test(`${id} said to be ${said}`, () => {
    const fact = facts.get(id);
    expect(isFact(fact)).toBe(true);
    const read = readQuantity(said) as { quantity: Parameters<typeof gives>[0] };
    expect(gives(read.quantity, fact as Fact)).toBe(false);
    const slip = likelySlip(read.quantity, fact as Fact, alternativesTo(fact as Fact, facts));
    expect(slip?.kind).toBe(kind);
    expect(slip?.says ?? '').toMatch(says);
  });
}

test('what is right is given', () => {
  const rise = facts.get('rise:open-bench/stock/scene/temperature/core/load~workload=,phase=idle') as Fact;
  for (const said of ['21 K', '21 °C', '21.0 °C', '37.8 °F', '38 °F']) expect(gives((readQuantity(said) as { quantity: Parameters<typeof gives>[0] }).quantity, rise), said).toBe(true);
  const change = facts.get('percent_change:open-bench/limit/scene/power/board/load~setting=stock') as Fact;
  expect(gives({ value: change.value.round(0), decimals: 0, unit: unit('%') }, change)).toBe(true);
});
