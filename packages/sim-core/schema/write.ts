// Writes the published schema: npx tsx --conditions=@noonloop/source packages/sim-core/schema/write.ts
import { writeFile } from 'node:fs/promises';
import { DESIGN_SCHEMA_VERSION, designSchema } from './build.ts';

const file = new URL(`./design-${DESIGN_SCHEMA_VERSION}.json`, import.meta.url);
await writeFile(file, `${JSON.stringify(designSchema(), null, 2)}\n`);
