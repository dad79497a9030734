// A proposal for a table: the line that names a tidy one, or the readings of a wide one.
import { findUnit } from '../quantities/index.js';
import { nearest } from '../places/index.js';
import { readHeading, severalDevices } from './heading-words.js';
import type { ImportScope } from './import-log.js';
import { isId, keyFields } from './key.js';
import { isNumber, type Sniffed } from './sniff-csv.js';
import { readingsHeader } from './tables.js';

const scopeWords: Record<string, (typeof keyFields)[number] | 'run'> = {
  setup: 'setup', product: 'setup', model: 'setup', device: 'setup', card: 'setup', cooler: 'setup', name: 'setup', case: 'setup',
  setting: 'setting', profile: 'setting', mode: 'setting', configuration: 'setting', config: 'setting',
  workload: 'workload', test: 'workload', scene: 'workload', benchmark: 'workload', phase: 'phase', state: 'phase', run: 'run', pass: 'run', repetition: 'run', round: 'run',
};

/** The `tables` line of a tidy table, else undefined. */
export function proposeTidy(path: string, csv: Sniffed, encoding: string | undefined): string | undefined {
  if (!readingsHeader.every((h) => csv.headings.includes(h))) return undefined;
  const extra = [
    ...(csv.delimiter !== ',' ? [`delimiter: ${csv.delimiter === '\t' ? 'tab' : `"${csv.delimiter}"`}`] : []),
    ...(csv.decimalComma ? ['decimal: comma'] : []), ...(encoding ? [`encoding: ${encoding}`] : []),
  ];
  return extra.length ? `tables:\n  - {file: ${path}, ${extra.join(', ')}}\n` : `tables: [${path}]\n`;
}

/** The readings of a wide table: one row a run, one column a measure; text columns say what the row is about. */
export function proposeWide(path: string, csv: Sniffed, scope: ImportScope): string {
  const roles = csv.headings.map((h) => scopeWords[h.toLowerCase().trim()] ?? (keyFields as readonly string[]).find((f) => nearest(h, [f]) === f) as (typeof keyFields)[number] | undefined);
  const several = severalDevices(csv.headings);
  const guesses = csv.headings.map((h) => readHeading(h, several));
  const prices = new Map<string, string>();
  const numeric = csv.headings.map((_, i) => csv.rows.some((r) => isNumber(r[i]!, csv.decimalComma)) && csv.rows.every((r) => r[i] === '' || isNumber(r[i]!, csv.decimalComma)));
  const text = csv.headings.flatMap((h, i) => (!numeric[i] && roles[i] === undefined && csv.rows.some((r) => r[i] !== '') ? [h] : []));
  const blocks = new Map<string, Map<string, string[]>>();
  const names = new Map<string, Map<string, string>>();
  for (const row of csv.rows) {
    const at: Record<string, string> = { ...scope };
    roles.forEach((role, i) => {
      if (role && role !== 'run' && row[i] !== '') {
        at[role] = idOf(row[i]!);
        if (at[role] !== row[i]) names.set(role, (names.get(role) ?? new Map<string, string>()).set(at[role], row[i]!));
      }
    });
    const head = (['setup', 'setting', 'workload'] as const).filter((k) => at[k]).map((k) => `${k}: ${at[k]}`).join(', ');
    const block = blocks.get(head) ?? new Map<string, string[]>();
    blocks.set(head, block);
    csv.headings.forEach((_, i) => {
      if (!numeric[i] || roles[i]) return;
      const { measure, unit } = guesses[i]!;
      if (measure === 'price' && unit && at.setup && row[i] !== '') {
        prices.set(at.setup, `${row[i]} ${unit.id}`);
        return;
      }
      const key = `${i} ${at.phase ?? ''}`;
      const value = row[i] === '' ? 'x' : csv.decimalComma ? row[i]!.replace(',', '.') : row[i]!;
      block.set(key, [...(block.get(key) ?? []), value]);
    });
  }
  const out = [`# Proposed from ${path}. Check every line; what could not be told is marked "?".`];
  for (const h of text) out.push(`# ? the column ${JSON.stringify(h)} holds text and was left out`);
  for (const id of prices.keys()) if (!names.get('setup')?.has(id)) names.set('setup', (names.get('setup') ?? new Map<string, string>()).set(id, id));
  for (const [kind, ids] of names) {
    out.push(`${kind}s:`, ...[...ids].map(([id, name]) => `  ${id}: {name: ${JSON.stringify(name)}${kind === 'setup' && prices.has(id) ? `, kind: product, price: ${prices.get(id)!}` : ''}}`));
  }
  out.push('readings:');
  for (const [head, columns] of blocks) {
    out.push(`  - for: {${head}}${head ? '' : ' # ? setup, setting, workload'}`);
    for (const [key, values] of columns) {
      if (values.every((v) => v === 'x')) continue;
      const [index, phase] = key.split(' ') as [string, string];
      const heading = csv.headings[Number(index)]!;
      const guess = guesses[Number(index)]!;
      const own = !phase && /(^|[^\p{L}])(idle|load)([^\p{L}]|$)/iu.exec(heading)?.[2]?.toLowerCase();
      const part = guess.part.split('-').filter((w) => w !== own).join('-');
      const reads = [guess.measure ?? 'unknown', part, phase || own || 'load'].join('/').replace(/\/+$/, '');
      const line = `${reads}: ${values.join(' ')} ${guess.unit?.id ?? ''}`.trimEnd();
      const sure = guess.measure && guess.unit && findUnit(guess.unit.id);
      out.push(sure ? `    ${line}${phase || own ? '' : ' # ? phase'}` : `    # ${line} # ? from ${JSON.stringify(heading)}: ${guess.measure ? 'its unit' : 'what it measures'}`);
    }
  }
  return `${out.join('\n')}\n`;
}

function idOf(text: string): string {
  const id = text.toLowerCase().replace(/[^\p{L}\p{N}.]+/gu, '-').replace(/^[-.]+|[-.]+$/g, '');
  return isId(id) ? id : 'name';
}
