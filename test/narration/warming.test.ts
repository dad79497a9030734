// Degrees for each watt, and temperatures corrected to the reference room, each against words written down beforehand.
import { expect, test } from 'vitest';
import { readQuantity } from '../../pipeline/quantities/index.js';
import { said } from './episodes.js';

const bench = `
bench//scene/temperature/core/load: 65.0 65.2 64.8 °C
bench//scene/temperature/room/load: 20.0 20.0 20.0 °C
bench//scene/power/core/load: 150.0 150.2 149.8 W
`.trim();
const q = readQuantity('21 °C');
const referenceRoom = 'quantity' in q ? q.quantity : undefined;

// (65 − 20) ÷ 150 = 0.3
test('over the room for each watt of its own', () => {
  expect(said(bench, {}, {}, 'per watt')).toEqual(['The core was zero point three degrees per watt of core power over the room under load.']);
});
test('of the one power that has a limit', () => {
  const board = bench.replace('power/core', 'power/board');
  expect(said(board, {}, {}, 'per watt')).toEqual([]);
  expect(said(`${board}\n///power/board/limit: = 160 W`, {}, {}, 'per watt')).toEqual(['The core was zero point three degrees per watt of board power over the room under load.']);
});
// Nobody follows "zero point zero three"; the page has it.
test('too small to be followed by ear', () => {
  expect(said(bench.replace('150.0 150.2 149.8', '1500 1502 1498'), {}, {}, 'per watt')).toEqual([]);
});
// 65 − (20 − 21) = 66
test('corrected to the reference room, and said so', () => {
  expect(said(bench, { referenceRoom }, {}, 'reference room')).toEqual(['The core was sixty-six degrees under load, corrected to the reference room.']);
  expect(said(bench, {}, {}, 'reference room')).toEqual([]);
  expect(said(bench.replaceAll('20.0', '21.0'), { referenceRoom }, {}, 'reference room')).toEqual([]);
});
