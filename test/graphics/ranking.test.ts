// A ranking of more rows than a phone can show is split; places and bars stay those of all.
import { expect, test } from 'vitest';
import { prepareChart } from '../../pipeline/charts/index.js';
import { prepareGraphic, rowsOf } from '../../pipeline/graphics/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { place, sample } from '../charts/sample.js';
import { stages, template, wide } from '../theme/stages.js';

const names = ['Brenno', 'Calwick', 'Dunmore', 'Erlan', 'Fosk', 'Gantry', 'Hollow', 'Imbrel', 'Jorund'];
const facts = new Facts(sample({
  setups: Object.fromEntries(names.map((n) => [n.toLowerCase(), n])), settings: { full: 'Full speed' },
  measures: { noise: ['Noise', 'lower'] }, parts: { fan: 'Fan' },
  readings: Object.fromEntries(names.map((n, i) => [`${n.toLowerCase()}/full/scene/noise/fan/load`, `${40 - 2 * i}.1 ${40 - 2 * i}.2 ${40 - 2 * i}.0 dB(A)`])),
}));
const request = { kind: 'ranking', name: 'loudness', measure: 'noise', place };

test('nine rows are counted, and are too many for one picture', () => {
  expect(rowsOf(request, facts)).toBe(9);
  expect(prepareGraphic(request, facts, wide, template).findings.map((f) => f.code)).toContain('too-many-rows');
});

test('a part shows its stretch with the places of all, and one factor for all bars', () => {
  const part = prepareGraphic({ ...request, slice: { from: 5, to: 9, part: 2, parts: 2 } }, facts, wide, template);
  expect(part.findings).toEqual([]);
  expect(part.value!.title).toBe('Fan noise (2 of 2)');
  expect(part.value!.table!.rows.map((r) => r.slice(0, 2))).toEqual([['6', 'Erlan'], ['7', 'Dunmore'], ['8', 'Calwick'], ['9', 'Brenno']]);
  const { bars } = (JSON.parse(part.value!.inputs) as { model: { bars: { width: number }[] } }).model;
  // 34.1, 36.1, 38.1 and 40.1 dB: the widths are as the figures are, the loudest of all nine has the whole width.
  expect(bars.map((b) => b.width / bars.at(-1)!.width)).toEqual([34.1, 36.1, 38.1, 40.1].map((v) => expect.closeTo(v / 40.1, 6)));
});

test.each(stages.map((s) => [s.id, s] as const))('three rows stand on %s', (_, stage) => {
  expect(prepareGraphic({ ...request, slice: { from: 0, to: 3, part: 1, parts: 3 } }, facts, stage, template).findings).toEqual([]);
});

test('rows that are too high for a picture are too many for it, so that they are split further', () => {
  const low = { ...wide, panel: { ...wide.panel, height: 500 } };
  const { findings } = prepareGraphic({ ...request, slice: { from: 0, to: 6, part: 1, parts: 2 } }, facts, low, template);
  expect(findings.map((f) => f.code)).toContain('too-many-rows');
});

test.each(stages.map((s) => [s.id, s] as const))('places that the runs do not tell apart are said to be so, as on the chart, and six rows stay together on %s', (_, stage) => {
  const flows = { alder: '4.5 4.5 4.6', birch: '4.1 4.2 4.1', cedar: '3.4 3.4 3.5', elder: '3.0 2.9 3.2', hazel: '2.9 2.8 3.1', larch: '2.8 2.6 3.0' };
  const six = new Facts(sample({
    setups: Object.fromEntries(Object.keys(flows).map((id) => [id, id])), settings: { full: 'Full speed' }, measures: { flow: ['Flow', 'higher'] }, parts: { loop: 'Loop' },
    readings: Object.fromEntries(Object.entries(flows).map(([id, runs]) => [`${id}/full/scene/flow/loop/load`, `${runs} L/min`])),
  }));
  const ranked = { ...request, measure: 'flow' };
  for (const { value, findings } of [prepareGraphic(ranked, six, stage, template), prepareChart({ ...ranked, kind: 'ranked' }, six, stage)]) {
    expect(findings).toEqual([]);
    expect(value!.alt).toContain('places 4 to 6 too close to call');
  }
  expect(prepareGraphic({ ...ranked, setups: ['alder', 'birch', 'cedar'] }, six, stage, template).value!.alt).not.toContain('too close');
});
