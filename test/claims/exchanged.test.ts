// Two figures that have changed places are both wrong, and what is suggested puts both right.
import { expect, test } from 'vitest';
import { heard } from './heater-record.js';

test.each([
  // 44.0 °C and 41.5 °C, 27.2 dB and 25.0 dB, at thirty percent.
  ['On the cold evening at thirty percent the front reaches 41.5 degrees on the Sundin and 44.0 on the Makerel.', ['44.0 degrees', '41.5']],
  ['On the cold evening at thirty percent, the noise is 25.0 decibels with the Sundin and 27.2 with the Makerel.', ['27.2 decibels', '25.0']],
])('%s', (text, right) => {
  const wrong = heard(text).filter((m) => m.verdict === 'disagrees');
  expect(wrong.map((m) => m.suggest)).toEqual(right);
  expect(wrong.map((m) => m.slip)).toEqual(['right for the Makerel', 'right for the Sundin'].map((s) => expect.stringMatching(new RegExp(s, 'i'))));
});

test('where they are right, neither is wrong', () => {
  expect(heard('On the cold evening at thirty percent the front reaches 44.0 degrees on the Sundin and 41.5 on the Makerel.').map((m) => m.verdict).filter((v) => v !== 'not-a-claim')).toEqual(['agrees', 'agrees']);
});
