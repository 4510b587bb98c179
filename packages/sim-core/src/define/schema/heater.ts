import { choice, defaulted, fault, quantity } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import { HEATER_FUELS } from '../../physics/backup/fuels.ts';
import { HEATER_FIELD_KINDS } from '../heater-field-kinds.ts';
import { dayRanges, hourSpans } from './calendar.ts';
import { copSchema, sparePvSchema } from './heat-pump.ts';

/** Schema of the backup heater; defaults go by its kind and stand in `derived-heater.ts`. */
export const heaterSchema = z
  .strictObject({
    kind: defaulted(
      choice([
        'stored-gas',
        'stored-electric',
        'stored-boiler',
        'heat-pump',
        'instantaneous-gas',
        'instantaneous-electric',
        'element',
        'boiler-coil',
      ]),
      'stored-gas',
      '',
      'judgement: the heater that the house already has',
    ),
    volume: quantity('volume', 0.02, 2).optional(),
    setTemperature: quantity('temperature', 40, 85).optional(),
    burnerPower: quantity('power', 500, 200_000).optional(),
    fuel: choice(HEATER_FUELS).nullable().optional(),
    burnerEfficiency: quantity('fraction', 0.2, 1).optional(),
    netEfficiency: quantity('fraction', 0.2, 1.11).optional(),
    cop: copSchema.optional(),
    airFrom: choice(['outdoors', 'room']).optional(),
    sparePv: sparePvSchema.nullable().optional(),
    minimumPower: quantity('power', 0, 100_000).optional(),
    minimumRise: quantity('temperatureDifference', 0, 40).optional(),
    minimumFlow: quantity('flow', 0, 1e-3).optional(),
    standbyPower: quantity('power', 0, 100).optional(),
    lossCoefficient: quantity('heatLoss', 0, 50).optional(),
    roomTemperature: quantity('temperature', -20, 50).optional(),
    elementHeight: quantity('fraction', 0, 0.98).optional(),
    baselineVolume: quantity('volume', 0.02, 2).optional(),
    coilTop: quantity('fraction', 0.05, 1).optional(),
    coilConductance: quantity('heatLoss', 10, 5000).optional(),
    boilerTemperature: quantity('temperature', 40, 95).optional(),
    // Without a source: a heater that is on all year is no assumption of a report.
    offDays: dayRanges.default([]),
    heatingHours: hourSpans.nullable().default(null),
  })
  .superRefine((heater, context) => {
    for (const [field, kinds] of Object.entries(HEATER_FIELD_KINDS)) {
      if (heater[field as keyof typeof heater] === undefined || kinds.includes(heater.kind)) continue;
      const expected = `nothing with kind "${heater.kind}"; it belongs to ${kinds.join(' and ')}`;
      fault(context, 'a value', expected, 'Remove it, or choose another kind.', [field]);
    }
    const { burnerEfficiency, burnerPower, fuel, kind, minimumPower, netEfficiency } = heater;
    const { coilTop, elementHeight } = heater;
    if (coilTop !== undefined && coilTop <= (elementHeight ?? 0)) {
      const expected = `more than its lower end, ${elementHeight}`;
      fault(context, String(coilTop), expected, 'Give both as shares of the tank’s height.', ['coilTop']);
    }
    if (netEfficiency !== undefined && burnerEfficiency !== undefined) {
      const expected = 'one efficiency, by gross or by net calorific value';
      fault(context, 'both', expected, 'Remove netEfficiency or burnerEfficiency.', ['netEfficiency']);
    }
    if (netEfficiency !== undefined && fuel == null && kind !== 'stored-boiler' && kind !== 'boiler-coil') {
      const expected = 'a fuel beside it: what net is over gross depends on it';
      fault(context, 'netEfficiency alone', expected, 'Give heater.fuel too.', ['netEfficiency']);
    }
    if (fuel === 'district-heat' && kind !== 'stored-boiler' && kind !== 'boiler-coil') {
      const expected = 'a fuel that this heater burns';
      fault(context, '"district-heat"', expected, 'A heat network warms kind "stored-boiler" or "boiler-coil".', [
        'fuel',
      ]);
    }
    if (burnerPower !== undefined && minimumPower !== undefined && minimumPower > burnerPower) {
      const expected = `at most the heater’s power, ${burnerPower} W`;
      fault(context, `${minimumPower} W`, expected, 'Check the range of modulation.', ['minimumPower']);
    }
  });
