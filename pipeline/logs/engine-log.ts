// A large log with the help of a database engine: it sums in a thread of its own, while every row, time and phase is read here,
// strictly. Whatever the two could read otherwise, or count otherwise, gives up the engine's figures.
import { AskedColumn } from './asked-column.js';
import { mostBuckets, Buckets } from './buckets.js';
import { Column } from './column.js';
import { isLevel, type LogColumn, type LogLayout } from './layout.js';
import type { LogText } from './log-text.js';
import { type Read, readRows } from './read-rows.js';
import { readAgain } from './second-reading.js';
import { type Answer, ask, type Question } from '../engine/index.js';

/** Smaller logs are read before the engine has begun. */
const usualLeast = 32 * 1024 * 1024;
/** Rows that tell how the others will be. */
const head = 4096;
/** A block of the engine's is surely no longer than a bucket, were there so many times fewer lines than seem likely. */
const spare = 1.25;
/** Of all rows at most this share lies in buckets that are read again because a phase begins in them. */
const mostAgain = 1 / 8;

/** The same as without the engine; undefined where it cannot be had so. */
export function withEngine(text: LogText, layout: LogLayout, most = mostBuckets): { buckets: Buckets; read: Read } | undefined {
  const { engine } = layout;
  const question = engine && questionOf(text, layout, most, engine.least ?? usualLeast);
  if (!question) return undefined;
  const asked = ask(engine.module, question);
  const buckets = new Buckets(layout.columns.map(isLevel), text.likelyLines, most, (level, size, index) => (isAsked(layout.columns[index]!, index) ? new AskedColumn(level, size) : new Column(level, size)));
  const read = readRows(text, layout, buckets);
  buckets.settle();
  if (!read.reader || !agrees(question, buckets, read)) {
    asked.stop();
    return undefined;
  }
  const answer = asked.answer();
  return typeof answer !== 'string' && text.unchanged() && takeOver(answer, question, text, layout, buckets, read) ? { buckets, read } : undefined;
}

/** Every other column is the engine's, so that it and the reading here take about as long; sound levels never are, whose energies no decimals hold. */
function isAsked(column: LogColumn, index: number): boolean {
  return index % 2 === 0 && !isLevel(column);
}

/** From its first rows; undefined where a log is nothing for the engine. */
function questionOf(text: LogText, layout: LogLayout, most: number, least: number): Question | undefined {
  const file = text.plainFile;
  if (!file || file.size < least || layout.decimalComma || layout.delimiter.length !== 1 || layout.delimiter.charCodeAt(0) > 127 || !layout.columns.some(isAsked)) return undefined;
  const first = new Buckets(layout.columns.map(isLevel), head);
  const read = readRows(text, layout, first, head);
  if (!read.reader || read.faults.list().length > 0 || first.total === 0) return undefined;
  const columns = new Map<number, number>();
  layout.columns.forEach((c, i) => {
    if (isAsked(c, i)) columns.set(read.columns.at[i]!, first.columns[i]!.decimals);
  });
  if (Math.max(...columns.values()) > 15) return undefined;
  const block = 2 ** Math.max(0, Math.floor(Math.log2(text.likelyLines / most / spare)));
  return {
    path: file.path, delimiter: layout.delimiter, skip: first.lines[0]! - 1, width: read.columns.width, missing: [...layout.missing],
    columns: Array.from(columns, ([at, decimals]) => ({ at, decimals })), block,
  };
}

type Rows = Extract<Read, { columns: unknown }>;

/** Whether each line was a row, none with a fault, and the engine was told of all decimals. */
function agrees(question: Question, buckets: Buckets, { faults, columns }: Rows): boolean {
  const lines = buckets.count ? buckets.lastLines[buckets.count - 1]! - buckets.lines[0]! + 1 : 0;
  return faults.list().length === 0 && lines === buckets.total && buckets.lines[0] === question.skip + 1
    && buckets.columns.every((c, i) => !(c instanceof AskedColumn) || c.hasDecimals(question.columns.find((q) => q.at === columns.at[i])!.decimals));
}

function takeOver(answer: Answer, { block, columns }: Question, text: LogText, layout: LogLayout, buckets: Buckets, { reader, columns: found }: Rows): boolean {
  const blocks = Math.ceil(buckets.total / block);
  if (answer.rows.length !== blocks || !answer.rows.every((n, i) => n === Math.min(block, buckets.total - i * block))) return false;
  const asked = buckets.columns.map((c, i) => (c instanceof AskedColumn ? { column: c, given: answer.columns[columns.findIndex((q) => q.at === found.at[i])]! } : undefined));
  let row = 0;
  let again = 0;
  for (let b = 0; b < buckets.count; b++) {
    const [from, to] = [row / block, Math.min(blocks, (row += buckets.rows[b]!) / block)];
    const whole = Number.isInteger(from) && (Number.isInteger(to) || row === buckets.total);
    if (!whole && (again += buckets.rows[b]!) > mostAgain * buckets.total) return false;
    const samples = whole ? undefined : readAgain(text, layout, found, buckets, b, reader.first);
    for (let i = 0; i < asked.length; i++) {
      const a = asked[i];
      if (!a) continue;
      if (samples) a.column.refill(b, samples.values[i]!);
      else if (!a.column.take(b, together(a.given, from, Math.ceil(to)))) return false;
    }
  }
  return true;
}

/** Blocks [from, to) of a column as one. */
function together({ counts, sums, least, most, squares }: Answer['columns'][number], from: number, to: number) {
  const all = { count: 0, sum: 0, min: Infinity, max: -Infinity, squares: 0n };
  for (let i = from; i < to; i++) {
    if (counts[i] === 0) continue;
    all.count += counts[i]!;
    all.sum += sums[i]!;
    all.min = Math.min(all.min, least[i]!);
    all.max = Math.max(all.max, most[i]!);
    all.squares += squares[i]!;
  }
  return all;
}
