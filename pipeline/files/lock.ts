// One build at a time per output folder. A lock whose process is gone is stale and is taken over.
import { join } from 'node:path';
import { disk, type Disk } from './disk.js';
import { errorCode, FileTrouble, tell } from './trouble.js';
import { remove } from './write-whole.js';

export const lockName = '.lock';

const held = new Set<string>();

/** Takes the lock of a folder or throws FileTrouble naming the process that holds it; the function returned lets go. */
export function takeLock(folder: string, fs: Disk = disk): () => void {
  const path = join(folder, lockName);
  const mine = `${process.pid} ${startOf(process.pid, fs)}\n`;
  // Written aside and linked into place, so that nobody ever reads a lock without its owner in it.
  const aside = `${path}.${process.pid}.tmp`;
  return tell('lock', folder, () => {
    try {
      fs.writeFileSync(aside, mine);
      for (let attempt = 0; ; attempt++) {
        if (put(aside, path, mine, fs)) {
          held.add(path);
          return () => release(path, mine, fs);
        }
        const theirs = read(path, fs);
        if (theirs !== undefined && ((theirs === mine ? held.has(path) : lives(theirs, fs)) || attempt > 9)) {
          throw new FileTrouble('build into', folder, `another build (process ${theirs.split(' ')[0]}) is writing there`);
        }
        if (theirs !== undefined) takeAway(path, theirs, aside, fs);
      }
    } finally {
      remove(aside, fs);
    }
  });
}

/** False when there is a lock already. */
function put(aside: string, path: string, mine: string, fs: Disk): boolean {
  try {
    fs.linkSync(aside, path);
    return true;
  } catch (thrown) {
    const code = errorCode(thrown);
    if (code === 'EEXIST') return false;
    if (code !== 'EPERM' && code !== 'ENOTSUP' && code !== 'ENOSYS') throw thrown;
  }
  // A disk without hard links, such as a memory stick.
  if (fs.existsSync(path)) return false;
  fs.writeFileSync(path, mine, { flag: 'wx' });
  return true;
}

/** Renaming is atomic: of two builds that find the same stale lock one gets it; whoever got a fresh lock by mistake puts it back. */
function takeAway(path: string, stale: string, aside: string, fs: Disk): void {
  const taken = `${aside}.stale`;
  try {
    fs.renameSync(path, taken);
    if (read(taken, fs) !== stale) fs.linkSync(taken, path);
  } catch (thrown) {
    if (errorCode(thrown) === undefined) throw thrown;
  }
  remove(taken, fs);
}

function release(path: string, mine: string, fs: Disk): void {
  held.delete(path);
  if (read(path, fs) === mine) remove(path, fs);
}

function read(path: string, fs: Disk): string | undefined {
  try {
    return fs.readFileSync(path, 'utf8');
  } catch (thrown) {
    if (errorCode(thrown) === undefined) throw thrown;
    return undefined;
  }
}

function lives(lock: string, fs: Disk): boolean {
  const [pid, start] = lock.trim().split(' ') as [string, string?];
  if (!/^\d+$/.test(pid)) return false;
  try {
    process.kill(Number(pid), 0);
  } catch (thrown) {
    if (errorCode(thrown) !== 'EPERM') return false;
  }
  // The number may have gone to another process since: where the system tells when a process started, that decides.
  const now = startOf(Number(pid), fs);
  return start === undefined || start === '?' || now === '?' || now === start;
}

/**
 * Start time of a process in clock ticks since boot (field 22 of /proc/PID/stat, proc(5)), or `?` where the system does not tell.
 * A zombie (state Z, field 3) is gone, though its number still answers.
 */
function startOf(pid: number, fs: Disk): string {
  const stat = read(`/proc/${pid}/stat`, fs);
  if (stat === undefined) return '?';
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return fields[0] === 'Z' ? 'gone' : (fields[19] ?? '?');
}
