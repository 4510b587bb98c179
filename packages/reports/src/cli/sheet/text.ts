// A sheet for a terminal.
import { listItem, textTable, wrap } from '../../formats/table.ts';
import type { Units } from '../../units.ts';
import { workingInWords } from '../../words/working.ts';
import { harmless } from '../terminal.ts';
import type { Block, Cell, Sheet } from './model.ts';
import { cellText, headOf } from './words.ts';

/** Lines for a terminal of so many characters. */
export function sheetText({ title, blocks }: Sheet, units: Units, width: number): string {
  const lines = [...wrap(title, width), ''];
  for (const [at, block] of blocks.entries()) {
    const last = blocks[at - 1];
    const belongs = last?.kind === 'heading' || (last?.kind === block.kind && block.kind === 'caution');
    if (lines.at(-1) !== '' && !belongs) lines.push('');
    lines.push(...blockText(block, units, width));
  }
  // A name in a file must not steer the terminal.
  return harmless(lines.join('\n'));
}

function blockText(block: Block, units: Units, width: number): string[] {
  switch (block.kind) {
    case 'heading':
      return [`${block.text}:`];
    case 'text':
      return wrap(block.text, width);
    case 'caution':
      return wrap(`caution: ${block.text}`, width);
    case 'list':
      return block.items.flatMap((item) => listItem(item, width));
    case 'lines':
      return block.text.trimEnd().split('\n');
    case 'table': {
      const { columns, rows } = block;
      if (block.isWordy) {
        const words = (row: readonly Cell[]) => row.map((cell, at) => cellText(cell, columns[at]!, units)).join(', ');
        return rows.flatMap((row) => listItem(words(row), width));
      }
      const head = columns.map((column) => headOf(column, units));
      return textTable(
        head,
        rows.map((row) => row.map((cell, at) => cellText(cell, columns[at]!, units))),
        width,
      );
    }
    case 'working':
      return [
        `${block.title}:`,
        ...workingInWords(block.steps, units).flatMap((step) => [
          ...wrap(`${step.quantity}: ${step.formula}`, width, '  '),
          ...wrap(`${step.numbers}  →  ${step.result}   [${step.source}]`, width, '      '),
        ]),
      ];
    case 'picture':
      return [];
  }
}
