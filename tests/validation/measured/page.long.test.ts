// The page of measurements against its figures computed anew; the figures themselves: measured.test.ts.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measuredPictures } from '../../bench/measured-pictures.ts';
import { measuredTables } from '../../bench/measured-tables.ts';
import { hasShared } from '../../shared.ts';
import { PLANES_FILE } from './planes.ts';

const docs = new URL('../../../docs/', import.meta.url);

describe.skipIf(!hasShared(`measured/${PLANES_FILE}`))('the page of measurements', () => {
  const remedy = 'run: pnpm run measured';
  it('has the tables of today [requirement]', () => {
    const text = readFileSync(new URL('theory/measured.md', docs), 'utf8');
    for (const [name, figures] of Object.entries(measuredTables())) {
      const part = text.split(`<!-- ${name}: `)[1]?.split('-->\n')[1]?.split(`<!-- end of ${name}`)[0];
      expect(part?.trim(), `${name}: ${remedy}`).toBe(figures);
    }
  });

  it('has the pictures of today [requirement]', async () => {
    for (const [name, svg] of Object.entries(await measuredPictures()))
      expect(readFileSync(new URL(`pictures/${name}`, docs), 'utf8'), `${name}: ${remedy}`).toBe(svg);
  });
});
