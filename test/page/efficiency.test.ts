// What a watt gives, computed by hand from the readings.
import { expect, test } from 'vitest';
import { Facts } from '../../pipeline/facts/index.js';
import { Exact } from '../../pipeline/quantities/index.js';
import { resultTables } from '../../pipeline/page/results.js';
import { episodeOf, factsOf } from '../facts/episode.js';

const bench = `
bench/stock/scene/temperature/core/load: 65 65 65 °C
bench/stock/scene/temperature/room/load: 20.0 20.0 20.0 °C
bench/stock/scene/power/board/load: 300 300 300 W
bench/stock/scene/frame_rate/average/load: 120.0 120.0 120.0 fps
bench/low/scene/temperature/core/load: 60 60 60 °C
bench/low/scene/temperature/room/load: 20.0 20.0 20.0 °C
bench/low/scene/power/board/load: 200 200 200 W
bench/low/scene/frame_rate/average/load: 100.0 100.0 100.0 fps
`.trim();
const limits = '\n///power/board/limit: = 320 W';
const table = (facts: Facts) => {
  const { tables, shown } = resultTables(facts);
  const found = tables.find((t) => t.id === 'results-per-watt');
  return found && { groups: found.groups.map((g) => g.name), rows: found.rows.map((r) => [r.name, ...r.cells.map((c) => c?.value)]), shown: shown.map((f) => f.id) };
};

test('kelvins and frames for each watt, test by test', () => {
  const { groups, rows, shown } = table(factsOf(bench + limits))!;
  expect(groups).toEqual(['Core temperature over room per watt', 'Average frame rate per watt']);
  expect(rows).toEqual([['stock', '0.150 K/W', '0.400 fps/W'], ['low', '0.200 K/W', '0.500 fps/W']]);
  expect(shown).toContain('per_watt:(over_room:bench/low/scene/temperature/core/load~part=room)~measure=power,part=board');
});

test('a power without a limit is that of something beside it, and heats nothing worth telling', () => {
  expect(table(factsOf(bench))).toBeUndefined();
});

test('what draws by itself is told by its own power, limit or none', () => {
  const found = table(factsOf(`${bench}\nbench/stock/scene/power/core/load: 225 225 225 W\nbench/low/scene/power/core/load: 160 160 160 W`))!;
  expect(found.groups).toEqual(['Core temperature over room per watt']);
  expect(found.rows).toEqual([['stock', '0.200 K/W'], ['low', '0.250 K/W']]);
});

test('heat in the coolant, and its share of the power', () => {
  const e = episodeOf(`
loop/s/heater/flow/loop/load: 1.00 1.00 1.00 L/min
loop/s/heater/temperature/out/load: 22.2 22.2 22.2 °C
loop/s/heater/temperature/in/load: 17.8 17.8 17.8 °C
///power/heater/set: = 310 W`.trim());
  e.coolant = { fluid: 'water', share: Exact.zero, flow: 'flow/loop', warm: 'temperature/out', cold: 'temperature/in', power: 'power/heater', place: e.place };
  // 1 L/min ÷ 60 · 998.206 kg/m³ · 4184.8 J/(kg·K) · 4.4 K ÷ 1000 = 306.3 W, of 310 W.
  expect(table(new Facts(e))).toMatchObject({ groups: ['Heat in the coolant', 'Heat, share of the power'], rows: [['All', '306 W', '99 %']] });
});
