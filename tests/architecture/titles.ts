/** Titles of tests as they stand in the sources, which the formatter keeps in one form. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** A test and the groups that it stands in. */
export interface TestTitle {
  readonly path: string;
  readonly line: number;
  /** Titles of its groups and its own, as one text. */
  readonly words: string;
}

/** A call of `it` or `describe`, with whatever is chained to it, begins a line. */
const CALL = /^( *)(it|describe)(?=[.(<`])/gm;
/** Its title is the text before its function: rows and conditions that stand before it have none. One that is not found is bare. */
const TITLE = /[(]\s*((['"`])(?:\\.|(?!\2)[^\\])*\2),\s*(?:async\b|\(|\{|\w+\)|\w+ =>)/s;

/** Tests of one source. */
export function titlesIn(path: string, text: string): TestTitle[] {
  const found: TestTitle[] = [];
  const groups: { readonly indent: number; readonly title: string }[] = [];
  const calls = [...text.matchAll(CALL)];
  let line = 1;
  for (const [at, { index, 1: space, 2: kind }] of calls.entries()) {
    line += text.slice(calls[at - 1]?.index ?? 0, index).split('\n').length - 1;
    const indent = space!.length;
    while ((groups.at(-1)?.indent ?? -1) >= indent) groups.pop();
    const title = TITLE.exec(text.slice(index, calls[at + 1]?.index))?.[1] ?? '';
    if (kind === 'describe') groups.push({ indent, title });
    else found.push({ path, line, words: [...groups.map((group) => group.title), title].join(' ') });
  }
  return found;
}

/** Tests of all files below some folders of `tests`. */
export function readTitles(folders: readonly string[]): TestTitle[] {
  return folders.flatMap((folder) =>
    readdirSync(`${ROOT}tests/${folder}`, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.test.ts'))
      .sort()
      .flatMap((name) => titlesIn(`tests/${folder}/${name}`, readFileSync(`${ROOT}tests/${folder}/${name}`, 'utf8'))),
  );
}

/** Whether a source, "requirement", "definition" or another ground stands in square brackets in a test's title or that of a group. */
export const namesItsGround = ({ words }: TestTitle): boolean => /\[[^\][]*\p{L}{3}[^\][]*\]/u.test(words);
