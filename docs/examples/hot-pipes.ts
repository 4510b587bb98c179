// What a recirculation ring and a long pipe to the taps cost, with the sun and without. All invented.
import { cautions, formatQuantity } from '@noonloop/reports';
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house = (draw: Partial<NonNullable<SystemInput['draw']>>) =>
  defineSystem({
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L', ...draw },
    heater: { kind: 'stored-electric' },
  });
const kWh = (column: Float64Array) =>
  formatQuantity(
    column.reduce((total, value) => total + value, 0),
    'energy',
    'metric',
  );

for (const [name, draw] of [
  ['taps beside the heater', {}],
  ['12 m of pipe to the taps', { hotPipe: { length: '12 m' } }],
  ['12 m of bare pipe', { hotPipe: { length: '12 m', insulationThickness: 0 } }],
  ['a ring of 30 m, all day', { ring: { length: '30 m' } }],
  ['a ring of 30 m from 6 to 22', { ring: { length: '30 m', hours: [[6, 22] as const] } }],
] as const) {
  const run = simulate(house(draw), weather);
  const { baselineFuel, heaterFuel, hotPipeLoss, ringLoss } = run.columns;
  console.log(
    `${name}: lost ${kWh(ringLoss.map((loss, hour) => loss + hotPipeLoss[hour]!))}, electricity ${kWh(baselineFuel)} without the sun, ${kWh(heaterFuel)} with it`,
  );
  for (const { code, short } of cautions(run))
    if (code === 'ring-lukewarm' || code === 'long-pipe') console.log(`  ${short}`);
}
