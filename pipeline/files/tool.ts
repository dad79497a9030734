// Other programs: whether one is installed, and running it with what it is fed and the file that it makes.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { tmpdir } from 'node:os';
import { disk, type Disk } from './disk.js';
import { firstFile } from './first-file.js';
import { FileTrouble, tell } from './trouble.js';

/** Where a program of this name would be found, in the order of the search path. */
export function toolPaths(name: string, env: NodeJS.ProcessEnv = process.env): string[] {
  const endings = process.platform === 'win32' ? ['.exe', '.cmd'] : [''];
  return (env.PATH ?? '').split(process.platform === 'win32' ? ';' : ':').filter(Boolean).flatMap((folder) => endings.map((e) => join(folder, name + e)));
}

/** The first of them that is there and can be reached. */
export function findTool(name: string, fs: Disk = disk): string | undefined {
  return firstFile(toolPaths(name), fs);
}

export interface ToolRun {
  /** Feeds its standard input; settles when all was taken, so that the buffer may be used again. */
  feed(content: Uint8Array): Promise<void>;
  /** Ends its input and waits; what it wrote. Throws FileTrouble with its own words where it failed. */
  finish(): Promise<Buffer>;
  /** Ends it without a result. */
  stop(): void;
}

/** `args` are handed the path of the file that it is to make, which ends in `ending`. */
export function runTool(path: string, args: (out: string) => string[], ending: string, fs: Disk = disk): ToolRun {
  const folder = tell('write into', tmpdir(), () => fs.mkdtempSync(join(tmpdir(), 'figureproof-')));
  const out = join(folder, `made.${ending}`);
  const child = spawn(path, args(out), { stdio: ['pipe', 'ignore', 'pipe'] });
  let said = '';
  let broken: Error | undefined;
  child.stderr.setEncoding('utf8').on('data', (text: string) => (said = (said + text).slice(-2000)));
  child.stdin.on('error', (error) => (broken ??= error));
  const ended = new Promise<number | null>((resolve) => {
    child.once('error', (error) => {
      broken = error;
      resolve(null);
    });
    child.once('close', resolve);
  });
  const clear = (): void => fs.rmSync(folder, { recursive: true, force: true });
  return {
    feed: (content) => new Promise((resolve) => {
      if (broken) resolve();
      else child.stdin.write(content, () => resolve());
    }),
    async finish() {
      child.stdin.end();
      const code = await ended;
      try {
        if (code !== 0) throw new FileTrouble('make', `made.${ending}`, `${path} failed: ${said.trim().split('\n').at(-1) || broken?.message || `exit code ${code}`}`);
        return tell('read', out, () => fs.readFileSync(out));
      } finally {
        clear();
      }
    },
    stop() {
      child.kill();
      void ended.then(clear);
    },
  };
}

/** Hands a file to a program and does not wait for it. */
export function openFile(path: string, args: readonly string[]): void {
  const child = spawn(path, args, { stdio: 'ignore', detached: true });
  // Whoever cannot open it has been told its path.
  child.on('error', () => undefined);
  child.unref();
}
