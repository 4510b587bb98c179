// Which format a text is in.
import { quote } from './errors.ts';
import type { Format, FormatInput } from './formats/format.ts';
import { FORMATS } from './formats/index.ts';

/** Lines in which a format shows itself. */
const HEAD_LINES = 3;

/** Characters in which these lines are looked for. */
const HEAD_LENGTH = 65_536;

/** Lines by which a table with semicolons is known; PVGIS has its first row of columns in line 18. */
const TABLE_LINES = 40;

/** The format of a text: what the caller says, or what its first lines say. */
export function recognize({ text, options, faults }: FormatInput): Format {
  const wanted = options.format ?? (options.plain === undefined ? undefined : 'plain');
  if (wanted !== undefined) {
    const format = FORMATS.find(({ name }) => name === wanted);
    if (format !== undefined) return format;
    const expected = `one of ${FORMATS.map(({ name }) => name).join(', ')}`;
    const remedy = 'Correct the option format, or leave it out.';
    faults.fail({ code: 'bad-option', column: 'format', value: quote(wanted), expected, remedy });
  }
  const head = text.slice(0, HEAD_LENGTH).split('\n', HEAD_LINES);
  const found = FORMATS.filter((format) => format.sniff(head));
  if (found.length === 1) return found[0]!;
  const names = (formats: readonly Format[]) => formats.map(({ name }) => name).join(', ');
  if (found.length > 1) {
    const expected = `one format, not the headers of ${names(found)}`;
    faults.fail({
      code: 'mixed-formats',
      line: 1,
      value: quote(head[0]),
      expected,
      remedy: 'Give each file by itself.',
    });
  }
  return faults.fail({
    code: 'unknown-format',
    line: 1,
    value: quote(head[0]),
    expected: `a header of one of ${names(FORMATS)}`,
    remedy: 'Choose a file in one of these formats, or give a layout with the option plain.',
  });
}

/**
 * A known format that a spreadsheet of a country with decimal commas has saved again: semicolons between the cells and commas in
 * the numbers. Puts commas and points in their places and says so; any other text comes back as it is.
 */
export function withCommas(input: FormatInput): FormatInput {
  const { text, options, notes } = input;
  if (options.plain !== undefined) return input;
  const head = text
    .slice(0, HEAD_LENGTH)
    .split('\n', TABLE_LINES)
    .filter((line) => !line.startsWith('#'))
    .join('\n');
  const count = (letter: string): number => head.split(letter).length - 1;
  if (count(';') < 20 || count(';') <= count(',')) return input;
  const note = 'Cells stand between semicolons and numbers have decimal commas; they were read so.';
  notes.push({ code: 'decimal-commas', text: note });
  const lines = text.split('\n');
  const points = lines.map((line) => (line.startsWith('#') ? line : line.replaceAll(',', '.').replaceAll(';', ',')));
  return { ...input, text: points.join('\n') };
}
