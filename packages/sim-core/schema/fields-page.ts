// The page that lists every field of a design, from its JSON Schema and from who reads the field.
import { rangeOf } from './input-types.ts';

type Schema = Record<string, unknown>;

const HEAD = `# Every field of a design

Made by code from the schema that checks a design: \`npx tsx --conditions=@noonloop/source packages/sim-core/schema/write.ts --page\`.

A number is in the unit in brackets; a string may carry another unit, such as "80 gal". **Needed** fields have no default. "Read by" names the
folders of \`packages/sim-core/src\` that use the field; a dash: defaults, reports, or a part that is handed on whole.
`;

/** The page as Markdown. @param schema - From \`designSchema\`. @param readers - Folders that read each field, by path. */
export function fieldsPage(schema: Schema, readers: ReadonlyMap<string, readonly string[]>): string {
  const { $schema: _, ...parts } = schema.properties as Record<string, Schema>;
  const sections: string[] = [];
  for (const [part, field] of Object.entries(parts)) {
    const rows = rowsOf(part, field, ((schema.required ?? []) as string[]).includes(part), readers);
    const head = '| field | meaning | takes | left out | read by |\n|---|---|---|---|---|';
    sections.push(
      `## \`${part}\`\n\n${String(field.description ?? '').split(TAIL)[0]}\n\n${[head, ...rows].join('\n')}\n`,
    );
  }
  return [HEAD, ...sections].join('\n');
}

/** Where the words on a default begin. */
const TAIL = / (?:Default: |Left out, it follows: )/;

function rowsOf(
  path: string,
  field: Schema,
  needed: boolean,
  readers: ReadonlyMap<string, readonly string[]>,
): string[] {
  const forms = [field, ...((field.anyOf ?? []) as Schema[])].flatMap((form) =>
    form.type === 'array' ? [form.items as Schema] : [form],
  );
  const holders = forms.filter((form) => form?.properties !== undefined);
  const inner = holders.flatMap((holder) =>
    Object.entries(holder.properties as Record<string, Schema>).flatMap(([key, below]) =>
      rowsOf(`${path}.${key}`, below, ((holder.required ?? []) as string[]).includes(key), readers),
    ),
  );
  if (!path.includes('.') && inner.length > 0) return inner;
  const words = String(field.description ?? '');
  const meaning = words.split(TAIL)[0]!;
  const cells = [
    `\`${path}\``,
    meaning,
    takes(field),
    needed ? '**needed**' : leftOut(field, words),
    (readers.get(path) ?? []).join(', ') || '–',
  ];
  return [`| ${cells.map(cell).join(' | ')} |`, ...inner];
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replace(/\s+/g, ' ').trim();

function takes(field: Schema): string {
  const words = field.enum as readonly string[] | undefined;
  if (Array.isArray(words)) return words.map((word) => `\`${word}\``).join(', ');
  if (field.type === 'boolean') return '`true`, `false`';
  return rangeOf(field).replace(/\.$/, '').replace(/^F/, 'f').replace(/^A/, 'a');
}

function leftOut(field: Schema, words: string): string {
  const [, tail] = words.split(TAIL);
  const value = field.default === undefined ? '' : `${JSON.stringify(field.default)}: `;
  return `${value}${(tail ?? '').replace(/\.$/, '')}`;
}
