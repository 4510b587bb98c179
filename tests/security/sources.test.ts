import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { compiler } from '../../packages/sim-core/schema/compiler.ts';

const packages = fileURLToPath(new URL('../../packages/', import.meta.url));

/** Published sources, by path. */
const texts = ['weather-io', 'sim-core', 'reports'].flatMap((name) =>
  readdirSync(`${packages}${name}/src`, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
    .map((file) => {
      const path = `${name}/src/${file.replaceAll('\\', '/')}`;
      return { path, text: readFileSync(`${packages}${path}`, 'utf8') };
    }),
);

/**
 * What a source holds in which some rule could find anything: a forbidden word or module, an import whose name is no plain text, a place by computed name, or
 * a name written in escapes. The others need not be parsed, which takes the longest.
 */
const SUSPECT = new RegExp(
  [
    /\b(?:eval|execScript)\b|Function\b|set(?:Timeout|Interval)|[.'"`[]\s*constructor|math|fetch|XMLHttpRequest|WebSocket|EventSource/,
    /['"`](?:node:)?(?:zod|fs|vm|child_process|cluster|https?|http2|net|tls|dgram|dns|inspector|repl)['"`/]/,
    /\bimport\s*(?:\/|\((?!['"]))|\b(?:from|import)\s*['"`][^'"`\n]*\\|\\u/,
  ]
    .map(({ source }) => source)
    .join('|'),
);

/** Calls, accesses, names and imports of the sources that could hold something, gathered once. */
const places = texts
  .filter(({ text }) => SUSPECT.test(text))
  .flatMap(({ path, text }) => {
    const found: { path: string; node: ts.Node }[] = [];
    const visit = (node: ts.Node): void => {
      if (
        compiler.isIdentifier(node) ||
        compiler.isCallExpression(node) ||
        compiler.isNewExpression(node) ||
        compiler.isPropertyAccessExpression(node) ||
        compiler.isElementAccessExpression(node) ||
        compiler.isImportDeclaration(node) ||
        compiler.isExportDeclaration(node)
      )
        found.push({ path, node });
      node.forEachChild(visit);
    };
    const how = {
      languageVersion: compiler.ScriptTarget.Latest,
      jsDocParsingMode: compiler.JSDocParsingMode.ParseNone,
    };
    visit(compiler.createSourceFile(path, text, how, true));
    return found;
  });

/** Places where a rule finds something, as `path: text`. */
const find = (rule: (node: ts.Node) => boolean): string[] =>
  places.filter(({ node }) => rule(node)).map(({ path, node }) => `${path}: ${node.getText().slice(0, 60)}`);

/** Modules that a file imports, by name; of an import with a computed name, its text. */
const importOf = (node: ts.Node): string | null => {
  if (compiler.isImportDeclaration(node) || compiler.isExportDeclaration(node))
    return node.moduleSpecifier && compiler.isStringLiteral(node.moduleSpecifier) ? node.moduleSpecifier.text : null;
  if (!compiler.isCallExpression(node) || node.expression.kind !== compiler.SyntaxKind.ImportKeyword) return null;
  const [name] = node.arguments;
  return name && compiler.isStringLiteralLike(name) ? name.text : `computed ${name?.getText() ?? ''}`;
};

describe('no text becomes a program [read from the syntax of every published source]', () => {
  it('reads sources at all', () => {
    expect(texts.length).toBeGreaterThan(200);
    expect(find((node) => importOf(node) === 'zod').length).toBeGreaterThan(5);
  });

  it('no eval, no Function, no timer with text', () => {
    const evaluators = ['eval', 'Function', 'GeneratorFunction', 'AsyncFunction', 'execScript'];
    const isEvaluator = (node: ts.Node) =>
      compiler.isIdentifier(node) &&
      evaluators.includes(node.text) &&
      // Types and property names are no calls.
      (compiler.isCallExpression(node.parent) ||
        compiler.isNewExpression(node.parent) ||
        compiler.isVariableDeclaration(node.parent));
    expect(find(isEvaluator)).toEqual([]);
    const isTimer = (node: ts.Node) =>
      compiler.isCallExpression(node) &&
      /^(globalThis\.)?set(Timeout|Interval)$/.test(node.expression.getText()) &&
      node.arguments[0] !== undefined &&
      compiler.isStringLiteralLike(node.arguments[0]);
    expect(find(isTimer)).toEqual([]);
    const reachesConstructor = (node: ts.Node) =>
      (compiler.isPropertyAccessExpression(node) && node.name.text === 'constructor') ||
      (compiler.isElementAccessExpression(node) && node.argumentExpression.getText().includes('constructor'));
    expect(find(reachesConstructor)).toEqual([]);
  });

  it('of the unit library the reader of units alone is used, in one file', () => {
    expect(find((node) => /^mathjs/.test(importOf(node) ?? ''))).toHaveLength(1);
    const uses = find(
      (node) => compiler.isIdentifier(node) && node.text === 'math' && compiler.isPropertyAccessExpression(node.parent),
    );
    expect(uses).toEqual(['sim-core/src/input/units.ts: math']);
    expect(find((node) => compiler.isPropertyAccessExpression(node) && node.expression.getText() === 'math')).toEqual([
      'sim-core/src/input/units.ts: math.unit',
    ]);
  });

  it('no program is started, no module compiled, nothing fetched', () => {
    const forbidden = /^(node:)?(vm|child_process|cluster|http|https|http2|net|tls|dgram|dns|inspector|repl)(\/|$)/;
    expect(find((node) => forbidden.test(importOf(node) ?? ''))).toEqual([]);
    const fetches = (node: ts.Node) =>
      (compiler.isCallExpression(node) || compiler.isNewExpression(node)) &&
      /^(globalThis\.)?(fetch|XMLHttpRequest|WebSocket|EventSource)$/.test(node.expression.getText());
    expect(find(fetches)).toEqual([]);
  });

  it('imports have fixed names', () => {
    expect(find((node) => (importOf(node) ?? '').startsWith('computed'))).toEqual([]);
  });
});

describe('files are touched in few places', () => {
  const files = new Set(
    find((node) => /^(node:)?fs(\/|$)/.test(importOf(node) ?? '')).map((place) => place.split(':')[0]!),
  );

  it('only these read or write any; every other source runs without a file system [requirement]', () => {
    const allowed = [
      /^weather-io\/src\/bytes\.ts$/, // reads weather and water
      /^sim-core\/src\/study\/node\//, // results of a study, where its caller says
      /^reports\/src\/cli\/files\.ts$/, // the command's files
    ];
    expect([...files].filter((file) => !allowed.some((pattern) => pattern.test(file)))).toEqual([]);
  });

  it('the command writes in one file only [requirement]', () => {
    const writers =
      /^(writeFile|appendFile|open|rename|link|unlink|mkdir|rm|rmdir|symlink|copyFile|cp|createWriteStream)(Sync)?$/;
    const writes = find(
      (node) => compiler.isCallExpression(node) && writers.test(node.expression.getText().split('.').at(-1)!),
    )
      .map((place) => place.split(':')[0]!)
      .filter((file) => files.has(file) && !/^sim-core\/src\/study\/node\/|^weather-io\/src\/bytes\.ts$/.test(file));
    expect(new Set(writes)).toEqual(new Set(['reports/src/cli/files.ts']));
  });
});
