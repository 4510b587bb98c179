// The heater off from May to September, or on a timer: what it saves, and what comes out of the taps. All invented.
import { cautions, formatQuantity } from '@noonloop/reports';
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house = (heater: SystemInput['heater']) =>
  defineSystem({
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
    heater,
  });
const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);

for (const [name, heater] of [
  ['always on', {}],
  ['off from May to September', { offDays: ['05-01..09-30'] }],
  ['on from 5 to 7 and 17 to 20', { heatingHours: [[5, 7] as const, [17, 20] as const] }],
] as const) {
  const run = simulate(house(heater), weather);
  const { heaterFuel, tapHeatAsked, tapHeat } = run.columns;
  const lacking = formatQuantity(sum(tapHeatAsked) - sum(tapHeat), 'energy', 'metric');
  console.log(`${name}: fuel ${formatQuantity(sum(heaterFuel), 'energy', 'metric')}, the taps lack ${lacking}`);
  for (const { code, finding } of cautions(run)) if (code === 'heater-off') console.log(`  ${finding}`);
}
