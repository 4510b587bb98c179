// A weather file of 10 minutes, by hours and at its own step; and one noon step by step. Valley and clouds are invented.
import { defineSystem, simulate } from '@noonloop/sim-core';
import { parseWeather, readWeather } from '@noonloop/weather-io';

const valley = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);

// Clouds that pass: the hour's beam comes in some of its 10 minutes only, diffuse light all the time.
const PASSING = [2.2, 0.3, 0, 1.9, 0.2, 1.4];
const lines = ['time,ghi,dni,dhi,air'];
for (let row = 0; row < 8760 * 6; row++) {
  const hour = Math.trunc(row / 6);
  const { dhi, dni, dryBulb, ghi } = valley.columns;
  const beam = dni[hour]! > 500 ? 1 : PASSING[row % 6]!;
  const level = Math.max(ghi[hour]! - dhi[hour]!, 0) * beam;
  const stamp = new Date(Date.UTC(2023, 0, 1) + row * 600_000).toISOString().slice(0, 16);
  lines.push([stamp, level + dhi[hour]!, dni[hour]! * beam, dhi[hour]!, dryBulb[hour]!].join(','));
}
const file = lines.join('\n');
const plain = {
  site: valley.site,
  columns: {
    ghi: { column: 'ghi', unit: 'W/m2' },
    dni: { column: 'dni', unit: 'W/m2' },
    dhi: { column: 'dhi', unit: 'W/m2' },
    dryBulb: { column: 'air', unit: 'degC' },
  },
  time: { timestamp: 'time' },
  stamps: 'start',
} as const;

const design = defineSystem({
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
});
const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);
for (const ownStep of [false, true]) {
  const weather = parseWeather(file, { plain, ownStep });
  const run = simulate(design, weather, { stepDays: '03-25..03-25' });
  const hours = sum(run.columns.pumpRunning).toFixed(0);
  console.log(
    `${ownStep ? 'own step' : 'by hours'}: ${(sum(run.columns.solarHeat) / 3.6e6).toFixed(0)} kWh from the sun, the pump runs ${hours} h`,
  );
  const { columns, stepsPerHour } = run.steps!;
  const noon = (column: Float64Array) => [...column.subarray(12 * stepsPerHour, 13 * stepsPerHour)];
  console.log(
    `  25 March, 12:00 to 13:00, light on the plane [W/m²]: ${noon(columns.irradiance).map(Math.round).join(', ')}`,
  );
  console.log(
    `  flow [L/min]: ${noon(columns.loopFlow)
      .map((flow) => (flow * 6e4).toFixed(1))
      .join(', ')}`,
  );
}
