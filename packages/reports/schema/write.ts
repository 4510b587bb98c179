// Writes the published schemas from their tables, and the table of a design's units: npx tsx --conditions=@noonloop/source packages/reports/schema/write.ts, then format.
import { readFile, writeFile } from 'node:fs/promises';
import { REPORT_SCHEMA } from '../src/formats/json-schema.ts';
import { withPart } from './cautions-page.ts';
import { designUnitSource } from './design-units.ts';
import { pageParts } from './pages.ts';
import { settingsSchemas } from './settings.ts';

for (const [kind, schema] of Object.entries({ report: REPORT_SCHEMA, ...settingsSchemas() }))
  await writeFile(new URL(`./${kind}-1.json`, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);

await writeFile(new URL('../src/design-unit-table.ts', import.meta.url), designUnitSource());

// With --page, the parts of the guides that code makes too.
if (process.argv.includes('--page')) {
  for (const [name, parts] of Object.entries(pageParts())) {
    const page = new URL(`../../../docs/guides/${name}`, import.meta.url);
    const text = Object.entries(parts).reduce(
      (whole, [part, words]) => withPart(whole, part, words),
      await readFile(page, 'utf8'),
    );
    await writeFile(page, text);
  }
}
