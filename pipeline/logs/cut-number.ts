// A log that breaks off within its last number: 697.2 becomes 69, which is a number too.
import type { ReadLog } from './read-log.js';
import type { Lines } from '../places/index.js';

/** So many lines before the last must all have equally many decimals, and one of them a final zero: some loggers drop those. */
const alike = 50;

/** Told where the last cell of the last line has fewer decimals than those of all the lines before it. */
export function tellCutNumber(log: ReadLog, delimiter: string, source: Lines): void {
  const last = log.lastLines.at(-1) ?? 0;
  if (last <= alike + 1) return;
  const cell = (line: number): string => source.line(line).split(delimiter).at(-1)!.trim();
  const decimals = (text: string): number => (/^[+-]?\d+$/.test(text) ? 0 : /^[+-]?\d+[.,](\d*)$/.exec(text)?.[1]!.length ?? NaN);
  const said = cell(last);
  const usual = decimals(cell(last - 1));
  if (!(decimals(said) < usual)) return;
  let zero = false;
  for (let line = last - alike; line < last; line++) {
    const text = cell(line);
    if (decimals(text) !== usual) return;
    zero ||= text.endsWith('0');
  }
  if (!zero) return;
  log.faults.add('cut', 'log-cut-off', 'warning', () => {
    const whole = source.wholeLine(last);
    return { ...whole, column: whole.endColumn - said.length };
  }, `the log seems to break off here: its last number, ${said}, has ${usual - decimals(said)} decimal${usual - decimals(said) === 1 ? '' : 's'} less than all before it`, { said });
}
