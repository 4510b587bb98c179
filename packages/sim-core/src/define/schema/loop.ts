import { choice, defaulted, fault, flag, quantity, quantityOr } from '../../input/field.ts';
import * as z from '../../input/zod.ts';

/** Schema of the plate exchanger. */
const plateSchema = z.strictObject({
  conductance: quantityOr(
    'heatLoss',
    1,
    1e5,
    800,
    'judgement: full sun of some four panels with few kelvin between the sides',
  ),
  secondaryFlow: quantityOr('flow', 1e-6, 1e-2, 3 / 60_000, 'judgement: as much as a small loop moves'),
  returnHeight: quantityOr('fraction', 0, 1, 0.5, 'judgement: half-way up'),
  ratedPressureDrop: quantityOr('pressure', 0, 1e6, 5000, 'judgement: a small brazed exchanger'),
  ratedFlow: quantityOr('flow', 1e-6, 1e-2, 5 / 60_000, 'judgement: a small brazed exchanger'),
});

/** Schema of a drain-back vessel. */
const drainBackSchema = z.strictObject({
  vesselVolume: quantity('volume', 0, 10).optional(),
  vesselLoss: quantityOr('heatLoss', 0, 50, 1, 'judgement: a small vessel with some foam'),
  lift: quantity('length', 0, 100).optional(),
  siphon: defaulted(flag, true, '', 'judgement: a return narrow enough to run full'),
  shareStaying: quantityOr('fraction', 0, 0.5, 0.02, 'judgement: pipes and panels that slope'),
});

/** Schema of fluid and pipes. */
export const loopSchema = z
  .strictObject({
    fluid: defaulted(
      choice(['propylene-glycol', 'ethylene-glycol', 'water']),
      'propylene-glycol',
      '',
      'food-grade glycol behind a single wall, common practice, no source',
    ),
    glycolMassFraction: quantity('fraction', 0, 0.6).optional(),
    staticHeight: quantityOr('length', 0, 100, 6, 'judgement: two storeys from the tank to the top of the roof'),
    fillTemperature: quantityOr('temperature', 1, 60, 10, 'as in the sizing of the vessel; judgement'),
    pressure: quantity('pressure', 0, 1e6).optional(),
    fillPressure: quantity('pressure', 0, 2e6).optional(),
    vesselVolume: quantity('volume', 1e-4, 10).optional(),
    vesselPrecharge: quantity('pressure', 0, 1e6).optional(),
    reliefPressure: quantityOr('pressure', 1e5, 3e6, 6e5, 'relief valve of glycol loops, common practice, no source'),
    minimumPressure: quantityOr(
      'pressure',
      -1e5,
      1e6,
      0,
      'judgement: below the air’s pressure, vents and seals let air in',
    ),
    leak: quantityOr('flow', 0, 1e-4, 0, 'judgement: a tight loop'),
    makeUp: defaulted(flag, false, '', 'no standing connection with the mains, common practice, no source'),
    layout: defaulted(choice(['closed', 'drain-back', 'direct']), 'closed', '', 'common practice, no source'),
    drainBack: drainBackSchema.prefault({}),
    drainBelow: defaulted(
      quantity('temperature', 0.5, 20).nullable(),
      5,
      '°C',
      'judgement: before anything is at 0 °C',
    ),
    exchanger: defaulted(choice(['coil', 'plate']), 'coil', '', 'judgement: the tank has a coil'),
    plate: plateSchema.prefault({}),
    checkValve: defaulted(flag, true, '', 'common practice, no source'),
    fluidLimit: quantityOr(
      'temperature',
      60,
      250,
      120,
      'from about there glycol ages fast (a fluid maker’s technical page)',
    ),
    pipeLength: quantityOr('length', 1, 500, 20, 'judgement: two storeys, there and back'),
    pipeInnerDiameter: quantityOr('length', 0.004, 0.1, 0.016, 'a common copper tube of EN 1057'),
    pipeOuterDiameter: quantityOr('length', 0.005, 0.12, 0.018, 'a common copper tube of EN 1057'),
    insulationThickness: quantityOr(
      'length',
      0,
      0.2,
      0.019,
      'rubber foam of a common thickness, common practice, no source',
    ),
    insulationConductivity: quantityOr(
      'conductivity',
      0.01,
      0.5,
      0.042,
      'warm rubber foam, makers’ data sheets (from memory); a tenth less when cold',
    ),
    heatBridgeFactor: quantityOr(
      'fraction',
      1,
      10,
      1.3,
      'judgement, as for the tank: 1.2 with care at each bracket and valve, 2 and more as pipes are often found',
    ),
    steamPower: quantityOr(
      'irradiance',
      0,
      300,
      120,
      'an array that empties badly; 50 for one that empties well (IEA SHC Task 26, from memory): the safe side where it is not known',
    ),
    outdoorShare: quantityOr('fraction', 0, 1, 0.4, 'judgement'),
    fittingLoss: quantityOr('fraction', 0, 500, 20, 'judgement: a dozen elbows, a check valve, two ball valves'),
  })
  .superRefine((loop, context) => {
    if (loop.pipeOuterDiameter <= loop.pipeInnerDiameter) {
      fault(
        context,
        `${loop.pipeOuterDiameter} m`,
        `more than the bore, ${loop.pipeInnerDiameter} m`,
        'Check the two diameters.',
        ['pipeOuterDiameter'],
      );
    }
    if (loop.layout !== 'closed' && loop.fluid !== 'water') {
      fault(
        context,
        `"${loop.fluid}" with layout "${loop.layout}"`,
        '"water": what drains needs no glycol, and what is drawn must have none',
        'Say fluid: water.',
        ['fluid'],
      );
    }
    if (loop.layout !== 'closed' && !loop.checkValve) {
      fault(
        context,
        `false with layout "${loop.layout}"`,
        'true: flow by buoyancy is modelled in a closed loop only',
        'Leave the field out.',
        ['checkValve'],
      );
    }
    if (loop.exchanger === 'plate' && !loop.checkValve) {
      fault(
        context,
        'false with exchanger "plate"',
        'true: flow by buoyancy is modelled with a coil only',
        'Leave the field out, or take the coil.',
        ['checkValve'],
      );
    }
    if (loop.pressure !== undefined && loop.fillPressure !== undefined) {
      fault(
        context,
        `${loop.fillPressure} Pa beside loop.pressure`,
        'one of the two',
        'Give the pressure at the gauge (fillPressure) or at the collectors (pressure); the other follows from staticHeight.',
        ['fillPressure'],
      );
    }
    if (loop.fluid === 'water' && (loop.glycolMassFraction ?? 0) > 0) {
      fault(
        context,
        String(loop.glycolMassFraction),
        '0 with fluid "water"',
        'Name the glycol or leave the share out.',
        ['glycolMassFraction'],
      );
    }
  });
