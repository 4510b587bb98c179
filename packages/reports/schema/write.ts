// Writes the published schemas from their tables: npx tsx --conditions=@noonloop/source packages/reports/schema/write.ts, then format.
import { readFile, writeFile } from 'node:fs/promises';
import { REPORT_SCHEMA } from '../src/formats/json-schema.ts';
import { cautionTable, withPart } from './cautions-page.ts';
import { settingsSchemas } from './settings.ts';
import { taskTable, testTable } from './tasks-page.ts';

for (const [kind, schema] of Object.entries({ report: REPORT_SCHEMA, ...settingsSchemas() }))
  await writeFile(new URL(`./${kind}-1.json`, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);

// With --page, the parts of the guide that code makes too.
if (process.argv.includes('--page')) {
  const page = new URL('../../../docs/guides/cautions.md', import.meta.url);
  const parts = { cautions: cautionTable(), tasks: taskTable(), tests: testTable() };
  const text = Object.entries(parts).reduce(
    (whole, [name, part]) => withPart(whole, name, part),
    await readFile(page, 'utf8'),
  );
  await writeFile(page, text);
}
