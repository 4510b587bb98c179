import { defaulted, label } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import { arraySchema } from './array.ts';
import { controlSchema } from './control.ts';
import { drawSchema } from './draw.ts';
import { heaterSchema } from './heater.ts';
import { coilSchema, tankSchema } from './house.ts';
import { loopSchema } from './loop.ts';
import { pumpSchema } from './pump.ts';
import { pvSchema } from './pv.ts';

/** Schema of a whole system; the JSON Schema is made from it. */
export const systemSchema = z.strictObject({
  name: defaulted(label, 'solar water heating', '', 'judgement: a name for reports'),
  array: arraySchema,
  pv: pvSchema.prefault({}),
  pump: pumpSchema.prefault({}),
  loop: loopSchema.prefault({}),
  coil: coilSchema.prefault({}),
  tank: tankSchema,
  draw: drawSchema,
  heater: heaterSchema.prefault({}),
  control: controlSchema.prefault({}),
});

/** A design as the schema leaves it: checked, in SI, before the defaults that follow from other fields. */
export type CheckedInput = z.output<typeof systemSchema>;
