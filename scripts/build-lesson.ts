// Builds the lesson page, out/tank-week.html: the live page with the exercises of the lessons, the week that plays first. Run:
//     tsx --conditions=@noonloop/source scripts/build-lesson.ts [output]
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { renderLivePage } from '@noonloop/reports';
import { readWeather } from '@noonloop/weather-io';
import { EXERCISES, FIRST } from '../docs/lessons/exercises.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The page as one text. */
export const lessonPage = async (): Promise<string> =>
  renderLivePage({
    design: FIRST,
    weather: await readWeather(`${root}docs/examples/weather/invented-valley.csv`),
    title: 'A week of a solar tank',
    exercises: EXERCISES,
  });

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const output = resolve(process.argv[2] ?? `${root}out/tank-week.html`);
  const text = await lessonPage();
  mkdirSync(dirname(output), { recursive: true });
  writeFileSync(output, text);
  console.log(`${output}: ${(Buffer.byteLength(text) / 1e3).toFixed(0)} kB`);
}
