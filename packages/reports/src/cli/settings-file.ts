// Files that people write, in YAML or JSON, with the line of each field.
import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, visit } from 'yaml';
import { EXIT, Refusal } from './exit-codes.ts';
import { readText } from './files.ts';
import { checkJsonNames } from './json-names.ts';

/** Above this length JSON is read as JSON, a hundred times as fast, and as YAML only where a line is asked for. [characters] */
const SHORT = 20_000;

/** Above this length it is read as JSON alone. [characters] */
const LONG = 500_000;

/** Deepest nesting; a design has six levels. Judgement. */
const DEEPEST = 50;

/** Most names in a long JSON text: the fullest file that this program writes has some thousand. Judgement. */
const MOST_NAMES = 20_000;

/** Faults shown; more of them come as a count. */
const MOST_FAULTS = 20;

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
    checkNameCount(text, path);
    const value = asJson(text);
    if (value === undefined) return parseYaml(text, path); // which also says in which line it is no JSON
    checkJsonNames(text, path);
    return { path, value, lineOf: () => null };
  }
  const value = text.length > SHORT ? asJson(text) : undefined;
  if (value === undefined) return parseYaml(text, path);
  try {
    checkJsonNames(text, path);
  } catch {
    return parseYaml(text, path); // which tells of all of them
  }
  let placed: Settings | undefined;
  const lineOf = (field: string): number | null => {
    placed ??= parseYaml(text, path);
    return placed.lineOf(field);
  };
  return { path, value, lineOf };
}

/** What a text says as JSON; nothing where it is none. */
function asJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function parseYaml(text: string, path: string): Settings {
  const lines = new LineCounter();
  try {
    const document = parseDocument(text, {
      lineCounter: lines,
      prettyErrors: false,
      schema: 'core',
      merge: false,
      resolveKnownTags: false,
      stringKeys: true,
      // The library compares every name with every other; `repeatedNames` looks each up once.
      uniqueKeys: false,
    });
    const faults = [...document.errors, ...document.warnings].map(({ code, message, pos }) => ({
      at: pos[0],
      words: inPlainWords(code, message),
    }));
    if (faults.length === 0) faults.push(...repeatedNames(document.contents));
    if (faults.length > 0) throw new Refusal(EXIT.input, placed(faults, lines, path));
    const root = document.contents;
    const value: unknown = document.toJS({ maxAliasCount: 100 });
    return { path, value, lineOf: (field) => lineOfField(root, field, lines) };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    // Too many aliases, or nesting that overflows.
    const reason = error instanceof RangeError ? 'it is nested too deeply' : firstLine((error as Error).message);
    throw new Refusal(EXIT.input, [`${path}: the file cannot be read as YAML or JSON: ${reason}.`]);
  }
}

interface Fault {
  readonly at: number;
  readonly words: string;
}

/** One sentence a line: what follows from a first fault in the same line is left out. */
function placed(faults: readonly Fault[], lines: LineCounter, path: string): string[] {
  const byLine = new Map<number, string>();
  for (const { at, words } of faults) {
    const { line, col } = lines.linePos(at);
    if (!byLine.has(line)) byLine.set(line, `${path}, line ${line}, column ${col}: ${words}`);
    if (byLine.size > MOST_FAULTS) break;
  }
  return [...byLine.values()];
}

/** A fault of the language in words for people who do not know it; the library's own where none stand here. */
function inPlainWords(code: string, message: string): string {
  const found = WORDS[code];
  if (found !== undefined) return found;
  return `${firstLine(message).replace(/\.$/, '')}. Look here and in the lines before for a bracket, a quote, a colon or an indent that is wrong.`;
}

const WORDS: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'found a tab at the start of the line, expected spaces. Use spaces.',
  BAD_INDENT: 'found an indent that fits no line above. Indent fields of one kind by the same number of spaces.',
  BLOCK_AS_IMPLICIT_KEY:
    'found a second colon, or fields under a value that stands on the same line. Put the fields on lines of their own, or in { }.',
  MULTILINE_IMPLICIT_KEY:
    'found a line without a colon and a value. Write "field: value", or put a long text in quotes.',
  MISSING_CHAR: 'expected a bracket, a quote, a comma or a colon here, or in a line before. Add what is missing.',
  TAG_RESOLVE_FAILED: 'found a tag (!), which these files do not have. Remove it.',
  BAD_ALIAS: 'found a * without the & that it stands for. Put a text that begins with * in quotes.',
  MULTIPLE_DOCS: 'found a second document (---). Keep one in each file.',
  NON_STRING_KEY: 'expected the name of a field, in letters. Write "field: value".',
};

/** First line of the library's words, without its advice to programmers. */
const firstLine = (message: string): string => message.split('\n')[0]!.split('; please use')[0]!.slice(0, 200);

/** Fields that stand twice in one map. */
function repeatedNames(root: Node | null): Fault[] {
  const faults: Fault[] = [];
  visit(root, {
    Map: (_, map) => {
      const seen = new Set<string>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        const name = String(key.value);
        if (seen.has(name)) faults.push({ at: key.range?.[0] ?? 0, words: repeated(name) });
        seen.add(name);
      }
      return faults.length > MOST_FAULTS ? visit.BREAK : undefined;
    },
  });
  return faults;
}

const repeated = (name: string): string =>
  `found ${JSON.stringify(name.slice(0, 40))} a second time, expected each field once. Remove one of the two.`;

/** Refuses brackets or indents so deep that reading them would exhaust the stack. */
function checkDepth(text: string, path: string): void {
  let depth = 0;
  for (let at = 0; at < text.length && depth <= DEEPEST * 4; at++) {
    const letter = text.charCodeAt(at);
    if (letter === OPEN.list || letter === OPEN.map) depth++;
    else if (letter === CLOSE.list || letter === CLOSE.map) depth--;
  }
  if (depth > DEEPEST * 4 || /^ {400}/m.test(text) || /^(?:- ){50}/m.test(text)) {
    throw new Refusal(EXIT.input, [`${path}: nested too deeply for a design. Check brackets and indents.`]);
  }
}

/** Refuses a long text of names before an object is made of them. */
function checkNameCount(text: string, path: string): void {
  const names = text.matchAll(/"\s*:/g);
  for (let count = 0; count <= MOST_NAMES; count++) if (names.next().done === true) return;
  const words = `found more than ${MOST_NAMES} fields, expected those of one design or settings file. Give another file.`;
  throw new Refusal(EXIT.input, [`${path}: ${words}`]);
}

const OPEN = { list: 91, map: 123 };
const CLOSE = { list: 93, map: 125 };

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
