import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { cautionTable, withPart } from '../../packages/reports/schema/cautions-page.ts';

it('the table of all cautions is what the code says; run packages/reports/schema/write.ts --page when it is not [requirement]', () => {
  const page = readFileSync(new URL('../../docs/guides/cautions.md', import.meta.url), 'utf8');
  expect(withPart(page, 'cautions', cautionTable())).toBe(page);
});
