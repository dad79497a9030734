// The same chart is the same bytes in any time zone and locale, with any fonts or none, first or second in its process.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const script = join(import.meta.dirname, 'draw-once.mjs');
const compiled = join(import.meta.dirname, '../../dist/charts/index.js');
const folder = mkdtempSync(join(tmpdir(), 'fonts-'));
// A font configuration without a single font.
writeFileSync(join(folder, 'fonts.conf'), `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><cachedir>${folder}</cachedir></fontconfig>`);
afterAll(() => rmSync(folder, { recursive: true }));

function draw(env: Record<string, string>, ...args: string[]): string {
  return execFileSync(process.execPath, [script, ...args], { env: { ...process.env, ...env }, encoding: 'utf8' }).trim();
}

test('the program is compiled', () => expect(existsSync(compiled), 'run "npm run compile" first; "npm test" does').toBe(true));

test('same bytes everywhere', () => {
  const here = draw({});
  expect(JSON.parse(here)).toHaveProperty('png');
  expect(draw({ FONTCONFIG_FILE: join(folder, 'fonts.conf'), FONTCONFIG_PATH: folder, TZ: 'Asia/Tokyo', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' })).toBe(here);
  expect(draw({ TZ: 'America/St_Johns', LANG: 'C', LC_ALL: 'C' }, 'second')).toBe(here);
});
