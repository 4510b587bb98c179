// A sheet in GitHub-flavoured Markdown.
import { escapeMarkdown } from '../../escape.ts';
import type { Units } from '../../units.ts';
import { workingInWords } from '../../words/working.ts';
import type { Block, Sheet } from './model.ts';
import { cellText, headOf } from './words.ts';

/** The whole document. */
export function sheetMarkdown({ title, blocks }: Sheet, units: Units): string {
  const parts = blocks.map((block) => blockMarkdown(block, units)).filter((lines) => lines.length > 0);
  return [`# ${escapeMarkdown(title)}`, ...parts.map((lines) => lines.join('\n'))].join('\n\n');
}

function blockMarkdown(block: Block, units: Units): string[] {
  switch (block.kind) {
    case 'heading':
      return [`## ${escapeMarkdown(block.text)}`];
    case 'text':
      return [escapeMarkdown(block.text)];
    case 'caution':
      return [`> **caution** ${escapeMarkdown(block.text)}`];
    case 'list':
      return block.items.map((item) => `- ${escapeMarkdown(item)}`);
    case 'lines':
      return ['```yaml', block.text.trimEnd().replaceAll('```', '` ` `'), '```'];
    case 'table': {
      const { columns, rows } = block;
      const line = (cells: readonly string[]) => `| ${cells.map(escapeMarkdown).join(' | ')} |`;
      return [
        line(columns.map((column) => headOf(column, units))),
        `| ${columns.map((_, at) => (at === 0 ? '---' : '---:')).join(' | ')} |`,
        ...rows.map((row) => line(row.map((cell, at) => cellText(cell, columns[at]!, units)))),
      ];
    }
    case 'working':
      return [
        `### ${escapeMarkdown(block.title)}`,
        '',
        ...workingInWords(block.steps, units).map(
          (step) =>
            `- ${escapeMarkdown(`${step.quantity}: ${step.formula}`)}<br>${escapeMarkdown(`${step.numbers} → ${step.result} [${step.source}]`)}`,
        ),
      ];
    case 'picture':
      return [];
  }
}
