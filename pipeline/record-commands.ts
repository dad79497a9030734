// figureproof new, import and schema: what helps to write a record.
import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { Argument, type Command } from 'commander';
import { exitCodes, UsageError } from './exit-codes.js';
import { episodeIds, FileTrouble, largestFile, recordName, tell, writeWhole } from './files/index.js';
import { nextCommand } from './next-command.js';
import { dataOption } from './options.js';
import { nearest, printFinding, Source } from './places/index.js';
import { columnsOf, inkFor } from './terminal.js';

export function addRecordCommands(program: Command, end: (code: number) => void): void {
  dataOption(program.command('new').argument('<id>', 'the name of the episode’s folder, e.g. one-card-two-boxes'))
    .description('write a record to fill in, with a comment for every part')
    .option('--title <title>', 'the title; the id with spaces where none is given')
    .option('--date <day>', 'the day, as 2026-03-14')
    .option('--setups <names>', 'what is compared, with commas between', names)
    .option('--settings <names>', 'how it is configured, with commas between', names)
    .option('--workload <name>', 'what it is made to do')
    .option('--print', 'print the record and write nothing')
    .action(async (id: string, given: New) => end(await writeNew(id, given)));

  dataOption(program.command('import').argument('<file>', 'a CSV: a tidy or wide table, a sensor log or a frame log'))
    .description('tell how a table or a log is brought into a record; what cannot be told from the file is marked "?"')
    .option('--episode <id>', 'copy the file into this episode’s folder first')
    .option('--append', 'add what is told to the end of the record')
    .option('--setup <id>', 'what the log was taken of')
    .option('--setting <id>', 'how it was configured')
    .option('--workload <id>', 'what it was made to do')
    .option('--run <name>', 'which run it was')
    .action(async (file: string, given: Import) => end(await importInto(file, given)));

  program.command('schema')
    .description('print the JSON Schema of a record, or of a theme, for completion in editors')
    .addArgument(new Argument('[what]', 'record or theme').choices(['record', 'theme']).default('record'))
    .action(async (what: string) => {
      const { recordSchema, themeSchema } = await import('./records/index.js');
      process.stdout.write(`${JSON.stringify(what === 'theme' ? themeSchema() : recordSchema(), null, 2)}\n`);
    });
}

interface New {
  data: string;
  title?: string;
  date?: string;
  setups?: string[];
  settings?: string[];
  workload?: string;
  print?: boolean;
}

interface Import {
  data: string;
  episode?: string;
  append?: boolean;
  setup?: string;
  setting?: string;
  workload?: string;
  run?: string;
}

async function writeNew(id: string, { data, print, ...given }: New): Promise<number> {
  if (!/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(id)) throw new UsageError(`"${id}" cannot name an episode: letters, digits, ".", "-" and "_", a letter or digit first.`);
  const { isDay, newRecord } = await import('./records/index.js');
  if (given.date !== undefined && !isDay(given.date)) throw new UsageError(`"${given.date}" is no day; a day is written like 2026-03-14.`);
  const text = newRecord({ ...given, title: given.title ?? id.replace(/[-_.]+/g, ' ').replace(/^\p{Ll}/u, (c) => c.toUpperCase()) });
  const path = join(data, id, recordName);
  if (print) process.stdout.write(text);
  else {
    if (existsSync(path)) throw new UsageError(`${path} is there already and stays as it is; with --print the new record is only printed.`);
    writeWhole(path, text);
    process.stdout.write(`Written: ${path}\nFill it in, then: ${nextCommand(['check', id], { data })}\n`);
  }
  return exitCodes.fine.code;
}

async function importInto(file: string, given: Import): Promise<number> {
  const bytes = tell('read', file, () => readFileSync(file));
  if (bytes.length > largestFile) throw new FileTrouble('read', file, 'it is too large');
  const home = given.episode === undefined ? undefined : episodeFolder(given.data, given.episode);
  const folder = home ?? recordAbove(file);
  const inside = folder !== undefined && !relative(resolve(folder), resolve(file)).startsWith('..');
  const name = inside ? relative(resolve(folder), resolve(file)).split(sep).join('/') : basename(file);
  const { addToRecord, importFile, outline } = await import('./records/index.js');
  const record = folder === undefined ? undefined : join(folder, recordName);
  const before = record === undefined ? undefined : tell('read', record, () => readFileSync(record, 'utf8'));
  const known = before === undefined ? undefined : outline(new Source(record!, before), basename(folder!)).value;
  const { setup, setting, workload, run } = given;
  const { value, findings } = importFile(name, bytes, { ...(setup && { setup }), ...(setting && { setting }), ...(workload && { workload }), ...(run && { run }) }, known);
  if (value === undefined) {
    const look = { columns: columnsOf(process.stderr), ink: inkFor(process.stderr), line: () => undefined, path: () => file };
    process.stderr.write(`${findings.flatMap((f) => printFinding(f, look)).join('\n')}\n`);
    return exitCodes.findings.code;
  }
  if (given.append && folder === undefined) throw new UsageError('--append needs a record to add to: name its episode with --episode.');
  const nothing = /^(#.*\n)*$/.test(value);
  const added = given.append && before !== undefined && !nothing ? addToRecord(before, value) : undefined;
  if (added && 'clash' in added) throw new UsageError(`The record has ${added.clash.map((c) => `"${c}"`).join(' and ')} already, in a form that nothing can be added to; put these lines there by hand:\n\n${value}`);
  if (home !== undefined && !inside) {
    const target = join(home, name);
    if (existsSync(target)) throw new UsageError(`${target} is there already and stays as it is; rename ${file} first.`);
    writeWhole(target, bytes);
    process.stderr.write(`Copied to ${target}\n`);
  }
  if (added && 'text' in added) {
    writeWhole(record!, added.text);
    process.stderr.write(`Added to ${record}:\n`);
  }
  process.stdout.write(value);
  return exitCodes.fine.code;
}

function episodeFolder(data: string, id: string): string {
  const ids = episodeIds(data);
  const near = nearest(id, ids);
  if (!ids.includes(id)) throw new UsageError(`There is no episode "${id}" in ${data}${near ? `; did you mean "${near}"?` : `; begin one with: ${nextCommand(['new', id], { data })}`}`);
  return join(data, id);
}

function recordAbove(file: string): string | undefined {
  for (let at = dirname(resolve(file)); ; at = dirname(at)) {
    if (existsSync(join(at, recordName))) return at;
    if (dirname(at) === at) return undefined;
  }
}

function names(text: string): string[] {
  return text.split(',').map((n) => n.trim()).filter(Boolean);
}
