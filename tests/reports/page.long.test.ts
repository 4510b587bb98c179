import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type MoneyOptions, renderHtml } from '@noonloop/reports';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fixture, withLayers } from './fixture.ts';

const CHROMIUM = process.env.NOONLOOP_CHROMIUM ?? '/usr/bin/chromium';
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** Pages of two designs with everything on them: 17 on A4 and 18 on Letter were counted, and one of play. */
const PRINTED = [16, 19] as const;
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

const PRICES: MoneyOptions = {
  currency: 'EUR',
  fuel: { carrier: 'natural-gas', price: 0.11, per: 'kWh', escalation: 0.02 },
  investment: { new: 3000, used: 1200 },
  maintenance: 30,
  discountRate: 0.03,
  life: 20,
};

describe.skipIf(!existsSync(CHROMIUM))('the HTML report in a browser', () => {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-page-'));
  const file = join(folder, 'report.html');
  let browser: Browser;

  beforeAll(async () => {
    const runs = [fixture({ panels: 2 }), fixture({ panels: 4, mixingValve: false, name: '<script>x()</script>' })];
    writeFileSync(
      file,
      await renderHtml(runs.map(withLayers), { money: PRICES, rankBy: 'netPresentValue', losses: true }),
    );
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
      expect(shown).toBe(12);
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

  it.each([
    [1200, 'light'],
    [390, 'light'],
    [1200, 'dark'],
  ] as const)(
    'at %i px, %s: axe-core finds nothing, chart tables open too [axe-core 4.14]',
    async (width, colorScheme) => {
      const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
      await page.goto(`file://${file}`);
      await page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true");
      // The page's own policy forbids scripts; the test's evaluation is not subject to it.
      await page.evaluate(axe);
      const found = await page.evaluate(
        `axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) =>
        violations.map(({ id, nodes }) => id + ': ' + nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ')))`,
      );
      expect(found).toEqual([]);
      await page.close();
    },
  );

  it('has every link, table and chart table within reach of the keyboard, in the order of the page [WCAG 2.1, 2.1.1 and 2.4.3]', async () => {
    const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
    await page.goto(`file://${file}`);
    const reachable = (await page.evaluate(
      `[...document.querySelectorAll('a[href], summary, [tabindex="0"]')].filter((one) => one.checkVisibility()).length`,
    )) as number;
    const places: number[] = [];
    for (let press = 0; press < reachable; press++) {
      await page.keyboard.press('Tab');
      places.push(
        (await page.evaluate(
          `[...document.querySelectorAll('a[href], summary, [tabindex="0"]')].indexOf(document.activeElement)`,
        )) as number,
      );
    }
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(new Set(places).size).toBe(reachable);
    expect(places).not.toContain(-1);
    await page.close();
  });

  it('of one design with everything on it opens in less than a second, the least of three [requirement]', async () => {
    const one = join(folder, 'one.html');
    writeFileSync(one, await renderHtml(withLayers(fixture()), { money: PRICES, losses: true }));
    const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
    const painted: number[] = [];
    for (let turn = 0; turn < 3; turn++) {
      await page.goto(`file://${one}`);
      painted.push(
        (await page.evaluate(
          `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now()))))`,
        )) as number,
      );
    }
    expect(Math.min(...painted)).toBeLessThan(1000); // [ms] from navigation to the second frame
    await page.close();
  });

  it.each(['A4', 'Letter'] as const)('prints on %s in the expected pages [requirement]', async (format) => {
    const page = await browser.newPage();
    await page.goto(`file://${file}`);
    const pdf = (await page.pdf({ format })).toString('latin1');
    const pages = pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
    // Counted with Debian's fonts; other fonts break lines elsewhere.
    expect(pages).toBeGreaterThanOrEqual(PRINTED[0]);
    expect(pages).toBeLessThanOrEqual(PRINTED[1]);
    await page.close();
  });
});
