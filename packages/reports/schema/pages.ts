/** Parts of guides that code makes. */
import { cautionTable } from './cautions-page.ts';
import { codeTables } from './codes-page.ts';
import { taskTable, testTable } from './tasks-page.ts';

/** By page, by part. */
export const pageParts = (): Readonly<Record<string, Readonly<Record<string, string>>>> => ({
  'cautions.md': { cautions: cautionTable(), tasks: taskTable(), tests: testTable() },
  'codes.md': { codes: codeTables() },
});
