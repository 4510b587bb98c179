/** Plain-text tables and paragraphs that fit a width. */
import { cut, glueUnits } from '../escape.ts';

const width = (text: string): number => [...text].length;

/** Paragraph broken at spaces, not between a number and its unit; a longer word is cut. */
export function wrap(text: string, columns: number, indent = ''): string[] {
  const room = Math.max(1, columns - indent.length);
  const lines: string[] = [];
  let line = '';
  for (const word of glueUnits(text).split(' ')) {
    if (line !== '' && width(line) + 1 + width(word) > room) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? cut(word, room) : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines.map((one) => indent + one.replaceAll('\u00a0', ' '));
}

/** A line of a list: a dash, and further lines under its words. */
export const listItem = (text: string, columns: number): string[] =>
  wrap(text, columns, '  ').map((line, at) => (at === 0 ? `- ${line.slice(2)}` : line));

const GAP = '  ';

/**
 * Aligned table, first column left, others right. Headers break over lines; columns that do not fit go into further blocks
 * below, each with the first column again.
 */
export function textTable(header: readonly string[], rows: readonly (readonly string[])[], columns: number): string[] {
  const longestWord = (text: string): number => Math.max(...text.split(' ').map(width));
  const widths = header.map((head, column) =>
    Math.max(longestWord(head), ...rows.map((row) => width(row[column] ?? ''))),
  );
  widths[0] = Math.min(widths[0]!, Math.floor(columns / 2));
  const blocks: number[][] = [];
  let used = 0;
  for (let column = 1; column < header.length; column++) {
    const need = GAP.length + Math.min(widths[column]!, columns - widths[0]! - GAP.length);
    if (blocks.length === 0 || used + need > columns) {
      blocks.push([]);
      used = widths[0]!;
    }
    blocks.at(-1)!.push(column);
    used += need;
  }
  const room = (column: number): number => Math.min(widths[column]!, columns - widths[0]! - GAP.length);
  const lines: string[] = [];
  for (const block of blocks) {
    if (lines.length > 0) lines.push('');
    const heads = [0, ...block].map((column) => wrap(header[column]!, column === 0 ? widths[0]! : room(column)));
    const height = Math.max(...heads.map((head) => head.length));
    for (let row = 0; row < height; row++) {
      const cells = block.map((column, at) => {
        const head = heads[at + 1]!;
        return cut(head[row - height + head.length] ?? '', room(column)).padStart(room(column));
      });
      const first = heads[0]!;
      lines.push(
        [cut(first[row - height + first.length] ?? '', widths[0]!).padEnd(widths[0]!), ...cells].join(GAP).trimEnd(),
      );
    }
    lines.push([0, ...block].map((column) => '-'.repeat(column === 0 ? widths[0]! : room(column))).join(GAP));
    for (const row of rows) {
      const cells = block.map((column) => cut(row[column] ?? '', room(column)).padStart(room(column)));
      lines.push([cut(row[0] ?? '', widths[0]!).padEnd(widths[0]!), ...cells].join(GAP).trimEnd());
    }
  }
  return lines;
}
