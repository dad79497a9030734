// What a setting is set to, said again in the unit of its limit.
import { expect, test } from 'vitest';
import { verdictOn } from './right-and-wrong.js';
import { factsOf } from './record-of.js';

// An invented lamp, dimmed to half: 40 W allowed, 39.2 W drawn; at full 80 W allowed, 78 W drawn.
const lamp = factsOf([
  ['lamp', 'half', 'night', 'power', 'bulb', 'load', 39.2, 'W', 0.1], ['lamp', 'full', 'night', 'power', 'bulb', 'load', 78, 'W', 0.1],
  ['', 'half', '', 'power', 'bulb', 'limit', 40, 'W'], ['', 'full', '', 'power', 'bulb', 'limit', 80, 'W'],
], `kind,id,spoken
setup,lamp,the lamp
setting,half,50 percent;dimmed
setting,full,undimmed
workload,night,the night
part,bulb,the bulb
measure,power,power
`);

test.each(['Now the dimmer goes down to 50 percent, which means N watts.', 'At 50 percent, or N watts, the lamp glows.', 'Dimmed, it is allowed half. Take it down to 50 percent, that is N watts.'])('%s', (text) => {
  expect(verdictOn(lamp, text.replace('N', '40'), '40')).toBe('agrees');
  expect(verdictOn(lamp, text.replace('N', '45'), '45')).not.toBe('agrees');
});
