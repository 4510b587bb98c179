/** Titles of tests as they stand in the sources, by the compiler's parser. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type ts from 'typescript';
import { compiler, parsed } from './compiler.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** A test and the groups that it stands in. */
export interface TestTitle {
  readonly path: string;
  readonly line: number;
  /** Titles of its groups and its own, as one text. */
  readonly words: string;
}

/** `it` or `describe`, with whatever is chained to it; `null` for another call. */
function kindOf(call: ts.CallExpression): 'group' | 'test' | null {
  let callee: ts.Expression = call.expression;
  while (
    compiler.isCallExpression(callee) ||
    compiler.isPropertyAccessExpression(callee) ||
    compiler.isTaggedTemplateExpression(callee)
  ) {
    callee = compiler.isTaggedTemplateExpression(callee) ? callee.tag : callee.expression;
  }
  if (!compiler.isIdentifier(callee)) return null;
  return callee.text === 'describe' ? 'group' : callee.text === 'it' ? 'test' : null;
}

/** Tests of one source. */
export function titlesIn(path: string, text: string): TestTitle[] {
  const source = parsed(path, text);
  const found: TestTitle[] = [];
  const visit = (node: ts.Node, groups: readonly string[]): void => {
    let inside = groups;
    if (compiler.isCallExpression(node)) {
      const [first] = node.arguments;
      const kind = kindOf(node);
      if (kind !== null && first !== undefined && node.arguments.length > 1) {
        const words = [...groups, first.getText(source)];
        if (kind === 'group') inside = words;
        else {
          const line = source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
          found.push({ path, line, words: words.join(' ') });
        }
      }
    }
    compiler.forEachChild(node, (child) => visit(child, inside));
  };
  visit(source, []);
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
