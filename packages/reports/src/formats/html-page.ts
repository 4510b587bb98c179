/** The frame of every page: head, first sheet, contents, sections. One file that needs nothing else, no network and no script. */
import { escapeHtml, plainText } from '../escape.ts';
import { sentence } from './html-parts.ts';
import { STYLE } from './html-style.ts';

/** What a maker puts on a page of their own. Plain text, escaped here. */
interface PageHead {
  /** The reader's question, or the house. */
  readonly title: string;
  /** For whom. */
  readonly client?: string;
  /** As the maker writes it, such as `12 May 2026`. */
  readonly date?: string;
  /** A remark of the maker's own. */
  readonly note?: string;
}

/** A part of the page behind the first sheet. */
export interface PageSection {
  /** Plain text, escaped here; its id is made from it. */
  readonly title: string;
  /** HTML, escaped already. The first block is kept with the heading in print; each is one element or more. */
  readonly blocks: readonly string[];
  /** Whether it is printed; default true. */
  readonly printed?: boolean;
}

/** A page. HTML in it is escaped already. */
interface Page {
  readonly head: PageHead;
  /** The answer: what stands directly under the title, in the largest type. Plain text, escaped here. */
  readonly answer?: readonly string[];
  /** The rest of the first sheet. */
  readonly sheet: readonly string[];
  /** Beside the sheet on a wide screen, below the contents; under the sheet on a telephone. */
  readonly aside?: string;
  readonly sections: readonly PageSection[];
  /** Whether the first sheet has a sheet of paper of its own; default false. */
  readonly alone?: boolean;
}

/** Id of a section, for links to it. */
export const sectionId = (title: string): string =>
  plainText(title)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/** A string in a style sheet, every character but letters and digits by its number. */
const cssString = (text: string): string =>
  `"${[...plainText(text)].map((one) => (/[a-z0-9 ]/i.test(one) ? one : `\\${one.codePointAt(0)!.toString(16)} `)).join('')}"`;

/** Foot of every printed page: title, date, page of pages. */
const printFoot = ({ title, date }: PageHead): string =>
  `@page{margin:14mm;@bottom-left{content:${cssString(date === undefined ? title : `${title} · ${date}`)};font:8pt system-ui,sans-serif;color:#59606a}@bottom-right{content:counter(page) " of " counter(pages);font:8pt system-ui,sans-serif;color:#59606a}}`;

/** Heading and first block stay together on paper, and so does each block that fits a page. */
function sectionHtml({ title, blocks, printed = true }: PageSection): string {
  const [first, ...rest] = blocks;
  return `<section${printed ? '' : ' class="unprinted"'} aria-labelledby="${sectionId(title)}"><div class="keep"><h2 id="${sectionId(title)}">${escapeHtml(title)}</h2>${first ?? ''}</div>${rest.join('')}</section>`;
}

const contents = (sections: readonly PageSection[]): string =>
  sections.length === 0
    ? ''
    : `<nav aria-label="Contents"><p class="small">On this page</p><ul>${sections.map(({ title }) => `<li><a href="#${sectionId(title)}">${escapeHtml(title)}</a></li>`).join('')}</ul></nav>`;

/** A whole document. @param page - its parts; the same parts give the same text */
export function htmlPage({ head, answer = [], sheet, aside = '', sections, alone = false }: Page): string {
  const { title, client, date, note } = head;
  const shown = sections.filter(({ blocks }) => blocks.some((block) => block !== ''));
  const forWhom = [client === undefined ? '' : `for ${client}`, date ?? ''].filter((part) => part !== '').join(' · ');
  const said = answer.map((one, at) => `<p class="${at === 0 ? 'answer' : 'decides'}">${sentence(one)}</p>`);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeHtml(title)}</title>
<style>${STYLE}${printFoot(head)}</style>
</head>
<body>
<main>
<div class="first${alone ? ' alone' : ''}"><div class="sheet">
<header><h1>${escapeHtml(title)}</h1>${forWhom === '' ? '' : `<p class="for">${escapeHtml(forWhom)}</p>`}</header>
${[...said, ...sheet].join('\n')}
${note === undefined || plainText(note) === '' ? '' : `<p class="small">${escapeHtml(note)}</p>`}
</div><aside>${contents(shown)}${aside}</aside></div>
${shown.map(sectionHtml).join('\n')}
</main>
</body>
</html>
`;
}
