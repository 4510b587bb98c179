// Three ways to live without glycol, beside a loop with it: heat, frost, and what draining costs. Weather and panels are invented.
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house: SystemInput = {
  array: { panels: 3, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  pump: { drive: 'mains', shutOffHead: '7 m' },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
};
const loops: Record<string, SystemInput['loop']> = {
  'closed, glycol': {},
  'closed, water': { fluid: 'water' },
  'drains back, full return': { fluid: 'water', layout: 'drain-back' },
  'drains back, open return': { fluid: 'water', layout: 'drain-back', drainBack: { siphon: false } },
  'tank water, drains at 5 °C': { fluid: 'water', layout: 'direct', plate: { returnHeight: 0.7 } },
};

console.log(
  'loop                        from the tank  pump power  steam  frozen  emptied  left outside  brought back',
);
for (const [name, loop] of Object.entries(loops)) {
  const { columns, loop: year } = simulate(defineSystem({ ...house, name, loop }), weather);
  const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);
  const kWh = (joule: number) => `${(joule / 3.6e6).toFixed(0)} kWh`;
  const { drain } = year;
  console.log(
    name.padEnd(27),
    kWh(sum(columns.solarHeat)).padStart(13),
    kWh(sum(columns.pumpElectricity)).padStart(11),
    `${sum(columns.boiling).toFixed(0)} h`.padStart(6),
    `${Math.max(year.absorberFreezingHours, year.pipeFreezingHours)} h`.padStart(7),
    (drain === undefined ? '' : `${drain.times} ×`).padStart(8),
    (drain === undefined ? '' : kWh(drain.heatLeft)).padStart(13),
    (drain === undefined ? '' : kWh(drain.heatBack)).padStart(13),
  );
}
