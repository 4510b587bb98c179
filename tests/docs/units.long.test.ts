import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const faces = ['weather-io', 'sim-core', 'reports'].map((name) => `${root}packages/${name}/src/index.ts`);

/** Names of quantities that have a unit; numbers of other names count something, name a place or follow another field's unit. */
const QUANTITY =
  /temperature|irradiance|energy|heat(?!er)|power|volume|area$|length|height|width|diameter|flow$|pressure|duration|loss|conduct|densit|speed|angle|tilt|azimuth|latitude|longitude|elevation|head$|voltage|current$|share|fraction|mass|weight$|depth|thickness|efficienc|emittance|absorptance|resistance|capacity|price|interest/i;

const options: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  customConditions: ['@noonloop/source'],
  allowImportingTsExtensions: true,
  strict: true,
  noEmit: true,
  skipLibCheck: true,
};
const program = ts.createProgram(faces, options);
const checker = program.getTypeChecker();

/** Whether a value of the type is a number or holds numbers alone. */
function isNumeric(type: ts.Type): boolean {
  if (type.isUnion()) {
    const parts = type.types.filter((part) => !(part.flags & (ts.TypeFlags.Undefined | ts.TypeFlags.Null)));
    return parts.length > 0 && parts.every(isNumeric) && !parts.every((part) => part.isNumberLiteral());
  }
  if (type.flags & ts.TypeFlags.Number) return true;
  if (type.symbol?.name === 'Float64Array') return true;
  if (!checker.isArrayType(type)) return false;
  return checker.getTypeArguments(type as ts.TypeReference).every(isNumeric);
}

/** Public fields that hold numbers: "Interface.field" and its docstring. */
function numericFields(): [name: string, words: string][] {
  const seen = new Map<string, string>();
  for (const face of faces) {
    const module = checker.getSymbolAtLocation(program.getSourceFile(face)!)!;
    for (const exported of checker.getExportsOfModule(module)) {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
      if (!(symbol.flags & ts.SymbolFlags.Interface)) continue;
      for (const field of checker.getPropertiesOfType(checker.getDeclaredTypeOfSymbol(symbol))) {
        const declaration = field.declarations?.[0];
        if (declaration === undefined || !ts.isPropertySignature(declaration)) continue;
        if (!isNumeric(checker.getTypeOfSymbol(field))) continue;
        const words = ts.displayPartsToString(field.getDocumentationComment(checker));
        seen.set(`${symbol.name}.${field.name}`, words);
      }
    }
  }
  return [...seen];
}

describe('public fields that hold numbers', () => {
  const fields = numericFields();

  it('are found [requirement]', () => expect(fields.length).toBeGreaterThan(300));

  it('each say what they mean [requirement]', () => {
    expect(fields.filter(([, words]) => words === '').map(([name]) => name)).toEqual([]);
  });

  it('each say their unit where they are a quantity [style of the house: unit in square brackets]', () => {
    const quantities = fields.filter(([name]) => QUANTITY.test(name.split('.')[1]!));
    expect(quantities.length).toBeGreaterThan(200);
    const bare = quantities.filter(
      ([, words]) => !/\[[^\]]+\]/.test(words) && !/ unit\b|`unit`|^Of the .* in \S+\.$/.test(words),
    );
    expect(bare.map(([name, words]) => `${name}: ${words}`)).toEqual([]);
  });
});
