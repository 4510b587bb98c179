// A roof of which only a handbook's twelve lines are known: a year is made from them, looked over, written down and simulated with
// three seeds. Run: tsx --conditions=@noonloop/source docs/examples/weather-from-twelve-numbers.ts
import { mkdirSync, writeFileSync } from 'node:fs';
import { summarize } from '@noonloop/reports';
import { defineSystem, simulate } from '@noonloop/sim-core';
import { checkWeather, qualityChart, synthesizeYear, writeWeather } from '@noonloop/weather-io';

// INVENTED numbers in the order of a handbook's for a place at 36° north; put in your own.
const handbook = {
  site: { name: 'Roof with a handbook', latitude: 36.1, longitude: -80, elevation: 270, utcOffset: -5 },
  monthly: {
    dailyGhi_kWh_per_m2: [2.4, 3.2, 4.3, 5.4, 5.9, 6.3, 6.1, 5.5, 4.6, 3.8, 2.7, 2.2],
    dryBulb: [3, 5, 9, 14, 19, 23, 25, 24, 21, 15, 10, 5],
    dailyRange: [11, 12, 13, 13, 12, 11, 10, 10, 11, 13, 12, 11],
  },
};

const system = defineSystem({
  name: 'two panels',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: 0.3 },
  draw: { dailyVolume: 0.2 },
});

const weather = synthesizeYear({ ...handbook, seed: 1 });
console.log('What was guessed:');
for (const { text } of weather.assumptions) console.log(`  - ${text}`);

const report = checkWeather(weather);
console.log(`\nFindings of the check: ${report.findings.map(({ text }) => text).join(' ') || 'none'}`);

mkdirSync('out', { recursive: true });
writeFileSync('out/twelve-numbers.csv', writeWeather(weather));
writeFileSync('out/twelve-numbers.svg', qualityChart(report));
console.log('Written: out/twelve-numbers.csv, out/twelve-numbers.svg');

// One year is one throw of the dice: how far do three lie apart?
for (const seed of [1, 2, 3]) {
  const { year } = summarize(simulate(system, synthesizeYear({ ...handbook, seed })));
  const share = year.solarFraction === null ? '-' : `${(100 * year.solarFraction).toFixed(1)} %`;
  console.log(`seed ${seed}: solar fraction ${share}, hottest tank ${year.peakTankTemperature.toFixed(0)} °C`);
}
