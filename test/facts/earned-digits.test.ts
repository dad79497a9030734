// Figures with as many digits as their uncertainty earns.
import { expect, test } from 'vitest';
import { Facts, isFact } from '../../pipeline/facts/index.js';
import { earnedDecimals } from '../../pipeline/facts/earned-digits.js';
import { figure } from '../../pipeline/facts/figure.js';
import { episodeOf } from './episode.js';

test.each([
  [0.96, 1], [0.3, 1], [0.29, 2], [0.11, 2], [1.4, 1], [2.9, 1], [3.1, 0], [9.9, 0], [14, 0], [0.027, 3], [0.005, 3], [1, 1], [0.1, 2], [280, 0],
])('%s earns %s decimals', (half95, decimals) => expect(earnedDecimals(half95)).toBe(decimals));

// JCGM 100:2008, 7.2.6: 10.05762 Ω with 27 mΩ is given as 10.058 Ω.
test('the example of the guide', () => expect((10.05762).toFixed(earnedDecimals(0.027))).toBe('10.058'));

// JCGM 100:2008, 7.2.6: no more than two significant digits of an uncertainty; 28.05 kHz goes down to 28 kHz, 27 mΩ stay.
test('an uncertainty itself is told with two digits', () => expect([28.05, 0.027, 0.8957, 5.6144].map((u) => figure(u, 2))).toEqual(['28', '0.027', '0.90', '5.6']));

test('a record asks for it; figures without an uncertainty stay as they were read', () => {
  const text = 'a///power//load: 247.63 250.31 252.12 W\nb///power//load: 247.63 W\nc///temperature/core/load: 61 61 61 °C';
  const [read, earned] = [new Facts(episodeOf(text)), new Facts(episodeOf(text, { digits: 'earned' }))];
  const shown = (facts: Facts, key: string): string => {
    const f = facts.value(key);
    return isFact(f) ? f.shown.replaceAll('\u202f', ' ') : f.why;
  };
  // s = 2.26, U = 4.303 · 2.26/√3 = 5.6: whole watts.
  expect(shown(read, 'a///power//load')).toBe('250.02 W');
  expect(shown(earned, 'a///power//load')).toBe('250 W');
  expect(shown(earned, 'b///power//load')).toBe('247.63 W');
  // Steps of 1: U = 1.96/√12 = 0.57.
  expect(shown(earned, 'c///temperature/core/load')).toBe('61.0 °C');
});
