// A number and its unit stay on one line.
import { expect, test } from 'vitest';
import { held } from '../../pipeline/page/held.js';

const space = '\u00a0';
test.each([
  ['300 W', `300${space}W`], ['39.4 dB(A)', `39.4${space}dB(A)`], ['Power limit 75 %', `Power limit 75${space}%`], ['66 °C at idle', `66${space}°C at idle`], ['0.237 L/min/W', `0.237${space}L/min/W`],
  ['run 2 overheated', 'run 2 overheated'], ['Open bench', 'Open bench'],
])('%s', (text, kept) => expect(held(text)).toBe(kept));
