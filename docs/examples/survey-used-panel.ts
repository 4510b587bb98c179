// A used panel without papers: what a tape measure and an eye found, what it is likely to do, and what to look at next.
// The panel and the house are invented.
import { adviceInWords, summarize, surveyInWords } from '@noonloop/reports';
import { defineSystem, rateFromSurvey, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const rating = rateFromSurvey({
  name: 'black plate from the barn',
  length: '78 in', // outside of the box
  width: '39 in',
  depth: '3.5 in',
  covers: 1,
  coverKind: 'window-glass', // green edge
  coating: 'black-paint', // reads as warm as black tape beside it
  plateMetal: 'copper', // red where scratched
  tubeSpacing: '4.5 in',
  tubeDiameter: { value: '0.5 in', give: '0.02 in' },
  bond: 'soldered',
  insulation: 'mineral-wool',
  condition: 'worn',
  // Plate thickness, back and edge insulation could not be reached: they are guessed, and the bands are wider for it.
});

const shown = [
  ['eta0', 'eta0', 1, 3],
  ['a1', 'a1 [W/(m²·K)]', 1, 2],
  ['a2', 'a2 [W/(m²·K²)]', 1, 4],
  ['b0', 'b0', 1, 3],
  ['efficiencyAtWork', 'efficiency 30 K over the air in 800 W/m²', 1, 2],
  ['heatCapacity', 'heat capacity [kJ/(m²·K)]', 1e-3, 1],
  ['pressureDrop', 'pressure drop at the test flow [Pa]', 1, 0],
  ['weightFull', 'weight on the roof, full [kg/m²]', 1, 1],
  ['stagnationTemperature', 'stagnation [°C]', 1, 0],
] as const;
console.log(`${'in nine cases of ten'.padEnd(44)}    low likely   high`);
for (const [key, words, factor, digits] of shown) {
  const { low, likely, high } = rating.bands[key];
  console.log(
    words.padEnd(44),
    ...[low, likely, high].map((value) => (value * factor).toFixed(digits).padStart(digits > 3 ? 7 : 6)),
  );
}

console.log('\nWhat would narrow the efficiency most:');
for (const doubt of surveyInWords(rating).narrowing) console.log(`  - ${doubt}`);

// The likely panel and the two ends, in the same house and the same year.
const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
console.log('\nThree of them on 300 L, 200 L a day:');
for (const which of ['low', 'collector', 'high'] as const) {
  const design = defineSystem({
    array: { panels: 3, tilt: 40, azimuth: 180, collector: rating[which] },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
  });
  const { year } = summarize(simulate(design, weather));
  console.log(
    `  ${which.padEnd(9)} ${(year.deliveredEnergy / 3.6e6).toFixed(0).padStart(5)} kWh a year, solar fraction ${(100 * (year.solarFraction ?? 0)).toFixed(0)} %`,
  );
}

console.log('');
for (const caution of adviceInWords(rating.cautions)) console.log(`! ${caution}`);
