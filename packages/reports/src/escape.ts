/** Text that others wrote (names, file names, sources), made harmless for each format. */

/** One line without control, direction and other invisible format characters, which could forge a terminal or a page. */
export const plainText = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/ {2,}/g, ' ')
    .trim();

/** Cut to a number of characters, with `…` where something is missing. */
export function cut(text: string, length: number): string {
  const characters = [...text];
  return characters.length <= length
    ? text
    : `${characters
        .slice(0, Math.max(0, length - 1))
        .join('')
        .trimEnd()}…`;
}

const HTML: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** For HTML and SVG, in text and in quoted attributes. */
export const escapeHtml = (text: string): string =>
  plainText(text).replace(/[&<>"']/g, (character) => HTML[character]!);

/** For Markdown, in running text and in table cells: nothing in it can start markup, a link or HTML. */
export const escapeMarkdown = (text: string): string =>
  plainText(text)
    .replace(/[\\`*_[\]#|~$!]/g, '\\$&')
    .replace(/:\/\//g, ':\\/\\/')
    .replace(/www\./gi, (www) => `${www.slice(0, 3)}\\.`)
    .replace(/^([-+=]|\d+(?=[.)] ))/, (start) => (/\d/.test(start) ? `${start}\\` : `\\${start}`))
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');

/** What begins a formula in some spreadsheet, the full-width signs too; after a semicolon as well, where that parts cells. */
const FORMULA = /(^|;)(\s*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g;

/** For CSV: what a spreadsheet would take for a formula gets an apostrophe in front. */
export const escapeCell = (text: string): string => plainText(text).replace(FORMULA, "$1$2'");

const GLUE = /(\d) (?=(?:%|°[CF]|kWh|kBtu|therm|L|gal|h|K|g|kg|lb|a)(?![\w/]))/g;

/** Joins numbers to their units with no-break spaces, so that no line ends between them. */
export const glueUnits = (text: string): string => text.replace(GLUE, '$1\u00a0');

/** Letter of a design: A to Z, then A2. */
export const letterOf = (index: number): string =>
  String.fromCharCode(65 + (index % 26)) + (index < 26 ? '' : String(Math.floor(index / 26) + 1));
