// Larger tank or more panels? Every combination, and those that no other beats in price and fuel saved at once.
// House, weather and prices are invented.
import { frontier, type StudyRow, sweep } from '@noonloop/sim-core';
import { runStudy } from '@noonloop/sim-core/node';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const litres = [150, 200, 300, 400];
const panels = [1, 2, 3, 4, 5];
const study = sweep(
  {
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '250 L' },
  },
  { 'tank.volume': litres.map((volume) => `${volume} L`), 'array.panels': panels },
  weather,
);
const rows = await runStudy(study);

const table = (title: string, text: (row: StudyRow) => string): void => {
  console.log(`\n${title}\ntank     panels ${panels.map((count) => `${count}`.padStart(6)).join('')}`);
  for (const [place, volume] of litres.entries()) {
    const cells = rows.slice(place * panels.length, (place + 1) * panels.length).map((row) => text(row).padStart(6));
    console.log(`${`${volume} L`.padEnd(16)}${cells.join('')}`);
  }
};
table('Fuel saved [kWh a year]', ({ measures }) => (measures.fuelSaved! / 3.6e6).toFixed(0));
table('Stagnation [h a year]', ({ measures }) => measures.stagnationHours!.toFixed(0));

// Invented: 350 a panel with its mounting, 600 and 1.80 a litre for the tank, 900 for the rest.
const price = ({ inputs }: StudyRow): number =>
  900 + 350 * (inputs['array.panels'] as number) + 600 + 1.8 * Number.parseFloat(inputs['tank.volume'] as string);
console.log('\nOf these, none saves more for less money:');
for (const { cost, saving, row } of await frontier(rows, { cost: price })) {
  const what = `panels: ${row.inputs['array.panels']}, tank: ${row.inputs['tank.volume']}`;
  console.log(
    `${what.padEnd(24)} ${cost.toFixed(0).padStart(6)}   ${(saving / 3.6e6).toFixed(0).padStart(6)} kWh a year`,
  );
}
