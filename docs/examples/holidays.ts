// Six weeks away in summer: what keeps a large array from standing in the sun. House and weather are invented.
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const away = '07-01..08-15';
const array = {
  panels: 4,
  tilt: 40,
  azimuth: 180,
  // A cover by its matter, in place of b0: one pane of 4 mm.
  collector: {
    area: 2,
    eta0: 0.75,
    a1: 3.8,
    a2: 0.012,
    incidenceModifier: { covers: 1, refractiveIndex: 1.526, extinction: 16, thickness: '4 mm' },
  },
};
const house: SystemInput = {
  array,
  pump: { drive: 'mains' },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L', holidays: [away] },
};
const ways: Record<string, Partial<SystemInput>> = {
  'nothing done': {},
  'a sheet over the panels': { array: { ...array, covers: [{ days: away }] } },
  'shade cloth, a third through': { array: { ...array, covers: [{ days: away, lightShare: 0.33 }] } },
  'pump at night, 75 to 55 °C': { control: { nightCooling: { above: 75, until: 55 } } },
};

console.log('way                             stagnation  hottest tank  from the tank  pump power');
for (const [name, parts] of Object.entries(ways)) {
  const { columns } = simulate(defineSystem({ ...house, ...parts, name }), weather);
  const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);
  const hottest = columns.tankMaximumTemperature.reduce((high, value) => Math.max(high, value));
  console.log(
    name.padEnd(30),
    `${sum(columns.stagnation).toFixed(0)} h`.padStart(11),
    `${hottest.toFixed(0)} °C`.padStart(13),
    `${(sum(columns.solarHeat) / 3.6e6).toFixed(0)} kWh`.padStart(14),
    `${(sum(columns.pumpElectricity) / 3.6e6).toFixed(0)} kWh`.padStart(11),
  );
}
