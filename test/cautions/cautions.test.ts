// Cautions: each rule is called for by what a record contains, and by nothing else.
import { expect, test } from 'vitest';
import { cautionRules, cautionsFor } from '../../pipeline/cautions/index.js';
import type { Episode } from '../../pipeline/records/index.js';
import { factsOf } from '../facts/episode.js';

const place = { file: 'data/example/episode.yaml', line: 1, column: 1, endLine: 1, endColumn: 1 };
const plain = 'bench/stock/scene/temperature/core/load: 40 41 40 °C';
const named = (...ids: string[]) => new Map(ids.map((id) => [id, { id, name: id, spoken: [id], place }]));
const setting = (id: string, kind: 'stock' | 'overclock' | 'undervolt') => new Map([[id, { id, name: id, spoken: [id], place, kind, parameters: [] }]]);

const cases: { code: string; readings?: string; change?: Partial<Episode>; because?: string }[] = [
  { code: 'mains', change: { instruments: [{ name: 'wall meter', measures: ['power'], place }] }, because: 'the instrument “wall meter”' },
  { code: 'mains', readings: 'bench/stock/scene/voltage/input/load: 229 230 230 V' },
  { code: 'liquid', readings: 'bench/stock/scene/flow/circuit/load: 1.21 1.22 1.21 L/min' },
  { code: 'liquid', change: { system: [{ name: 'Reservoir', detail: '300 mL', place }] }, because: 'the parts list has “Reservoir”' },
  { code: 'high-current', readings: 'bench/stock/scene/power/board/load: 297.6 298.1 298.0 W', because: 'board averaged 297.9 W' },
  { code: 'high-current', readings: 'bench/stock/scene/current/rail/load: 24 25 24 A' },
  { code: 'overclock', change: { settings: setting('fast', 'overclock') }, because: 'the setting “fast”' },
  { code: 'overclock', readings: '/fast//frequency/core/offset: = 120 MHz' },
  { code: 'undervolt', change: { settings: setting('low', 'undervolt') } },
  { code: 'undervolt', readings: '/low//voltage/core/offset: = -50 mV' },
  { code: 'raised-limit', readings: 'bench/stock/scene/power/chip/load: 99 99 W\nbench/fast/scene/power/chip/load: 109 109 W\n/stock//power/chip/limit: = 100 W\n/fast//power/chip/limit: = 110 W', because: 'the setting “fast” allows 110 W instead of 100 W' },
  { code: 'hot-surface', readings: 'bench/stock/scene/temperature/hotspot/load: 59 60 60 °C' },
  { code: 'hot-surface', readings: 'bench/stock/scene/temperature/hotspot/load: 141 140 140 °F' },
  { code: 'noise', readings: 'bench/stock/scene/noise/cooler/load: 80.2 79.9 80.1 dB(A)' },
  { code: 'battery', change: { parts: named('battery') } },
  { code: 'battery', readings: 'bench/stock/scene/capacity/pack/load: 5010 5000 mAh' },
  { code: 'moving-fan', readings: 'bench/stock/scene/speed/rotor/load: 1500 1510 rpm' },
  { code: 'moving-fan', change: { parts: named('fan') } },
  { code: 'opened', change: { method: [{ text: 'Fresh thermal paste for every cooler.', place }] } },
];

test.each(cases)('$code is called for ($#)', ({ code, readings, change, because }) => {
  const found = cautionsFor(factsOf(readings ? `${plain}\n${readings}` : plain, change));
  expect(found.map((c) => c.code)).toContain(code);
  if (because) expect(found.find((c) => c.code === code)!.because).toBe(because);
});

test('a cool, quiet, low-power test of plain parts calls for none', () => {
  const facts = factsOf(`${plain}\nbench/stock/scene/power/board/load: 60 61 60 W\nbench/stock/scene/noise/case/load: 31.0 31.2 dB(A)\nbench/stock/scene/voltage/core/load: 0.95 0.95 V`);
  expect(cautionsFor(facts)).toEqual([]);
});

test('the limit that is only allowed, never measured, heats and sounds like nothing', () => {
  const facts = factsOf(`${plain}\n/stock//temperature/core/limit: = 105 °C\n/stock//noise/case/target: = 85 dB(A)`);
  expect(cautionsFor(facts)).toEqual([]);
});

test('just below a threshold nothing is said, at it something is', () => {
  const at = (line: string) => cautionsFor(factsOf(line)).map((c) => c.code);
  expect(at('a/b/c/temperature/core/load: 59.9 59.9 °C')).toEqual([]);
  expect(at('a/b/c/temperature/core/load: 60.0 60.0 °C')).toEqual(['hot-surface']);
  expect(at('a/b/c/noise/case/load: 79.9 79.9 dB(A)')).toEqual([]);
  expect(at('a/b/c/noise/case/load: 80.0 80.0 dB(A)')).toEqual(['noise']);
});

test('a lower limit is no raised limit', () => {
  const facts = factsOf('bench/stock/scene/power/chip/load: 99 99 W\nbench/low/scene/power/chip/load: 79 79 W\n/stock//power/chip/limit: = 100 W\n/low//power/chip/limit: = 80 W');
  expect(cautionsFor(facts)).toEqual([]);
});

test('a pump that turns is a liquid and no fan', () => {
  expect(cautionsFor(factsOf('a/b/c/pump_speed/pump/load: 2400 2410 rpm', { parts: named('pump') })).map((c) => c.code)).toEqual(['liquid']);
});

test('what the author warns of comes last, in the author’s words', () => {
  const facts = factsOf(plain, { cautions: [{ text: 'The bench has no cover.', place }] });
  expect(cautionsFor(facts)).toEqual([{ code: 'author', text: 'The bench has no cover.', brief: 'The bench has no cover.', subject: '', because: 'the record says so' }]);
});

test('every caution defers to makers, local rules or qualified people, and has a code of its own', () => {
  for (const rule of cautionRules) {
    expect(rule.text, rule.code).toMatch(/maker|local|qualified/);
    expect(rule.text).toMatch(/\.$/);
    expect(rule.text, 'no caution tells how to get round a limit').not.toMatch(/\b(bypass|disable|remove the limit|unlock|flash)\b/i);
  }
  expect(new Set(cautionRules.map((r) => r.code)).size).toBe(cautionRules.length);
});

test('every threshold states where it comes from', () => {
  for (const sign of cautionRules.flatMap((r) => r.signs)) if (sign.sign === 'reading') expect(sign.source.length).toBeGreaterThan(10);
});

test.each(cautionRules.map((r) => [r.code, r] as const))('%s is said in short in one sentence that fits beside others, and has a name', (_, { brief, subject }) => {
  expect(brief).toMatch(/^[A-Z][^.]*\.$/);
  expect(brief.length).toBeLessThanOrEqual(90);
  expect(subject).toMatch(/^[a-z-][a-z -]+$/);
});
