// Writes the print of the sources that dist is built of, by which results files know what computed them.
import { writeFileSync } from 'node:fs';
import { printOfSources } from '../dist/study/node/engine.js';

writeFileSync(new URL('../dist/engine.txt', import.meta.url), `${printOfSources()}\n`);
