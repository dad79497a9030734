// Options that several commands share.
import type { Command } from 'commander';

export function dataOption(command: Command): Command {
  return command.option('--data <folder>', 'the folder that holds one folder an episode', 'data');
}
