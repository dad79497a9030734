// A command that tells every option it does not know at once; by itself commander stops at the first.
import { Command, type ParseOptionsResult } from 'commander';
import { nearest } from './places/index.js';

export class StrictCommand extends Command {
  override createCommand(name?: string): Command {
    return new StrictCommand(name);
  }

  override parseOptions(argv: string[]): ParseOptionsResult {
    const parsed = super.parseOptions(argv);
    // The words of a command are unknown to the one above it.
    if (this.parent) this.#refuse(parsed.unknown);
    return parsed;
  }

  #refuse(unknown: readonly string[]): void {
    const end = unknown.indexOf('--');
    const flags = unknown.slice(0, end < 0 ? undefined : end).filter((word) => /^--?[^-]/.test(word));
    // One alone is told by commander, and asking for help is no mistake.
    if (flags.length < 2 || flags.some((flag) => flag === '-h' || flag === '--help')) return;
    const known = this.createHelp().visibleOptions(this).flatMap((option) => option.long ?? []);
    this.error(flags.map((flag) => {
      const near = nearest(flag.replace(/=.*/s, ''), known);
      return `error: unknown option '${flag}'${near ? `\n(Did you mean ${near}?)` : ''}`;
    }).join('\n'), { code: 'commander.unknownOption' });
  }
}
