// How an unknown CSV is written: its delimiter, decimal sign, preamble and headings, told from the text alone.
import { clockSeconds, isoSeconds, NumberCells, scanCsv } from '../logs/index.js';

export interface Sniffed {
  delimiter: string;
  decimalComma: boolean;
  /** Lines before the headings. */
  skip: number;
  header: boolean;
  headings: string[];
  rows: string[][];
  /** Lines left out, as they have other than the usual number of cells. */
  ragged: number;
}

const delimiters = [',', ';', '\t', '|'];
const most = 5000;

export function sniffCsv(text: string): Sniffed | undefined {
  const lines = text.split(/\r\n|\n|\r/, 60).filter((l) => l.trim() !== '');
  if (lines.length === 0) return undefined;
  const delimiter = delimiters.map((d) => ({ d, score: agreement(lines, d) })).reduce((a, b) => (b.score > a.score ? b : a)).d;
  const { skip } = preamble(text, delimiter);
  const rows: string[][] = [];
  scanCsv(text, { delimiter, skip }, (cells) => {
    rows.push(cells.map((c) => c.trim()));
    return rows.length < most;
  }, () => undefined);
  if (rows.length === 0) return undefined;
  const decimalComma = delimiter !== ',' && commas(rows.slice(1));
  const header = rows.length > 1 ? !looksLikeValues(rows[0]!, decimalComma) : !rows[0]!.some((c) => isNumber(c, decimalComma));
  const headings = header ? rows.shift()! : rows[0]!.map((_, i) => String(i + 1));
  const whole = rows.filter((r) => r.length === headings.length);
  return { delimiter, decimalComma, skip, header, headings, rows: whole, ragged: rows.length - whole.length };
}

/** Lines that have the usual number of cells, weighed by that number: the delimiter that cuts most lines alike. */
function agreement(lines: string[], delimiter: string): number {
  const counts = new Map<number, number>();
  for (const l of lines) {
    const n = l.replace(/"[^"]*"/g, '').split(delimiter).length;
    counts.set(n, (counts.get(n) ?? 0) + 1);
  }
  let best = 0;
  for (const [n, times] of counts) if (n > 1) best = Math.max(best, times * 100 + n);
  return best;
}

function preamble(text: string, delimiter: string): { skip: number } {
  const lines = text.split(/\r\n|\n|\r/, 60);
  const widths = lines.map((l) => l.replace(/"[^"]*"/g, '').split(delimiter).length);
  const usual = [...widths].sort((a, b) => widths.filter((w) => w === b).length - widths.filter((w) => w === a).length || b - a)[0]!;
  if (usual === 1) return { skip: 0 };
  return { skip: Math.max(0, widths.indexOf(usual)) };
}

function commas(rows: string[][]): boolean {
  let comma = 0;
  let point = 0;
  for (const row of rows.slice(0, 200)) {
    for (const c of row) {
      if (/^[+-]?\d+,\d+$/.test(c)) comma++;
      if (/^[+-]?\d+\.\d+$/.test(c)) point++;
    }
  }
  return comma > point;
}

function looksLikeValues(row: string[], decimalComma: boolean): boolean {
  return row.filter((c) => isNumber(c, decimalComma) || clockSeconds(c) !== undefined || isoSeconds(c) !== undefined).length * 2 > row.length;
}

export function isNumber(cell: string, decimalComma: boolean): boolean {
  return !Number.isNaN(new NumberCells(decimalComma).read(cell));
}
