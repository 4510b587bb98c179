import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { cautionTable, withPart } from '../../packages/reports/schema/cautions-page.ts';
import { taskTable, testTable } from '../../packages/reports/schema/tasks-page.ts';

it('the tables of all cautions, tasks and tests are what the code says; run packages/reports/schema/write.ts --page when it is not [requirement]', () => {
  const page = readFileSync(new URL('../../docs/guides/cautions.md', import.meta.url), 'utf8');
  const parts = { cautions: cautionTable(), tasks: taskTable(), tests: testTable() };
  for (const [name, part] of Object.entries(parts)) expect(withPart(page, name, part), name).toBe(page);
});
