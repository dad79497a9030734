import { expect, test } from 'vitest';
import { factsOf } from './episode.js';

const facts = factsOf(`
bench/stock/scene/power/board/load: 248 248 249 W
bench/stock//power/board/idle: 20 21 20 W
bench/low/scene/power/board/load: 199 200 200 W
case/stock/scene/power/board/load: 247 248 248 W
case/high/scene/power/board/load: 270 271 270 W
case/high/burn/power/board/load: 274 274 274 W
bench/low//power/board/limit: = 200 W
/low//power/board/limit: = 201 W
/high//power/board/limit: = 275 W
case///power/board/limit: = 260 W
///power/board/limit: = 250 W
//burn/power/board/limit: = 255 W
plan///temperature/skin/limit: = 48 °C
plan///temperature//limit: = 95 °C
bench/stock/scene/temperature/skin/load: 40 41 42 °C
bench/stock/scene/temperature/core/load: 70 71 72 °C
bench/stock/scene/temperature/core/idle: 40 41 40 °C
bench/stock/scene/temperature/room/load: 22 22 22 °C
bench/stock//temperature/room/idle: 21 21 21 °C
case///temperature/room/load: 23 23 23 °C
case/stock/scene/temperature/core/load: 70 71 72 °C
low-bench/stock/scene/temperature/core/load: 70 71 72 °C
`.trim());

test.each([
  ['the setting in this setup', 'bench/low/scene/power/board/load', 'bench/low//power/board/limit'],
  ['the setting in every setup', 'case/low/scene/power/board/load', '/low//power/board/limit'],
  ['the setting before the setup', 'case/high/scene/power/board/load', '/high//power/board/limit'],
  ['the setup before what holds everywhere', 'case/stock/scene/power/board/load', 'case///power/board/limit'],
  ['the workload before what holds everywhere', 'bench/stock/burn/power/board/load', '//burn/power/board/limit'],
  ['what holds everywhere', 'bench/stock/scene/power/board/load', '///power/board/limit'],
  ['a plan that is no thing tested', 'bench/stock/scene/temperature/skin/load', 'plan///temperature/skin/limit'],
  ['the whole measure, where the part has none of its own', 'bench/stock/scene/temperature/core/load', 'plan///temperature//limit'],
])('a limit is looked up from the specific to the general: %s', (_, key, limit) => {
  expect(facts.constantFor(key, 'limit')).toBe(limit);
});

test('another measure, part or phase has no limit of this one', () => {
  expect(facts.constantFor('bench/stock/scene/power/slot/load', 'limit')).toBeUndefined();
  expect(facts.constantFor('bench/stock/scene/power/board/load', 'target')).toBeUndefined();
  expect(facts.constantFor('not a key', 'limit')).toBeUndefined();
});

test('idle is found without a workload, or else with the same one', () => {
  expect(facts.idleOf('bench/stock/scene/power/board/load')).toBe('bench/stock//power/board/idle');
  expect(facts.idleOf('bench/stock/scene/temperature/core/load')).toBe('bench/stock/scene/temperature/core/idle');
  expect(facts.idleOf('bench/stock//power/board/idle')).toBeUndefined();
  expect(facts.idleOf('case/stock/scene/power/board/load')).toBeUndefined();
});

test.each([
  ['bench/stock/scene/temperature/core/load', 'bench/stock/scene/temperature/room/load'],
  ['bench/stock//power/board/idle', 'bench/stock//temperature/room/idle'],
  ['case/stock/scene/temperature/core/load', 'case///temperature/room/load'],
  ['low-bench/stock/scene/temperature/core/load', undefined],
  ['bench/stock/scene/temperature/room/load', undefined],
])('the room of %s', (key, room) => {
  expect(facts.roomFor(key)).toBe(room);
});

test('what can be compared differs in one field only', () => {
  expect(facts.sameBut('bench/stock/scene/power/board/load', 'setup')).toEqual(['case/stock/scene/power/board/load']);
  expect(facts.sameBut('case/high/scene/power/board/load', 'workload')).toEqual(['case/high/burn/power/board/load']);
  expect(facts.sameBut('case/high/scene/power/board/load', 'setting')).toEqual(['case/stock/scene/power/board/load']);
});

test('a setup with nothing but constants holds a plan', () => {
  expect(facts.holders()).toEqual(['plan']);
});
