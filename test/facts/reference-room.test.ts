// Temperatures corrected to one room: named, asked for, and beside what was read.
import { expect, test } from 'vitest';
import { atReferenceRooms, explain, Facts, factName, isFact, listFacts, uncertaintyOf } from '../../pipeline/facts/index.js';
import { readQuantity } from '../../pipeline/quantities/index.js';
import { episodeOf } from './episode.js';

const text = `
bench/stock/scene/temperature/core/load: 66.0 66.6 67.2 °C
bench/stock/scene/temperature/room/load: 23.0 23.6 24.2 °C
bench/stock/scene/power/board/load: 248 249 250 W
case/stock/scene/temperature/core/load: 75.0 75.1 75.2 °C
`.trim();
const room = readQuantity('21 °C');
const asked = new Facts(episodeOf(text, { referenceRoom: 'quantity' in room ? room.quantity : undefined }));

test('nothing is corrected unless the record asks', () => expect(atReferenceRooms(new Facts(episodeOf(text)))).toEqual([]));

test('a degree for each degree of room, of temperatures whose room was read', () => {
  const facts = atReferenceRooms(asked);
  expect(facts.map((f) => [f.id, f.shown.replaceAll('\u202f', ' ')])).toEqual([['at_room:bench/stock/scene/temperature/core/load~part=room~=21degC', '64.0 °C']]);
  expect(factName(asked.about, facts[0]!).replaceAll('\u202f', ' ')).toMatch(/, corrected to a room of 21 °C$/);
  expect(listFacts(asked).map((f) => f.kind)).toContain('at_room');
});

test('the correction is told where it is explained, and what core and room share cancels', () => {
  const [fact] = atReferenceRooms(asked);
  expect(explain(asked, fact!.id).toString()).toContain('66.6 − (23.6 − 21), one degree for each degree of room');
  // Run by run 43.0 over the room: no scatter is left, only the steps of 0.1 of both.
  expect(uncertaintyOf(asked, fact!)!.standard).toBeCloseTo(Math.hypot(0.1, 0.1) / Math.sqrt(12), 9);
});

test('only by a room, and only of temperatures', () => {
  const wrong = asked.derive('at_room', ['bench/stock/scene/power/board/load', 'bench/stock/scene/temperature/room/load', '=21degC']);
  expect(isFact(wrong) ? '' : wrong.why).toContain('only a temperature');
});
