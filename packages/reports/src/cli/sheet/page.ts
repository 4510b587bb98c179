// A sheet as one HTML file that needs nothing else.
import { escapeHtml } from '../../escape.ts';
import { htmlPage, type PageSection } from '../../formats/html-page.ts';
import { bullets, cautionList, plainTable, sentence } from '../../formats/html-parts.ts';
import type { Units } from '../../units.ts';
import { workingInWords } from '../../words/working.ts';
import type { Block, Cell, Sheet, Table } from './model.ts';
import { cellText, headOf } from './words.ts';

/** The whole document, for screens and paper: what stands before the first heading is its first sheet. */
export function sheetPage({ title, blocks }: Sheet, units: Units): string {
  const [first, ...others] = inSections(blocks);
  const [answer, ...rest] = first!.blocks;
  const leads = answer?.kind === 'text';
  const cautions = blocks.filter((block) => block.kind === 'caution');
  const sections = others.map(
    (section): PageSection => ({
      title: section.title,
      blocks: section.blocks.map((block) => blockHtml(block, units)),
    }),
  );
  return htmlPage({
    head: { title },
    answer: leads ? [answer.text] : [],
    sheet: (leads ? rest : first!.blocks).map((block) => blockHtml(block, units)),
    sections: [
      ...sections,
      {
        title: 'Cautions',
        blocks: [
          cautionList(
            cautions.map(({ text }) => ({
              severity: 'warning',
              findings: [],
              advice: text,
              source: '',
            })),
          ),
        ],
      },
    ],
  });
}

interface Section {
  readonly title: string;
  readonly blocks: Block[];
}

/** Blocks by the heading above them; a working has a heading of its own; cautions stand together at the end. */
function inSections(blocks: readonly Block[]): Section[] {
  const sections: Section[] = [{ title: '', blocks: [] }];
  for (const block of blocks) {
    if (block.kind === 'caution') continue;
    if (block.kind === 'heading') sections.push({ title: block.text, blocks: [] });
    else if (block.kind === 'working' && sections.length === 1) sections.push({ title: block.title, blocks: [block] });
    else sections.at(-1)!.blocks.push(block);
  }
  return sections;
}

function blockHtml(block: Block, units: Units): string {
  switch (block.kind) {
    case 'heading':
    case 'caution':
      return '';
    case 'text':
      return `<p>${sentence(block.text)}</p>`;
    case 'list':
      return bullets(block.items);
    case 'lines':
      // Escaped line by line: escaping takes line ends away.
      return `<pre>${block.text.trimEnd().split('\n').map(indented).join('\n')}</pre>`;
    case 'table': {
      const { name, columns, rows, isWordy } = block;
      const text = (cell: Cell, at: number) => cellText(cell, columns[at]!, units);
      return plainTable(
        name,
        { header: columns.map((column) => headOf(column, units)), rows: rows.map((row) => row.map(text)) },
        { words: wordColumns(block), narrow: isWordy ? 'list' : 'scroll' },
      );
    }
    case 'working':
      return `<dl class="definitions">${workingInWords(block.steps, units)
        .map(
          (step) =>
            `<dt>${escapeHtml(`${step.quantity}: ${step.formula}`)}</dt><dd>${escapeHtml(step.numbers)} → <b>${escapeHtml(step.result)}</b> <span class="small">[${escapeHtml(step.source)}]</span></dd>`,
        )
        .join('')}</dl>`;
    case 'picture':
      return `<figure>${block.svg}<figcaption>${sentence(block.words)}</figcaption></figure>`;
  }
}

/** Columns of words, which begin at the left and wrap. */
const wordColumns = ({ columns, rows }: Table): number[] =>
  columns.flatMap((_, at) => (rows.some((row) => /[a-z]{3}/i.test(String(row[at] ?? ''))) ? [at] : []));

const indented = (line: string): string => ' '.repeat(line.length - line.trimStart().length) + escapeHtml(line);
