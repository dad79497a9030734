// The commands and their options.
import { type Command, CommanderError, Option } from 'commander';
import { again, build, type Built, check, type Checked, type Options, outputsOf } from './build.js';
import { exitCodes } from './exit-codes.js';
import { addExplain } from './explain-command.js';
import { disk, needWorkingFolder, Recorder, rememberRun } from './files/index.js';
import { addLook } from './look-command.js';
import { dataOption, defaults, folder } from './options.js';
import { type Severity, wrap } from './places/index.js';
import { addProof } from './proof-command.js';
import { addRecordCommands } from './record-commands.js';
import { addStale } from './stale-command.js';
import { StrictCommand } from './strict-command.js';
import { asJson, printingAll, summary } from './summary.js';
import { type Bar, columnsOf, inkFor, progressBar } from './terminal.js';

interface Given {
  data: string;
  out: string;
  cache: string | false;
  draft?: boolean;
  json?: boolean;
  sarif?: boolean;
  failOn: Severity;
}

/** The exit code. */
export async function run(args: string[]): Promise<number> {
  let code: number = exitCodes.fine.code;
  const end = (given: number | undefined): void => void (code = given ?? exitCodes.fine.code);
  const program = new StrictCommand('figureproof')
    .description('One source for each number of a hardware test episode, from the sensor to the screen.')
    .version(await version(), '--version', 'print the version')
    .helpOption('-h, --help', 'print help')
    .helpCommand('help [command]', 'print help for a command')
    .showHelpAfterError('(figureproof --help tells what there is)')
    .addHelpText('after', `\nExit codes:\n${exitCodeLines().join('\n')}\n`)
    .exitOverride()
    // Help needs no folder.
    .hook('preAction', () => needWorkingFolder());

  examining(program.command('check').argument('[episodes...]', 'ids of episodes; all where none is named'))
    .description('read the records, derive the facts, run every check, proof the texts; write nothing')
    .option('--sarif', 'print what is found as SARIF 2.1.0, for editors and code review')
    .action(async (only: string[], given: Given) => {
      end(await report(check, options(only, given), given, args));
    });

  examining(program.command('build').argument('[episodes...]', 'ids of episodes; all where none is named'))
    .description('check, and where nothing counts as an error make pictures, narration and pages')
    .option('--out <folder>', 'where the outputs go', folder, defaults.out)
    .option('--draft', 'build even where there are errors, every output stamped as a draft')
    .action(async (only: string[], given: Given) => {
      end(await report(build, options(only, given), given, args));
    });

  addExplain(program, end);
  addLook(program, end);
  addStale(program, end);
  addProof(program, end);
  addRecordCommands(program, end);

  try {
    await program.parseAsync(args, { from: 'user' });
  } catch (thrown) {
    if (!(thrown instanceof CommanderError)) throw thrown;
    return thrown.exitCode === 0 ? exitCodes.fine.code : exitCodes.usage.code;
  }
  return code;
}

function exitCodeLines(): string[] {
  return Object.values(exitCodes).flatMap(({ code, says }) => wrap(says, 73).map((line, i) => `  ${(i === 0 ? String(code) : '').padStart(3)}  ${line}`));
}

function examining(command: Command): Command {
  return dataOption(command)
    .option('--cache <folder>', 'where work done before is kept', folder, '.cache')
    .option('--no-cache', 'do all work anew and keep none')
    .option('--json', 'print the result as JSON')
    .addOption(new Option('--fail-on <severity>', 'from which severity on a finding counts as an error').choices(['error', 'warning', 'note']).default('error'));
}

function options(only: string[], given: Given): Options {
  return { only, data: given.data, out: given.out, draft: given.draft ?? false, failOn: given.failOn, ...(given.cache !== false && { cache: given.cache }) };
}

async function report(work: (options: Options, bar: Bar) => Promise<Checked | Built>, options: Options, given: Given, args: readonly string[]): Promise<number> {
  const recorder = new Recorder(options.data, disk);
  const bar = progressBar(process.stderr, given.json === true || given.sarif === true);
  let result: Checked | Built;
  try {
    result = await work({ ...options, disk: recorder.disk }, bar);
  } finally {
    bar.done();
  }
  const code = result.fails ? exitCodes.findings.code : exitCodes.fine.code;
  const text = async (r: Checked | Built): Promise<string> => {
    if (given.json) return JSON.stringify(asJson(r, options), null, 1);
    if (given.sarif) return (await import('./sarif-text.js')).sarifText(r.examined.flatMap((e) => e.findings), printingAll(r.examined, options));
    return summary(r, options, { columns: columnsOf(process.stdout), ink: inkFor(process.stdout) }).join('\n');
  };
  process.stdout.write(`${await text(result)}\n`);
  rememberRun(args, { text: `${await text(again(result))}\n`, code, outputs: 'published' in result ? outputsOf(result, options) : [], recorder });
  return code;
}

async function version(): Promise<string> {
  const [{ readFileSync }, { home }] = await Promise.all([import('node:fs'), import('./files/index.js')]);
  return (JSON.parse(readFileSync(`${home}/package.json`, 'utf8')) as { version: string }).version;
}
