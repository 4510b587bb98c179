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

/** Of two tanks: the coil of one that is not charged, and what turns no valve. */
function idleOfTanks({ second }: SystemDesign['tank']): string[] {
  if (second === null) return ['tank.second'];
  const { charging } = second;
  const coil = { series: [], 'in-turn': [], first: ['tank.second.coil'], second: ['coil'] }[charging];
  return [...coil, ...(charging === 'in-turn' ? [] : ['tank.second.divertAt'])];
}

/** Branches that do nothing in a design, because another is in their place. */
export function idleFields({ array, loop, control, pump, pv, tank, heater, baseline }: SystemDesign): string[] {
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
    ...idleOfTanks(tank),
    ...idleOfHeater('heater', heater),
    ...idleOfHeater('baseline', baseline),
    ...(JSON.stringify(heater) === JSON.stringify(baseline) ? ['baseline'] : []),
  ];
}
