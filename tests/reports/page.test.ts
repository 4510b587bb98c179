import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { renderHtml } from '@noonloop/reports';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fixture } from './fixture.ts';

const CHROMIUM = process.env.NOONLOOP_CHROMIUM ?? '/usr/bin/chromium';
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

if (!existsSync(CHROMIUM)) console.warn(`Page tests skipped: no browser at ${CHROMIUM}; set NOONLOOP_CHROMIUM to one.`);

describe.skipIf(!existsSync(CHROMIUM))('the HTML report in a browser', () => {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-page-'));
  const file = join(folder, 'report.html');
  let browser: Browser;

  beforeAll(async () => {
    writeFileSync(file, await renderHtml([fixture({ panels: 2 }), fixture({ panels: 4, mixingValve: false })]));
    browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  it.each([
    [1200, 'light'],
    [390, 'light'],
    [1200, 'dark'],
  ] as const)(
    'at %i px, %s: no console message, no request, no sideways scrolling, a picture [requirement]',
    async (width, colorScheme) => {
      const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
      const messages: string[] = [];
      const requests: string[] = [];
      page.on('console', (message) => messages.push(message.text()));
      page.on('pageerror', (error) => messages.push(error.message));
      page.on('request', (request) => requests.push(request.url()));
      await page.goto(`file://${file}`);
      const picture = await page.screenshot({ fullPage: true });
      expect(messages).toEqual([]);
      expect(requests).toEqual([`file://${file}`]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
      expect(picture.byteLength).toBeGreaterThan(50_000);
      await page.close();
    },
  );

  it.each([1200, 390])(
    'at %i px shows one size of each chart and no text outside its picture [requirement]',
    async (width) => {
      const page = await browser.newPage({ viewport: { width, height: 900 } });
      await page.goto(`file://${file}`);
      const outside = await page.evaluate(`(() => {
      const found = [];
      for (const svg of document.querySelectorAll('figure svg')) {
        const frame = svg.getBoundingClientRect();
        for (const text of svg.querySelectorAll('text')) {
          const box = text.getBoundingClientRect();
          if (box.width > 0 && (box.left < frame.left - 1 || box.right > frame.right + 1 || box.bottom > frame.bottom + 1)) found.push(text.textContent);
        }
      }
      return found;
    })()`);
      expect(outside).toEqual([]);
      const shown = await page.evaluate(
        `[...document.querySelectorAll('figure svg')].filter((svg) => svg.getBoundingClientRect().width > 0).length`,
      );
      expect(shown).toBe(11);
      await page.close();
    },
  );

  it('keeps the labels of a chart apart [requirement]', async () => {
    const page = await browser.newPage({ viewport: { width: 390, height: 900 } });
    await page.goto(`file://${file}`);
    const touching = await page.evaluate(`(() => {
      const found = [];
      for (const svg of document.querySelectorAll('figure svg')) {
        const boxes = [...svg.querySelectorAll('text')].map((text) => [text.textContent, text.getBoundingClientRect()]).filter(([, box]) => box.width > 0);
        boxes.forEach(([a, one], index) => {
          for (const [b, other] of boxes.slice(index + 1))
            if (one.left < other.right && other.left < one.right && one.top + 3 < other.bottom && other.top + 3 < one.bottom) found.push(a + ' | ' + b);
        });
      }
      return found;
    })()`);
    expect(touching).toEqual([]);
    await page.close();
  });

  it('prints on A4 and Letter [requirement]', async () => {
    const page = await browser.newPage();
    await page.goto(`file://${file}`);
    for (const format of ['A4', 'Letter']) expect((await page.pdf({ format })).byteLength).toBeGreaterThan(20_000);
    await page.close();
  });
});
