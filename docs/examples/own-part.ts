// Parts of your own in the step: a collector whose absorber fades, and a controller that waits for cheap hours. Weather and parts are invented.
import { defineSystem, type OwnComponents, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house: SystemInput = {
  array: { panels: 3, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  pump: { drive: 'mains' },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
};

const parts: Record<string, OwnComponents> = {
  'as designed': {},
  // A thermochromic coat: from 70 °C it lets go of its light, a hundredth a kelvin.
  'a coat that fades when hot': {
    gain: (absorbed, { absorber }) =>
      absorbed * Math.min(1, Math.max(0.5, 1 - 0.01 * (absorber[absorber.length - 1]! - 70))),
  },
  // No pumping before nine, and none into a tank that is warm enough.
  'a controller of one’s own': {
    wants: (wanted, { hour, tank }) => wanted && hour % 24 >= 9 && tank[tank.length - 1]! < 65,
  },
};

console.log('part                          from the tank   hottest absorber');
for (const [name, own] of Object.entries(parts)) {
  const { columns } = simulate(defineSystem({ ...house, name }), weather, { own });
  const heat = columns.solarHeat.reduce((sum, value) => sum + value, 0);
  const hottest = columns.absorberTemperature.reduce((high, value) => Math.max(high, value));
  console.log(
    name.padEnd(28),
    `${(heat / 3.6e6).toFixed(0)} kWh`.padStart(14),
    `${hottest.toFixed(0)} °C`.padStart(18),
  );
}
