/** Fields of a design that do nothing in it. */
import type { SystemDesign } from '@noonloop/sim-core';

/** Of a loop under pressure. */
const CLOSED_ONLY = [
  'loop.vesselVolume',
  'loop.vesselPrecharge',
  'loop.reliefPressure',
  'loop.minimumPressure',
  'loop.pressure',
  'loop.fillPressure',
  'loop.steamPower',
];
/** Follow from measured points. */
const BY_CURVES = ['shutOffHead', 'openFlow', 'shutOffPower', 'openFlowPower'].map((name) => `pump.${name}`);
const BY_POINTS = ['shortCircuitCurrent', 'openCircuitVoltage', 'maximumPowerCurrent', 'maximumPowerVoltage'].map(
  (name) => `pv.module.${name}`,
);

/** Branches that do nothing in a design, because another is in their place. */
export function idleFields({ loop, control, pump, pv, heater, baseline }: SystemDesign): string[] {
  return [
    'name',
    'assumptions',
    ...(loop.exchanger === 'plate' ? [] : ['loop.plate']),
    ...(loop.layout === 'drain-back' ? [] : ['loop.drainBack']),
    ...(loop.layout === 'direct' ? ['loop.exchanger', 'loop.plate.conductance'] : ['loop.drainBelow']),
    ...(loop.layout === 'closed' ? [] : CLOSED_ONLY),
    ...(pump.curves === null ? ['pump.startVoltage'] : BY_CURVES),
    ...(pv.module.ivPoints === null ? [] : BY_POINTS),
    ...(control.mode === 'difference' ? [] : ['control.difference']),
    ...(control.mode === 'schedule' ? [] : ['control.schedule']),
    ...(pump.drive === 'direct' ? [] : ['pump.motor']),
    ...(JSON.stringify(heater) === JSON.stringify(baseline) ? ['baseline'] : []),
  ];
}
