// Who may import whom. The table is the rule; DEVELOPERS.md prints the same one (test/documents.test.ts compares them).
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { rooms } from './rooms.js';

const root = resolve(import.meta.dirname, '../pipeline');

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((e) => {
    const path = join(folder, e.name);
    return e.isDirectory() ? sources(path) : path.endsWith('.ts') ? [path] : [];
  });
}

/** Module names that a source imports, type-only and lazy imports included. */
function imports(file: string): string[] {
  const text = readFileSync(file, 'utf8').replace(/^\s*\/\/.*$/gm, '');
  return [...text.matchAll(/(?:^(?:import|export)\b[^;'"]*?\bfrom\s*|\bimport\s*\(\s*|^import\s+)['"]([^'"]+)['"]/gm)].map((m) => m[1]!);
}

test('every room is in the table and every room of the table exists', () => {
  const folders = readdirSync(root, { withFileTypes: true }).filter((e) => e.isDirectory()).map((e) => e.name);
  expect(folders.sort()).toEqual(Object.keys(rooms).sort());
});

for (const [room, rule] of Object.entries(rooms)) {
  test(`${room} imports only what it may`, () => {
    const wrong: string[] = [];
    for (const file of sources(join(root, room))) {
      for (const name of imports(file)) {
        if (name.startsWith('.')) {
          const target = relative(root, resolve(dirname(file), name)).split('/')[0]!;
          if (target !== room && !rule.rooms.includes(target)) wrong.push(`${relative(root, file)} imports ${target}`);
        } else {
          const pack = name.startsWith('@') ? name.split('/').slice(0, 2).join('/') : name.startsWith('node:') ? name : name.split('/')[0]!;
          if (!rule.packages.includes(pack)) wrong.push(`${relative(root, file)} imports ${pack}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });
}

test('no room imports the two files at the root', () => {
  const wrong = Object.keys(rooms).flatMap((room) => sources(join(root, room))).filter((f) => imports(f).some((n) => /\.\.\/(build|cli)\.js$/.test(n)));
  expect(wrong).toEqual([]);
});
