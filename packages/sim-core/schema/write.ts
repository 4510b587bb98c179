// Writes what is made from the schemas of a design, a survey and a yard test: npx tsx --conditions=@noonloop/source packages/sim-core/schema/write.ts [--page]
import { writeFile } from 'node:fs/promises';
import { DESIGN_SCHEMA_VERSION, designSchema } from './build.ts';
import { fieldsPage } from './fields-page.ts';
import { inputTypes } from './input-types.ts';
import { fieldReaders } from './readers.ts';
import { surveySchemas } from './surveys.ts';

const schema = designSchema();
const place = (file: string) => new URL(file, import.meta.url);
await writeFile(place(`./design-${DESIGN_SCHEMA_VERSION}.json`), `${JSON.stringify(schema, null, 2)}\n`);
await writeFile(place('../src/define/system-input.ts'), inputTypes(schema));
// The page asks the compiler who reads each field, which takes seconds.
if (process.argv.includes('--page'))
  await writeFile(place('../../../docs/guides/design-fields.md'), fieldsPage(schema, fieldReaders()));
for (const [kind, survey] of Object.entries(surveySchemas()))
  await writeFile(place(`./${kind}-1.json`), `${JSON.stringify(survey, null, 2)}\n`);
