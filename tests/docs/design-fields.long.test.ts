import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designSchema } from '../../packages/sim-core/schema/build.ts';
import { fieldsPage } from '../../packages/sim-core/schema/fields-page.ts';
import { fieldReaders } from '../../packages/sim-core/schema/readers.ts';

describe('the page of every field of a design [requirement]', () => {
  const page = readFileSync(new URL('../../docs/guides/design-fields.md', import.meta.url), 'utf8');
  const readers = fieldReaders();

  it('is what the code says; run packages/sim-core/schema/write.ts --page when it is not', () => {
    expect(page).toBe(fieldsPage(designSchema(), readers));
  });

  it('knows the folders that read a field [by reading them]', () => {
    expect(readers.get('array.horizon.azimuth')).toEqual(['physics/sun']);
    expect(readers.get('array.snowAlbedo')).toEqual(['year']);
  });
});
