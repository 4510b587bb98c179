/** A browser for tests of pages: Debian's Chromium, or the one that NOONLOOP_CHROMIUM names. */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';

const CHROMIUM = process.env.NOONLOOP_CHROMIUM ?? '/usr/bin/chromium';

/** Whether there is one; says so where there is none. */
export const hasBrowser = existsSync(CHROMIUM);
if (!hasBrowser) console.warn(`Page tests skipped: no browser at ${CHROMIUM}; set NOONLOOP_CHROMIUM to one.`);

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

export const startBrowser = (): Promise<Browser> => chromium.launch({ executablePath: CHROMIUM, args: FLAGS });

/** Window of a screen. */
export interface Screen {
  readonly width: number;
  readonly height?: number;
  readonly colorScheme?: 'light' | 'dark';
}

/** Opens a file, does something with it, closes it. */
export async function onPage<T>(
  browser: Browser,
  file: string,
  screen: Screen,
  work: (page: Page) => Promise<T>,
): Promise<T> {
  const { width, height = 900, colorScheme = 'light' } = screen;
  const page = await browser.newPage({ viewport: { width, height }, colorScheme });
  try {
    await page.goto(`file://${file}`);
    return await work(page);
  } finally {
    await page.close();
  }
}

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds, with everything on the page open. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  await page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true");
  // The page's own policy forbids scripts; the test's evaluation is not subject to it.
  await page.evaluate(axe);
  return page.evaluate(
    `axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) =>
      violations.map(({ id, nodes }) => id + ': ' + nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ')))`,
  );
}

/** Labels of the charts that are shown: those cut by the picture's edge, and pairs that touch. */
export const labelFaults = (page: Page): Promise<readonly string[]> =>
  page.evaluate(`(() => {
    const found = [];
    for (const svg of document.querySelectorAll('svg[role="img"]')) {
      const frame = svg.getBoundingClientRect();
      if (frame.width === 0) continue;
      const boxes = [...svg.querySelectorAll('text')].map((text) => [text.textContent, text.getBoundingClientRect()]).filter(([, box]) => box.width > 0);
      for (const [word, box] of boxes)
        if (box.left < frame.left - 1 || box.right > frame.right + 1 || box.top < frame.top - 1 || box.bottom > frame.bottom + 1) found.push('cut: ' + word);
      boxes.forEach(([a, one], index) => {
        for (const [b, other] of boxes.slice(index + 1))
          if (one.left + 1 < other.right && other.left + 1 < one.right && one.top + 3 < other.bottom && other.top + 3 < one.bottom) found.push('touch: ' + a + ' | ' + b);
      });
    }
    return found;
  })()`);

/** Words of the energy flow that lie on a band, and how many words and bands there are. */
export const wordsOnBands = (page: Page): Promise<{ on: readonly string[]; words: number; bands: number }> =>
  page.evaluate(`(() => {
    const on = [];
    let [words, bands] = [0, 0];
    for (const svg of document.querySelectorAll('svg[aria-label^="Heat from the sun"]')) {
      if (svg.getBoundingClientRect().width === 0) continue;
      const shapes = [...svg.querySelectorAll('path')].filter((path) => path.getAttribute('fill-opacity') !== null && path.getAttribute('fill-opacity') !== '1');
      bands += shapes.length;
      for (const text of svg.querySelectorAll('text')) {
        const box = text.getBoundingClientRect();
        if (box.width === 0) continue;
        words++;
        for (let x = 0; x <= 8; x++)
          for (let y = 1; y <= 3; y++) {
            const at = new DOMPoint(box.left + (box.width * x) / 8, box.top + (box.height * y) / 4);
            if (shapes.some((shape) => shape.isPointInFill(at.matrixTransform(shape.getScreenCTM().inverse())))) on.push(text.textContent);
          }
      }
    }
    return { on: [...new Set(on)], words, bands };
  })()`);

/** Tables that go on to the right of the screen without a word that says so. */
export const hiddenColumns = (page: Page): Promise<readonly string[]> =>
  page.evaluate(`(() => {
    for (const one of document.querySelectorAll('details')) one.open = true;
    return [...document.querySelectorAll('.scroll')]
      .filter((box) => box.scrollWidth > box.clientWidth + 1)
      .filter((box) => !(box.previousElementSibling?.classList.contains('hint') && box.previousElementSibling.checkVisibility()))
      .map((box) => box.getAttribute('aria-label') + ' ' + box.scrollWidth + ' > ' + box.clientWidth);
  })()`);
