// Used flat plates or new tubes on one house: price, weight, heat, stagnation. Panels, prices and weather are invented.
// Writes out/flat-or-tubes.svg and out/flat-or-tubes.html.
import { mkdir, writeFile } from 'node:fs/promises';
import { adviceInWords, chart, renderHtml } from '@noonloop/reports';
import { compareCollectors, rateFromSurvey, type SystemInput } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const used = rateFromSurvey({
  name: 'used plate',
  length: 2,
  width: 1,
  covers: 1,
  coverKind: 'window-glass',
  coating: 'black-paint',
  plateMetal: 'copper',
  bond: 'soldered',
  condition: 'worn',
});
const plate = { panels: 3, grossArea: used.grossArea, price: 540 };
const tubes = {
  name: 'new tubes',
  area: 3,
  eta0: 0.62,
  a1: 1.1,
  a2: 0.004,
  incidenceModifier: {
    tubes: 'upright' as const,
    transversal: { angles: [0, 20, 40, 60, 80], values: [1, 1.02, 1.1, 1.2, 0.9] },
    longitudinal: { angles: [0, 20, 40, 60, 80], values: [1, 1, 0.97, 0.87, 0.5] },
  },
  heatCapacity: 8000,
};

const house: SystemInput = {
  array: { panels: 1, tilt: 40, azimuth: 180, collector: used.collector },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
};
const fullPanel = (side: 'low' | 'likely' | 'high') => used.bands.weightFull[side] * used.grossArea;
const { rows, ranking, notes } = compareCollectors(house, weather, {
  candidates: [
    { ...plate, name: '3 used plates', collector: used.collector, weightFull: fullPanel('likely') },
    { ...plate, name: 'the same, worst case', collector: used.low, weightFull: fullPanel('high') },
    {
      name: '1 new set of tubes',
      collector: tubes,
      panels: 1,
      grossArea: 3.9,
      weightFull: '78 kg',
      price: 1500,
      snow: 'tubes',
    },
    {
      name: '2 new sets of tubes',
      collector: tubes,
      panels: 2,
      grossArea: 3.9,
      weightFull: '78 kg',
      price: 3000,
      snow: 'tubes',
    },
  ],
  years: 15,
});

const kWh = (joule: number) => joule / 3.6e6;
console.log('collectors              price   roof  weight        heat   a m² of roof   ct/kWh  stagnation  hottest');
for (const row of rows) {
  console.log(
    row.name.padEnd(22),
    row.price.toFixed(0).padStart(6),
    `${row.roofArea.toFixed(1)} m²`.padStart(7),
    `${row.weight.toFixed(0)} kg`.padStart(7),
    `${kWh(row.heat).toFixed(0)} kWh/a`.padStart(11),
    `${kWh(row.heatPerRoof).toFixed(0)} kWh/a`.padStart(13),
    (100 * row.moneyPerHeat * 3.6e6).toFixed(1).padStart(8),
    `${row.stagnationTemperature.toFixed(0)} °C`.padStart(10),
    `${row.hottestAbsorber.toFixed(0)} °C`.padStart(9),
  );
}
console.log('\nMost heat:', ranking.heat.join(', '));
console.log('Most heat from a m² of roof:', ranking.heatPerRoof.join(', '));
console.log('Least money for a kWh:', ranking.moneyPerHeat.join(', '));
for (const note of adviceInWords(notes)) console.log(`! ${note}`);

const folder = new URL('../../out/', import.meta.url);
await mkdir(folder, { recursive: true });
const runs = rows.map(({ run }) => run);
await writeFile(new URL('flat-or-tubes.svg', folder), await chart('tank-duration', runs));
await writeFile(new URL('flat-or-tubes.html', folder), await renderHtml(runs));
console.log('\nPicture and report: out/flat-or-tubes.svg, out/flat-or-tubes.html');
