// A sheet for a terminal.
import { listItem, textTable, wrap } from '../../formats/table.ts';
import { convertSentence } from '../../quantities.ts';
import type { Units } from '../../units.ts';
import { harmless } from '../terminal.ts';
import type { Block, Cell, Sheet } from './model.ts';
import { cellText, headOf, resultOf } from './words.ts';

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
      return wrap(convertSentence(block.text, units), width);
    case 'caution':
      return wrap(`caution: ${convertSentence(block.text, units)}`, width);
    case 'list':
      return block.items.flatMap((item) => listItem(convertSentence(item, units), width));
    case 'lines':
      return block.text.trimEnd().split('\n');
    case 'table': {
      const { columns, rows } = block;
      if (block.isWordy) {
        const words = (row: readonly Cell[]) => row.map((cell, at) => cellText(cell, columns[at]!, units)).join(', ');
        return rows.flatMap((row) => listItem(convertSentence(words(row), units), width));
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
        ...block.steps.flatMap((step) => [
          ...wrap(`${step.quantity}: ${step.formula}`, width, '  '),
          ...wrap(`${step.numbers}  →  ${resultOf(step, units)}   [${step.source}]`, width, '      '),
        ]),
      ];
    case 'picture':
      return [];
  }
}
