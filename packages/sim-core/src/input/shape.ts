// What fields take, in the words of JSON Schema.

import { DIMENSIONS, type Dimension } from './quantity.ts';
import * as z from './zod.ts';

/** What a field takes, as JSON Schema says it; the checks themselves are code, which no schema can show. */
export type InputShape = Readonly<Record<string, unknown>>;

/** Shapes by field, for the published JSON Schema of a design. */
const inputShapes = z.registry<InputShape>();

/** Says what a field takes. */
export function shaped<S extends z.ZodType>(schema: S, shape: InputShape): S {
  inputShapes.add(schema, shape);
  return schema;
}

/** What a field takes; `undefined` where its own kind says it. */
export const shapeOf = (schema: z.core.$ZodType): InputShape | undefined => inputShapes.get(schema);

/** Shape of a number within bounds. */
export const numberShape = (minimum: number, maximum: number, type = 'number'): InputShape => ({
  type,
  minimum,
  ...(Number.isFinite(maximum) ? { maximum } : {}),
});

/** Shape of a list; with `length` of just so many items. */
export const listShape = (items: InputShape, least: number, most?: number): InputShape => ({
  type: 'array',
  items,
  minItems: least,
  ...(most === undefined ? {} : { maxItems: most }),
});

/** Shape of a quantity: a number in the unit of its dimension, or a string with a unit. */
export function quantityShape(dimension: Dimension, minimum: number, maximum: number): InputShape {
  const { unit, example } = DIMENSIONS[dimension];
  const text = unit === '-' ? 'percent' : 'a number and a unit';
  return {
    anyOf: [
      { ...numberShape(minimum, maximum), description: `[${unit}]` },
      {
        type: 'string',
        pattern: '^\\s*[+-]?(\\d+\\.?\\d*|\\.\\d+)',
        maxLength: 60,
        description: text,
        examples: [example],
      },
    ],
  };
}
