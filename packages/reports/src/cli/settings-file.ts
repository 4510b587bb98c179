// Files that people write, in YAML or JSON, with the line of each field.
import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import { EXIT, Refusal } from './exit-codes.ts';
import { readText } from './files.ts';

/** Above this length JSON is read as JSON alone, which is faster. [characters] */
const LONG = 500_000;

/** Deepest nesting; a design has six levels. Judgement. */
const DEEPEST = 50;

/** What a file says. */
export interface Settings {
  readonly path: string;
  /** Plain data: maps, lists, texts, numbers. */
  readonly value: unknown;
  /** Line of a field such as `tank.volume`, or of what is nearest above it; `null` where that is not known. */
  readonly lineOf: (field: string) => number | null;
}

/** Reads a YAML or JSON file; refuses what is neither, with the line. */
export async function readSettings(path: string): Promise<Settings> {
  return parseSettings(await readText(path), path);
}

/** The same from text. @param path - Name for errors. */
export function parseSettings(text: string, path: string): Settings {
  checkDepth(text, path);
  if (text.length > LONG) {
    try {
      return { path, value: JSON.parse(text), lineOf: () => null };
    } catch {
      // No JSON: as YAML, below, which also says in which line.
    }
  }
  const lines = new LineCounter();
  try {
    const document = parseDocument(text, {
      lineCounter: lines,
      prettyErrors: false,
      schema: 'core',
      merge: false,
      resolveKnownTags: false,
      stringKeys: true,
    });
    const faults = [...document.errors, ...document.warnings];
    if (faults.length > 0) {
      const words = faults.slice(0, 20).map(({ message, pos }) => {
        const { line, col } = lines.linePos(pos[0]);
        return `${path}, line ${line}, column ${col}: ${plain(message).replace(/\.$/, '')}. Look here and in the lines before for a bracket, a quote, a colon or an indent that is wrong.`;
      });
      throw new Refusal(EXIT.input, words);
    }
    const root = document.contents;
    const value: unknown = document.toJS({ maxAliasCount: 100 });
    return { path, value, lineOf: (field) => lineOfField(root, field, lines) };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    // Too many aliases, or nesting that overflows.
    const reason = error instanceof RangeError ? 'it is nested too deeply' : plain((error as Error).message);
    throw new Refusal(EXIT.input, [`${path}: the file cannot be read as YAML or JSON: ${reason}.`]);
  }
}

/** First line of the library's words, without its advice to programmers. */
const plain = (message: string): string => message.split('\n')[0]!.split('; please use')[0]!.slice(0, 200);

/** Refuses brackets or indents so deep that reading them would exhaust the stack. */
function checkDepth(text: string, path: string): void {
  let depth = 0;
  for (const letter of text) {
    if (letter === '[' || letter === '{') depth++;
    else if (letter === ']' || letter === '}') depth--;
    if (depth > DEEPEST * 4) break;
  }
  if (depth > DEEPEST * 4 || /^ {400}/m.test(text) || /^(?:- ){50}/m.test(text)) {
    throw new Refusal(EXIT.input, [`${path}: nested too deeply for a design. Check brackets and indents.`]);
  }
}

function lineOfField(root: unknown, field: string, lines: LineCounter): number | null {
  let node = root as Node | null;
  let offset = node?.range?.[0] ?? null;
  for (const name of field.split(/[.[\]]+/).filter((part) => part !== '')) {
    if (isMap(node)) {
      const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === name);
      if (pair === undefined) break;
      offset = (pair.key as Node).range?.[0] ?? offset;
      node = pair.value as Node | null;
    } else if (isSeq(node)) {
      const item = node.items[Number(name)] as Node | undefined;
      if (item === undefined) break;
      offset = item.range?.[0] ?? offset;
      node = item;
    } else {
      break;
    }
  }
  return offset === null ? null : lines.linePos(offset).line;
}

/** A file whose top is a map; `$schema`, which is for editors, is taken off. */
export function asMap({ value, path }: Settings): Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new Refusal(EXIT.input, [`${path}: expected fields with values, such as "tank:" or { "tank": … }.`]);
  }
  const { $schema: _, ...rest } = value as Record<string, unknown>;
  return rest;
}

/** The same of a file that names a table beside it (`file`) and says how it is laid out. */
export function tableSettings(settings: Settings): Record<string, unknown> & { readonly file: string } {
  const { file, ...layout } = asMap(settings);
  if (typeof file === 'string' && file !== '') return { ...layout, file };
  const words = 'expected the field "file": the table, by its path from here, such as "file: meter.csv"';
  throw new Refusal(EXIT.input, [`${settings.path}: ${words}.`]);
}
