/** The table of the units of a design's fields, from the published schema. */
import { readFileSync } from 'node:fs';

/** A part of a JSON Schema, as far as units go. */
interface Node {
  readonly type?: string;
  readonly description?: string;
  readonly anyOf?: readonly Node[];
  readonly items?: Node;
  readonly properties?: Readonly<Record<string, Node>>;
}

const parts = ({ anyOf = [], items }: Node): readonly Node[] => (items === undefined ? anyOf : [...anyOf, items]);

/** Unit of a number, of a list of them, or of one of several forms; `null` where there is none. */
function unitOf(node: Node): string | null {
  const own = node.type === 'number' ? /^\[(.+)\]$/.exec(node.description ?? '') : null;
  if (own !== null) return own[1]!;
  return parts(node).reduce<string | null>((found, part) => found ?? unitOf(part), null);
}

function gather(node: Node, found: Map<string, string>): void {
  for (const [name, field] of Object.entries(node.properties ?? {})) {
    const unit = unitOf(field);
    if (unit !== null && unit !== '-') {
      const before = found.get(name);
      if (before !== undefined && before !== unit) throw new Error(`${name} is in ${before} and in ${unit}`);
      found.set(name, unit);
    }
    gather(field, found);
  }
  for (const part of parts(node)) gather(part, found);
}

/** The source file of the table. */
export function designUnitSource(): string {
  const schema = new URL('../../sim-core/schema/design-1.json', import.meta.url);
  const found = new Map<string, string>();
  gather(JSON.parse(readFileSync(schema, 'utf8')) as Node, found);
  const rows = [...found].map(([name, unit]) => `  ${name}: '${unit}',`);
  return `// Made from the schema of a design by packages/reports/schema/write.ts.

/** Units of a design's fields by their names; a name has one unit wherever it stands. */
export const DESIGN_UNITS: Readonly<Record<string, string>> = {
${rows.join('\n')}
};
`;
}
