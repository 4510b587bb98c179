// What is wrong with this system? A notebook of five weeks beside what the model expects in the weather of those weeks.
// The notebook is INVENTED: read from a run of our own with a planted fault (docs/examples/logs/invented-summer.csv).
// Writes out/check-log.svg and out/check-log.html.
import { mkdir, writeFile } from 'node:fs/promises';
import { checkChart, checkInWords, renderCheckHtml } from '@noonloop/reports';
import { checkLog, defineSystem } from '@noonloop/sim-core';
import { readLog, readWeather } from '@noonloop/weather-io';

const here = (path: string): string => new URL(path, import.meta.url).pathname;
const weather = await readWeather(here('./weather/invented-valley.csv'));
const design = defineSystem({
  name: 'two panels',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
});
const log = await readLog(here('./logs/invented-summer.csv'), {
  time: { date: 'date', clock: 'time' },
  columns: {
    tankTopTemperature: { column: 'tank top', unit: 'degC' },
    flowTemperature: { column: 'hot pipe', unit: 'degC' },
    returnTemperature: { column: 'cold pipe', unit: 'degC' },
    loopPressure: { column: 'gauge', unit: 'bar' },
    pumpRuns: { column: 'pump', unit: 'yes/no' },
    heaterMeter: { column: 'gas', unit: 'm3' },
  },
  gasHeat_kWh_per_m3: 10.8,
});

const check = checkLog(design, weather, log, { uncertainty: { draw: '20 %' } });

const { headline, causes, next, notes, cautions } = checkInWords(check); // or checkInWords(check, 'us')
console.log(headline);
for (const { weight, name, detail, evidence } of causes) {
  console.log(`\n${weight.padStart(9)}  ${name}\n           ${detail}`);
  for (const words of evidence) console.log(`           - ${words}`);
}
if (next !== null) {
  console.log(`\nNext, for ${next.who}: ${next.what}`);
  for (const { seen, causes: left } of next.outcomes) console.log(`  ${seen}: ${left.join('; ') || 'none of these'}`);
  if (next.caution !== '') console.log(`  Caution: ${next.caution}`);
}
console.log('\nTank top, line by line [°C]: found, band of a healthy system');
for (const { line, found, low, high, outside } of check.numbers.filter(({ gauge }) => gauge === 'tankTopTemperature')) {
  console.log(`  line ${line}: ${found.toFixed(0)}, ${low.toFixed(0)} to ${high.toFixed(0)}${outside ? '  <--' : ''}`);
}
console.log(`\n${[...notes, ...cautions].join('\n')}`);

await mkdir(new URL('../../out/', import.meta.url), { recursive: true });
const title = 'Two panels, an invented summer';
const picture = await checkChart(check, { title });
await writeFile(new URL('../../out/check-log.svg', import.meta.url), picture);
await writeFile(new URL('../../out/check-log.html', import.meta.url), await renderCheckHtml(check, { title }));
console.log('\nPicture: out/check-log.svg; page: out/check-log.html');
