import type { HeaterDesign } from '@noonloop/sim-core';

/** A heater written out: a common stored gas heater, with what a test changes. */
export const heaterDesign = (changes: Partial<HeaterDesign> = {}): HeaterDesign => ({
  kind: 'stored-gas',
  carrier: 'gas',
  volume: 0.15,
  setTemperature: 60,
  burnerPower: 9000,
  burnerEfficiency: 0.77,
  minimumPower: 0,
  minimumRise: 0,
  minimumFlow: 0,
  standbyPower: 0,
  lossCoefficient: 5,
  roomTemperature: 20,
  elementHeight: 0,
  coilTop: 0,
  coilConductance: 0,
  boilerTemperature: 0,
  fuel: null,
  cop: null,
  airFrom: 'outdoors',
  sparePv: null,
  offDays: [],
  heatingHours: null,
  ...changes,
});
