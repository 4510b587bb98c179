import { choice, defaulted, fault, numbers, quantity, quantityOr } from '../../input/field.ts';
import * as z from '../../input/zod.ts';

const coefficient = (least: number, most: number) => quantity('fraction', least, most);

const overAir = z.strictObject({ atZero: coefficient(0.5, 10), perAirKelvin: coefficient(-0.5, 0.5) });
const overLift = z.strictObject({ atNoLift: coefficient(1, 20), perLiftKelvin: coefficient(0, 0.5) });
const ofCarnot = z.strictObject({ carnotShare: coefficient(0.1, 0.8) });
const byPoints = z
  .strictObject({
    airTemperatures: numbers({ minimum: -40, maximum: 60, unit: '°C' }),
    values: numbers({ minimum: 0.5, maximum: 12, unit: '-' }),
    between: choice(['lines', 'curve']),
  })
  .superRefine(({ airTemperatures, values }, context) => {
    if (airTemperatures.length !== values.length) {
      const found = `${airTemperatures.length} temperatures and ${values.length} values`;
      fault(context, found, 'as many values as temperatures', 'Give one COP for each temperature.', ['values']);
    }
    if (airTemperatures.some((air, row) => row > 0 && air <= airTemperatures[row - 1]!)) {
      fault(context, 'temperatures that do not rise', 'rising temperatures', 'Sort the rows.', ['airTemperatures']);
    }
  });

/** Schema of a heat pump's curve. */
export const copSchema = z.union([overAir, overLift, ofCarnot, byPoints]);

/** Schema of spare PV. */
export const sparePvSchema = z.strictObject({
  peakPower: quantity('power', 50, 1e5),
  temperatureCoefficient: quantityOr(
    'fraction',
    -0.01,
    0.002,
    -0.004,
    'crystalline silicon, −0.3 to −0.5 % a kelvin on data sheets (from memory)',
  ),
  systemEfficiency: defaulted(
    quantity('fraction', 0.3, 1),
    0.86,
    '-',
    'inverter, cables, dust: 14 % lost is the usual entry of yield estimates (from memory)',
  ),
  houseLoad: quantityOr('power', 0, 1e5, 250, 'judgement: refrigerator, standby and some use by day'),
});
