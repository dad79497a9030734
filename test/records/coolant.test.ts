// The coolant of a loop: as one text or with the readings that tell its heat, for the episode or a setup.
import { describe, expect, test } from 'vitest';
import { marked, readEpisode, spanOf } from './reading.js';

const record = (coolant: string, setup = '{}') => `title: T
setups: {loop: ${setup}}
parts: [loop, in, out, heater]
${coolant}
readings:
  - {for: {setup: loop}, flow/loop: {load: 2 L/min}, temperature/in: {load: 30 °C}, temperature/out: {load: 32 °C}, power/heater: {load: 250 W}}
`;
const told = ({ fluid, share, flow, warm, cold, power }: { fluid: string; share: { toString(): string }; flow?: string; warm?: string; cold?: string; power?: string }) => [fluid, share.toString(), flow, warm, cold, power].filter((x) => x !== undefined).join(' ');

test.each([
  ['coolant: water', 'water 0'],
  ['coolant: Ethylene glycol 30 %', 'ethylene glycol 30'],
  ['coolant: propylene glycol, 37.5 % by volume', 'propylene glycol 37.5'],
  ['coolant: {fluid: ethylene glycol 30 %, flow: flow/loop, warm: temperature/out, cold: temperature/in, power: power/heater}', 'ethylene glycol 30 flow/loop temperature/out temperature/in power/heater'],
])('%s', (text, expected) => {
  const { episode, findings } = readEpisode(record(text));
  expect(findings).toEqual([]);
  expect(told(episode!.coolant!)).toBe(expected);
});

test('a setup may hold another', () => {
  const { episode } = readEpisode(record('coolant: water', '{coolant: propylene glycol 40 %}'));
  expect([told(episode!.coolant!), told(episode!.setups.get('loop')!.coolant!)]).toEqual(['water 0', 'propylene glycol 40']);
});

describe('what cannot be', () => {
  test.each([
    ['coolant: ‹oil›', 'coolant-form', 'write water'],
    ['coolant: ‹ethylene glycol›', 'coolant-form', 'how much of it is glycol'],
    ['coolant: ‹ethylene glycol 70 %›', 'coolant-form', 'up to 60 %'],
    ['coolant: ‹water 30 %›', 'coolant-form', 'write water'],
    ['coolant: {fluid: water, flow: ‹flow/lop›}', 'unknown-name', 'loop'],
  ])('%s', (text, code, says) => {
    const { text: plain, spans } = marked(record(text));
    const { findings } = readEpisode(plain);
    expect(findings.map((f) => `${f.code} ${spanOf(f)}`)).toEqual([`${code} ${spans[0]}`]);
    expect(findings[0]!.message).toContain(says);
  });
});
