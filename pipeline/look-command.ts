// figureproof look: builds what has to be built, and opens the contact sheet of an episode.
import { join } from 'node:path';
import type { Command } from 'commander';
import { build, type Options } from './build.js';
import { exitCodes, UsageError } from './exit-codes.js';
import { disk, findTool, openFile, readManifest } from './files/index.js';
import { dataOption, defaults, folder } from './options.js';
import type { Card } from './render.js';
import { summary } from './summary.js';
import { columnsOf, inkFor, progressBar } from './terminal.js';

export function addLook(program: Command, end: (code: number) => void): void {
  dataOption(program.command('look').argument('[episode]', 'id of an episode; the newest where none is named'))
    .description('build, as a draft where something counts as an error, and open the contact sheet: every picture over light, dark and busy footage')
    .option('--out <folder>', 'where the outputs go', folder, defaults.out)
    .action(async (episode: string | undefined, given: { data: string; out: string }) => {
      const options: Options = { data: given.data, out: given.out, cache: '.cache', only: episode ? [episode] : [], draft: false, failOn: 'error' };
      const bar = progressBar(process.stderr, false);
      let result;
      try {
        result = await build(options, bar);
        if (result.fails) result = await build({ ...options, draft: true }, bar);
      } finally {
        bar.done();
      }
      if (result.fails) process.stdout.write(`${summary(result, options, { columns: columnsOf(process.stdout), ink: inkFor(process.stdout) }).join('\n')}\n`);
      const id = episode ?? newest(result.examined.filter((e) => e.ready).map((e) => e.id), given.out);
      if (id === undefined) throw new UsageError(`No record in ${given.data} can be read.`);
      const sheet = join(given.out, id, 'pictures/index.html');
      process.stdout.write(`${sheet}\n`);
      const tool = opener();
      if (tool && disk.existsSync(sheet)) openFile(tool.path, [...tool.before, sheet]);
      end(result.fails ? exitCodes.findings.code : exitCodes.fine.code);
    });
}

/** By the day of publication, as the build has noted it; without one, the first by name. */
function newest(ids: readonly string[], out: string): string | undefined {
  const made = readManifest(out);
  const dayOf = (id: string): string => (made.get(id)?.card as Card | undefined)?.date ?? '';
  return [...ids].sort((a, b) => (dayOf(a) < dayOf(b) ? 1 : dayOf(a) > dayOf(b) ? -1 : a < b ? -1 : 1))[0];
}

/** The program that opens a file the way a double click does; undefined where there is no screen. */
function opener(): { path: string; before: string[] } | undefined {
  if (process.platform === 'win32') {
    const path = findTool('cmd');
    return path ? { path, before: ['/c', 'start', ''] } : undefined;
  }
  if (process.platform !== 'darwin' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) return undefined;
  const path = findTool(process.platform === 'darwin' ? 'open' : 'xdg-open');
  return path ? { path, before: [] } : undefined;
}
