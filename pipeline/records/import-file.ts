// A CSV of any kind to the YAML that brings it into a record, as far as that can be told from the file and the record.
import { decode } from '../logs/index.js';
import { type Finding, type Outcome, Source } from '../places/index.js';
import { addToRecord } from './add-to-record.js';
import { commonParts, commonPhases } from './common-names.js';
import { knownLog } from './import-known.js';
import { type ImportScope, proposeLog } from './import-log.js';
import { proposeTidy, proposeWide } from './import-table.js';
import { shownFromId } from './names.js';
import { type Outline, outline } from './outline.js';
import { isNumber, sniffCsv, type Sniffed } from './sniff-csv.js';

/**
 * `path` is the one that the record will name it by, relative to the episode's folder; `record` is that record, where there
 * is one: its layouts are recognised, and the names that it lacks are given. The same bytes give the same text; a text of
 * nothing but comments says that there is nothing to add.
 */
export function importFile(path: string, bytes: Uint8Array, scope: ImportScope = {}, record?: Outline): Outcome<string> {
  const plain = decode(path, bytes);
  const guess = plain.value ? undefined : (['utf-16le', 'utf-16be', 'windows-1252'] as const).find((e) => (e === 'windows-1252' ? true : bytes.length % 2 === 0 && zeroesOf(bytes) === e));
  const decoded = guess ? decode(path, bytes, guess) : plain;
  if (!decoded.value) return { value: undefined, findings: decoded.findings };
  const refuse = (code: string, message: string): Outcome<string> => ({ value: undefined, findings: [{ code, severity: 'error', place: decoded.value!.place(0), message } satisfies Finding] });
  const { text } = decoded.value;
  if (/[\0-\x08\x0e-\x1f\x7f]/.test(text)) return refuse('table-form', 'The file is no text; a table or a log is imported as CSV');
  const csv = sniffCsv(text);
  if (!csv) return refuse('table-empty', 'The file is empty');
  const known = record && knownLog(path, bytes, scope, record);
  if (known !== undefined) return { value: known, findings: [] };
  const tidy = proposeTidy(path, csv, guess);
  if (tidy !== undefined) return { value: tidy, findings: [] };
  if (csv.ragged > csv.rows.length) return refuse('table-form', 'The file is neither a table nor a log: most of its lines do not have as many cells as its headings');
  if (!hasNumbers(csv)) return refuse('table-form', 'The file is neither a table of readings nor a log: it has no column of numbers');
  const proposed = proposeLog(path, csv, guess, scope, new Set(record?.layouts.keys())) ?? proposeWide(path, csv, scope);
  return { value: withNames(proposed, scope, record), findings: [] };
}

/** The proposal with the names that it uses and the record, whose sections are complete, does not have. */
function withNames(proposed: string, scope: ImportScope, record: Outline | undefined): string {
  const used = outline(new Source('proposal', `title: Proposed\n${proposed}`), 'proposal').value?.ctx.names;
  const given: readonly (string | undefined)[] = [scope.setup, scope.setting, scope.workload];
  const sections = (['setup', 'setting', 'workload', 'part', 'phase'] as const).flatMap((kind) => {
    const closed = record ? record.ctx.fields[`${kind}s`] !== undefined : kind === 'part';
    const common: ReadonlyMap<string, unknown> = kind === 'part' ? commonParts : kind === 'phase' ? commonPhases : new Map();
    const lacking = closed && used ? [...used.map(kind).keys()].filter((id) => !common.has(id) && !record?.ctx.names.map(kind).has(id) && !given.includes(id)) : [];
    return lacking.length ? [`${kind}s:`, ...lacking.map((id) => `  ${id}: {name: ${JSON.stringify(shownFromId(id))}}`)] : [];
  });
  if (sections.length === 0) return proposed;
  const merged = addToRecord(proposed, `${sections.join('\n')}\n`);
  return 'text' in merged ? merged.text : proposed;
}

function hasNumbers({ headings, rows, decimalComma }: Sniffed): boolean {
  return headings.some((_, i) => {
    const filled = rows.map((r) => r[i]!).filter((c) => c !== '');
    return filled.length > 0 && filled.filter((c) => isNumber(c, decimalComma)).length * 2 > filled.length;
  });
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
