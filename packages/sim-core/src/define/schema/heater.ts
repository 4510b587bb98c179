import * as z from 'zod';
import type { HeaterKind } from '../../design/design.ts';
import { choice, defaulted, fault, quantity } from '../../input/field.ts';
import { dayRanges, hourSpans } from './calendar.ts';

/** Fields that only some kinds have. */
export const KINDS_OF_FIELD: Readonly<Record<string, readonly HeaterKind[]>> = {
  volume: ['stored-gas', 'stored-electric'],
  lossCoefficient: ['stored-gas', 'stored-electric'],
  roomTemperature: ['stored-gas', 'stored-electric'],
  minimumPower: ['instantaneous-gas', 'instantaneous-electric'],
  minimumRise: ['instantaneous-gas', 'instantaneous-electric'],
  minimumFlow: ['instantaneous-gas', 'instantaneous-electric'],
  elementHeight: ['element'],
  baselineVolume: ['element'],
};

/** Schema of the backup heater; defaults go by its kind and stand in `derived-heater.ts`. */
export const heaterSchema = z
  .strictObject({
    kind: defaulted(
      choice(['stored-gas', 'stored-electric', 'instantaneous-gas', 'instantaneous-electric', 'element']),
      'stored-gas',
      '',
      'judgement: the heater that the house already has',
    ),
    volume: quantity('volume', 0.02, 2).optional(),
    setTemperature: quantity('temperature', 40, 85).optional(),
    burnerPower: quantity('power', 500, 200_000).optional(),
    burnerEfficiency: quantity('fraction', 0.2, 1).optional(),
    minimumPower: quantity('power', 0, 100_000).optional(),
    minimumRise: quantity('temperatureDifference', 0, 40).optional(),
    minimumFlow: quantity('flow', 0, 1e-3).optional(),
    standbyPower: quantity('power', 0, 100).optional(),
    lossCoefficient: quantity('heatLoss', 0, 50).optional(),
    roomTemperature: quantity('temperature', -20, 50).optional(),
    elementHeight: quantity('fraction', 0, 0.98).optional(),
    baselineVolume: quantity('volume', 0.02, 2).optional(),
    // Without a source: a heater that is on all year is no assumption of a report.
    offDays: dayRanges.default([]),
    heatingHours: hourSpans.nullable().default(null),
  })
  .superRefine((heater, context) => {
    for (const [field, kinds] of Object.entries(KINDS_OF_FIELD)) {
      if (heater[field as keyof typeof heater] === undefined || kinds.includes(heater.kind)) continue;
      const expected = `nothing with kind "${heater.kind}"; it belongs to ${kinds.join(' and ')}`;
      fault(context, 'a value', expected, 'Remove it, or choose another kind.', [field]);
    }
    const { burnerPower, minimumPower } = heater;
    if (burnerPower !== undefined && minimumPower !== undefined && minimumPower > burnerPower) {
      const expected = `at most the heater’s power, ${burnerPower} W`;
      fault(context, `${minimumPower} W`, expected, 'Check the range of modulation.', ['minimumPower']);
    }
  });
