import { join } from 'node:path';
import { expect, test } from 'vitest';
import { firstFile } from '../../pipeline/files/first-file.js';
import { findDuckdb, findTool } from '../../pipeline/files/index.js';
import { failing, scratch } from './scratch.js';

test('a place that is not there, is closed, is no folder or holds a folder of the name is passed over', () => {
  const folder = scratch({ 'closed/tool': '', 'file': '', 'folder/tool/within': '', 'open/tool': '', 'later/tool': '' });
  const places = ['none', 'closed', 'file', 'folder', 'open', 'later'].map((name) => join(folder, name, 'tool'));
  for (const code of ['EACCES', 'ELOOP', 'ENAMETOOLONG', 'EIO']) {
    expect(firstFile(places, failing(['statSync'], code, (path) => path.includes('closed')))).toBe(join(folder, 'open/tool'));
  }
  expect(firstFile(places.slice(0, 1))).toBeUndefined();
});

test('programs are sought in that way: where every place is closed there is none', () => {
  const closed = failing(['statSync'], 'EACCES', () => true);
  expect([findTool('node', closed), findDuckdb(closed)]).toEqual([undefined, undefined]);
});
