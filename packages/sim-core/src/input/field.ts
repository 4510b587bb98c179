import { quote } from './errors.ts';
import { boundsAsWritten, DIMENSIONS, type Dimension, type Quantity, toSi } from './quantity.ts';
import { listShape, numberShape, quantityShape, shaped } from './shape.ts';
import * as z from './zod.ts';

/** Where a default comes from; stands beside the field in the schema and comes out in every report. */
interface Provenance {
  readonly unit: string;
  readonly source: string;
}

/** Defaults of the schema and their sources, by field. */
export const provenance = z.registry<Provenance>();

/** Adds a fault in our terms to a zod context; `toDesignIssues` turns it into a {@link DesignIssue}. */
export function fault(
  context: z.core.$RefinementCtx,
  found: string,
  expected: string,
  remedy: string,
  path?: string[],
): void {
  context.addIssue({ code: 'custom', params: { found, expected, remedy }, ...(path ? { path } : {}) });
}

/** Words for a range: "from 0 to 90 °". */
const range = (minimum: number, maximum: number, unit: string): string => {
  const bounds = Number.isFinite(maximum) ? `from ${minimum} to ${maximum}` : `of at least ${minimum}`;
  return unit === '-' ? bounds : `${bounds} ${unit}`;
};

/** A quantity within inclusive bounds, in the unit of its dimension. */
export function quantity(dimension: Dimension, minimum: number, maximum: number) {
  const { unit, example } = DIMENSIONS[dimension];
  const schema = z
    .custom<Quantity>(() => true)
    .transform((value, context): number => {
      const si = toSi(value, dimension);
      if (si !== null && si >= minimum && si <= maximum) return si;
      const bareNumber = unit === '-' ? 'a plain number' : `a number in ${unit}`;
      const asWritten = boundsAsWritten(value, dimension, Number.isFinite(maximum) ? [minimum, maximum] : [minimum]);
      const [low, high] = asWritten?.bounds ?? [minimum, maximum];
      fault(
        context,
        quote(value),
        `a value ${range(low!, high ?? maximum, asWritten?.unit ?? unit)}`,
        `Give ${bareNumber} or a string with a unit, such as "${example}".`,
      );
      return z.NEVER;
    });
  return shaped(schema, quantityShape(dimension, minimum, maximum));
}

/** A whole number within inclusive bounds. */
export function count(minimum: number, maximum: number) {
  const schema = z
    .custom<number>(() => true)
    .transform((value, context): number => {
      if (Number.isInteger(value) && value >= minimum && value <= maximum) return value;
      fault(context, quote(value), `a whole number from ${minimum} to ${maximum}`, 'Give a count.');
      return z.NEVER;
    });
  return shaped(schema, numberShape(minimum, maximum, 'integer'));
}

/** A short name for reports. */
export const label = shaped(
  z
    .custom<string>(() => true)
    .transform((value, context): string => {
      if (typeof value === 'string' && value.length > 0 && value.length <= 120) return value;
      fault(context, quote(value), 'a name of 1 to 120 characters', 'Give a string.');
      return z.NEVER;
    }),
  { type: 'string', minLength: 1, maxLength: 120 },
);

/** One of a few words. */
export function choice<const T extends string>(words: readonly T[]) {
  const list = words.map((word) => `"${word}"`).join(', ');
  const schema = z
    .custom<T>(() => true)
    .transform((value, context): T => {
      if (words.includes(value)) return value;
      fault(context, quote(value), `one of ${list}`, 'Choose one of these words.');
      return z.NEVER;
    });
  return shaped(schema, { enum: words });
}

/** Yes or no. */
export const flag = shaped(
  z
    .custom<boolean>(() => true)
    .transform((value, context): boolean => {
      if (typeof value === 'boolean') return value;
      fault(context, quote(value), 'true or false', 'Give a boolean.');
      return z.NEVER;
    }),
  { type: 'boolean' },
);

/** A list of plain numbers of a fixed or free length within bounds. */
export function numbers(shape: { length?: number; minimum: number; maximum: number; unit: string }) {
  const schema = z
    .custom<readonly number[]>(() => true)
    .transform((value, context): readonly number[] => {
      const { length, minimum, maximum, unit } = shape;
      const fits = (item: unknown) => typeof item === 'number' && item >= minimum && item <= maximum;
      const isList = Array.isArray(value) && (length === undefined ? value.length >= 2 : value.length === length);
      const misfit = isList ? value.findIndex((item) => !fits(item)) : 0;
      if (isList && misfit < 0) return [...value];
      const expected = `${length ?? 'at least two'} numbers ${range(minimum, maximum, unit)}`;
      const found = isList ? `${quote(value[misfit])} at place ${misfit + 1}` : quote(value);
      fault(context, found, expected, 'Give a list of plain numbers in this unit.');
      return z.NEVER;
    });
  const { length, minimum, maximum } = shape;
  return shaped(schema, listShape(numberShape(minimum, maximum), length ?? 2, length));
}

/** Gives a field a default, and the default a source. */
export function defaulted<S extends z.ZodType>(schema: S, value: z.output<S>, unit: string, source: string) {
  const withDefault = schema.default(value as never);
  provenance.add(withDefault, { unit, source });
  return withDefault;
}

/** The same for a quantity: its unit is its dimension's. */
export function quantityOr(dimension: Dimension, minimum: number, maximum: number, value: number, source: string) {
  return defaulted(quantity(dimension, minimum, maximum), value, DIMENSIONS[dimension].unit, source);
}
