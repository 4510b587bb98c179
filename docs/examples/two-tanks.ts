// Two second-hand tanks of 150 L in place of one of 300 L, charged in four ways. All invented.
import { formatQuantity } from '@noonloop/reports';
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house = (tank: SystemInput['tank']) =>
  defineSystem({
    array: { panels: 3, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    pump: { drive: 'mains' },
    tank,
    draw: { dailyVolume: '200 L' },
  });
const kWh = (column: Float64Array) =>
  formatQuantity(
    column.reduce((total, value) => total + value, 0),
    'energy',
    'metric',
  );

for (const [name, tank] of [
  ['one of 300 L', { volume: '300 L' }],
  ['coils in series', { volume: '150 L', second: { charging: 'series' } }],
  ['one after the other', { volume: '150 L', second: { charging: 'in-turn', divertAt: 60 } }],
  ['the first only', { volume: '150 L', second: { charging: 'first' } }],
  ['the second only', { volume: '150 L', second: { charging: 'second' } }],
] as const) {
  const { columns, secondTank } = simulate(house(tank), weather);
  const second = secondTank === undefined ? '' : `, by the second coil ${kWh(secondTank.columns.coilHeat)}`;
  console.log(
    `${name}: hot water by the sun ${kWh(columns.solarHeat)}, lost by the tanks ${kWh(columns.tankLoss)}${second}`,
  );
}
