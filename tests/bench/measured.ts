// Writes tables and pictures of docs/theory/measured.md from the measured data.
//     pnpm run measured
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { measuredPictures } from './measured-pictures.ts';
import { measuredTables } from './measured-tables.ts';
import { put } from './page-tables.ts';

const docs = fileURLToPath(new URL('../../docs/', import.meta.url));
const page = `${docs}theory/measured.md`;
let text = readFileSync(page, 'utf8');
for (const [name, figures] of Object.entries(measuredTables())) {
  text = put(text, name, figures);
}
writeFileSync(page, text);
for (const [name, svg] of Object.entries(await measuredPictures())) writeFileSync(`${docs}pictures/${name}`, svg);
