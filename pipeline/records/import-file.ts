// A CSV of any kind to the YAML that brings it into a record, as far as that can be told from the file alone.
import { decode } from '../logs/index.js';
import type { Outcome } from '../places/index.js';
import { type ImportScope, proposeLog } from './import-log.js';
import { proposeTidy, proposeWide } from './import-table.js';
import { sniffCsv } from './sniff-csv.js';

/** `path` is the one that the record will name it by, relative to the episode's folder. The same bytes give the same text. */
export function importFile(path: string, bytes: Uint8Array, scope: ImportScope = {}): Outcome<string> {
  const plain = decode(path, bytes);
  const guess = plain.value ? undefined : (['utf-16le', 'utf-16be', 'windows-1252'] as const).find((e) => (e === 'windows-1252' ? true : bytes.length % 2 === 0 && zeroesOf(bytes) === e));
  const decoded = guess ? decode(path, bytes, guess) : plain;
  if (!decoded.value) return { value: undefined, findings: decoded.findings };
  const csv = sniffCsv(decoded.value.text);
  if (!csv) return { value: undefined, findings: [{ code: 'table-empty', severity: 'error', place: decoded.value.place(0), message: `${path} is empty` }] };
  return { value: proposeTidy(path, csv, guess) ?? proposeLog(path, csv, guess, scope) ?? proposeWide(path, csv, scope), findings: [] };
}

/** UTF-16 text of the Latin kind has its zeroes in one half of each pair. */
function zeroesOf(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  let even = 0;
  let odd = 0;
  bytes.subarray(0, 400).forEach((b, i) => {
    if (b === 0 && i % 2) odd++;
    else if (b === 0) even++;
  });
  return odd > 40 && odd > even ? 'utf-16le' : even > 40 ? 'utf-16be' : undefined;
}
