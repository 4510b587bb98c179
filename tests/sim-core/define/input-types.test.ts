import { readFileSync } from 'node:fs';
import type { SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { designSchema } from '../../../packages/sim-core/schema/build.ts';
import { compiler } from '../../../packages/sim-core/schema/compiler.ts';
import { inputTypes } from '../../../packages/sim-core/schema/input-types.ts';
import type { systemSchema } from '../../../packages/sim-core/src/define/schema/system.ts';

type Frozen<T> = T extends (infer Item)[]
  ? readonly Frozen<Item>[]
  : T extends Float64Array
    ? T
    : T extends object
      ? { readonly [K in keyof T]: Frozen<T[K]> }
      : T;
type Taken = Frozen<(typeof systemSchema)['_zod']['input']>;

const file = new URL('../../../packages/sim-core/src/define/system-input.ts', import.meta.url);

/** Source without its white space and comments' wrapping, which the formatter sets. */
const bare = (source: string): string => source.replace(/[\s|;()]+/g, '');

describe('types of a design as people write it [requirement]', () => {
  const source = readFileSync(file, 'utf8');

  it('are what the schema says; run packages/sim-core/schema/write.ts, then format, when they are not', () => {
    expect(bare(source)).toBe(bare(inputTypes(designSchema())));
  });

  it('take the same designs as the schema [held by the compiler]', () => {
    const there = (design: SystemInput): Taken => design;
    const back = (design: Taken): SystemInput => design;
    const collector = { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 };
    const design: SystemInput = {
      array: { panels: 2, tilt: 40, azimuth: 180, collector },
      tank: { volume: 0.3 },
      draw: { people: 4 },
    };
    expect(back(there(design))).toBe(design);
  });

  it('show the meaning of every field on hover', () => {
    const silent: string[] = [];
    let fields = 0;
    for (const node of compiler.createSourceFile('input.ts', source, compiler.ScriptTarget.Latest, true).statements) {
      if (!compiler.isInterfaceDeclaration(node)) continue;
      for (const member of node.members) {
        fields += 1;
        if (compiler.getJSDocCommentsAndTags(member).length === 0)
          silent.push(`${node.name.text}.${member.name?.getText()}`);
      }
    }
    expect(silent).toEqual([]);
    expect(fields).toBeGreaterThan(150);
  });
});
