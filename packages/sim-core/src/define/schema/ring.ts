import { defaulted, fault, quantity, quantityOr } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import { hourSpans } from './calendar.ts';

const insulation = {
  insulationThickness: quantityOr(
    'length',
    0,
    0.3,
    0.02,
    'judgement: as thick as the pipe, which energy codes ask for',
  ),
  insulationConductivity: quantityOr('conductivity', 0.01, 0.2, 0.035, 'foam or mineral wool at 40 °C (from memory)'),
  surroundings: quantityOr('temperature', -20, 50, 20, 'judgement: pipes in heated rooms'),
};

const narrower = (
  { innerDiameter, outerDiameter }: { innerDiameter: number; outerDiameter: number },
  context: z.core.$RefinementCtx,
): void => {
  if (innerDiameter < outerDiameter) return;
  const expected = `less than the outside, ${outerDiameter} m`;
  fault(context, `${innerDiameter} m`, expected, 'Check the two diameters.', ['innerDiameter']);
};

/** Schema of a recirculation ring. */
export const ringSchema = z
  .strictObject({
    length: quantity('length', 1, 2000),
    outerDiameter: quantityOr(
      'length',
      0.006,
      0.15,
      0.022,
      'a common copper pipe of rings, common practice, no source',
    ),
    innerDiameter: quantityOr('length', 0.004, 0.14, 0.02, 'wall of 1 mm, common practice, no source'),
    ...insulation,
    flow: quantityOr('flow', 1e-6, 1e-3, 3 / 60_000, 'judgement: some kelvins from supply to return in a house'),
    hours: defaulted(hourSpans, [[0, 24]], '', 'judgement: all day, as hygiene asks for'),
    pumpPower: quantityOr('power', 0, 500, 10, 'small electronic pump, 5 to 15 W (from memory)'),
  })
  .superRefine(narrower);

/** Schema of the pipe between heater and taps. */
export const hotPipeSchema = z
  .strictObject({
    length: quantity('length', 0.2, 200),
    outerDiameter: quantityOr(
      'length',
      0.004,
      0.1,
      0.018,
      'a common copper pipe to a bathroom, common practice, no source',
    ),
    innerDiameter: quantityOr('length', 0.003, 0.09, 0.016, 'wall of 1 mm, common practice, no source'),
    ...insulation,
  })
  .superRefine(narrower);
