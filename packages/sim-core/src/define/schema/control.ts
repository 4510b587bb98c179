import { quote } from '../../input/errors.ts';
import { choice, defaulted, fault, quantity, quantityOr } from '../../input/field.ts';
import { shaped } from '../../input/shape.ts';
import * as z from '../../input/zod.ts';
import { readDay } from '../../physics/control/outages.ts';
import { hourSpans } from './calendar.ts';

const differenceSchema = z
  .strictObject({
    start: quantityOr('temperatureDifference', 0.5, 40, 6, 'common practice, no source'),
    stop: quantityOr('temperatureDifference', 0, 40, 3, 'judgement: half the start'),
    collectorSensor: defaulted(choice(['absorber', 'pipe']), 'absorber', '', 'common practice, no source'),
    pipeSensorContact: quantityOr('fraction', 0, 1, 0.7, 'judgement: on the pipe, a hand from the collector'),
    tankSensorHeight: quantityOr('fraction', 0, 1, 0.2, 'judgement: beside the lower half of the coil'),
    minimumRunTime: quantityOr('duration', 0, 3600, 300, 'judgement: spares the pump some of its starts'),
  })
  .superRefine((difference, context) => {
    if (difference.stop > difference.start) {
      fault(
        context,
        `${difference.stop} K`,
        `at most the start difference, ${difference.start} K`,
        'The pump must start at more than it stops at.',
        ['stop'],
      );
    }
  });

const monthDay = shaped(
  z
    .custom<string>(() => true)
    .transform((value, context): string => {
      if (readDay(value) !== null) return value;
      fault(
        context,
        quote(value),
        'a day of a year without a leap day as "MM-DD"',
        'Write the month, a hyphen and the day, such as "07-04".',
      );
      return z.NEVER;
    }),
  { type: 'string', pattern: '^\\d\\d-\\d\\d$', examples: ['07-04'] },
);

const outageSchema = z.strictObject({ from: monthDay, to: monthDay, kind: choice(['pump', 'power']) });

const nightCoolingSchema = z
  .strictObject({ above: quantity('temperature', 40, 95), until: quantity('temperature', 30, 90) })
  .superRefine(({ above, until }, context) => {
    if (until >= above) fault(context, `${until} °C`, `less than the start, ${above} °C`, 'Give both.', ['until']);
  });

/** Schema of what lets the pump run, and of the limits. */
export const controlSchema = z.strictObject({
  mode: choice(['power', 'difference', 'schedule']).optional(),
  difference: differenceSchema.prefault({}),
  schedule: defaulted(hourSpans, [[9, 16]], '', 'judgement: the brighter hours of a day'),
  nightCooling: defaulted(nightCoolingSchema.nullable(), null, '', 'judgement: the high limit is enough'),
  outages: z.array(outageSchema).max(100).default([]),
  highLimit: defaulted(
    quantity('temperature', 30, 120).nullable(),
    85,
    '°C',
    'lower end of common practice, no source; hard water wants it lower, which keeps the coil clean longer, for more hours in standstill',
  ),
  highLimitHysteresis: quantityOr('temperatureDifference', 0.5, 40, 5, 'judgement'),
  stagnationLimit: quantity('temperature', 50, 250).nullable().optional(),
});
