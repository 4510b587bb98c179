/** Inputs of every kind, and what is said to them on our few parts of zod and on the whole library. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build, type Plugin } from 'esbuild';
import { afterAll, expect } from 'vitest';
import { plainInput } from '../../examples.ts';

const source = new URL('../../../packages/sim-core/src/', import.meta.url);
const whole: Plugin = {
  name: 'the whole library',
  setup: ({ onResolve }) =>
    onResolve({ filter: /\/zod\.ts$/ }, () => ({
      path: fileURLToPath(new URL('../node_modules/zod/index.js', source)),
    })),
};

/** The unit library, which is large, is bundled in neither. */
const withoutUnits: Plugin = {
  name: 'units from outside',
  setup: ({ onResolve }) =>
    onResolve({ filter: /\/units\.ts$/ }, () => ({ path: new URL('input/units.ts', source).href, external: true })),
};

const folder = mkdtempSync(join(tmpdir(), 'noonloop-zod-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** What `defineSystem` says to a list of inputs, on our few parts of zod or with the whole library in their place. */
export async function answers(inputs: readonly unknown[], on: 'parts' | 'whole'): Promise<string[]> {
  const { outputFiles } = await build({
    stdin: {
      contents: "export { defineSystem } from './define/define.ts'; export * as z from './input/zod.ts';",
      resolveDir: fileURLToPath(source),
    },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    conditions: ['@noonloop/source'],
    plugins: on === 'whole' ? [withoutUnits, whole] : [withoutUnits],
  });
  // A file, whose name every error's stack bears: as an address with the whole text in it the errors take longest.
  const path = join(folder, `${on}.mjs`);
  writeFileSync(path, outputFiles[0]!.contents);
  const { defineSystem, z } = (await import(pathToFileURL(path).href)) as typeof import('@noonloop/sim-core') & {
    z: object;
  };
  expect('toJSONSchema' in z).toBe(on === 'whole');
  return inputs.map((input) => {
    try {
      return JSON.stringify(defineSystem(input as never));
    } catch (error) {
      const { name, message, issues } = error as Error & { issues?: unknown };
      return JSON.stringify({ name, message, issues });
    }
  });
}

interface Node {
  readonly default?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly minItems?: number;
  readonly type?: string;
  readonly items?: Node;
  readonly anyOf?: readonly Node[];
  readonly properties?: Readonly<Record<string, Node>>;
}

/** What people write by mistake, and now and then rightly. */
const VALUES = [null, true, -1, 0.5, 3, 1e9, 'furlong', '3 m', [], [1, 2], {}, { unheardOf: 1 }];

/** Something that fits what a field takes. */
function sample(node: Node): unknown {
  if (node.default !== undefined && node.default !== null) return node.default;
  if (node.enum !== undefined) return node.enum[0];
  if (node.anyOf !== undefined) return sample(node.anyOf[0]!);
  if (node.type === 'array') return Array.from({ length: node.minItems ?? 1 }, () => sample(node.items!));
  if (node.properties === undefined) return node.minimum ?? 'text';
  return Object.fromEntries(Object.entries(node.properties).map(([key, below]) => [key, sample(below)]));
}

/** The same field with each of the values, and each of its own with them. */
function* spoilt(node: Node): Generator<unknown> {
  yield* VALUES;
  yield sample(node);
  for (const form of node.anyOf ?? []) if (form.properties ?? form.items) yield* spoilt(form);
  if (node.items?.properties) for (const item of spoilt(node.items)) yield [item];
  for (const [key, below] of Object.entries(node.properties ?? {})) {
    const whole = sample(node) as object;
    for (const value of spoilt(below)) {
      yield { [key]: value };
      yield { ...whole, [key]: value };
    }
  }
}

/** A share of all inputs that {@link VALUES} make of the schema, 33 721 in number. @param every - One of so many; none that divides {@link VALUES}, so that all kinds come. */
export function inputs(every: number): unknown[] {
  const path = new URL('../../../packages/sim-core/schema/design-1.json', import.meta.url);
  const schema = JSON.parse(readFileSync(path, 'utf8')) as Node;
  const tried: unknown[] = [plainInput];
  let count = 0;
  const offer = (make: () => unknown) => {
    if (count++ % every === 0) tried.push(make());
  };
  for (const value of VALUES) offer(() => value);
  for (const [part, below] of Object.entries(schema.properties!)) {
    if (part === '$schema') continue;
    const plain = (plainInput as unknown as Record<string, object>)[part];
    for (const value of spoilt(below)) {
      offer(() => ({ ...plainInput, [part]: value }));
      if (typeof plain === 'object' && typeof value === 'object' && !Array.isArray(value))
        offer(() => ({ ...plainInput, [part]: { ...plain, ...value } }));
    }
  }
  return tried;
}
