/** Pieces that all pages are made of. Everything that comes from outside passes through {@link escapeHtml}. */
import { type CautionSeverity, SEVERITY_WORDS } from '../cautions/index.ts';
import { designMark } from '../charts/designs.ts';
import { escapeHtml, glueUnits } from '../escape.ts';
import type { PlainTable } from '../model/types.ts';

/** Escaped sentence whose numbers stay with their units, and money with its minus. */
export const sentence = (text: string): string => glueUnits(escapeHtml(text)).replace(/−(?=\p{Sc})/gu, '−\u2060');

/** Mark and letter of a design. @param index - its place among those of the page */
export const designLetter = (index: number, letter: string): string =>
  `<span class="letter"><span aria-hidden="true" style="color:var(--nl-design-${'abcd'[index % 4]})">${designMark(index)}</span> ${letter}</span>`;

/** A list of sentences. */
export const bullets = (texts: readonly string[]): string =>
  texts.length === 0 ? '' : `<ul>${texts.map((text) => `<li>${sentence(text)}</li>`).join('')}</ul>`;

/** How a table behaves where it does not fit: it scrolls sideways, with a hint, or its rows become a list on a telephone. */
type NarrowTable = 'scroll' | 'list';

/** Characters that a telephone shows in a line of a table, about. */
const TELEPHONE = 44;

/** The same of the widest page. */
const SCREEN = 130;

const characters = ({ header, rows }: PlainTable): number =>
  header.reduce((sum, head, column) => {
    const longest = Math.max(
      ...head.split(' ').map((word) => word.length),
      ...rows.map((row) => Math.min(column === 0 ? 18 : 99, (row[column] ?? '').length)),
    );
    return sum + longest + 2;
  }, 0);

/** A table in its box. @param wide - whether it is wider than a telephone or than any page, so that a hint says that there is more */
export function tableBox(label: string, head: string, body: string, kind: string, wide: boolean | 'always'): string {
  const shown = wide === 'always' ? 'hint always' : 'hint';
  const hint = wide ? `<p class="${shown}">There are more columns: scroll sideways.</p>` : '';
  const table = `<table class="${kind}"><thead>${head}</thead><tbody>${body}</tbody></table>`;
  return kind !== 'numbers'
    ? table
    : `${hint}<div class="scroll" role="region" aria-label="Table: ${escapeHtml(label)}" tabindex="0">${table}</div>`;
}

/** Options of {@link plainTable}. */
export interface TableOptions {
  /** Makes the last row a total. */
  readonly sum?: boolean;
  /** Default `scroll`. */
  readonly narrow?: NarrowTable;
  /** Columns of words, by their number; the first is one always. */
  readonly words?: readonly number[];
}

/** A table of plain text. @param label - what it is, for those who do not see it */
export function plainTable(label: string, table: PlainTable, options: TableOptions = {}): string {
  const { sum = false, narrow = 'scroll', words = [] } = options;
  const { header, rows } = table;
  const isWords = (column: number): boolean => column === 0 || words.includes(column);
  const head = header
    .map((one, column) => `<th scope="col"${isWords(column) ? ' class="text"' : ''}>${escapeHtml(one)}</th>`)
    .join('');
  const body = rows.map(([name, ...cells], index) => {
    const marked = sum && index === rows.length - 1 ? ' class="sum"' : '';
    const tds = cells.map((cell, at) => {
      const kind = isWords(at + 1) ? ' class="text"' : '';
      const named = narrow === 'list' ? ` data-head="${cell === '' ? '' : escapeHtml(header[at + 1] ?? '')}"` : '';
      return `<td${kind}${named}>${sentence(cell)}</td>`;
    });
    return `<tr${marked}><th scope="row">${sentence(name!)}</th>${tds.join('')}</tr>`;
  });
  const kind = narrow === 'list' ? 'list' : 'numbers';
  const width = characters(table);
  return tableBox(label, `<tr>${head}</tr>`, body.join(''), kind, width > SCREEN ? 'always' : width > TELEPHONE);
}

/** What {@link figureHtml} shows. */
interface Figure {
  /** What is shown, and its unit. Plain text. */
  readonly title: string;
  /** SVG for screens and paper, and for telephones. */
  readonly wide: string;
  readonly narrow: string;
  /** Plain text; may be empty. */
  readonly caption: string;
  /** Numbers behind it; left out where there are none. */
  readonly table?: PlainTable;
  readonly tableOptions?: TableOptions;
}

/** A picture with heading and caption, and its numbers below. */
export function figureHtml({ title, wide, narrow, caption, table, tableOptions = {} }: Figure): string {
  const behind =
    table === undefined
      ? ''
      : `<details><summary>Numbers of this picture</summary>${plainTable(`Numbers: ${title}`, table, tableOptions)}</details>`;
  const under = caption === '' ? '' : `<figcaption>${sentence(caption)}</figcaption>`;
  return `<figure><h3>${sentence(title)}</h3><div class="wide">${wide}</div><div class="narrow">${narrow}</div>${under}</figure>${behind}`;
}

const SHAPES: Readonly<Record<CautionSeverity, string>> = {
  danger:
    '<path d="M5 1h6l4 4v6l-4 4H5l-4-4V5z" fill="none" stroke="currentColor" stroke-width="1.5"/><path d="M8 4v5M8 11v1.5" stroke="currentColor" stroke-width="2"/>',
  warning:
    '<path d="M8 1.5l7 13H1z" fill="none" stroke="currentColor" stroke-width="1.5"/><path d="M8 6v4M8 11.5v1.5" stroke="currentColor" stroke-width="1.6"/>',
  note: '<circle cx="8" cy="8" r="6.5" fill="none" stroke="currentColor" stroke-width="1.5"/><path d="M8 4v1.5M8 7v5" stroke="currentColor" stroke-width="1.6"/>',
};

/** Sign and word of a severity, told apart by shape. */
export const badge = (severity: CautionSeverity): string =>
  `<span class="badge"><svg viewBox="0 0 16 16" aria-hidden="true">${SHAPES[severity]}</svg>${severity === 'danger' ? SEVERITY_WORDS.danger.toUpperCase() : SEVERITY_WORDS[severity]}</span>`;

/** A caution in words. */
export interface CautionText {
  readonly severity: CautionSeverity;
  /** What was found; may be none. */
  readonly findings: readonly string[];
  /** Why, and what to do. */
  readonly advice: string;
  /** Who may do it; left out where the advice says it. */
  readonly who?: string;
  /** Where the limit comes from; may be empty. */
  readonly source: string;
}

/** Cautions in the order given. @param kind - `notes` for those that are good to know, which print small */
export function cautionList(cautions: readonly CautionText[], kind: '' | 'notes' = ''): string {
  const items = cautions.map(({ severity, findings, advice, who = '', source }) => {
    const [first, ...more] = [...findings, advice];
    const rest = more.map((text) => `<p>${sentence(text)}</p>`).join('');
    const may = who === '' ? '' : `<b>Who may do it: ${sentence(who)}</b> `;
    const from = may + source === '' ? '' : `<p class="quiet">${may}${sentence(source)}</p>`;
    return `<li class="${severity}"><p>${badge(severity)} ${sentence(first!)}</p>${rest}${from}</li>`;
  });
  return items.length === 0 ? '' : `<ul class="cautions${kind === '' ? '' : ` ${kind}`}">${items.join('')}</ul>`;
}
