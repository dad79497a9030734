// How wide a text stands in a terminal, and a text made safe to print there.

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });
const wide = /^(?![\uFF61-\uFFDC])[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]|\p{Emoji_Presentation}|\uFE0F/u;
const none = /^[\p{Mark}\p{Default_Ignorable_Code_Point}]+$/u;

/** Columns a text takes in a terminal with a fixed-width face. */
export function width(text: string): number {
  // Plain ASCII, by far the most.
  if (/^[\x20-\x7e]*$/.test(text)) return text.length;
  let sum = 0;
  for (const { segment } of segmenter.segment(text)) sum += wide.test(segment) ? 2 : none.test(segment) ? 0 : 1;
  return sum;
}

/** Control characters and changes of writing direction, which could repaint a terminal, become visible signs. */
export function harmless(text: string): string {
  return text
    .replace(/[\x00-\x08\x0a-\x1f]/g, (c) => String.fromCharCode(0x2400 + c.charCodeAt(0)))
    .replace(/\x7f/g, '\u2421')
    .replace(/[\x80-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, '\ufffd');
}

export function padEnd(text: string, columns: number): string {
  return text + ' '.repeat(Math.max(0, columns - width(text)));
}

export function padStart(text: string, columns: number): string {
  return ' '.repeat(Math.max(0, columns - width(text))) + text;
}

/** Breaks at spaces so that no line is wider than `columns`, unless one word alone is. */
export function wrap(text: string, columns: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && width(line) + 1 + width(word) > columns) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
