// A picture that was copied away is found when its record moves on.
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { run } from '../../pipeline/command-line.js';
import { bench, sample } from './sample.js';

afterEach(() => void vi.restoreAllMocks());

async function stale(folder: string, data: string): Promise<{ code: number; text: string }> {
  let text = '';
  vi.spyOn(process.stdout, 'write').mockImplementation((part) => (text += String(part), true));
  vi.spyOn(process.stderr, 'write').mockImplementation((part) => (text += String(part), true));
  const code = await run(['stale', folder, '--data', data]);
  vi.restoreAllMocks();
  return { code, text };
}

test('what still holds is fresh; an edited reading names the figure; a picture no longer made is told', async () => {
  const s = sample({ bench });
  await s.build();
  const copied = join(s.folder, 'editing');
  cpSync(join(s.out, 'bench/pictures'), copied, { recursive: true });
  expect(await stale(copied, s.options.data)).toEqual({ code: 0, text: '0 of 2 pictures stale.\n' });
  // 199 to 203: the mean of the board power goes from 199.67 to 201.
  s.write('bench/episode.yaml', bench.replace('load: 199 200 200 W', 'load: 203 200 200 W'));
  const moved = await stale(copied, s.options.data);
  expect(moved.code).toBe(1);
  expect(moved.text.startsWith(join(copied, '02-board.json'))).toBe(true);
  expect(moved.text).toMatch(/02-board\.json: mean:bench\/capped\/loop\/power\/board\/load is 201.W now, and was 200.W/);
  expect(moved.text).toContain('1 of 2 pictures stale.');
  s.write('bench/episode.yaml', bench.replace(/.*name: board.*\n/, '').replace('name: core,', 'name: core, title: Warm,'));
  const gone = await stale(copied, s.options.data);
  expect(gone.text).toMatch(/01-core\.json: its figures stand, but it would look otherwise now\n.*\/02-board\.json: it is no longer made/);
});
