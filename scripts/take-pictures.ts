// Pictures of docs/pictures, from what the examples write: `npx tsx --conditions=@noonloop/source scripts/take-pictures.ts` after
// `npm start` and docs/examples/check-log.ts. Needs Debian's chromium, or the one that NOONLOOP_CHROMIUM names.
import { copyFileSync } from 'node:fs';
import { chromium } from 'playwright-core';

const file = (path: string): string => new URL(`../${path}`, import.meta.url).pathname;
const browser = await chromium.launch({
  executablePath: process.env.NOONLOOP_CHROMIUM ?? '/usr/bin/chromium',
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});
const page = await browser.newPage({ viewport: { width: 820, height: 720 }, deviceScaleFactor: 2 });
await page.goto(`file://${file('out/two-or-three-panels.html')}`);
await page.screenshot({ path: file('docs/pictures/two-or-three-panels.png') });
await browser.close();
copyFileSync(file('out/check-log.svg'), file('docs/pictures/check-log.svg'));
