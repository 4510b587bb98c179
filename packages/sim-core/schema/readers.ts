// Which folders of the sources read each field of a design.
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type ts from 'typescript';
import { compiler } from './compiler.ts';

const SOURCES = fileURLToPath(new URL('../src/', import.meta.url));
/** Rooms that only pass a field on. */
const PASSING = /^(design|define|input|index\.ts)/;

/** Folders under \`src\` that read each field, by its path in a design; fields of the same interface share what is found. */
export function fieldReaders(): Map<string, string[]> {
  const files = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `${SOURCES}${file}`);
  const program = compiler.createProgram(files, {
    strict: true,
    noEmit: true,
    target: compiler.ScriptTarget.ES2023,
    module: compiler.ModuleKind.NodeNext,
    moduleResolution: compiler.ModuleResolutionKind.NodeNext,
    customConditions: ['@noonloop/source'],
    allowImportingTsExtensions: true,
    skipLibCheck: true,
  });
  const checker = program.getTypeChecker();
  const rooms = new Map<ts.Node, Set<string>>();
  for (const source of program.getSourceFiles()) {
    if (!source.fileName.startsWith(SOURCES)) continue;
    const room = roomOf(source.fileName.slice(SOURCES.length));
    if (room !== null) noteReads(source, checker, room, rooms);
  }
  const paths = new Map<string, string[]>();
  const design = program.getSourceFile(`${SOURCES}design/design.ts`)!;
  const root = checker
    .getExportsOfModule(checker.getSymbolAtLocation(design)!)
    .find(({ name }) => name === 'SystemDesign')!;
  walk(checker.getDeclaredTypeOfSymbol(root), '', { checker, design, rooms, paths });
  return paths;
}

function roomOf(file: string): string | null {
  if (PASSING.test(file)) return null;
  const [floor, room] = file.split('/');
  if (room === undefined) return null; // an entry of the package
  return room.endsWith('.ts') || floor === 'year' || floor === 'study' ? floor! : `${floor}/${room}`;
}

/** Adds the room to the declaration of every property that the source reads. */
function noteReads(
  source: ts.SourceFile,
  checker: ts.TypeChecker,
  room: string,
  rooms: Map<ts.Node, Set<string>>,
): void {
  const note = (symbol: ts.Symbol | undefined): void => {
    for (const declaration of symbol?.declarations ?? []) {
      if (!compiler.isPropertySignature(declaration)) continue;
      const found = rooms.get(declaration) ?? new Set();
      rooms.set(declaration, found.add(room));
    }
  };
  const visit = (node: ts.Node): void => {
    if (compiler.isPropertyAccessExpression(node)) note(checker.getSymbolAtLocation(node.name));
    if (compiler.isObjectBindingPattern(node)) {
      const type = checker.getTypeAtLocation(node);
      for (const { name, propertyName } of node.elements) note(type.getProperty((propertyName ?? name).getText()));
    }
    node.forEachChild(visit);
  };
  visit(source);
}

interface Walk {
  readonly checker: ts.TypeChecker;
  readonly design: ts.Node;
  readonly rooms: ReadonlyMap<ts.Node, ReadonlySet<string>>;
  readonly paths: Map<string, string[]>;
}

/** Follows the fields of a type that are declared in \`design/\`. */
function walk(type: ts.Type, path: string, context: Walk): void {
  const forms = type.isUnion() ? type.types : [type];
  for (const form of forms) {
    const items = context.checker.getIndexTypeOfType(form, compiler.IndexKind.Number);
    if (items !== undefined && !(form.flags & compiler.TypeFlags.StringLike)) walk(items, path, context);
    for (const property of form.getProperties()) {
      const declaration = property.declarations?.find(compiler.isPropertySignature);
      if (declaration === undefined || !declaration.getSourceFile().fileName.startsWith(`${SOURCES}design/`)) continue;
      const below = path === '' ? property.name : `${path}.${property.name}`;
      context.paths.set(below, [...(context.rooms.get(declaration) ?? [])].sort());
      walk(context.checker.getTypeOfSymbolAtLocation(property, context.design), below, context);
    }
  }
}
