import { z } from 'zod';
import { M_PROFILE_SOURCE, mProfileShares } from '../../draw/default-shape.ts';
import { count, defaulted, fault, flag, numbers, quantity, quantityOr } from './field.ts';

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
    fouling: quantityOr('thermalResistance', 0, 0.01, 0.0001, 'clean water side, handbook value (from memory)'),
    windingDiameter: quantityOr(
      'length',
      0.05,
      3,
      0.4,
      'judgement: coils of 0.3 to 0.5 m stand in tanks of 150 to 400 L',
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
  roomTemperature: quantityOr('temperature', -20, 50, 18, 'judgement: a cellar or utility room'),
  nodes: defaulted(
    count(4, 400),
    20,
    '',
    'convergence: doubling them moves the energy delivered by less than 1 % (tests/sim-core/system)',
  ),
  verticalConductivity: quantity('conductivity', 0.1, 100).optional(),
  initialTemperature: quantity('temperature', 0, 95).optional(),
  reliefTemperature: quantityOr(
    'temperature',
    60,
    120,
    99,
    'temperature and pressure relief valve, ANSI Z21.22 (read in a state code)',
  ),
  ratedTemperature: quantityOr('temperature', 40, 120, 93, 'rating of common lined tanks, common practice, no source'),
});

const mainsSchema = z
  .custom<'from-weather' | number | readonly number[]>(() => true)
  .transform((value, context) => {
    const fits = (item: unknown) => typeof item === 'number' && item >= 0 && item <= 40;
    if (value === 'from-weather' || fits(value)) return value;
    if (Array.isArray(value) && value.length === 12 && value.every(fits)) return [...value] as readonly number[];
    fault(
      context,
      Array.isArray(value) ? `a list of ${value.length}` : (JSON.stringify(value)?.slice(0, 40) ?? 'nothing'),
      '"from-weather", one temperature, or twelve from January, each from 0 to 40 °C',
      'Leave it out to compute the mains from the weather.',
    );
    return z.NEVER;
  });

/** Schema of the draw. */
export const drawSchema = z.strictObject({
  dailyVolume: quantity('volume', 0, 20),
  tapTemperature: quantityOr(
    'temperature',
    25,
    60,
    45,
    'judgement: showers and sinks, below the scald limit of plumbing practice',
  ),
  hourlyShares: defaulted(
    numbers({ length: 24, minimum: 0, maximum: 1e6, unit: '-' }),
    mProfileShares,
    '-',
    M_PROFILE_SOURCE,
  ).superRefine((shares, context) => {
    if (shares.reduce((sum, share) => sum + share, 0) <= 0) {
      fault(
        context,
        'shares that add up to 0',
        'at least one hour with a draw',
        'Give a day with some use, or set dailyVolume to 0.',
      );
    }
  }),
  mixingValve: defaulted(flag, true, '', 'needed after any solar tank where people wash (local code)'),
  mains: defaulted(mainsSchema, 'from-weather', '°C', 'Burch & Christensen 2007, from the weather file'),
});

/** Schema of the backup heater. */
export const heaterSchema = z.strictObject({
  volume: quantityOr('volume', 0.02, 2, 0.15, 'a common size of stored gas heater, common practice, no source'),
  setTemperature: quantityOr(
    'temperature',
    40,
    85,
    60,
    'storage temperature against legionella, HSE HSG274 part 2 (page quoting it)',
  ),
  burnerPower: quantityOr(
    'power',
    500,
    200_000,
    9000,
    'burner of a common stored gas heater at its efficiency, common practice, no source',
  ),
  burnerEfficiency: quantityOr(
    'fraction',
    0.2,
    1,
    0.77,
    'recovery efficiency of atmospheric stored gas heaters, 0.75 to 0.80 (from memory)',
  ),
  lossCoefficient: quantityOr('heatLoss', 0, 50, 5, 'stored gas heater with an open flue (from memory)'),
  roomTemperature: quantity('temperature', -20, 50).optional(),
});
