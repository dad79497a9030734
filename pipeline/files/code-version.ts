// What the work was done with: a cache made by other code, other templates or other libraries is no cache.
import { join, resolve } from 'node:path';
import { disk, type Disk } from './disk.js';
import { hash, hashOf } from './hash.js';
import { tell } from './trouble.js';

/** The folder of package.json, templates/ and node_modules/. */
export const home = resolve(import.meta.dirname, '../..');

/** One hash over the program's own files, its templates, the installed versions of its libraries, and the Node that runs it. */
export function codeVersion(fs: Disk = disk): string {
  return hashOf(process.version, process.platform, process.arch, programFiles(fs).map((path) => [path.slice(home.length), hash(fs.readFileSync(path))]));
}

export function programFiles(fs: Disk = disk): string[] {
  const manifest = join(home, 'package.json');
  const { dependencies = {} } = JSON.parse(fs.readFileSync(manifest, 'utf8')) as { dependencies?: Record<string, string> };
  const own = resolve(import.meta.dirname, '..');
  const libraries = Object.keys(dependencies).sort().flatMap((name) => installed(name, fs) ?? []);
  return [manifest, ...libraries, ...tree(own, /\.(js|ts|json)$/, fs), ...tree(join(home, 'templates'), /./, fs)];
}

function installed(name: string, fs: Disk): string | undefined {
  for (let at = home; ; at = resolve(at, '..')) {
    const path = join(at, 'node_modules', name, 'package.json');
    if (fs.existsSync(path)) return path;
    if (at === resolve(at, '..')) return undefined;
  }
}

function tree(folder: string, fits: RegExp, fs: Disk): string[] {
  return tell('read', folder, () => fs.readdirSync(folder, { withFileTypes: true }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((e) => {
      const path = join(folder, e.name);
      return e.isDirectory() ? tree(path, fits, fs) : fits.test(e.name) && !e.name.startsWith('.') ? [path] : [];
    });
}
