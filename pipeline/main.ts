// A command from its arguments to its exit code, whatever happens on the way.
import { exitCodes, UsageError } from './exit-codes.js';
import { FileTrouble } from './files/index.js';
import { run } from './command-line.js';

export async function main(args: string[]): Promise<number> {
  // Leaving by exit() lets the output folder be cleared and unlocked.
  process.once('SIGINT', () => process.exit(exitCodes.interrupted.code));
  process.once('SIGTERM', () => process.exit(exitCodes.terminated.code));
  try {
    return await run(args);
  } catch (thrown) {
    if (thrown instanceof UsageError) return told(thrown.message, exitCodes.usage.code);
    if (thrown instanceof FileTrouble) return told(thrown.message, exitCodes.trouble.code);
    return told(`A mistake of this program; please report it with what follows.\n${thrown instanceof Error ? thrown.stack : String(thrown)}`, exitCodes.bug.code);
  }
}

function told(message: string, code: number): number {
  process.stderr.write(`${message}\n`);
  return code;
}
