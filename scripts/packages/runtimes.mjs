// Where else the installed packages run: bundled by esbuild and by vite, in a page with an import map and no bundler, in Deno, in Bun.
import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { extname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { quietly, root } from './run.mjs';

/** A year from text, as every runtime can do it; `text` is the weather. */
const YEAR = `import { renderText } from '@noonloop/reports';
import { defineSystem, simulate } from '@noonloop/sim-core';
import { parseWeather } from '@noonloop/weather-io';
export const year = (text) => {
  const design = defineSystem({
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '21 ft2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '80 gal' },
    draw: { dailyVolume: '200 L' },
  });
  const run = simulate(design, parseWeather(text));
  if (!renderText(run).includes('Fuel saved a year')) throw new Error('no report came out');
  return run.columns.solarHeat.reduce((sum, heat) => sum + heat, 0) / 3.6e6;
};
`;

const CALL = `import { readFileSync } from 'node:fs';
import { year } from './year.mjs';
console.log(year(readFileSync('weather.csv', 'utf8')));
`;

/** Last digits of an engine's sines differ; more would be another result. */
const SAME = 1e-6;

/** Tries all in a project into which the packages are installed, and prints a line for each. */
export async function checkRuntimes(cwd) {
  writeFileSync(join(cwd, 'year.mjs'), YEAR);
  writeFileSync(join(cwd, 'call.mjs'), CALL);
  const expected = Number(await quietly(process.execPath, ['call.mjs'], { cwd }));
  if (!(expected > 1000)) throw new Error(`a year gave ${expected} kWh`);
  const ways = {
    'bundled by esbuild': () => esbuildBundle(cwd),
    'bundled by vite': () => viteBundle(cwd),
    'import map in Chromium': () => importMap(cwd),
    Deno: () =>
      quietly('npx', ['--yes', 'deno', 'run', '--allow-read', '--allow-env', '--no-lock', 'call.mjs'], { cwd }),
    Bun: () => quietly('npx', ['--yes', 'bun', 'call.mjs'], { cwd }),
  };
  for (const [name, way] of Object.entries(ways)) {
    const found = await way();
    if (found !== null && !(Math.abs(Number(found) / expected - 1) < SAME))
      throw new Error(`${name}: ${found}, expected ${expected} kWh`);
    console.log(`${name}: ${found === null ? 'not tried, there is none here' : 'a year and its report'}`);
  }
}

async function esbuildBundle(cwd) {
  await build({
    entryPoints: [join(cwd, 'call.mjs')],
    outfile: join(cwd, 'esbuild/call.mjs'),
    bundle: true,
    format: 'esm',
    platform: 'node',
    external: ['echarts/*', 'piscina'],
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
    logLevel: 'error',
  });
  return quietly(process.execPath, ['esbuild/call.mjs'], { cwd });
}

/** The bundler that the tests bring, for a page; what it makes runs in Node too. */
async function viteBundle(cwd) {
  const here = createRequire(join(root, 'package.json'));
  const vite = await import(pathToFileURL(createRequire(here.resolve('vitest/package.json')).resolve('vite')).href);
  await vite.build({
    root: cwd,
    configFile: false,
    logLevel: 'silent',
    build: { outDir: 'vite', lib: { entry: 'year.mjs', formats: ['es'], fileName: 'year' }, target: 'es2023' },
  });
  const file = ['year.js', 'year.mjs'].map((name) => join(cwd, 'vite', name)).find(existsSync);
  writeFileSync(
    join(cwd, 'vite/call.mjs'),
    CALL.replace('./year.mjs', `./${file.endsWith('.mjs') ? 'year.mjs' : 'year.js'}`),
  );
  return quietly(process.execPath, ['vite/call.mjs'], { cwd });
}

const TYPES = { '.html': 'text/html', '.js': 'text/javascript', '.mjs': 'text/javascript', '.csv': 'text/csv' };

/** A page of its own with an import map to the files that the packages bring for it, and the notebook of the examples. */
async function importMap(cwd) {
  const program = process.env.NOONLOOP_CHROMIUM ?? '/usr/bin/chromium';
  if (!existsSync(program)) return null;
  copyFileSync(join(root, 'docs/examples/notebook.html'), join(cwd, 'notebook.html'));
  const imports = {
    '@noonloop/weather-io': '/node_modules/@noonloop/weather-io/dist/browser/index.js',
    '@noonloop/weather-io/calendar': '/node_modules/@noonloop/weather-io/dist/browser/calendar.js',
    '@noonloop/weather-io/sun': '/node_modules/@noonloop/weather-io/dist/browser/sun.js',
    '@noonloop/sim-core': '/node_modules/@noonloop/sim-core/dist/browser/index.js',
    '@noonloop/sim-core/formulas': '/node_modules/@noonloop/sim-core/dist/browser/formulas.js',
    '@noonloop/reports': '/node_modules/@noonloop/reports/dist/browser/index.js',
  };
  mkdirSync(join(cwd, 'map'), { recursive: true });
  writeFileSync(
    join(cwd, 'map/index.html'),
    `<!doctype html><script type="importmap">${JSON.stringify({ imports })}</script>
<script type="module">
import { year } from '/year.mjs';
document.title = String(year(await (await fetch('/weather.csv')).text()));
</script>`,
  );
  const { chromium } = await import('playwright-core');
  const browser = await chromium.launch({
    executablePath: program,
    args: ['--headless', '--no-sandbox', '--disable-gpu'],
  });
  try {
    const notebook = await opened(browser, cwd, 'notebook.html', () => document.body.dataset.done === 'yes');
    const made = await notebook.evaluate(() => [document.images.length, document.querySelectorAll('td').length]);
    if (made[0] < 1 || made[1] < 20) throw new Error(`the notebook shows ${made[0]} pictures and ${made[1]} cells`);
    return await (await opened(browser, cwd, 'map/index.html', () => document.title !== '')).title();
  } finally {
    await browser.close();
  }
}

/** A page of the project, when it says that it is done; nothing but the project's files is served. */
async function opened(browser, cwd, file, isDone) {
  const page = await browser.newPage();
  const faults = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.route('**/*', (route) => {
    const path = join(cwd, new URL(route.request().url()).pathname);
    if (!existsSync(path)) return route.fulfill({ status: 404 });
    return route.fulfill({ body: readFileSync(path), contentType: TYPES[extname(path)] ?? 'text/plain' });
  });
  await page.goto(`http://page.test/${file}`);
  await page.waitForFunction(isDone, null, { timeout: 30_000 }).catch(() => {
    throw new Error(`${file}: nothing came out in the page: ${faults.join('; ')}`);
  });
  return page;
}
