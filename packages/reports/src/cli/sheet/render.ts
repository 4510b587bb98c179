// An answer in the format asked for.
import type { Units } from '../../units.ts';
import type { Answer } from './model.ts';

/** Formats that every answer has. */
export const SHEET_FORMATS = ['text', 'html', 'md', 'csv', 'json'] as const;

/** How an answer is rendered. */
interface SheetOptions {
  readonly units: Units;
  readonly width: number;
  readonly table?: string;
}

/** Renders an answer; each format is loaded when it is wanted. */
export async function renderAnswer(answer: Answer, format: string, options: SheetOptions): Promise<string> {
  const { sheet, data, formats = {} } = answer;
  const { units, width, table } = options;
  if (Object.hasOwn(formats, format)) return formats[format]!();
  switch (format) {
    case 'json':
      return JSON.stringify(data, plain, 2);
    case 'html':
      return (await import('./page.ts')).sheetPage(sheet, units);
    case 'md':
      return (await import('./markdown.ts')).sheetMarkdown(sheet, units);
    case 'csv':
      return (await import('./csv.ts')).sheetCsv(sheet, units, table);
    default:
      return (await import('./text.ts')).sheetText(sheet, units, width);
  }
}

/** Typed arrays as lists. */
const plain = (_: string, value: unknown): unknown =>
  ArrayBuffer.isView(value) && !(value instanceof DataView) ? Array.from(value as unknown as number[]) : value;
