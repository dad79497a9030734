// Options that several commands share.
import { type Command, InvalidArgumentError } from 'commander';

export function dataOption(command: Command): Command {
  return command.option('--data <folder>', 'the folder that holds one folder an episode', folder, 'data');
}

/** The name of a folder as given on the command line, which may be of one that is not there yet. */
export function folder(given: string): string {
  if (given === '') throw new InvalidArgumentError('It names no folder; for this one, write a dot.');
  return given;
}
