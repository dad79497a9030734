// The database engine that a record may ask for: an optional package, which stands beside the program or where one works.
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { disk, type Disk } from './disk.js';
import { firstFile } from './first-file.js';

const name = '@duckdb/node-api';

/** Where its package.json would be found, in order: in the folder that DUCKDB names, from the program upwards, from the working folder upwards. */
export function duckdbPaths(env: NodeJS.ProcessEnv = process.env, from = process.cwd()): string[] {
  const beside = (path: string): string[] => createRequire(path).resolve.paths(name) ?? [];
  const named = env.DUCKDB ? [join(env.DUCKDB, 'node_modules')] : [];
  return [...new Set([...named, ...beside(import.meta.url), ...beside(join(from, 'package.json'))])].map((folder) => join(folder, name, 'package.json'));
}

/** The first of them that is there and can be reached. */
export function findDuckdb(fs: Disk = disk): string | undefined {
  return firstFile(duckdbPaths(), fs);
}
