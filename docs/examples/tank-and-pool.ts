// One tank for sun and boiler, in a cold cellar, with a pool on it in summer. All invented.
import { formatQuantity } from '@noonloop/reports';
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house = (tank: Partial<NonNullable<SystemInput['tank']>>) =>
  defineSystem({
    array: { panels: 4, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '500 L', ...tank },
    draw: { dailyVolume: '200 L' },
    heater: { kind: 'boiler-coil', fuel: 'wood-pellets', netEfficiency: 0.9, elementHeight: 0.6 },
  });
const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);
const kWh = (column: Float64Array) => formatQuantity(sum(column), 'energy', 'metric');
const cellar = [6, 6, 8, 10, 13, 16, 18, 18, 16, 13, 9, 7];
const pool = { temperature: 26, power: '3 kW', dailyHeat: '15 kWh', days: ['05-01..09-15'] };

for (const [name, tank] of [
  ['cellar of 18 °C', {}],
  ['cellar by months', { roomByMonth: cellar, initialProfile: [15, 30, 45, 60] }],
  ['with a pool', { roomByMonth: cellar, initialProfile: [15, 30, 45, 60], load: pool }],
] as const) {
  const { columns } = simulate(house(tank), weather);
  const { heaterFuel, loadHeat, solarHeat, stagnation, tankLoss } = columns;
  console.log(
    `${name}: hot water by the sun ${kWh(solarHeat)}, pool ${kWh(loadHeat)}, lost by the tank ${kWh(tankLoss)}, fuel ${kWh(heaterFuel)}, stagnation ${sum(stagnation).toFixed(0)} h`,
  );
}
