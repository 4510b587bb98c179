import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { withPart } from '../../packages/reports/schema/cautions-page.ts';
import { pageParts } from '../../packages/reports/schema/pages.ts';

it('the tables of all cautions, tasks, tests and codes are what the code says; run packages/reports/schema/write.ts --page when not [requirement]', () => {
  for (const [name, parts] of Object.entries(pageParts())) {
    const page = readFileSync(new URL(`../../docs/guides/${name}`, import.meta.url), 'utf8');
    for (const [part, words] of Object.entries(parts)) expect(withPart(page, part, words), part).toBe(page);
  }
});
