// A household's own water meter instead of a standard day: a week of readings, repeated by weekday through the year.
// Meter and weather are invented.
import { formatQuantity } from '@noonloop/reports';
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readDraw, readWeather } from '@noonloop/weather-io';

const path = (name: string) => new URL(name, import.meta.url).pathname;
const weather = await readWeather(path('./weather/invented-valley.csv'));
const meter = await readDraw(path('./draw/invented-meter.csv'), {
  column: 'reading_L',
  quantity: 'meter',
  unit: 'L',
  turnover: 100_000,
  time: { timestamp: 'time' },
  clock: 'standard',
});

const design = (draw: SystemInput['draw']) =>
  defineSystem({
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw,
  });
const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);

// A meter counts water as warm as it came, here 45 °C: mixed water at the taps.
const metered = simulate(design({ volumes: meter.volumes, tapTemperature: 45 }), weather);
const standard = simulate(design({ dailyVolume: meter.yearVolume / 365, tapTemperature: 45 }), weather);

console.log(
  `a week of the meter: ${(meter.fileVolume * 1000).toFixed(1)} L in parts of ${60 / meter.partsPerHour} min`,
);
for (const { text } of meter.assumptions) console.log(`  ${text}`);
console.log(
  `a year of it: ${meter.yearVolume.toFixed(3)} m³; drawn in the run: ${sum(metered.columns.tapVolume).toFixed(3)} m³`,
);
for (const [name, { columns }] of [
  ['by the meter', metered],
  ['by a standard day', standard],
] as const)
  console.log(`heat from the sun, ${name}: ${formatQuantity(sum(columns.solarHeat), 'energy', 'metric')}`);
