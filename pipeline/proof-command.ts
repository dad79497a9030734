// figureproof proof: a script against the record, two tables, or itself.
import { type Command, Option } from 'commander';
import type { Given } from './proof-run.js';
import { dataOption } from './options.js';

export function addProof(program: Command, end: (code: number) => void): void {
  dataOption(program.command('proof').argument('<script>', 'a script in Markdown, plain text, with [m:ss] marks, as WebVTT, or as a template'))
    .description('find every number that a script says, tie it to the record, and tell what is wrong')
    .option('--readings <table>', 'proof against this table of readings and no record')
    .option('--names <table>', 'how the things of the table are spoken')
    .option('--episode <id>', 'the episode to proof against; else the nearest record above the script')
    .option('--alone', 'proof against nothing but the script itself')
    .option('--json', 'print every number with its verdict as JSON')
    .option('--sarif', 'print what is found as SARIF 2.1.0')
    .option('--explain <line>', 'tell how each number on this line was read')
    .option('--apply', 'write the suggested words into the script where there is just one way to put it right')
    .addOption(new Option('--fail-on <severity>', 'from which severity on a finding counts as an error').choices(['error', 'warning', 'note']).default('error'))
    .action(async (script: string, given: Given) => {
      const { runProof } = await import('./proof-run.js');
      end(await runProof(script, given));
    });
}
