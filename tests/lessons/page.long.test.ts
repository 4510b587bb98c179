import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dayRows, hourName, lessonWeek, readings, START } from '../../docs/lessons/page/week.ts';
import { lessonPage } from '../../scripts/build-lesson.ts';
import { inventedValley } from '../examples.ts';

const CHROMIUM = process.env.NOONLOOP_CHROMIUM ?? '/usr/bin/chromium';
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const FLAGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'];
FLAGS.push('--disable-component-update', '--disable-sync', '--no-first-run');
/** Largest page that is still sent by mail. [bytes] */
const MOST_BYTES = 2e6;

if (!existsSync(CHROMIUM))
  console.warn(`Lesson tests skipped: no browser at ${CHROMIUM}; set NOONLOOP_CHROMIUM to one.`);

describe.skipIf(!existsSync(CHROMIUM))('the lesson page in a browser', () => {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-lesson-'));
  const file = join(folder, 'tank-week.html');
  let browser: Browser;
  const messages: string[] = [];
  const requests: string[] = [];

  beforeAll(async () => {
    writeFileSync(file, await lessonPage());
    browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  async function open(width = 1200, colorScheme: 'light' | 'dark' = 'light'): Promise<Page> {
    const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
    page.on('console', (message) => messages.push(message.text()));
    page.on('pageerror', (error) => messages.push(error.message));
    page.on('request', (request) => requests.push(request.url()));
    await page.goto(`file://${file}`);
    await page.waitForSelector('body[data-ready]', { timeout: 60_000 });
    return page;
  }

  const shownReadings = (page: Page) =>
    page.evaluate(
      `[...document.querySelectorAll('#readings dt')].map((term) => [term.textContent, term.nextElementSibling.textContent])`,
    );
  const shownDays = (page: Page) =>
    page.evaluate(
      `[...document.querySelectorAll('#days tr')].map((row) => [...row.children].map((cell) => cell.textContent))`,
    );
  /** Sets a slider or box as a hand would: value, then the events. */
  const set = (page: Page, id: string, value: string) =>
    page.evaluate(
      `{ const one = document.querySelector('#${id}'); one.value = ${JSON.stringify(value)};
         one.dispatchEvent(new Event('input')); one.dispatchEvent(new Event('change')); }`,
    );

  it('is one file of less than 2 MB', () => {
    expect(readFileSync(file).byteLength).toBeLessThan(MOST_BYTES);
  });

  it('shows the numbers that Node computes, at the start and with another week and design [the same steps]', async () => {
    const weather = await inventedValley();
    const page = await open();
    const first = lessonWeek(START, weather, 26);
    expect(await shownDays(page)).toEqual(dayRows(first, 26));
    expect(await shownReadings(page)).toEqual(readings(first[36]!).map((reading) => [...reading]));
    await page.focus('#hour');
    await page.keyboard.press('ArrowRight');
    expect(await page.textContent('#clock')).toBe(hourName(37));
    expect(await shownReadings(page)).toEqual(readings(first[37]!).map((reading) => [...reading]));

    await set(page, 'panels', '2');
    await set(page, 'tank_L', '200');
    await page.check('#limit');
    await page.selectOption('#week', '2');
    const other = lessonWeek({ ...START, panels: 2, tank_L: 200, limit: true }, weather, 2);
    expect(await shownDays(page)).toEqual(dayRows(other, 2));
    await page.close();
  });

  it('plays and pauses by keyboard, and a click into the week goes there', async () => {
    const page = await open();
    await page.selectOption('#speed', '24');
    await page.focus('#play');
    await page.keyboard.press('Space');
    expect(await page.textContent('#play')).toBe('Pause');
    await expect.poll(async () => Number(await page.inputValue('#hour')), { timeout: 20_000 }).toBeGreaterThan(40);
    await page.keyboard.press('Space');
    expect(await page.textContent('#play')).toBe('Play');
    const at = await page.inputValue('#hour');
    await page.waitForTimeout(200);
    expect(await page.inputValue('#hour')).toBe(at);
    await page.click('#week-picture', { position: { x: 20, y: 40 } });
    expect(await page.inputValue('#hour')).toBe('0');
    expect(await page.getAttribute('#hour', 'aria-valuetext')).toMatch(/^Monday 1:00, tank top \d+ °C$/);
    await page.close();
  });

  it.each([
    [1200, 'light'],
    [390, 'light'],
    [1200, 'dark'],
  ] as const)('at %i px, %s: axe-core finds nothing, and nothing sticks out [axe-core 4.14]', async (width, scheme) => {
    const page = await open(width, scheme);
    await page.evaluate(axe);
    const found = await page.evaluate(
      `axe.run({ exclude: ['#week-columns'] }, { resultTypes: ['violations'] }).then(({ violations }) =>
        violations.map(({ id, nodes }) => id + ': ' + nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ')))`,
    );
    expect(found).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    await page.close();
  });

  it('logged nothing and asked for nothing but itself', () => {
    expect(messages).toEqual([]);
    expect(new Set(requests)).toEqual(new Set([`file://${file}`]));
  });
});
