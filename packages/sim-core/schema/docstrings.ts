// What the docstrings of the design's interfaces say, field by field.
import { readdirSync, readFileSync } from 'node:fs';
import type ts from 'typescript';
import { compiler } from './compiler.ts';

const folder = new URL('../src/design/', import.meta.url);

interface Field {
  readonly text: string;
  /** Interfaces that its type names. */
  readonly types: readonly string[];
}

/** Fields of every interface in the texts; read as syntax alone, which takes milliseconds. */
function readInterfaces(texts: readonly string[]): Map<string, Map<string, Field>> {
  const interfaces = new Map<string, Map<string, Field>>();
  const parents = new Map<string, string[]>();
  for (const text of texts) {
    for (const node of compiler.createSourceFile('source.ts', text, compiler.ScriptTarget.Latest, true).statements) {
      if (!compiler.isInterfaceDeclaration(node)) continue;
      const extended = node.heritageClauses?.flatMap((clause) => clause.types.map((type) => type.getText())) ?? [];
      parents.set(node.name.text, extended);
      interfaces.set(node.name.text, new Map(node.members.filter(compiler.isPropertySignature).map(fieldOf)));
    }
  }
  for (const [name, extended] of parents) {
    for (const parent of extended)
      for (const [key, field] of interfaces.get(parent) ?? []) interfaces.get(name)!.set(key, field);
  }
  return interfaces;
}

function fieldOf(node: ts.PropertySignature): [string, Field] {
  const doc = compiler.getJSDocCommentsAndTags(node).find(compiler.isJSDoc);
  const words = compiler.getTextOfJSDocComment(doc?.comment) ?? '';
  const types: string[] = [];
  const visit = (type: ts.Node): void => {
    if (compiler.isTypeReferenceNode(type)) types.push(type.typeName.getText());
    type.forEachChild(visit);
  };
  if (node.type) visit(node.type);
  // Links become plain names.
  return [
    node.name.getText(),
    {
      text: words
        .replace(/\{@link (\w+)\}/g, '$1')
        .replace(/\s+/g, ' ')
        .trim(),
      types,
    },
  ];
}

/** Docstring of each field by its path in a design, such as `tank.volume`; lists and unions pass through. */
export const designDocstrings = (): Map<string, string> =>
  docstringsOf(
    readdirSync(folder).map((file) => readFileSync(new URL(file, folder), 'utf8')),
    'SystemDesign',
  );

/** The same of any interface. @param texts - Sources that hold it and those that it names. @param top - Its name. */
export function docstringsOf(texts: readonly string[], top: string): Map<string, string> {
  const interfaces = readInterfaces(texts);
  const found = new Map<string, string>();
  const walk = (name: string, path: string): void => {
    for (const [key, { text, types }] of interfaces.get(name) ?? []) {
      const below = path === '' ? key : `${path}.${key}`;
      if (text !== '' && !found.has(below)) found.set(below, text);
      for (const type of types) walk(type, below);
    }
  };
  walk(top, '');
  return found;
}
