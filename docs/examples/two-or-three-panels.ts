// Two panels or three? One household, one roof, one invented year of weather, invented prices.
// Prints the comparison and writes it as a page, out/two-or-three-panels.html.
import { mkdir, writeFile } from 'node:fs/promises';
import { renderHtml, renderText } from '@noonloop/reports';
import { bands, defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const folder = new URL('../../out/', import.meta.url);
const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);

const house = (panels: number): SystemInput => ({
  name: `${panels} panels`,
  array: { panels, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
});
const results = [2, 3].map((panels) => simulate(defineSystem(house(panels)), weather));

// How sure the numbers are: a certified panel, the water as stated, the mean of many years.
const known = { collector: 'certificate', oneYear: false } as const;
const sure = [];
for (const panels of [2, 3]) sure.push(await bands(house(panels), weather, known).outcome());

// Prices are invented; without them the report tells heat and hours, and no winner by money.
const options = {
  title: 'Two panels or three?',
  note: 'Weather, house and prices are invented.',
  bands: sure,
  money: {
    currency: 'EUR',
    fuel: { carrier: 'natural-gas', price: 0.11, per: 'kWh', escalation: 0.02 },
    discountRate: 0.03,
    life: 20,
    designs: [{ investment: 2600 }, { investment: 3300 }], // two panels, three panels
  },
} as const;

console.log(renderText(results, { ...options, detail: 'short' }));

await mkdir(folder, { recursive: true });
await writeFile(new URL('two-or-three-panels.html', folder), await renderHtml(results, options));
console.log('\nAs a page: out/two-or-three-panels.html');
