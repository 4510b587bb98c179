/** Fields of a design that do nothing in it. */
import { HEATER_FIELD_KINDS, type SystemDesign } from '@noonloop/sim-core';

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

/** Of a heater of one kind: what only others have, and what follows from the kind. */
const idleOfHeater = (name: 'heater' | 'baseline', { kind }: SystemDesign['heater']): string[] => [
  `${name}.carrier`,
  ...Object.entries(HEATER_FIELD_KINDS).flatMap(([field, kinds]) => (kinds.includes(kind) ? [] : [`${name}.${field}`])),
];

/** Branches that do nothing in a design, because another is in their place. */
export function idleFields({ array, loop, control, pump, pv, heater, baseline }: SystemDesign): string[] {
  return [
    'name',
    'assumptions',
    'draw.keepsProfileHeat',
    ...(loop.exchanger === 'plate' ? [] : ['loop.plate']),
    ...(loop.layout === 'drain-back' ? [] : ['loop.drainBack']),
    ...(loop.layout === 'direct' ? ['loop.exchanger', 'loop.plate.conductance'] : ['loop.drainBelow']),
    ...(loop.layout === 'closed' ? [] : CLOSED_ONLY),
    ...(pump.curves === null ? ['pump.curves', 'pump.startVoltage'] : BY_CURVES),
    ...(pv.module.ivPoints === null ? ['pv.module.ivPoints'] : BY_POINTS),
    ...(array.summerTilt === null ? ['array.summerTilt'] : []),
    ...(control.nightCooling === null ? ['control.nightCooling'] : []),
    ...(control.mode === 'difference' ? [] : ['control.difference']),
    ...(control.mode === 'schedule' ? [] : ['control.schedule']),
    ...(pump.drive === 'direct' ? [] : ['pump.motor']),
    ...idleOfHeater('heater', heater),
    ...idleOfHeater('baseline', baseline),
    ...(JSON.stringify(heater) === JSON.stringify(baseline) ? ['baseline'] : []),
  ];
}
