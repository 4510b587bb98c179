import { quote } from '../../input/errors.ts';
import { choice, count, defaulted, fault, flag, label, numbers, quantity, quantityOr } from '../../input/field.ts';
import { type Quantity, toSi } from '../../input/quantity.ts';
import { listShape, numberShape, quantityShape, shaped } from '../../input/shape.ts';
import * as z from '../../input/zod.ts';
import { isHorizon } from '../../physics/sun/shade/horizon.ts';
import { SKY_WORDS, skyModelOf } from '../../physics/sun/transposition/models.ts';
import { dayRange } from './calendar.ts';
import { checkCollector, neverCounted } from './collector-check.ts';

const byB0 = z.strictObject({ b0: quantity('fraction', 0, 1) });

const byTable = z
  .strictObject({
    angles: numbers({ minimum: 0, maximum: 90, unit: '°' }),
    values: numbers({ minimum: 0, maximum: 2, unit: '-' }),
  })
  .superRefine((table, context) => {
    if (table.angles.length !== table.values.length) {
      const found = `${table.angles.length} angles and ${table.values.length} values`;
      fault(context, found, 'as many values as angles', 'Give one modifier for each angle.');
    }
    const rising = table.angles.every((angle, row) => row === 0 || angle > table.angles[row - 1]!);
    if (table.angles[0] !== 0 || !rising) {
      fault(context, 'angles that do not rise from 0', 'angles rising from 0°', 'Sort the rows, the first at 0°.', [
        'angles',
      ]);
    }
  });

const byTwoTables = z.strictObject({
  transversal: byTable,
  longitudinal: byTable,
  tubes: choice(['upright', 'level']),
});

const byCover = z.strictObject({
  covers: count(1, 2),
  refractiveIndex: quantity('fraction', 1.05, 3),
  extinction: quantity('perLength', 0, 500),
  thickness: quantity('length', 0, 0.05),
});

/** Schema of one collector. */
const collectorSchema = z
  .strictObject({
    name: defaulted(label, 'flat-plate collector', '', 'judgement: a name for reports'),
    area: quantity('area', 0.1, 20),
    eta0: quantity('fraction', 0.1, 1),
    eta0Basis: defaulted(
      choice(['beam', 'hemispherical']),
      'beam',
      '',
      'judgement: η0,b, which ISO 9806:2017 states first; where yours is η0,hem, say so: it is some 1 to 3 % lower',
    ),
    a1: quantity('heatTransfer', 0.2, 40),
    a2: quantity('heatTransferPerKelvin', 0, 0.2),
    a3: quantityOr('heatTransferPerSpeed', 0, 10, 0, 'test report without wind terms'),
    a4: quantity('fraction', 0, 1).nullable().optional(),
    a6: quantityOr('slowness', 0, 0.2, 0, 'test report without wind terms'),
    a7: quantityOr('slowness', 0, 0.2, 0, 'test report without wind terms'),
    a8: neverCounted.optional(),
    stagnationTemperature: quantity('temperature', 60, 400).optional(),
    glazed: defaulted(flag, true, '', 'judgement: one cover, as on most panels that heat water'),
    incidenceModifier: defaulted(
      z.union([byB0, byTable, byCover, byTwoTables]),
      { b0: 0.1 },
      '-',
      'single glazing: b0 of 0.10, Duffie & Beckman, Solar Engineering of Thermal Processes, §6.17 (from memory)',
    ),
    heatCapacity: quantityOr(
      'heatCapacityPerArea',
      1000,
      60_000,
      8000,
      'judgement: copper plate and tubes, their fluid, half of one glass',
    ),
    dryCapacityShare: quantity('fraction', 0.1, 1).optional(),
    skyCoefficient: quantity('fraction', 0, 1).optional(),
    fluidContent: quantity('volume', 0, 0.1).optional(),
    ratedPressureDrop: quantityOr('pressure', 0, 1e5, 1000, 'judgement: parallel risers between two headers'),
    ratedFlow: quantityOr('flow', 1e-6, 1e-3, 2 / 60_000, 'judgement: a common test flow for a panel of this kind'),
  })
  .superRefine(checkCollector);

/** One reflectance, or twelve. */
const albedoSchema = shaped(
  z
    .custom<Quantity | readonly number[]>(() => true)
    .transform((value, context): number | readonly number[] => {
      const fits = (item: unknown) => typeof item === 'number' && item >= 0 && item <= 1;
      if (Array.isArray(value) && value.length === 12 && value.every(fits)) return [...value];
      const one = Array.isArray(value) ? null : toSi(value, 'fraction');
      if (fits(one)) return one as number;
      fault(
        context,
        quote(value),
        'one value or twelve from January, each from 0 to 1',
        'Give what the ground reflects.',
      );
      return z.NEVER;
    }),
  { anyOf: [quantityShape('fraction', 0, 1), listShape(numberShape(0, 1), 12, 12)] },
);

const horizonSchema = z
  .array(z.strictObject({ azimuth: quantity('angle', 0, 360), altitude: quantity('angle', 0, 90) }))
  .superRefine((points, context) => {
    if (isHorizon(points)) return;
    const found = points.length === 0 ? 'no points' : 'azimuths that do not rise, or 360°';
    fault(
      context,
      found,
      'azimuths rising from 0 to below 360°',
      'Sort the points clockwise from north, or give null.',
    );
  });

const obstacleSchema = z.strictObject({
  distance: quantity('length', 0.05, 1000),
  width: quantity('length', 0.05, 1000),
  height: quantity('length', 0.05, 500),
  azimuth: quantity('angle', 0, 360),
});

const summerTiltSchema = z.strictObject({
  tilt: quantity('angle', 0, 90),
  days: dayRange,
  withModule: defaulted(flag, true, '', 'judgement: module and collectors on one frame'),
});

/** Schema of a further group; what it does not say is as in the array. */
const groupSchema = z
  .strictObject({
    name: label,
    panels: count(1, 100),
    inSeries: defaulted(count(1, 20), 1, '', 'judgement: all panels in parallel'),
    stage: defaulted(count(1, 10), 1, '', 'judgement: beside the array in the flow'),
    tilt: quantity('angle', 0, 90).optional(),
    azimuth: quantity('angle', 0, 360).optional(),
    obstacle: defaulted(obstacleSchema.nullable(), null, '', 'judgement: an open site'),
    lightShare: quantityOr('fraction', 0, 1, 1, 'judgement: nothing over the panels'),
    width: quantity('length', 0.1, 1000).optional(),
    slopeLength: quantity('length', 0.1, 100).optional(),
    collector: collectorSchema.optional(),
  })
  .superRefine(equalRows);

/** All rows are of one length. */
function equalRows({ panels, inSeries }: { panels: number; inSeries: number }, context: z.core.$RefinementCtx): void {
  if (panels % inSeries === 0) return;
  const expected = `a number that divides the ${panels} panels into equal rows`;
  fault(context, String(inSeries), expected, 'All rows must be of one length.', ['inSeries']);
}

/** Schema of the array. */
export const arraySchema = z
  .strictObject({
    panels: count(1, 100),
    inSeries: defaulted(count(1, 20), 1, '', 'judgement: all panels in parallel'),
    tilt: quantity('angle', 0, 90),
    azimuth: quantity('angle', 0, 360),
    skyModel: defaulted(
      shaped(choice(SKY_WORDS).transform(skyModelOf), { enum: SKY_WORDS }),
      'perez',
      '',
      'Perez et al. 1990, the closest of the three to measurements on tilted planes',
    ),
    groundAlbedo: defaulted(
      albedoSchema,
      0.2,
      '-',
      'grass and roofs without snow: 0.2, Liu & Jordan 1963 (from memory)',
    ),
    albedoFrom: defaulted(choice(['weather', 'design']), 'weather', '', 'judgement: what was measured at the place'),
    snowAlbedo: defaulted(
      quantity('fraction', 0, 1).nullable(),
      0.6,
      '-',
      'between fresh snow of 0.8 and old snow of 0.4, handbook values (from memory)',
    ),
    snowOnPanels: defaulted(choice(['ignored', 'plate', 'tubes']), 'ignored', '', 'judgement: panels clear themselves'),
    horizon: defaulted(horizonSchema.nullable(), null, '', 'judgement: an open site'),
    obstacle: defaulted(obstacleSchema.nullable(), null, '', 'judgement: an open site'),
    width: quantity('length', 0.1, 1000).optional(),
    slopeLength: quantity('length', 0.1, 100).optional(),
    windFactor: quantityOr(
      'fraction',
      0,
      2,
      0.5,
      'judgement: along a roof among houses half the wind of a station over open ground',
    ),
    collector: collectorSchema,
    summerTilt: defaulted(summerTiltSchema.nullable(), null, '', 'judgement: a fixed frame'),
    covers: z
      .array(
        z.strictObject({
          days: dayRange,
          lightShare: quantityOr('fraction', 0, 1, 0, 'judgement: a sheet that lets nothing through'),
        }),
      )
      .max(50)
      .default([]),
    groups: z.array(groupSchema).max(20).default([]),
  })
  .superRefine(equalRows)
  .superRefine(({ groups }, context) => {
    const stages = new Set([1, ...groups.map(({ stage }) => stage)]);
    groups.forEach(({ stage }, at) => {
      if (stages.has(stage - 1) || stage === 1) return;
      const found = `${stage}, with nothing in stage ${stage - 1}`;
      fault(context, found, 'stages without a gap from 1', 'Number the stages along the flow.', [`groups.${at}.stage`]);
    });
  });
