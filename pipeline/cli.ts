#!/usr/bin/env node
// The command: reads its arguments, prints, and exits. All work is done elsewhere.
import { replay } from './files/replay.js';

const args = process.argv.slice(2);

// Times of the record are plain days and clock times; nothing here may depend on where it runs.
process.env.TZ = 'UTC';

// A reader that has seen enough (figureproof check | head) is no error.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
    throw error;
  });
}

const known = replay(args);
if (known) {
  process.stdout.write(known.text);
  process.exitCode = known.code;
} else {
  const { main } = await import('./main.js');
  process.exitCode = await main(args);
}
