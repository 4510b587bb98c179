// What an installer hands over: two designs of one house, with prices, ranked by what they earn, with every chart.
// Everything here is invented: the valley, the prices, the factor of the electricity.
// Writes out/handover-report.html, .md, .txt, .json and two tables for spreadsheets.
import { mkdir, writeFile } from 'node:fs/promises';
import { type MoneyOptions, renderCsv, renderHtml, renderJson, renderMarkdown, renderText } from '@noonloop/reports';
import { defineSystem, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const folder = new URL('../../out/', import.meta.url);
const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);

const results = [2, 3].map((panels) =>
  simulate(
    defineSystem({
      name: `${panels} panels`,
      array: { panels, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
      tank: { volume: '300 L' },
      draw: { dailyVolume: '200 L' },
    }),
    weather,
    { keepTankNodes: true }, // for the picture of the layers
  ),
);

const prices = (used: number, bought: number): MoneyOptions => ({
  currency: 'EUR',
  fuel: { carrier: 'natural-gas', price: 1.15, per: 'm3', grossCalorificValue_kWh: 10.8, escalation: 0.03 },
  electricity: {
    carrier: 'electricity',
    price: 0.32,
    per: 'kWh',
    escalation: 0.02,
    co2_kg_per_kWh: 0.35,
    co2Source: 'invented',
  },
  investment: { new: bought, used },
  maintenance: 40,
  maintenanceEscalation: 0.02,
  discountRate: 0.03,
  life: 20,
});
const options = { money: [prices(1400, 3200), prices(1750, 4000)], rankBy: 'netPresentValue' } as const;

await mkdir(folder, { recursive: true });
const write = (name: string, text: string): Promise<void> => writeFile(new URL(name, folder), text);
await write('handover-report.html', await renderHtml(results, { ...options, losses: true }));
await write('handover-report.md', renderMarkdown(results, options));
await write('handover-report.txt', renderText(results, options));
await write('handover-report.json', renderJson(results, options));
await write('handover-months.csv', renderCsv(results, { decimal: 'comma' }));
await write('handover-payments.csv', renderCsv(results, { table: 'money', money: options.money }));

const text = renderText(results, { ...options, detail: 'short' });
console.log(text.slice(text.indexOf('MONEY')));
console.log(
  'The whole report: out/handover-report.html, .md, .txt, .json; tables: out/handover-months.csv, out/handover-payments.csv',
);
