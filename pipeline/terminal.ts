// The terminal as the command sees it: colour only where it is wanted, its width, and word of how far a long job has come.
import { styleText } from 'node:util';
import type { Progress } from './build.js';
import type { Ink } from './places/index.js';

const styles = { error: ['bold', 'red'], warning: ['bold', 'yellow'], note: ['bold', 'cyan'], faint: 'dim', strong: 'bold', good: 'green' } as const;

/** Colour goes to a terminal, unless NO_COLOR is set (no-color.org) or TERM is dumb; never to a pipe or a file. */
export function inkFor(stream: NodeJS.WriteStream, env = process.env): (ink: Ink, text: string) => string {
  const coloured = stream.isTTY === true && !env.NO_COLOR && env.TERM !== 'dumb';
  return coloured ? (ink, text) => [styles[ink]].flat().reduce((t, style) => styleText(style, t, { validateStream: false }), text) : (_ink, text) => text;
}

export function columnsOf(stream: NodeJS.WriteStream): number {
  return Math.max(40, Math.min(stream.columns ?? 80, 160));
}

export interface Bar extends Progress {
  done(): void;
}

/** On a terminal one line that is drawn over, once the job lasts; elsewhere one line a stage of many steps, and one for each that takes time. */
export function progressBar(stream: NodeJS.WriteStream, quiet: boolean): Bar {
  if (quiet) return { stage() {}, step() {}, begin() {}, done() {} };
  let name = '';
  let total = 0;
  let count = 0;
  let shown = false;
  const started = process.hrtime.bigint();
  const lasts = (): boolean => process.hrtime.bigint() - started > 300_000_000n;
  const clear = (): void => {
    if (shown) stream.write('\r\x1b[K');
    shown = false;
  };
  const draw = (what: string, now = false): void => {
    if (!now && !shown && !lasts()) return;
    const room = 24;
    const filled = total === 0 ? 0 : Math.floor((count / total) * room);
    const line = `${name} [${'#'.repeat(filled)}${'.'.repeat(room - filled)}] ${count}/${total} ${what}`;
    stream.write(`\r\x1b[K${line.slice(0, columnsOf(stream) - 1)}`);
    shown = true;
  };
  return {
    stage(next, steps, what) {
      [name, total, count] = [next, steps, 0];
      if (stream.isTTY) draw('');
      else if (steps > 0) stream.write(`${next} ${steps} ${what}${steps === 1 ? '' : 's'}\n`);
    },
    step(what) {
      count++;
      if (stream.isTTY) draw(what);
    },
    // Drawn before the work begins: while it lasts nothing else can be drawn.
    begin(what) {
      if (stream.isTTY) draw(what, true);
      else if (total > 1) stream.write(`  ${what}\n`);
    },
    done: clear,
  };
}
