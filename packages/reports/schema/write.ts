// Writes the published schema from its tables: npx tsx --conditions=@noonloop/source packages/reports/schema/write.ts, then format.
import { writeFile } from 'node:fs/promises';
import { REPORT_SCHEMA } from '../src/formats/json-schema.ts';

await writeFile(new URL('./report-1.json', import.meta.url), `${JSON.stringify(REPORT_SCHEMA, null, 2)}\n`);
