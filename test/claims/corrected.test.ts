// Temperatures told as corrected to the reference room are held to the corrected ones, and to nothing else.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { narrate } from '../../pipeline/narration/index.js';
import { readEpisode } from '../records/reading.js';

const record = (reference: string): Facts => new Facts(readEpisode(`title: Two boxes
date: 2026-03-14
${reference}
setups:
  bench: {name: Bench, spoken: [the bench]}
  cabinet: {name: Cabinet, spoken: [the cabinet]}
workloads: [harbour]
measures: {temperature: {better: lower, matters: 1 K}}
parts: {core: Core}
readings:
  - {for: {setup: bench, workload: harbour}, room: 22.5 22.6 22.4 °C, temperature/core: {idle: 34.1 34.2 34.0 °C, load: 66.2 66.4 66.0 °C}, power/core: {load: 198.0 198.3 198.7 W}}
  - {for: {setup: cabinet, workload: harbour}, room: 23.1 23.2 23.0 °C, temperature/core: {idle: 36.1 36.2 36.0 °C, load: 76.2 76.4 76.0 °C}, power/core: {load: 197.0 198.3 197.7 W}}
`).episode!);
const facts = record('reference room: 21 °C');
const read = (script: string, of = facts) => proof(new Source('script.md', script), of).mentions.map((m) => [m.verdict, (m.facts[0] ?? '').split(':')[0]].join(' ').trim());

// 66.2 − 1.5 = 64.7; 76.2 − 2.1 = 74.1; 74.1 − 64.7 = 9.4.
test.each([
  ['Corrected to the reference room, the core on the bench was 64.7 degrees under load.', ['agrees at_room']],
  ['On the bench, the core was 64.7 degrees under load, corrected to the reference room.', ['agrees at_room']],
  ['Corrected to a room of 21 degrees, the core in the cabinet was 74.1 degrees under load.', ['not-a-claim', 'agrees at_room']],
  ['Adjusted for the room, the core in the cabinet reached 74.1 degrees under load.', ['agrees at_room']],
  ['Corrected to the reference room, the core on the bench was 66.2 degrees under load.', ['disagrees at_room']],
  ['Corrected to the reference room, the core in the cabinet was 9.4 degrees warmer than on the bench under load.', ['agrees difference']],
  // Not the room of the record: 78.1 would be right there.
  ['Corrected to a room of 25 degrees, the core in the cabinet was 78.1 degrees under load.', ['untied', 'untied']],
  ['The core on the bench was 66.2 degrees under load.', ['agrees mean']],
])('%s', (script, verdicts) => expect(read(script)).toEqual(verdicts));

test('a record that names no room to correct to is held to nothing', () => {
  expect(read('Corrected to the reference room, the core on the bench was 64.7 degrees under load.', record(''))).toEqual(['untied']);
});

test.each(['words', 'digits'] as const)('what narration says of corrected temperatures and of kelvins for each watt is read back, in %s', (form) => {
  const told = narrate(facts, { form }).filter((s) => s.facts.some((f) => /^(?:at_room|per_watt)/.test(f)));
  expect(told).toHaveLength(4);
  for (const s of told) expect(read(s.text)).toEqual([s.facts[0]!.startsWith('at_room') ? 'agrees at_room' : 'agrees per_watt']);
});
