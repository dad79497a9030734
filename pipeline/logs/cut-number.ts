// A log that breaks off within its last number: 697.2 becomes 69, which is a number too.
import type { Lines } from '../places/index.js';
import type { Faults } from './faults.js';

/** So many lines before the last must all have equally many digits there. */
const alike = 50;

/** A text that knows whether its last line is ended. */
export interface EndedLines extends Lines {
  readonly isEnded: boolean;
}

/**
 * Told where the last cell of the last line has fewer decimals than those of all the lines before it, one of which ends with
 * a zero (some loggers drop those); or, where the last line is not ended, fewer digits before the point.
 */
export function tellCutNumber(last: number, delimiter: string, source: EndedLines, faults: Faults): void {
  if (last <= alike + 1) return;
  const cell = (line: number): string => source.line(line).split(delimiter).at(-1)!.trim();
  const said = cell(last);
  const [whole, decimals] = digits(said);
  if (Number.isNaN(whole)) return;
  const before = Array.from({ length: alike }, (_, i) => cell(last - alike + i));
  const usual = digits(before.at(-1)!);
  const all = (i: 0 | 1): boolean => before.every((c) => digits(c)[i] === usual[i]);
  const fewer = decimals < usual[1] && all(1) && before.some((c) => c.endsWith('0'));
  const shorter = !source.isEnded && decimals === 0 && whole < usual[0] && all(0);
  if (!fewer && !shorter) return;
  const [missing, what] = shorter ? [usual[0] - whole, 'digit'] : [usual[1] - decimals, 'decimal'];
  faults.add('cut', 'log-cut-off', 'warning', () => {
    const place = source.wholeLine(last);
    return { ...place, column: place.endColumn - said.length };
  }, `the log seems to break off here: its last number, ${said}, has ${missing} ${what}${missing === 1 ? '' : 's'} less than all before it`, { said });
}

/** How many stand before and behind the point; NaN of what is no number. */
function digits(text: string): [whole: number, decimals: number] {
  const read = /^[+-]?(\d+)(?:[.,](\d*))?$/.exec(text);
  return read ? [read[1]!.length, read[2]?.length ?? 0] : [NaN, NaN];
}
