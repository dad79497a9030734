// Results of another day stand beside those of today: the room of that day counts.
import { expect, test } from 'vitest';
import { checks } from '../../pipeline/checks/index.js';
import { Limits } from '../../pipeline/checks/limits.js';
import { Facts } from '../../pipeline/facts/index.js';
import { episodeOf } from '../facts/episode.js';

const check = checks.find((c) => c.name === 'room-differs')!;
const own = 'after/stock/scene/temperature/core/load: 63 63 62 °C\nafter/stock/scene/temperature/room/load: 21.3 21.0 21.1 °C\n';
const core = 'before/stock/scene/temperature/core/load';
const room = 'before/stock/scene/temperature/room/load';

function said(more: string, quoted: string[]): string[] {
  const episode = episodeOf(own + more);
  episode.quotes = quoted.map((as) => ({ episode: 'earlier', fact: `mean:${as}`, as, place: episode.place }));
  return check.run({ episode, facts: new Facts(episode), limits: new Limits() }).map((f) => f.message.replaceAll('\u202f', ' '));
}

test('the rooms of both days are compared', () => {
  expect(said(`${core}: = 66 °C\n${room}: = 23.1 °C`, [core, room])).toEqual(['the room was 2.0 K warmer for before than for after (23.1 °C and 21.1 °C)']);
  expect(said(`${core}: = 66 °C\n${room}: = 21.4 °C`, [core, room])).toEqual([]);
});

test('a quoted temperature without its room is told, once an episode', () => {
  const hotspot = 'before/stock/scene/temperature/hotspot/load';
  expect(said(`${core}: = 66 °C\n${hotspot}: = 79 °C`, [core, hotspot])).toEqual([expect.stringContaining('is quoted from earlier without the room of that day')]);
});

test('what is no temperature needs none', () => {
  const power = 'before/stock/scene/power/board/load';
  expect(said(`${power}: = 248 W`, [power])).toEqual([]);
});
