import { count, defaulted, fault, label, quantity, quantityOr } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import { faultOfPoints } from '../../physics/pv/points.ts';

const moduleSource = 'invented: data sheet of a common small 36-cell module';

/** Points of a module, from near short circuit to near open circuit. */
const pointsSchema = z
  .array(z.strictObject({ voltage: quantity('voltage', 0, 200), current: quantity('current', 0, 30) }))
  .max(200)
  .superRefine((points, context) => {
    const wrong = faultOfPoints(points);
    if (wrong !== null)
      fault(context, wrong, 'points as measured from near short circuit to near open circuit', 'Sort them by voltage.');
  });

/** Schema of the PV module. */
const moduleSchema = z
  .strictObject({
    name: defaulted(label, '20 W module', '', moduleSource),
    shortCircuitCurrent: quantityOr('current', 0.01, 30, 1.24, moduleSource),
    openCircuitVoltage: quantityOr('voltage', 1, 200, 21.6, moduleSource),
    maximumPowerCurrent: quantityOr('current', 0.01, 30, 1.14, moduleSource),
    maximumPowerVoltage: quantityOr('voltage', 1, 200, 17.5, moduleSource),
    currentTemperatureCoefficient: quantityOr('currentPerKelvin', 0, 0.1, 0.0007, moduleSource),
    voltageTemperatureCoefficient: quantityOr('voltagePerKelvin', -1, 0, -0.075, moduleSource),
    cells: defaulted(count(1, 200), 36, '', moduleSource),
    nominalOperatingCellTemperature: quantityOr(
      'temperature',
      30,
      70,
      46,
      'glass-front module in the open, common practice, no source',
    ),
    ivPoints: defaulted(pointsSchema.nullable(), null, '', 'judgement: the plate has what is needed'),
    area: defaulted(
      quantity('area', 0.001, 20).nullable(),
      null,
      'm²',
      'not known: cells as warm as if no power left them, a little less power in full sun',
    ),
  })
  .superRefine((module, context) => {
    if (module.maximumPowerCurrent >= module.shortCircuitCurrent) {
      fault(
        context,
        `${module.maximumPowerCurrent} A`,
        `less than the short-circuit current, ${module.shortCircuitCurrent} A`,
        'Check the data sheet.',
        ['maximumPowerCurrent'],
      );
    }
    if (module.maximumPowerVoltage >= module.openCircuitVoltage) {
      fault(
        context,
        `${module.maximumPowerVoltage} V`,
        `less than the open-circuit voltage, ${module.openCircuitVoltage} V`,
        'Check the data sheet.',
        ['maximumPowerVoltage'],
      );
    }
  });

/** Schema of the modules; their plane follows the array's where none is given. */
export const pvSchema = z.strictObject({
  modules: defaulted(count(1, 20), 1, '', 'judgement: one module'),
  inSeries: defaulted(count(1, 20), 1, '', 'judgement: one module'),
  tilt: quantity('angle', 0, 90).optional(),
  azimuth: quantity('angle', 0, 360).optional(),
  module: moduleSchema.prefault({}),
});
