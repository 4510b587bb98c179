// A used panel in the yard, an hour of sun: hose, bucket, two thermometers, a sun meter, a blanket. The readings are invented.
// Writes out/yard-test.svg.
import { mkdir, writeFile } from 'node:fs/promises';
import { collectorChart, yardTestInWords } from '@noonloop/reports';
import { rateFromSurvey, rateFromYardTest, type YardRating } from '@noonloop/sim-core';

const air = '68 degF';
const readings = [
  { inlet: '64 degF', outlet: '83.1 degF', flow: '1.5 L/min', irradiance: 880, air, incidence: 5 },
  { inlet: '65 degF', outlet: '83.7 degF', flow: '1.5 L/min', irradiance: 890, air, incidence: 5 },
  { inlet: '95 degF', outlet: '111.2 degF', flow: '1.5 L/min', irradiance: 900, air, incidence: 8 },
  { inlet: '120 degF', outlet: '133.1 degF', flow: '1.5 L/min', irradiance: 910, air, incidence: 10 },
  { inlet: '140 degF', outlet: '150.9 degF', flow: '1.5 L/min', irradiance: 900, air, incidence: 12 },
  // Blanket over the panel: what it loses, without any sun in the reckoning.
  { inlet: '140 degF', outlet: '121.3 degF', flow: '0.6 L/min', irradiance: 0, air },
];
const panel = { area: '20.25 ft2', tools: { sunScale: '7 %', thermometer: '0.3 K' } };

function print(title: string, rating: YardRating): void {
  const { eta0, a1, a2, scatter } = rating;
  const { notes, remedies } = yardTestInWords(rating);
  console.log(`\n${title}`);
  for (const [name, { band, from }] of Object.entries({ eta0, a1, a2 })) {
    const words =
      band === null
        ? 'cannot tell'
        : `${band.likely.toFixed(3)}  (${band.low.toFixed(3)} to ${band.high.toFixed(3)} in nine cases of ten; ${from})`;
    console.log(`  ${name.padEnd(5)} ${words}`);
  }
  console.log(`  scatter against the tools: ${scatter === null ? 'no spare readings' : scatter.toFixed(2)}`);
  for (const note of [...remedies, ...notes]) console.log(`  - ${note}`);
}

const whole = rateFromYardTest({ ...panel, points: readings });
print('All six readings', whole);
console.log('\n  (t_m − t_a)/G   efficiency');
for (const { reducedTemperature, efficiency, error, flux } of whole.points) {
  console.log(
    reducedTemperature === null
      ? `  covered         loses ${(-flux).toFixed(0)} W/m²`
      : `  ${reducedTemperature.toFixed(4).padStart(7)}         ${efficiency!.toFixed(3)} ± ${error.toFixed(3)}`,
  );
}

print(
  'The first two alone: cold water tells the light, not the loss',
  rateFromYardTest({ ...panel, points: readings.slice(0, 2) }),
);

// A survey fills what the readings cannot tell.
const survey = rateFromSurvey({
  length: '78 in',
  width: '39 in',
  covers: 1,
  coating: 'black-paint',
  condition: 'worn',
});
const { eta0, a1, a2 } = survey.bands;
print(
  'The first two, with a survey of the panel',
  rateFromYardTest({ ...panel, points: readings.slice(0, 2), known: { eta0, a1, a2 } }),
);

const fourDigits = (_: string, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(4)) : value);
console.log('\nInto a design: array.collector =', JSON.parse(JSON.stringify(whole.collector, fourDigits)));

// The line with its readings, beside what the survey alone said.
await mkdir(new URL('../../out/', import.meta.url), { recursive: true });
const picture = await collectorChart([
  { ...whole.collector!, name: 'yard test', points: whole.points },
  { ...survey.collector, name: 'survey, with its ends', limits: [survey.low, survey.high] },
]);
await writeFile(new URL('../../out/yard-test.svg', import.meta.url), picture);
console.log('\nPicture: out/yard-test.svg');
