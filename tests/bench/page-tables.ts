// Tables that a script writes into a page, between marks, and what has become stale in them.

/** A row of a Markdown table. */
export const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;

/** A Markdown table. */
export const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');

/** Puts a text between the marks of its name. @throws Error when the page has no such marks. */
export function put(text: string, name: string, figures: string): string {
  const marks = new RegExp(`(<!-- ${name}: [^>]*-->\\n)[\\s\\S]*?(<!-- end of ${name} -->)`);
  if (!marks.test(text)) throw new Error(`the page has no marks "${name}"`);
  return text.replace(marks, (_, from: string, to: string) => `${from}\n${figures}\n\n${to}`);
}

/** Cells of a table by its mark, without its head. */
export function cellsOf(text: string, name: string): string[][] {
  const part = text.split(`<!-- ${name}:`)[1]!.split(`<!-- end of ${name} -->`)[0]!;
  const lines = part.split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| ---'));
  return lines.slice(1).map((line) => line.slice(2, -2).split(' | '));
}

/** Where the true share lies, 95 %, if `share` of `count` was found (Wilson 1927). */
export function sharesLike(share: number, count: number): readonly [low: number, high: number] {
  const z = 1.96;
  const middle = (share + z ** 2 / (2 * count)) / (1 + z ** 2 / count);
  const half = (z / (1 + z ** 2 / count)) * Math.sqrt((share * (1 - share)) / count + z ** 2 / (4 * count ** 2));
  return [middle - half, middle + half];
}

export const numeral = (cell: string): number => Number(cell.replace('−', '-').replace('+', ''));

/** A written figure may differ so much from today's before the page is out of date: rounding of machines and compilers moves small ones. */
const STALE = 1.5;
/** Figures that count as nought: rounding of doubles. */
export const NOUGHT = 1e-12;

/** Whether a written cell still says what is so; `least` is a difference that no reader minds. */
export function holds(written: string, now: string, least = NOUGHT): boolean {
  const [a, b] = [written, now].map((cell) => numeral(cell.split(' ')[0]!));
  if (written === now) return true;
  if (!Number.isFinite(a) || !Number.isFinite(b)) return false;
  if (Math.abs(a! - b!) <= least) return true;
  return a! * b! > 0 && Math.abs(a!) <= STALE * Math.abs(b!) && Math.abs(b!) <= STALE * Math.abs(a!);
}
