import type { HydraulicParts } from '../../../packages/sim-core/src/loop/hydraulics.ts';

/** An invented small system: two panels, 30 m of 16 mm tube, a 15 m coil and a 22 W pump. */
export const parts = {
  pump: {
    boosterEfficiency: 0.9,
    startPower: 4,
    stopPower: 2,
    shutOffHead: 4,
    openFlow: 12 / 6e4,
    shutOffPower: 8,
    openFlowPower: 22,
  },
  loop: {
    fluid: 'propylene-glycol',
    glycolMassFraction: 0.4,
    pressure: 2e5,
    fluidLimit: 120,
    pipeLength: 30,
    pipeInnerDiameter: 0.016,
    pipeOuterDiameter: 0.018,
    insulationThickness: 0.019,
    insulationConductivity: 0.04,
    outdoorShare: 0.5,
    fittingLoss: 12,
  },
  coil: {
    length: 15,
    innerDiameter: 0.016,
    outerDiameter: 0.018,
    wallConductivity: 380,
    fouling: 0,
    bottom: 0.1,
    top: 0.5,
  },
  array: {
    panels: 2,
    tilt: 45,
    azimuth: 180,
    groundAlbedo: 0.2,
    collector: {
      name: 'invented',
      area: 2,
      eta0: 0.78,
      a1: 3.6,
      a2: 0.014,
      incidenceModifier: { b0: 0.1 },
      heatCapacity: 7000,
      skyCoefficient: 0,
      ratedPressureDrop: 500,
      ratedFlow: 2 / 6e4,
    },
  },
} as const satisfies HydraulicParts;
