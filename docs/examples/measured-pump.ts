// A pump by its own measured points, on one module of 12 V and on two in series. Pump and weather are invented.
import { readFile } from 'node:fs/promises';
import { defineSystem, pumpCurvesFromCsv, type SystemInput, simulate } from '@noonloop/sim-core';
import { moduleParameters, pvOperatingPoint } from '@noonloop/sim-core/formulas';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const curves = pumpCurvesFromCsv(await readFile(new URL('./pumps/invented-pump.csv', import.meta.url), 'utf8'));

const house: SystemInput = {
  array: { panels: 3, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
};
const drives = {
  'booster, one module': { pump: { curves } },
  'direct, one module': { pump: { curves, drive: 'direct' as const } },
  'direct, two in series': { pump: { curves, drive: 'direct' as const }, pv: { inSeries: 2 } },
};

console.log('drive                   pump runs   flow running   heat from the tank');
for (const [name, parts] of Object.entries(drives)) {
  const result = simulate(defineSystem({ ...house, ...parts, name }), weather);
  const { pumpRunning, loopFlow } = result.columns;
  const hours = pumpRunning.reduce((sum, share) => sum + share, 0);
  const flow = loopFlow.reduce((sum, value) => sum + value, 0) / hours;
  const heat = result.columns.solarHeat.reduce((sum, value) => sum + value, 0);
  console.log(
    name.padEnd(22),
    `${hours.toFixed(0)} h`.padStart(10),
    `${(flow * 60_000).toFixed(1)} L/min`.padStart(14),
    `${(heat / 3.6e6).toFixed(0)} kWh`.padStart(18),
  );
}

// What their plugs hold while nothing is connected: no load, full sun, a frosty morning.
const { pv } = defineSystem({ ...house, ...drives['direct, two in series'] });
const frosty = { irradiance: 1000, cellTemperature: -10 };
const { voltage } = pvOperatingPoint(moduleParameters(pv.module), frosty, { kind: 'open' });
console.log(`two in series with nothing connected, cells at -10 °C: ${(pv.inSeries * voltage).toFixed(1)} V`);
