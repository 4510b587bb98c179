// For whom does a third panel pay? Two against three panels, for households that draw little and much.
// Roof, house and weather are invented.
import { sweep } from '@noonloop/sim-core';
import { runStudy } from '@noonloop/sim-core/node';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const draws = ['100 L', '150 L', '200 L', '300 L'];
const study = sweep(
  {
    name: 'south roof',
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
  },
  { 'draw.dailyVolume': draws, 'array.panels': [2, 3] },
  weather,
);
const rows = await runStudy(study);

console.log('a day      2 panels     3 panels     the third adds          stagnation       hottest tank');
for (const [place, draw] of draws.entries()) {
  const [two, three] = [rows[2 * place]!.measures, rows[2 * place + 1]!.measures];
  const kWh = [two, three].map(({ deliveredEnergy }) => deliveredEnergy! / 3.6e6) as [number, number];
  const share = (100 * (kWh[1] - kWh[0])) / kWh[0];
  console.log(
    `${draw.padEnd(6)} ${kWh[0].toFixed(0).padStart(8)} kWh ${kWh[1].toFixed(0).padStart(8)} kWh`,
    `${(kWh[1] - kWh[0]).toFixed(0).padStart(6)} kWh (${share.toFixed(0).padStart(2)} %)`,
    `${two.stagnationHours!.toFixed(0).padStart(8)} to ${three.stagnationHours!.toFixed(0)} h`.padEnd(20),
    `${two.peakTankTemperature!.toFixed(0).padStart(5)} to ${three.peakTankTemperature!.toFixed(0)} °C`,
  );
}
console.log(
  '\nHot water scalds, and standing loops boil: what more panels do to both stands in the two columns on the right.',
);
