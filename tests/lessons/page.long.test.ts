/** The lesson page in a browser: exercises set the knobs, the week plays, and its numbers are those of a year in Node. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineSystem, type RunColumns, type SystemInput, simulate } from '@noonloop/sim-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXERCISES, FIRST } from '../../docs/lessons/exercises.ts';
import { lessonPage } from '../../scripts/build-lesson.ts';
import { inventedValley } from '../examples.ts';
import { axeFindings, hasBrowser, onPage, startBrowser } from '../reports/browser.ts';

/** Rows of the days as the page has them, from a year in Node. */
async function daysOf(input: SystemInput, first: number): Promise<string[][]> {
  const { columns } = simulate(defineSystem(input), await inventedValley());
  return Array.from({ length: 7 }, (_, at) => {
    const from = 24 * (first + at);
    const part = (name: keyof RunColumns) => [...columns[name].subarray(from, from + 24)];
    const sum = (name: keyof RunColumns) => part(name).reduce((total, value) => total + value, 0);
    const relief = 1000 * sum('reliefVolume');
    return [
      (sum('irradiance') / 1000).toFixed(1),
      (sum('solarHeat') / 3.6e6).toFixed(1),
      (sum('heaterHeat') / 3.6e6).toFixed(1),
      `${Math.max(...part('tankMaximumTemperature')).toFixed(0)} °C`,
      `${Math.max(...part('absorberTemperature')).toFixed(0)} °C`,
      relief > 0 ? `${relief.toFixed(1)} L` : 'closed',
    ];
  });
}

const shownDays = (page: Page): Promise<string[][]> =>
  page.$$eval('#week-table tr', (rows) =>
    rows.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent!.replaceAll('\u00a0', ' '))),
  );

describe.skipIf(!hasBrowser)('the lesson page', () => {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-lesson-'));
  const file = join(folder, 'tank-week.html');
  let browser: Browser;

  beforeAll(async () => {
    writeFileSync(file, await lessonPage());
    browser = await startBrowser();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  const opened = <T>(width: number, colorScheme: 'light' | 'dark', work: (page: Page) => Promise<T>): Promise<T> =>
    onPage(browser, file, { width, colorScheme }, async (page) => {
      await page.waitForSelector('body[data-ready]', { timeout: 30_000 });
      await page.waitForSelector('#week-table tr');
      return work(page);
    });

  it('has a link for each case of each lesson; a link sets the knobs and the week, and reset goes back to it', async () => {
    await opened(1200, 'light', async (page) => {
      expect(await page.$$('#exercises a')).toHaveLength(EXERCISES.flatMap(({ cases }) => cases).length);
      const rows = await shownDays(page);
      await page.click('text="3 panels, no limit"');
      await page.waitForFunction((before) => document.querySelector('#week-table')!.textContent !== before, '');
      const away: SystemInput = {
        ...FIRST,
        array: { ...FIRST.array, panels: 3 },
        draw: { ...FIRST.draw, holidays: ['07-10..07-23'] },
        control: { highLimit: null },
      };
      const expected = await daysOf(away, 190);
      await expect.poll(() => shownDays(page), { timeout: 20_000 }).toEqual(expected);
      expect(expected).not.toEqual(rows);
      // Without a limit the valve opens in that week, and the page says so in the table, in the drawing and beside it.
      expect(expected.some((row) => row.at(-1) !== 'closed')).toBe(true);
      const opens = await page.$$eval('#week-parts .relieved', (marks) => marks.length);
      expect(opens).toBeGreaterThan(0);

      await page.fill('#knob-array-tilt', '60');
      await page.press('#knob-array-tilt', 'Enter');
      await expect.poll(() => shownDays(page), { timeout: 20_000 }).not.toEqual(expected);
      await page.click('#again');
      await expect.poll(() => shownDays(page), { timeout: 20_000 }).toEqual(expected);
      const link = page.url();
      expect(link).toContain('page.week=190');
    });
  });

  it('begins below its limit, with numbers of a year in Node', async () => {
    await opened(1200, 'light', async (page) => {
      const first = Number(await page.$eval('#week-table th', (cell) => Number.parseInt(cell.textContent!, 10)));
      const month = await page.$eval('#week-table th', (cell) => cell.textContent!.slice(-3));
      const starts = { Jun: 151, Jul: 181, Aug: 212 } as Record<string, number>;
      const days = await shownDays(page);
      expect(days).toEqual(await daysOf(FIRST, starts[month]! + first - 1));
      expect(days.every((row) => row.at(-1) === 'closed')).toBe(true);
    });
  });

  it('plays and pauses by keyboard, and a click into the week goes there', async () => {
    await opened(1200, 'light', async (page) => {
      await page.selectOption('#speed', '24');
      await page.focus('#play');
      await page.keyboard.press('Space');
      expect(await page.textContent('#play')).toBe('Pause');
      await expect.poll(async () => Number(await page.inputValue('#hour')), { timeout: 20_000 }).toBeGreaterThan(40);
      await page.keyboard.press('Space');
      const at = await page.inputValue('#hour');
      await page.waitForTimeout(200);
      expect(await page.inputValue('#hour')).toBe(at);
      await page.click('#week-picture', { position: { x: 20, y: 40 } });
      expect(await page.inputValue('#hour')).toBe('0');
      expect(await page.getAttribute('#hour', 'aria-valuetext')).toMatch(/^\d+ \w{3}, 0:00 to 1:00, tank top \d+ °C$/);
    });
  });

  it.each([
    [1200, 'light'],
    [390, 'light'],
    [1200, 'dark'],
  ] as const)('at %i px, %s: axe finds nothing, and nothing sticks out', async (width, scheme) => {
    await opened(width, scheme, async (page) => {
      expect(await axeFindings(page)).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    });
  });
});
