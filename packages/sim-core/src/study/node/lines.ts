/** Lines of a results file: JSON, each with a checksum of its content. */
import { createHash } from 'node:crypto';

/** How every line begins. */
export const LINE_START = '{"check":"';
const PREFIX = /^\{"check":"([0-9a-f]{8})","([a-z]+)":/;

/** The first eight digits of the content's SHA-256. */
const checksum = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8);

/** A line of its kind, line end included. */
export function writeLine(kind: 'header' | 'row', content: unknown): string {
  const text = JSON.stringify(content);
  return `${LINE_START}${checksum(text)}","${kind}":${text}}\n`;
}

/** The content of a line without its end; `null` where it is not as it was written. */
export function readLine(line: string, kind: 'header' | 'row'): unknown {
  const match = PREFIX.exec(line);
  if (match === null || match[2] !== kind || !line.endsWith('}')) return null;
  const text = line.slice(match[0].length, -1);
  if (checksum(text) !== match[1]) return null;
  return JSON.parse(text) as unknown;
}
