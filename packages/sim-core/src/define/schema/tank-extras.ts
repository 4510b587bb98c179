import { quote } from '../../input/errors.ts';
import { fault, numbers, quantity, quantityOr } from '../../input/field.ts';
import { listShape, numberShape, shaped } from '../../input/shape.ts';
import * as z from '../../input/zod.ts';
import { dayRanges } from './calendar.ts';

/** Air around the tank by month, or that of the weather. */
export const roomSchema = shaped(
  z
    .custom<'outdoors' | readonly number[]>(() => true)
    .transform((value, context): 'outdoors' | readonly number[] => {
      const fits = (item: unknown) => typeof item === 'number' && item >= -40 && item <= 60;
      if (value === 'outdoors') return value;
      if (Array.isArray(value) && value.length === 12 && value.every(fits)) return [...value];
      const expected = '"outdoors", or twelve temperatures from January, each from -40 to 60 °C';
      fault(context, quote(value), expected, 'Leave it out for one temperature all year (roomTemperature).');
      return z.NEVER;
    }),
  { anyOf: [{ const: 'outdoors' }, listShape(numberShape(-40, 60), 12, 12)] },
);

/** Tank at the start of the year, bottom first. */
export const profileSchema = numbers({ minimum: 0, maximum: 95, unit: '°C' });

/** A pool or rooms that take heat from the tank. */
export const loadSchema = z
  .strictObject({
    temperature: quantity('temperature', 5, 60),
    power: quantity('power', 50, 1e5),
    conductance: quantityOr('heatLoss', 5, 20_000, 200, 'judgement: a small exchanger between tank and load'),
    leastTemperature: quantityOr('temperature', 5, 90, 45, 'judgement: as the taps want it; hot water goes first'),
    height: quantityOr('fraction', 0, 1, 0.5, 'judgement: the middle of the tank'),
    dailyHeat: z.union([quantity('energy', 0, 1e10), z.null()]).default(null),
    days: dayRanges.default([]),
  })
  .superRefine(({ leastTemperature, temperature }, context) => {
    if (leastTemperature > temperature) return;
    const expected = `more than the load’s own ${temperature} °C`;
    fault(context, `${leastTemperature} °C`, expected, 'Heat flows from warm to cold.', ['leastTemperature']);
  });
