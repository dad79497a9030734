// The contact sheet: valid, closed to the outside, readable by everyone, and true in its simulations.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import { type Browser, chromium, type Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { renderContactSheet, type SheetPicture } from '../../pipeline/page/index.js';
import { hostile, template } from './pages.js';
import { place } from '../charts/sample.js';

const picture = (change: Partial<SheetPicture> = {}): SheetPicture => ({
  stem: '01-core', kind: 'bars', title: 'Core temperature', alt: 'Open bench: 66 °C; Closed case: 75 °C.', why: 'core temperature changes from 66 °C to 75 °C', from: '0123456789abcdef',
  facts: [{ id: 'mean:a/b/c/temperature/core/load', shown: '66 °C' }],
  stills: [{ name: '01-core-1920x1080.png', width: 1920, height: 1080 }, { name: '01-core-3840x2160.png', width: 3840, height: 2160 }, { name: '01-core-1080x1920.png', width: 1080, height: 1920 }, { name: '01-core-1080x1080.png', width: 1080, height: 1080 }],
  files: ['01-core-1920x1080.png', '01-core.json'], ...change,
});
const pages = {
  full: () => renderContactSheet({ title: 'One card', draft: false, findings: [], template, pictures: [picture(), picture({ stem: '02-board', moving: { name: '02-board-1920x1080.webp', width: 1920, height: 1080, build: 'in-out' } })] }),
  draft: () => renderContactSheet({ title: 'One card', draft: true, findings: [], template, pictures: [picture({ facts: [], stills: [] })] }),
  hostile: () => renderContactSheet({ title: hostile, draft: false, findings: [{ code: 'label-too-long', severity: 'note', message: hostile }, { code: 'too-many-rows', severity: 'warning', message: hostile, accepted: { reason: hostile, place } }], template, pictures: [picture({ title: hostile, alt: hostile, why: hostile, kind: hostile, facts: [{ id: hostile, shown: hostile }] })] }),
  empty: () => renderContactSheet({ title: 'Nothing', draft: false, findings: [], template, pictures: [] }),
};

const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y', 'html-validate:document'],
  // Style and not standard: other tools print it otherwise.
  rules: { 'no-trailing-whitespace': 'off', 'long-title': 'off', 'prefer-native-element': 'off', 'attr-quotes': 'off', 'doctype-style': 'off', 'void-style': 'off' },
});

describe.each(Object.entries(pages))('%s', (_name, make) => {
  const html = make();
  test('is valid HTML', () => {
    const report = validator.validateStringSync(html);
    expect(report.results.flatMap((r) => r.messages).map((m) => `${m.line}:${m.column} ${m.ruleId} ${m.message}`)).toEqual([]);
  });
  test('runs nothing and asks nothing of the network', () => {
    expect(html).not.toMatch(/<script|\son\w+="|(?:src|href)="(?:https?:)?\/\//i);
    expect(html).toContain("default-src 'none'");
  });
  test('comes out the same twice', () => expect(make()).toBe(html));
});

test('every picture over three grounds, small and at full size, by four eyes, in each shape once, with words, facts and files', () => {
  const html = pages.full();
  const first = /<section id="picture-1"[\s\S]*?<\/section>/.exec(html)![0];
  expect([...first.matchAll(/<div class="(light|dark|busy) ground"><img src="01-core-1920x1080\.png" width="(\d+)" height="(\d+)"/g)].map((m) => m.slice(1))).toEqual([
    ...['light', 'dark', 'busy'].map((g) => [g, '640', '360']), ...['light', 'dark', 'busy'].map((g) => [g, '1920', '1080']),
  ]);
  expect([...first.matchAll(/<img class="(\w+)"/g)].map((m) => m[1])).toEqual(['protan', 'deutan', 'tritan', 'grey']);
  // 3840×2160 is the same picture larger.
  expect([...first.matchAll(/<figcaption>(\d+ × \d+)</g)].map((m) => m[1])).toEqual(['1080 × 1920', '1080 × 1080']);
  for (const text of ['66 °C', 'mean:a/b/c/temperature/core/load', 'core temperature changes', '01-core.json', '0123456789abcdef']) expect(first, text).toContain(text);
  expect(html).toContain('comes in and goes out');
});

test('the filters are the published matrices, for linear light', () => {
  const oracle = JSON.parse(readFileSync(join(import.meta.dirname, '../oracles/cvd_matrices.json'), 'utf8')) as Record<string, Record<string, number[][]>>;
  const html = pages.full();
  for (const eye of ['protan', 'deutan', 'tritan']) {
    const [, space, values] = new RegExp(`<filter id="${eye}" color-interpolation-filters="(\\w+)"><feColorMatrix type="matrix" values="([^"]*)"`).exec(html)!;
    expect(space).toBe('linearRGB');
    const n = values!.split(' ').map(Number);
    expect([0, 1, 2].map((row) => n.slice(row * 5, row * 5 + 3))).toEqual(oracle['machado2009_severity_1.0']![eye]);
    expect([3, 4, 8, 9, 13, 14].map((i) => n[i]).concat(n.slice(15))).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0]);
  }
});

const executable = process.env.CHROMIUM ?? '/usr/bin/chromium';
const missing = !existsSync(executable);
if (missing && process.env.CI) test('a browser is there', () => expect.fail(`no Chromium at ${executable}; set CHROMIUM to its path`));

describe.skipIf(missing)('in a browser', () => {
  let browser: Browser;
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: executable, args: ['--no-sandbox'] });
    for (const { name, width, height } of picture().stills) writeFileSync(join(folder, name), await sharp({ create: { width, height, channels: 4, background: '#ff0000' } }).png().toBuffer());
    for (const [name, make] of Object.entries(pages)) writeFileSync(join(folder, `${name}.html`), make());
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function open<T>(name: string, options: object, look: (page: Page) => Promise<T>): Promise<T> {
    const context = await browser.newContext({ offline: true, bypassCSP: true, ...options });
    try {
      const page = await context.newPage();
      await page.goto(pathToFileURL(join(folder, `${name}.html`)).href);
      await page.evaluate('document.querySelectorAll("details").forEach((d) => { d.open = true; })');
      return await look(page);
    } finally {
      await context.close();
    }
  }

  test.each([['full', 'light', 1280], ['full', 'dark', 360], ['hostile', 'light', 360], ['empty', 'light', 360]] as const)('axe-core finds nothing in %s, %s at %d px, and nothing sticks out', (name, colorScheme, width) => open(name, { colorScheme, viewport: { width, height: 800 } }, async (page) => {
    await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
    const violations = await page.evaluate(async () => {
      const { axe } = globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } };
      return (await axe.run()).violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`);
    });
    expect(violations).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
  }));

  test('red is seen as the published matrix has it', () => open('full', { viewport: { width: 1280, height: 800 } }, async (page) => {
    const image = page.locator('img.deutan').first();
    await image.scrollIntoViewIfNeeded();
    await image.evaluate((i) => (i as unknown as { decode(): Promise<void> }).decode());
    const { data } = await sharp(await image.screenshot()).extract({ left: 100, top: 100, width: 1, height: 1 }).removeAlpha().raw().toBuffer({ resolveWithObject: true });
    // Of pure red the first column is left: 0.367322, 0.280085, below 0; coded by the sRGB curve (IEC 61966-2-1).
    const coded = [0.367322, 0.280085, 0].map((c) => Math.round(255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055)));
    [...data].forEach((c, i) => expect(Math.abs(c - coded[i]!)).toBeLessThanOrEqual(3));
  }));
});
