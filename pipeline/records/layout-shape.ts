// How a log is laid out, as the record says it.
import { encodings } from '../logs/index.js';
import { frames } from './frames-shape.js';
import { asId, column, measurePath, quantity, ref, text, texts } from './plain-shapes.js';
import { energy, throttle } from './power-shape.js';
import { steady } from './steady-shape.js';
import { byKind, choice, fields, mapOf, type Read, turned, type Written, written } from './shape.js';

export const delimiter = written('a delimiter', 'What separates the columns: one character, or "tab".', (t) => (t === 'tab' || [...t].length === 1 ? undefined : `"${t}" is not one character; write "," or ";" or tab`), { type: 'string' });
export const decimal = choice(['point', 'comma', '.', ','], 'Decimal sign: point (67.5) or comma (67,5).');
export const encoding = choice(encodings, 'Character encoding; UTF-8 where nothing is said, a byte order mark is understood.');
const whole = (says: string) => written('a whole number', says, (t) => (/^\d{1,6}$/.test(t) ? undefined : `"${t}" is not a whole number`), { type: 'integer', minimum: 0 });

type ColumnDraft = { reads: Written; take: { value: 'mean' | 'max' | 'min' | 'last' | 'increase' } | undefined } | undefined;
const columnRead = byKind<ColumnDraft>({
  scalar: turned(written('measure/part and unit (temperature/core °C)', 'What the column holds, and its unit: temperature/core °C'), (reads) => ({ reads, take: undefined })),
  map: turned(fields({
    reads: written('measure/part and unit (temperature/core °C)', 'What the column holds, and its unit: temperature/core °C'),
    take: choice(['mean', 'max', 'min', 'last', 'increase'], 'What one run gives: the mean over the window (default), its largest, smallest or last value, or how much a counter grew.'),
  }, { expects: 'a map of reads, take', required: ['reads'] }), ({ fields: f }) => f.reads && { reads: f.reads, take: f.take }),
}, 'measure/part and unit (temperature/core °C)');

const windowText = written('a window (last 60 s)', 'What counts: last 60 s; first 60 s; 30 s to 150 s; 1:00 to 3:00; with "of load" cut from that phase; steady, where it is found by the rule under "steady"; steady to 1 K in 60 s, with a rule of its own.', undefined, { type: 'string' });

export const layout = fields({
  delimiter, decimal, encoding,
  comment: written('the start of a comment line', 'Lines that begin with this are passed over.'),
  skip: whole('Lines before the headings that are passed over.'), under: whole('Lines under the headings that are passed over, such as a line of units.'),
  header: choice(['true', 'false'], 'Whether a line of headings stands first; true where nothing is said.', [true, false]),
  missing: texts('What stands in a cell for "no value", besides nothing: N/A, -'),
  time: fields({
    column, unit: text('s, ms, min …; clock for h:m:s, over midnight too; iso for 2026-03-14T10:00:00.25. Where nothing is said: s.'),
    every: quantity('Time from one line to the next, where the log has no time column: 250 ms'),
    rate: quantity('Lines per second, where the log has no time column: 4 Hz'),
  }, { expects: 'a map of column and unit, or every, or rate', says: 'Where the time stands, or the sample rate.' }),
  phases: fields({
    column, map: mapOf(ref('A phase, or skip.'), 'phases by what stands in the column', () => undefined, 'What stands in the column, and the phase it means; lines with anything else are left out.'),
    by: written('measure/part', 'Where no column says the phase: idle where this one is low, load where it is high, the longest stretch of each, idle before load: power/board or utilisation/card', measurePath(2), { type: 'string' }),
  }, { expects: 'a map of column and map, or by', says: 'The column that says the phase, or the quantity that tells it.' }),
  phase: ref('The whole log is this phase.'),
  windows: mapOf(windowText, 'windows by phase', asId, 'What counts of each phase: {idle: last 15 s, load: last 60 s}; without a phase column, of the log: {load: 1:00 to 3:00}; found by a rule: {idle: steady, load: steady}'),
  steady,
  columns: mapOf(columnRead, 'what the columns hold, by heading or number', () => undefined, 'What the columns hold: {core_temp_c: temperature/core °C}; columns left out are not read.'),
  energy,
  throttle,
  frames,
}, { expects: 'a layout', says: 'How a log is laid out.' });
export type LayoutDraft = Read<typeof layout>;

