// Writes what is made from the schema of a design: npx tsx --conditions=@noonloop/source packages/sim-core/schema/write.ts
import { writeFile } from 'node:fs/promises';
import { DESIGN_SCHEMA_VERSION, designSchema } from './build.ts';
import { inputTypes } from './input-types.ts';

const schema = designSchema();
const place = (file: string) => new URL(file, import.meta.url);
await writeFile(place(`./design-${DESIGN_SCHEMA_VERSION}.json`), `${JSON.stringify(schema, null, 2)}\n`);
await writeFile(place('../src/define/system-input.ts'), inputTypes(schema));
