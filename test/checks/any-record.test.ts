// Whatever stands in a record, the checks end, say whole sentences at real places, and say the same again.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runChecks } from '../../pipeline/checks/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { Exact, unit } from '../../pipeline/quantities/index.js';
import { bareEpisode, type Episode, makeKey, type Reading, type Stated, type Trace } from '../../pipeline/records/index.js';

const place = { file: 'data/example/episode.yaml', line: 1, column: 1, endLine: 1, endColumn: 2 };
const pick = (...ids: string[]) => fc.constantFrom(...ids);
const key = fc.record({
  setup: pick('', 'bench', 'case'), setting: pick('', 'stock', 'low', 'uv'), workload: pick('', 'scene', 'village'),
  measure: pick('temperature', 'power', 'frequency', 'noise', 'frame_rate', 'frame_time', 'voltage', 'current', 'utilisation'),
  part: pick('', 'core', 'hotspot', 'board', 'wall', 'room', 'average', 'low', 'background'), phase: pick('', 'idle', 'load', 'limit', 'target', 'rated', 'offset'),
}).map(makeKey);
const quantity = fc.record({ n: fc.integer({ min: -2000, max: 100_000 }), decimals: fc.integer({ min: 0, max: 3 }), id: pick('degC', 'degF', 'K', 'W', 'Wh', 'kW', 'MHz', 'GHz', 'dB(A)', 'fps', 'ms', 'V', 'mV', 'A', '%', 'x') })
  .map(({ n, decimals, id }) => ({ value: Exact.of(n, 10 ** decimals), decimals, unit: unit(id) }));
const reading: fc.Arbitrary<Reading> = fc.record({ key, run: pick('', '1', '2', '3', '4', '5', '6', '7'), quantity, aside: fc.integer({ min: 0, max: 9 }) })
  .map(({ aside, ...r }) => ({ ...r, constant: r.run === '', place, ...(aside === 0 && r.run && { aside: { reason: 'a window was open', place } }) }));
const stated: fc.Arbitrary<Stated> = fc.record({
  kind: pick('rise', 'difference', 'percent_change', 'points', 'percent_of', 'ratio', 'mean', 'rank.better', 'rank.highest', 'median', 'range', 'count', 'over_room', 'per_watt', 'nonsense'),
  operands: fc.array(key, { minLength: 1, maxLength: 3 }), quantity,
}).map((s) => ({ ...s, place, valuePlace: place }));
const trace: fc.Arbitrary<Trace> = fc.record({
  at: fc.record({ setup: pick('bench'), setting: pick('stock'), workload: pick('scene'), measure: pick('temperature', 'power', 'frequency', 'frame_time', 'power_limit'), part: pick('core', 'board'), run: pick('1', '2') }),
  id: pick('degC', 'W', 'MHz', 'ms'), values: fc.array(fc.oneof(fc.double({ min: -50, max: 5000, noNaN: true }), fc.constant(NaN)), { maxLength: 20 }), start: fc.integer({ min: 0, max: 20 }),
}).map(({ at, id, values, start }) => ({
  ...at, id: `${Object.values(at).slice(0, 5).join('/')}#${at.run}`, unit: unit(id), values, times: values.map((_, i) => i), place,
  windows: [{ phase: 'idle', start: 0, end: start }, { phase: 'load', start, end: 20 }],
}));

test('checks end and speak whole sentences on any record', () => {
  fc.assert(fc.property(fc.array(reading, { maxLength: 40 }), fc.array(stated, { maxLength: 6 }), fc.array(trace, { maxLength: 5 }), (readings, said, traces) => {
    const make = (): Episode => {
      const bare = bareEpisode(readings, [], place);
      for (const [id, kind] of [['stock', 'stock'], ['low', 'power-limit'], ['uv', 'undervolt']] as const) {
        const setting = bare.settings.get(id);
        if (setting) bare.settings.set(id, { ...setting, kind, parameters: readings.filter((r) => r.constant && r.key.split('/')[1] === id).map((r) => r.key) });
      }
      return { ...bare, stated: said, traces, date: '2026-03-14' };
    };
    const run = () => { const episode = make(); return runChecks(episode, new Facts(episode)); };
    const found = run();
    for (const f of found) {
      expect(f.message).toMatch(/^[^\s].*[^.\s]$/s);
      expect(f.message).not.toMatch(/undefined|NaN|Infinity|\[object/);
      expect(f.place.line).toBeGreaterThan(0);
    }
    expect(run()).toEqual(found);
  }), { numRuns: 300, seed: 20260314 });
});
