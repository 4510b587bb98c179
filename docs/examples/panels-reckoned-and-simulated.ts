// How far the count of panels by pencil lies from the simulated year. The house and its weather are invented.
import { defineSystem, simulate, sizeArray } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);
const percent = (share: number) => `${(100 * share).toFixed(0)} %`.padStart(12);

console.log(`panels${'reckoned'.padStart(12)}${'simulated'.padStart(12)}`);
for (const panels of [1, 2, 3, 4]) {
  const design = defineSystem({
    array: { panels, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
  });
  const reckoned = sizeArray(design, weather).yearShares[panels - 1]!;
  // Month by month, and no month above what was asked in it: more covers the heater's standby.
  const { solarHeat, tapHeatAsked } = simulate(design, weather).columns;
  const monthOf = (column: Float64Array, month: number) =>
    sum(column.filter((_, hour) => new Date(Date.UTC(2023, 0, 1, hour)).getUTCMonth() === month));
  const months = [...Array(12).keys()];
  const covered = sum(months.map((month) => Math.min(monthOf(solarHeat, month), monthOf(tapHeatAsked, month))));
  console.log(`${String(panels).padEnd(6)}${percent(reckoned)}${percent(covered / sum(tapHeatAsked))}`);
}
