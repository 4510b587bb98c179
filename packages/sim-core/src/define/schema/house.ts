import { count, defaulted, fault, quantity, quantityOr } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import { loadSchema, profileSchema, roomSchema } from './tank-extras.ts';

const coilSource = 'judgement: smooth tube, as is common in tanks of a household’s size';

/** Thickest tube over winding for which the friction and film formulas are taken; judgement. [-] */
const WIDEST_TUBE = 0.3;

/** Schema of the coil. */
export const coilSchema = z
  .strictObject({
    length: quantityOr('length', 0.5, 200, 12, coilSource),
    innerDiameter: quantityOr('length', 0.004, 0.1, 0.02, coilSource),
    outerDiameter: quantityOr('length', 0.005, 0.12, 0.022, coilSource),
    wallConductivity: quantityOr('conductivity', 1, 450, 50, 'plain steel, handbook value (from memory)'),
    fouling: quantityOr(
      'thermalResistance',
      0,
      0.01,
      0.0003,
      'thin enamel and clean water, handbook values (from memory); a third of it for bare steel',
    ),
    windingDiameter: quantityOr(
      'length',
      0.05,
      3,
      0.4,
      'judgement: coils a quarter narrower or wider stand in the tanks of houses',
    ),
    bottom: quantityOr('fraction', 0, 0.95, 0.05, 'judgement: a hand above the floor'),
    top: quantityOr('fraction', 0.02, 1, 0.4, 'judgement: lower two fifths'),
  })
  .superRefine((coil, context) => {
    if (coil.top <= coil.bottom) {
      fault(
        context,
        String(coil.top),
        `more than the lower end, ${coil.bottom}`,
        'Give both as shares of the tank’s height.',
        ['top'],
      );
    }
    if (coil.windingDiameter < coil.outerDiameter / WIDEST_TUBE) {
      fault(
        context,
        `${coil.windingDiameter} m`,
        `at least ${coil.outerDiameter / WIDEST_TUBE} m: the tube’s outside over ${WIDEST_TUBE}`,
        'Check the two diameters.',
        ['windingDiameter'],
      );
    }
    if (coil.outerDiameter <= coil.innerDiameter) {
      fault(
        context,
        `${coil.outerDiameter} m`,
        `more than the bore, ${coil.innerDiameter} m`,
        'Check the two diameters.',
        ['outerDiameter'],
      );
    }
  });

/** Schema of the tank. */
export const tankSchema = z.strictObject({
  volume: quantity('volume', 0.02, 50),
  height: quantity('length', 0.2, 10).optional(),
  lossCoefficient: quantity('heatLoss', 0, 200).optional(),
  roomTemperature: quantity('temperature', -20, 50).optional(),
  nodes: defaulted(
    count(4, 400),
    20,
    '',
    'convergence: doubling them moves the energy delivered by less than 1 % (tests/sim-core/year)',
  ),
  verticalConductivity: quantity('conductivity', 0.1, 100).optional(),
  initialTemperature: quantity('temperature', 0, 95).optional(),
  initialProfile: profileSchema.nullable().default(null),
  roomByMonth: roomSchema.nullable().default(null),
  load: loadSchema.nullable().default(null),
  reliefTemperature: quantityOr(
    'temperature',
    60,
    120,
    99,
    'temperature and pressure relief valve, ANSI Z21.22 (read in a state code)',
  ),
  ratedTemperature: quantityOr('temperature', 40, 120, 93, 'rating of common lined tanks, common practice, no source'),
  inletDiameter: defaulted(
    quantity('length', 0.005, 0.2).nullable(),
    null,
    'm',
    'judgement: a dip tube or plate that spreads the water',
  ),
  sedimentDepth: quantityOr('length', 0, 1, 0, 'judgement: a clean tank'),
});
