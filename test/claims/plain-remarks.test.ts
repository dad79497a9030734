// Plain remarks of a narrator, told of the heaters and the pump.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { facts as pump } from './bench-record.js';
import { factsOf } from './record-of.js';
import { verdictOn } from './right-and-wrong.js';

// An invented blower that turns at 1,503 and, sped up by 120 Hz on the dial, at 2,018.
const blower = factsOf([
  ['blower', 'plain', 'night', 'fan_speed', 'wheel', 'load', 1503, 'rpm', 2], ['blower', 'sped', 'night', 'fan_speed', 'wheel', 'load', 2018, 'rpm', 2],
  ['blower', 'plain', 'night', 'frequency', 'drive', 'load', 1380, 'Hz', 2], ['blower', 'sped', 'night', 'frequency', 'drive', 'load', 1490, 'Hz', 2], ['', 'sped', '', 'frequency', 'drive', 'offset', 120, 'Hz'],
], `kind,id,spoken
setup,blower,the blower
setting,plain,the plain setting
setting,sped,the faster setting
workload,night,the night
part,wheel,the wheel
part,drive,the drive
measure,fan_speed,fan speed
measure,frequency,frequency
`);

test('whole hundreds are said of what is near them, and of nothing else', () => {
  expect(verdictOn(blower, 'At the plain setting the wheel of the blower turns at 1500 rpm.', '1500')).toBe('agrees');
  expect(verdictOn(blower, 'At the faster setting the wheel of the blower turns at 2,000 rpm.', '2,000')).toBe('agrees');
  expect(verdictOn(blower, 'At the faster setting the wheel of the blower turns at 2,100 rpm.', '2,100')).toBe('disagrees');
  expect(verdictOn(blower, 'At the plain setting the wheel of the blower turns at 1600 rpm.', '1600')).toBe('disagrees');
});

test('what a setting adds on the dial is what it was set to', () => {
  expect(verdictOn(blower, 'The faster setting adds 120 hertz on paper.', '120')).toBe('agrees');
});

test('a word that compares no quantity claims nothing', () => {
  const text = 'On the wall stand the block is more interesting than the coolant.';
  expect(proof(new Source('s.md', text), pump).findings.filter((f) => f.code === 'claim-unsupported')).toEqual([]);
});
