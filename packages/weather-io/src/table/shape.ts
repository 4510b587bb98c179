// Whether a text has the shape of a table at all, before it is split: what it would take in memory is bounded by this.
import { type Faults, quote } from '../errors.ts';

/** Longest line; headers of EPW come to a few thousand. Judgement. [characters] */
const LONGEST_LINE = 100_000;

/** Most cells in a line; the widest format has 71. Judgement. */
const MOST_COLUMNS = 1000;

/** Most lines: two years in minutes. Judgement. */
const MOST_LINES = 1_100_000;

/** Most cells: a year in five-minute steps with a hundred columns. Judgement. */
const MOST_CELLS = 11_000_000;

/** Quotation marks beyond two for each cell: those in remarks. More would take the splitter a gigabyte. Judgement. */
const SPARE_QUOTES = 10_000;

/** Faults a text with lines too long, too wide or too many. @param firstLine - Line of its first line in the file. */
export function checkShape(text: string, delimiter: string, firstLine: number, faults: Faults): void {
  if (isSmall(text, delimiter)) return;
  const separator = delimiter.charCodeAt(0);
  let start = 0;
  let line = firstLine;
  let cells = 0;
  let columns = 1;
  let quotes = 0;
  const fail = (value: string, expected: string): never =>
    faults.fail({
      code: 'too-large',
      line,
      value,
      expected,
      remedy: 'Choose a file with one year in minutes or less, and the columns that are needed.',
    });
  for (let at = 0; at <= text.length; at++) {
    const code = at < text.length ? text.charCodeAt(at) : 10;
    if (code === separator) columns++;
    else if (code === 34) quotes++;
    if (code !== 10) continue;
    if (at - start > LONGEST_LINE)
      fail(quote(text.slice(start, start + 40)), `lines of at most ${LONGEST_LINE} characters, not ${at - start}`);
    if (columns > MOST_COLUMNS)
      fail(quote(text.slice(start, start + 40)), `at most ${MOST_COLUMNS} columns, not ${columns}`);
    cells += columns;
    if (quotes > 2 * cells + SPARE_QUOTES)
      fail(
        quote(text.slice(start, start + 40)),
        `at most two quotation marks for each cell, not ${quotes} in ${cells} cells`,
      );
    if (cells > MOST_CELLS || line - firstLine >= MOST_LINES)
      fail(String(cells), `at most ${MOST_LINES} lines and ${MOST_CELLS} cells`);
    columns = 1;
    start = at + 1;
    line++;
  }
}

/** Whether nothing can be too much, looked at by line instead of by character: most files are small. */
function isSmall(text: string, delimiter: string): boolean {
  if (text.length >= MOST_CELLS) return false;
  let quotes = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) if (++quotes > SPARE_QUOTES) return false;
  let lines = 0;
  for (let start = 0, end = 0; end < text.length; start = end + 1) {
    end = text.indexOf('\n', start);
    if (end < 0) end = text.length;
    if (++lines >= MOST_LINES) return false;
    if (end - start < MOST_COLUMNS) continue;
    if (end - start > LONGEST_LINE || text.slice(start, end).split(delimiter).length > MOST_COLUMNS) return false;
  }
  return true;
}
