// The texts of templates/, each read once.
import { join } from 'node:path';
import { home } from './code-version.js';
import { disk } from './disk.js';
import { tell } from './trouble.js';

const read = new Map<string, string>();

/** The text of a file of templates/, by its name there. */
export function template(name: string): string {
  let text = read.get(name);
  if (text === undefined) {
    const path = join(home, 'templates', name);
    read.set(name, (text = tell('read', path, () => disk.readFileSync(path, 'utf8'))));
  }
  return text;
}
