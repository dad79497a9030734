// What the work was done with: a cache made by other code, other templates or other libraries is no cache.
import { join, resolve } from 'node:path';
import { disk, type Disk } from './disk.js';
import { hash, hashOf } from './hash.js';
import { tell } from './trouble.js';

/** The folder of package.json, templates/ and node_modules/. */
export const home = resolve(import.meta.dirname, '../..');

/** One hash over the program's own files, its templates, the installed versions of its libraries, and the Node that runs it. */
export function codeVersion(fs: Disk = disk): string {
  const own = resolve(import.meta.dirname, '..');
  const manifest = fs.readFileSync(join(home, 'package.json'));
  const { dependencies = {} } = JSON.parse(manifest.toString('utf8')) as { dependencies?: Record<string, string> };
  const files = [...tree(own, /\.(js|ts|json)$/, fs), ...tree(join(home, 'templates'), /./, fs)];
  return hashOf(
    process.version, process.platform, process.arch, hash(manifest),
    Object.keys(dependencies).sort().map((name) => installed(name, fs)),
    files.map((path) => [path.slice(home.length), hash(fs.readFileSync(path))]),
  );
}

function installed(name: string, fs: Disk): string {
  for (let at = home; ; at = resolve(at, '..')) {
    const path = join(at, 'node_modules', name, 'package.json');
    if (fs.existsSync(path)) return hash(fs.readFileSync(path));
    if (at === resolve(at, '..')) return '';
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
