// A spec reads no file, fetches nothing, runs nothing, and waits for nothing.
import { createServer } from 'node:http';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { drawSpec, refusals } from '../../pipeline/charts/index.js';
import { baseSpec, mostDataRows, type Spec } from '../../pipeline/charts/spec.js';
import { wide } from '../theme/stages.js';

const body = { x: 100, y: 100, width: 800, height: 600 };
const plain: Spec = { ...baseSpec(wide, body), data: { values: [{ a: 1 }] }, mark: 'point', encoding: { x: { field: 'a', type: 'quantitative' } } };

let folder = '';
let asked = 0;
const server = createServer((_q, r) => {
  asked++;
  r.end('[{"a":1}]');
});

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'chart-'));
  writeFileSync(join(folder, 'secret.json'), '[{"a":424242}]');
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
});

afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

const port = (): number => (server.address() as { port: number }).port;

describe('refused', () => {
  test.each<[string, () => Spec]>([
    ['a file by its path', () => ({ ...plain, data: { url: join(folder, 'secret.json') } })],
    ['a file by a file address', () => ({ ...plain, data: { url: `file://${join(folder, 'secret.json')}` } })],
    ['a file by a relative path', () => ({ ...plain, data: { url: 'package.json' } })],
    ['an address on the network', () => ({ ...plain, data: { url: `http://127.0.0.1:${port()}/a.json` } })],
    ['an address without a scheme', () => ({ ...plain, data: { url: `//127.0.0.1:${port()}/a.json` } })],
    ['an image', () => ({ ...plain, mark: { type: 'image' }, encoding: { url: { value: `http://127.0.0.1:${port()}/i.png` } } })],
    ['a link', () => ({ ...plain, encoding: { href: { value: 'https://example.org' } } })],
    ['looked-up data', () => ({ ...plain, transform: [{ lookup: 'a', from: { data: { url: 'package.json' }, key: 'a', fields: ['a'] } }] })],
    ['the clock', () => ({ ...plain, transform: [{ calculate: 'now()', as: 'b' }] })],
    ['chance', () => ({ ...plain, transform: [{ calculate: 'random ()', as: 'b' }] })],
    ['made-up data', () => ({ ...plain, data: { sequence: { start: 0, stop: 5e6 } } })],
    ['too many rows', () => ({ ...plain, data: { values: Array.from({ length: mostDataRows + 1 }, () => ({ a: 1 })) } })],
  ])('%s', async (_what, make) => {
    const spec = make();
    expect(refusals(spec).length).toBeGreaterThan(0);
    await expect(drawSpec(spec)).rejects.toThrow();
  });

  test('nothing was asked of the network', () => expect(asked).toBe(0));
});

test('an ordinary spec is drawn, and words in its data are only data', async () => {
  const spec = { ...plain, data: { values: [{ a: 1, name: 'now() url href file:///etc/passwd' }] } };
  expect(refusals(spec)).toEqual([]);
  expect(await drawSpec(spec)).toContain('<path');
});

test('the loader itself refuses, even where no word of the spec gives it away', async () => {
  const hidden = { ...plain, data: { name: 'x', format: { type: 'json' }, ['u' + 'rl']: join(folder, 'secret.json') } };
  await expect(drawSpec(hidden)).rejects.toThrow();
});
