// Writes the live page with the demo's design, prices and weather, all invented: out/live.html. Run:
//     tsx --conditions=@noonloop/source scripts/build-live.ts
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { renderLivePage } from '@noonloop/reports';
import { readWeather } from '@noonloop/weather-io';
import { parse } from 'yaml';

const root = fileURLToPath(new URL('..', import.meta.url));
const settings = (name: string) => parse(readFileSync(`${root}docs/examples/${name}.yaml`, 'utf8'));

/** The page as one text. */
export const demoPage = async (): Promise<string> =>
  renderLivePage({
    design: settings('design-files/two-panels'),
    money: settings('settings/prices'),
    weather: await readWeather(`${root}docs/examples/weather/invented-valley.csv`),
    title: 'Turn a knob: two panels on an invented roof',
  });

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const page = await demoPage();
  mkdirSync(`${root}out`, { recursive: true });
  writeFileSync(`${root}out/live.html`, page);
  console.log(`out/live.html: ${(Buffer.byteLength(page) / 1e3).toFixed(0)} kB`);
}
