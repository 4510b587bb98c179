import { choice, count, defaulted, fault, quantity, quantityOr } from '../../input/field.ts';
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

/** What two tanks may each have of their own. */
const height = quantity('length', 0.2, 10).optional();
const lossCoefficient = quantity('heatLoss', 0, 200).optional();
const nodes = count(4, 400);
const verticalConductivity = quantity('conductivity', 0.1, 100).optional();
const initialTemperature = quantity('temperature', 0, 95).optional();
const reliefTemperature = quantity('temperature', 60, 120);
const ratedTemperature = quantity('temperature', 40, 120);
const inletDiameter = defaulted(
  quantity('length', 0.005, 0.2).nullable(),
  null,
  'm',
  'judgement: a dip tube or plate that spreads the water',
);
const sedimentDepth = quantityOr('length', 0, 1, 0, 'judgement: a clean tank');

/** Schema of the second tank. */
const secondSchema = z.strictObject({
  volume: quantity('volume', 0.02, 50).optional(),
  height,
  lossCoefficient,
  roomTemperature: quantity('temperature', -20, 50).nullable().default(null),
  nodes: nodes.optional(),
  verticalConductivity,
  initialTemperature,
  reliefTemperature: reliefTemperature.optional(),
  ratedTemperature: ratedTemperature.optional(),
  inletDiameter,
  sedimentDepth,
  coil: coilSchema.optional(),
  charging: defaulted(
    choice(['series', 'in-turn', 'first', 'second']),
    'series',
    '',
    'judgement: needs neither valve nor further sensors',
  ),
  divertAt: quantityOr('temperature', 20, 95, 60, 'as hot as taps and hygiene ask for; common practice, no source'),
});

/** Schema of the tank. */
export const tankSchema = z.strictObject({
  volume: quantity('volume', 0.02, 50),
  height,
  lossCoefficient,
  roomTemperature: quantity('temperature', -20, 50).optional(),
  nodes: defaulted(
    nodes,
    20,
    '',
    'convergence: doubling them moves the energy delivered by less than 1 % (tests/sim-core/year)',
  ),
  verticalConductivity,
  initialTemperature,
  initialProfile: profileSchema.nullable().default(null),
  roomByMonth: roomSchema.nullable().default(null),
  load: loadSchema.nullable().default(null),
  second: secondSchema.nullable().default(null),
  reliefTemperature: defaulted(
    reliefTemperature,
    99,
    '°C',
    'temperature and pressure relief valve, ANSI Z21.22 (read in a state code)',
  ),
  ratedTemperature: defaulted(ratedTemperature, 93, '°C', 'rating of common lined tanks, common practice, no source'),
  inletDiameter,
  sedimentDepth,
});
