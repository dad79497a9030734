import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { tooNear } from '../../pipeline/files/index.js';
import { place, scratch } from './scratch.js';

test.each<[string, string, RegExp | undefined]>([
  ['beside the data', 'out', undefined],
  ['a name that begins alike', 'data-out', undefined],
  ['deep beside', 'made/here/out', undefined],
  ['a name of dots', '..out', undefined],
  ['the data themselves', 'data', /it is .*data, where the records are/],
  ['the data with a slash', 'data/', /it is /],
  ['by another way', 'out/../data/.', /it is /],
  ['the folder around', '.', /it holds .*data/],
  ['in the data', 'data/out', /it lies in .*data,/],
  ['in the data, deep and not there yet', 'data/a/b/c', /it lies in .*data,/],
  ['an episode', 'data/bench', /it lies in .*data,/],
  ['a link to the data', 'link', /it is /],
  ['through a link', 'link/out', /it lies in /],
  ['an episode that stands elsewhere and is linked', 'elsewhere', /it is .*data\/linked/],
  ['in such an episode', 'elsewhere/out', /it lies in .*data\/linked/],
])('%s', (_name, out, says) => {
  const folder = scratch({ 'data/bench/episode.yaml': '', 'elsewhere/episode.yaml': '' });
  fs.symlinkSync(join(folder, 'data'), join(folder, 'link'));
  fs.symlinkSync(join(folder, 'elsewhere'), join(folder, 'data/linked'));
  const told = tooNear(`${folder}/${out}`, join(folder, 'data'), ['bench', 'linked']);
  if (says) expect(told).toMatch(says);
  else expect(told).toBeUndefined();
});

test('data that are a link are known by where they lead', () => {
  const folder = scratch();
  place(folder, 'there/bench/episode.yaml', '');
  fs.symlinkSync(join(folder, 'there'), join(folder, 'data'));
  expect(tooNear(join(folder, 'there'), join(folder, 'data'), ['bench'])).toMatch(/it is /);
  expect(tooNear(join(folder, 'out'), join(folder, 'data'), ['bench'])).toBeUndefined();
});
