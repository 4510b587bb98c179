import { quote } from '../../input/errors.ts';
import { fault } from '../../input/field.ts';
import { listShape, numberShape, shaped } from '../../input/shape.ts';
import * as z from '../../input/zod.ts';
import { readDayRange } from '../../physics/draw/days.ts';

/** Spans of whole hours, such as [[9, 16]]. */
export const hourSpans = shaped(
  z
    .custom<readonly (readonly [number, number])[]>(() => true)
    .transform((value, context): readonly (readonly [number, number])[] => {
      const isHour = (item: unknown): item is number =>
        Number.isInteger(item) && Number(item) >= 0 && Number(item) <= 24;
      const isSpan = (span: unknown) =>
        Array.isArray(span) && span.length === 2 && isHour(span[0]) && isHour(span[1]) && span[0] < span[1];
      if (Array.isArray(value) && value.length > 0 && value.length <= 24 && value.every(isSpan)) {
        return value.map(([from, to]) => [from, to] as const);
      }
      const misfit: unknown = Array.isArray(value) ? value.find((span) => !isSpan(span)) : value;
      fault(
        context,
        quote(misfit),
        'spans of whole hours from 0 to 24, each ending later than it starts, such as [[9, 16]]',
        'Split a span that goes over midnight in two.',
      );
      return z.NEVER;
    }),
  listShape(listShape(numberShape(0, 24, 'integer'), 2, 2), 1, 24),
);

const RANGE_EXAMPLE = 'days such as "07-10..07-24", month before day';

const rangeShape = { type: 'string', pattern: '^\\d\\d-\\d\\d\\.\\.\\d\\d-\\d\\d$', examples: ['07-10..07-24'] };

/** A range of days. */
export const dayRange = shaped(
  z
    .custom<string>(() => true)
    .transform((value, context): string => {
      if (readDayRange(value) !== null) return value;
      fault(context, quote(value), RANGE_EXAMPLE, 'Give first and last day of the 365-day year.');
      return z.NEVER;
    }),
  rangeShape,
);

/** Several of them. */
export const dayRanges = shaped(
  z
    .custom<readonly string[]>(() => true)
    .transform((value, context): readonly string[] => {
      const misfit = Array.isArray(value) ? value.findIndex((item) => readDayRange(item) === null) : 0;
      if (Array.isArray(value) && misfit < 0) return [...value];
      const found = Array.isArray(value) ? `${quote(value[misfit])} at place ${misfit + 1}` : quote(value);
      fault(context, found, `a list of ${RANGE_EXAMPLE}`, 'Give first and last day of each range.');
      return z.NEVER;
    }),
  listShape(rangeShape, 0),
);
