import type { HeaterKind } from '../design/design.ts';

const STORED: readonly HeaterKind[] = ['stored-gas', 'stored-electric', 'stored-boiler', 'heat-pump'];
const INSTANTANEOUS: readonly HeaterKind[] = ['instantaneous-gas', 'instantaneous-electric'];
const BURNING: readonly HeaterKind[] = ['stored-gas', 'stored-boiler', 'instantaneous-gas', 'boiler-coil'];

/** Fields of a heater that only some kinds have, with these kinds. */
export const HEATER_FIELD_KINDS: Readonly<Record<string, readonly HeaterKind[]>> = {
  volume: STORED,
  lossCoefficient: STORED,
  roomTemperature: STORED,
  minimumPower: INSTANTANEOUS,
  minimumRise: INSTANTANEOUS,
  minimumFlow: INSTANTANEOUS,
  elementHeight: ['element', 'boiler-coil'],
  baselineVolume: ['element', 'boiler-coil'],
  coilTop: ['boiler-coil'],
  coilConductance: ['boiler-coil'],
  boilerTemperature: ['boiler-coil'],
  fuel: BURNING,
  netEfficiency: BURNING,
  burnerEfficiency: [...BURNING, 'stored-electric', 'instantaneous-electric', 'element'],
  cop: ['heat-pump'],
  airFrom: ['heat-pump'],
  sparePv: ['stored-electric', 'element'],
};
