import { expect, test } from 'vitest';
import { withoutMarkup } from '../../pipeline/script/markup.js';

test.each<[text: string, ...unsaid: string[]]>([
  ['<v Ada>it draws <00:00:06.250><c.loud>205 watts</c>', '<v Ada>', '<00:00:06.250>', '<c.loud>', '</c>'],
  ['see [the log](https://example.org/run/3?n=4 "run 4") of 61 °C', '(https://example.org/run/3?n=4 "run 4")'],
  ['at https://example.org/5090/x it says', 'https://example.org/5090/x'],
  ['61 <!-- was 62 --> degrees', '<!-- was 62 -->'],
  ['61 <!-- never closed 62', '<!-- never closed 62'],
  ['R&amp;D&nbsp;at 5', 'amp;', '&nbsp;'],
  ['below < 5 and > 3, a<b'],
  ['a plain line (with 3 brackets)'],
])('%s', (text, ...unsaid) => {
  expect(withoutMarkup(text)).toBe(unsaid.reduce((t, u) => t.replace(u, ' '.repeat(u.length)), text));
});
