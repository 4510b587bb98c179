/** The table of all cautions, for the guide. */
import { SEVERITY_WORDS } from '../src/cautions/index.ts';
import type { CautionText } from '../src/words/caution-text.ts';
import { CAUTION_WORDS } from '../src/words/cautions.ts';

/** A number of the run in a sentence: `‹peak›`. */
const holes = (sentence: string): string => sentence.replace(/\{(\w+)\}/g, '‹$1›');
const cell = (text: string): string => holes(text).replaceAll('|', '\\|');
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** One row a caution: what raises it, its words, who may act, its source. */
export function cautionTable(): string {
  const rows = Object.entries(CAUTION_WORDS as Readonly<Record<string, CautionText>>).map(
    ([code, { severity, raised, says, who, source }]) => [
      `\`${code}\``,
      severity.map((one) => SEVERITY_WORDS[one].toLowerCase()).join(', '),
      capital(raised),
      Object.values(says).join('<br>'),
      who,
      source,
    ],
  );
  return markdownTable(['code', 'grave', 'raised by', 'words', 'who may act', 'source'], rows);
}

/** A table in Markdown; holes of sentences stand in pointed brackets. */
export const markdownTable = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows.map((row) => row.map(cell))].map((row) => `| ${row.join(' | ')} |`).join('\n');

/** A page with the part between `<!-- name, made by code -->` and `<!-- end of name -->` replaced. */
export function withPart(page: string, name: string, part: string): string {
  const [start, end] = [`<!-- ${name}, made by code -->`, `<!-- end of ${name} -->`];
  const [from, to] = [page.indexOf(start), page.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`the page has no part "${name}"`);
  return `${page.slice(0, from + start.length)}\n\n${part}\n\n${page.slice(to)}`;
}
