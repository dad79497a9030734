// Which folders here are trials. Those in unseen/ are left out: tests tell what they miss, and then they would be seen.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

export function trialFolders(): string[] {
  return readdirSync(import.meta.dirname).filter((n) => existsSync(join(import.meta.dirname, n, 'script.md'))).sort();
}
