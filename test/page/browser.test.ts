// Pages in a real browser: one request, no scrolling sideways on a phone, nothing that axe-core finds, print.
// Needs Chromium (`apt-get install chromium`, or CHROMIUM=/path/to/it). Without one these tests are skipped and say so; where
// CI is set a missing browser fails.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { renderIndex } from '../../pipeline/page/index.js';
import { emptyPage, factsWithAside, hostilePage, pageOf, template } from './pages.js';

const executable = process.env.CHROMIUM ?? '/usr/bin/chromium';
const missing = !existsSync(executable);
if (missing && !process.env.CI) console.warn(`No Chromium at ${executable}: the browser tests of the page are skipped. Set CHROMIUM to its path.`);
if (missing && process.env.CI) test('a browser is there', () => expect.fail(`no Chromium at ${executable}; set CHROMIUM to its path`));

const pages = {
  full: () => pageOf(factsWithAside(), { draft: true }),
  hostile: hostilePage,
  empty: emptyPage,
  index: () => renderIndex({ cards: [{ id: 'a', title: 'One board, two boxes', date: '2026-03-14', summary: 'A summary.', draft: false, readings: 31, facts: 12, warnings: 1 }], draft: false, template }),
};
const phone = { viewport: { width: 360, height: 740 } };
const desk = { viewport: { width: 1280, height: 900 } };

const unfold = 'document.querySelectorAll("details").forEach((d) => { d.open = true; })';

let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'page-'));
beforeAll(async () => {
  if (!missing) browser = await chromium.launch({ executablePath: executable, args: ['--no-sandbox'] });
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe.skipIf(missing).each(Object.keys(pages) as (keyof typeof pages)[])('%s page', (name) => {
  const file = join(folder, `${name}.html`);
  const url = pathToFileURL(file).href;
  beforeAll(() => writeFileSync(file, pages[name]()));

  async function open<T>(options: BrowserContextOptions, look: (page: Page, seen: { requests: string[]; messages: string[] }) => Promise<T>): Promise<T> {
    const context = await browser.newContext({ offline: true, ...options });
    try {
      const page = await context.newPage();
      const seen = { requests: [] as string[], messages: [] as string[] };
      page.on('request', (r) => seen.requests.push(r.url()));
      page.on('console', (m) => seen.messages.push(m.text()));
      page.on('dialog', (d) => void d.dismiss().then(() => seen.messages.push('a dialog opened')));
      await page.goto(url);
      return await look(page, seen);
    } finally {
      await context.close();
    }
  }

  test('is one request and silent', () => open(desk, async (_page, { requests, messages }) => {
    expect(requests.filter((r) => !r.startsWith('data:'))).toEqual([url]);
    expect(messages).toEqual([]);
  }));

  test('needs no script', () => open({ ...desk, javaScriptEnabled: false }, async (page) => {
    expect((await page.content()).length).toBeGreaterThan(500);
  }));

  test('does not scroll sideways at 360 px, with everything unfolded', () => open(phone, async (page) => {
    await page.evaluate(unfold);
    const { width, out } = await page.evaluate(`({
      width: document.documentElement.scrollWidth,
      out: [...document.querySelectorAll('body *')].filter((e) => !e.closest('.scroll, .hidden') && e.getBoundingClientRect().right > innerWidth + 1).map((e) => e.outerHTML.slice(0, 100)),
    })`) as { width: number; out: string[] };
    expect(out).toEqual([]);
    expect(width).toBe(360);
  }));

  test('keeps the first column in view while a table scrolls, by keyboard too', () => open(phone, async (page) => {
    for (const region of await page.locator('.scroll').all()) expect(await region.getAttribute('tabindex')).toBe('0');
    const wide = page.locator('.scroll:has(table.results)').first();
    if ((await wide.count()) === 0) return;
    await wide.evaluate((e) => { e.scrollLeft = 60; });
    const shift = await wide.evaluate((e) => e.querySelector('tbody th')!.getBoundingClientRect().left - e.getBoundingClientRect().left);
    expect(Math.abs(shift)).toBeLessThan(1.5);
  }));

  test('shows by a band at its edge that a table goes on, and by a line that a chart does', () => open(phone, async (page) => {
    const bands = await page.evaluate(`[...document.querySelectorAll('.scroll:not(.chart)')].map((e) => getComputedStyle(e).backgroundAttachment)`) as string[];
    for (const band of bands) expect(band).toBe('local, local, scroll, scroll');
    for (const chart of await page.locator('.scroll.chart').all()) {
      const hint = chart.locator('xpath=preceding-sibling::p[1]');
      expect(await hint.isVisible()).toBe(await chart.evaluate((e) => e.scrollWidth > e.clientWidth + 1));
      await page.setViewportSize(desk.viewport);
      expect(await hint.isVisible()).toBe(await chart.evaluate((e) => e.scrollWidth > e.clientWidth + 1));
      await page.setViewportSize(phone.viewport);
    }
  }));

  test.each((name === 'full' ? [['light', desk], ['dark', desk], ['light', phone], ['dark', phone]] : [['light', phone]]) as ['light' | 'dark', typeof desk][])('axe-core finds nothing in %s (%o)', (colorScheme, size) => open({ ...size, colorScheme, bypassCSP: true }, async (page) => {
    await page.evaluate(unfold);
    await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
    const violations = await page.evaluate(async () => {
      const { axe } = globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } };
      return (await axe.run()).violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`);
    });
    expect(violations).toEqual([]);
  }));

  test('prints', () => open(desk, async (page) => {
    const pdf = await page.pdf();
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(await page.evaluate('getComputedStyle(document.body).backgroundColor')).toBe('rgb(255, 255, 255)');
    expect(await page.locator('nav').isVisible().catch(() => false)).toBe(false);
  }));
});
