// Options that several commands share.
import { type Command, InvalidArgumentError } from 'commander';

/** Where one works with nothing said. */
export const defaults = { data: 'data', out: 'out' };

export function dataOption(command: Command): Command {
  return command.option('--data <folder>', 'the folder that holds one folder an episode', folder, defaults.data);
}

/** The name of a folder as given on the command line, which may be of one that is not there yet. */
export function folder(given: string): string {
  if (given === '') throw new InvalidArgumentError('It names no folder; for this one, write a dot.');
  return given;
}
