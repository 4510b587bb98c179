// The table of docs/theory/weather-quality.md: what a check catches, by kind of damage. `--write` renews it; else it must agree.
import { readFileSync, writeFileSync } from 'node:fs';
import { readWeather } from '@noonloop/weather-io';
import { damageTable } from '../weather-io/damage.ts';
import { hasRealFiles, REAL_NAMES, readReal } from '../weather-io/real-files.ts';
import { put } from './page-tables.ts';

const PAGE = 'docs/theory/weather-quality.md';

if (!hasRealFiles) {
  console.log('The real weather files are not there: the table was not made.');
} else {
  const years = [await readWeather('docs/examples/weather/invented-valley.csv')];
  for (const name of REAL_NAMES) years.push(await readReal(name));
  const page = readFileSync(PAGE, 'utf8');
  const made = put(page, 'damage', damageTable(years));
  if (process.argv.includes('--write')) writeFileSync(PAGE, made);
  else if (made !== page) {
    console.error(`${PAGE} has another table than the code makes: run this with --write.`);
    process.exitCode = 1;
  }
}
