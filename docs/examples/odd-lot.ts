// An odd lot on two roofs: two good panels east, two west, an old one of another kind behind them. Weather and panels are invented.
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const valley = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
// As files have it that say what the ground about the station reflects.
const weather = { ...valley, columns: { ...valley.columns, albedo: new Float64Array(8760).fill(0.2) } };
const good = { name: 'east', area: 2, eta0: 0.76, a1: 3.7, a2: 0.012 };
const old = { name: 'old', area: 1.6, eta0: 0.68, a1: 5.5, a2: 0.02 };
const west = { name: 'west', panels: 2, azimuth: 270 };
const house = { tank: { volume: '300 L' }, draw: { dailyVolume: '200 L' } };
const east = { panels: 2, tilt: 35, azimuth: 90, collector: good };
const south = { ...east, panels: 4, azimuth: 180 };

const roofs: Record<string, SystemInput['array']> = {
  'four panels south': south,
  'two east, two west': { ...east, groups: [west] },
  'and the old one behind': {
    ...east,
    groups: [west, { name: 'old', panels: 1, stage: 2, azimuth: 180, collector: old }],
  },
  'a tree over the west': { ...east, groups: [{ ...west, lightShare: 0.3 }] },
  'four south, tilt by season': { ...south, tilt: 55, summerTilt: { tilt: 20, days: '04-01..09-30' } },
  'four south, on white gravel': { ...south, groundAlbedo: 0.5, albedoFrom: 'design' },
  'four south, a sheet in July': { ...south, covers: [{ days: '07-01..07-31' }] },
};

const kWh = (joule: number): string => `${(joule / 3.6e6).toFixed(0)} kWh`;
console.log('roof                          from the tank   hottest   each group');
for (const [name, array] of Object.entries(roofs)) {
  const { columns, groups = [] } = simulate(defineSystem({ ...house, name, array }), weather);
  const heat = columns.solarHeat.reduce((sum, value) => sum + value, 0);
  const hottest = columns.absorberTemperature.reduce((high, value) => Math.max(high, value));
  console.log(
    name.padEnd(28),
    kWh(heat).padStart(14),
    `${hottest.toFixed(0)} °C`.padStart(9),
    ' ',
    groups.map((group) => `${group.name} ${kWh(group.heat)}`).join(', '),
  );
}
