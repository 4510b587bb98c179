/** The fields of a design as a list, from its published schema. */

/** One field. */
export interface LiveField {
  readonly path: string;
  readonly meaning: string;
  /** What it takes, in words. */
  readonly takes: string;
}

/** As far as the list needs it. */
interface Schema {
  readonly description?: string;
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly anyOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly examples?: readonly unknown[];
}

function takesOf(schema: Schema): string {
  const all = [schema, ...(schema.anyOf ?? [])];
  const choices = all.flatMap((one) => one.enum ?? []);
  if (choices.length > 0) return `One of ${choices.join(', ')}.`;
  const range = all.find(({ minimum, maximum }) => minimum !== undefined && maximum !== undefined);
  const example = all.flatMap((one) => one.examples ?? [])[0];
  const words = range === undefined ? '' : `From ${range.minimum} to ${range.maximum}`;
  if (example === undefined) return words === '' ? '' : `${words}.`;
  return `${words === '' ? 'Such as' : `${words}, or with a unit, such as`} ${String(example)}.`;
}

/** Every field that holds a value; a branch that may be nothing is a field and has its own below it. */
export function listFields(schema: object): LiveField[] {
  const found: LiveField[] = [];
  const walk = (of: Schema, path: string): void => {
    const branch = of.properties ?? of.anyOf?.find(({ properties }) => properties !== undefined)?.properties;
    if (path !== '' && of.properties === undefined)
      found.push({
        path,
        meaning: of.description ?? '',
        takes: takesOf(of),
      });
    if (branch !== undefined && of.anyOf === undefined)
      for (const [name, inner] of Object.entries(branch))
        if (/^[A-Za-z]/.test(name)) walk(inner, path === '' ? name : `${path}.${name}`);
  };
  walk(schema as Schema, '');
  return found;
}
