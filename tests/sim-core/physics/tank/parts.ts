import type { TankDesign } from '@noonloop/sim-core';

/** A tank of 300 L for tests of its parts. */
export const plainTank: TankDesign = {
  volume: 0.3,
  height: 1.5,
  lossCoefficient: 2,
  roomTemperature: 20,
  nodes: 20,
  verticalConductivity: 1.55,
  initialTemperature: 50,
  reliefTemperature: 99,
  ratedTemperature: 93,
  inletDiameter: null,
  sedimentDepth: 0,
  initialProfile: null,
  roomByMonth: null,
  load: null,
  second: null,
};
