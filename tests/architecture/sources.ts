import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import type ts from 'typescript';
import { compiler, parsed } from './compiler.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A file of a package: what it imports of its own package, types too, and how large its parts are. */
export interface Source {
  /** From the top of the repository. */
  readonly path: string;
  readonly lines: number;
  readonly functions: readonly { readonly name: string; readonly lines: number; readonly parameters: number }[];
  /** Files that it takes something from, whether it is there when the program runs or a type alone. */
  readonly imports: readonly string[];
}

/** Reads a file by the compiler's own parser. */
export function sourceOf(path: string, text: string): Source {
  const file = parsed(path, text);
  const functions: { name: string; lines: number; parameters: number }[] = [];
  const imports: string[] = [];
  const lineAt = (position: number): number => file.getLineAndCharacterOfPosition(position).line;
  const visit = (node: ts.Node, parent: ts.Node): void => {
    if (
      (compiler.isImportDeclaration(node) || compiler.isExportDeclaration(node)) &&
      node.moduleSpecifier !== undefined
    ) {
      const { text: from } = node.moduleSpecifier as ts.StringLiteral;
      if (from.startsWith('.')) imports.push(posix.join(posix.dirname(path), from));
    }
    if (compiler.isFunctionLike(node) && 'body' in node && node.body !== undefined) {
      const named = [node, parent].find((one) => 'name' in one && one.name !== undefined) as { name?: ts.Node };
      functions.push({
        name: named?.name?.getText(file) ?? `line ${lineAt(node.pos) + 1}`,
        lines: lineAt(node.end) - lineAt(node.getStart(file)) + 1,
        parameters: node.parameters.length,
      });
    }
    compiler.forEachChild(node, (child) => visit(child, node));
  };
  visit(file, file);
  return { path, lines: text.split('\n').length - 1, functions, imports };
}

/** All sources of the three packages. */
export function readSources(): Source[] {
  return readdirSync(`${root}packages`, { recursive: true, encoding: 'utf8' })
    .filter((file) => /^[^/]+\/src\/.*\.ts$/.test(file) && !file.endsWith('.d.ts'))
    .sort()
    .map((file) => sourceOf(`packages/${file}`, readFileSync(`${root}packages/${file}`, 'utf8')));
}

/** Circles of files: each with all that can be reached from it and leads back to it (Tarjan's components of more than one). */
export function circlesOf(sources: readonly Source[]): string[][] {
  const imports = new Map(sources.map((source) => [source.path, source.imports]));
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];
  const enter = (file: string): void => {
    order.set(file, order.size);
    lowest.set(file, order.get(file)!);
    open.push(file);
    for (const other of imports.get(file) ?? []) {
      if (!imports.has(other)) continue;
      if (!order.has(other)) enter(other);
      if (open.includes(other)) lowest.set(file, Math.min(lowest.get(file)!, lowest.get(other)!));
    }
    if (lowest.get(file) !== order.get(file)) return;
    const circle = open.splice(open.indexOf(file));
    if (circle.length > 1 || imports.get(file)!.includes(file)) circles.push(circle.sort());
  };
  for (const file of imports.keys()) if (!order.has(file)) enter(file);
  return circles;
}
