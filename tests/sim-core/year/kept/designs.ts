/** Designs that between them switch on every part of a year. All invented. */
import type { SystemInput } from '@noonloop/sim-core';

const panel = { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 };
const plain: SystemInput = {
  array: { panels: 2, tilt: 35, azimuth: 10, collector: panel },
  pv: { tilt: 35, azimuth: 10 },
  tank: { volume: 0.25, initialTemperature: 30 },
  draw: { dailyVolume: 0.2, mains: 12, profile: 'M' },
};
const angles = [0, 20, 40, 60, 80, 90];
/** Three points of a pump at a voltage: its heads and flows follow the voltage. */
const curve = (voltage: number) => ({
  voltage,
  points: [
    { flow: 0, head: 3 * (voltage / 12) ** 2, power: 9 * (voltage / 12) ** 2 },
    { flow: 1e-4 * (voltage / 12), head: 2.2 * (voltage / 12) ** 2, power: 11 * (voltage / 12) ** 2 },
    { flow: 2e-4 * (voltage / 12), head: 0, power: 12 * (voltage / 12) ** 2 },
  ],
});
const pipe = { length: 12, outerDiameter: 0.018, innerDiameter: 0.016, surroundings: 18 };

export const KEPT: Readonly<Record<string, SystemInput>> = {
  'as the defaults are': plain,
  'three groups in two stages, one shaded, a horizon': {
    ...plain,
    array: {
      ...plain.array,
      horizon: [
        { azimuth: 40, altitude: 12 },
        { azimuth: 290, altitude: 20 },
      ],
      groups: [
        { name: 'west', panels: 2, azimuth: 280, tilt: 50 },
        {
          name: 'behind',
          panels: 2,
          inSeries: 2,
          stage: 2,
          obstacle: { distance: 2, width: 3, height: 2, azimuth: 10 },
          collector: { ...panel, a1: 4.5, incidenceModifier: { b0: 0.14 } },
        },
      ],
    },
  },
  'drain-back, mains pump by difference': {
    ...plain,
    loop: { layout: 'drain-back', fluid: 'water', drainBack: { siphon: false, shareStaying: 0.02 } },
    pump: { drive: 'mains', shutOffHead: 9, openFlow: 3e-4, shutOffPower: 40, openFlowPower: 60 },
    control: { mode: 'difference', difference: { start: 8, stop: 4, minimumRunTime: 300 }, highLimit: 50 },
  },
  'direct layout that drains below 2 °C': {
    ...plain,
    loop: { layout: 'direct', fluid: 'water', drainBelow: 2 },
    pump: { drive: 'mains' },
    control: { mode: 'difference' },
  },
  'direct motor, three modules in two strings, sediment': {
    ...plain,
    pv: { modules: 4, inSeries: 2, tilt: 20, azimuth: 330 },
    pump: {
      drive: 'direct',
      motor: { ratedVoltage: 24, windingResistance: 3, frictionCurrent: 0.08, startCurrent: 0.2 },
    },
    tank: { ...plain.tank, sedimentDepth: 0.08, inletDiameter: 0.02 },
    control: { outages: [{ from: '01-05', to: '01-05', kind: 'power' }] },
  },
  'pump and module by points': {
    ...plain,
    pv: {
      tilt: 35,
      azimuth: 10,
      module: {
        ivPoints: [
          { voltage: 0, current: 1.2 },
          { voltage: 10, current: 1.18 },
          { voltage: 16, current: 1.1 },
          { voltage: 18, current: 0.9 },
          { voltage: 21, current: 0 },
        ],
      },
    },
    pump: { drive: 'direct', curves: [curve(6), curve(12), curve(18)], startVoltage: 5 },
  },
  'booster by points, covers, summer tilt, snow on plates': {
    ...plain,
    array: {
      ...plain.array,
      summerTilt: { tilt: 15, days: '01-03..01-06', withModule: true },
      covers: [{ days: '01-08..01-09', lightShare: 0.3 }],
      snowOnPanels: 'plate',
      snowAlbedo: 0.7,
      skyModel: 'hay-davies',
      windFactor: 0.6,
    },
    pump: { drive: 'booster', curves: [curve(12)] },
  },
  'ring, hot pipe, gas tank off by days and hours': {
    ...plain,
    draw: {
      ...plain.draw,
      ring: {
        ...pipe,
        length: 30,
        flow: 3e-5,
        hours: [
          [6, 9],
          [17, 22],
        ],
        pumpPower: 8,
      },
      hotPipe: { ...pipe, length: 6 },
    },
    heater: {
      kind: 'stored-gas',
      volume: 0.12,
      setTemperature: 60,
      offDays: ['01-08..01-09'],
      heatingHours: [
        [5, 9],
        [16, 21],
      ],
    },
  },
  'pool on the tank, isotropic sky, tank outdoors': {
    ...plain,
    array: { ...plain.array, panels: 4, inSeries: 2, skyModel: 'isotropic', snowOnPanels: 'tubes' },
    tank: {
      ...plain.tank,
      roomByMonth: 'outdoors',
      load: {
        temperature: 26,
        power: 2000,
        conductance: 200,
        leastTemperature: 30,
        height: 0.4,
        dailyHeat: 1.5e7,
        days: ['01-02..01-08'],
      },
    },
  },
  'heat pump, profile of litres, first of warm days': {
    ...plain,
    heater: {
      kind: 'heat-pump',
      volume: 0.2,
      setTemperature: 54,
      burnerPower: 1500,
      cop: { atZero: 2.6, perAirKelvin: 0.04 },
    },
    draw: {
      dailyVolume: 0.18,
      mains: { mean: 12, swing: 6, coldestDay: 20 },
      profile: 'evening',
      summerTime: '01-04..10-27',
    },
  },
  'second coil, oil boiler': {
    ...plain,
    tank: { ...plain.tank, volume: 0.3 },
    heater: {
      kind: 'boiler-coil',
      fuel: 'heating-oil',
      setTemperature: 55,
      coilConductance: 400,
      boilerTemperature: 75,
      heatingHours: [[6, 22]],
    },
  },
  'boiler tank, heat pump by points as baseline': {
    ...plain,
    heater: { kind: 'stored-boiler', volume: 0.15, setTemperature: 57 },
    draw: { ...plain.draw, mixingValve: false, profile: 'S' },
  },
  'element with spare PV, cooled at night, no check valve': {
    ...plain,
    array: { ...plain.array, panels: 3 },
    tank: { volume: 0.15, initialTemperature: 55 },
    pump: { drive: 'mains' },
    loop: { checkValve: false, staticHeight: 3 },
    heater: {
      kind: 'element',
      burnerPower: 1500,
      elementHeight: 0.6,
      setTemperature: 52,
      sparePv: { peakPower: 2000, houseLoad: 300 },
    },
    control: { mode: 'difference', nightCooling: { above: 55, until: 48 }, highLimit: 70 },
  },
  'plate exchanger, timer, flow-through electricity short of power': {
    ...plain,
    loop: { exchanger: 'plate', plate: { conductance: 300, secondaryFlow: 4e-5, returnHeight: 0.7 } },
    pump: { drive: 'mains' },
    heater: { kind: 'instantaneous-electric', burnerPower: 7000, minimumFlow: 4e-5 },
    control: {
      mode: 'schedule',
      schedule: [
        [8, 12],
        [13, 17],
      ],
      outages: [{ from: '01-04', to: '01-04', kind: 'power' }],
    },
  },
  'flow-through gas, minimum fire, sensor on the pipe': {
    ...plain,
    pump: { drive: 'mains' },
    heater: { kind: 'instantaneous-gas', burnerPower: 20_000, minimumPower: 5000, minimumRise: 3, minimumFlow: 3e-5 },
    draw: { ...plain.draw, mixingValve: false, holidays: ['01-03..01-04'] },
    control: { mode: 'difference', difference: { collectorSensor: 'pipe', tankSensorHeight: 0.2, start: 10, stop: 2 } },
  },
  'stagnation, boiling and relief, a leak': {
    ...plain,
    array: {
      ...plain.array,
      panels: 5,
      collector: {
        ...panel,
        a1: 1.2,
        a2: 0.004,
        incidenceModifier: {
          transversal: { angles, values: [1, 1.05, 1.2, 1.3, 0.8, 0] },
          longitudinal: { angles, values: [1, 0.99, 0.97, 0.88, 0.4, 0] },
          tubes: 'upright',
        },
      },
    },
    tank: { volume: 0.12, initialTemperature: 70, reliefTemperature: 90, nodes: 8 },
    loop: {
      pressure: '0.8 bar',
      vesselVolume: '4 L',
      vesselPrecharge: '0.6 bar',
      leak: '1 L/day',
      makeUp: true,
      fluid: 'ethylene-glycol',
      glycolMassFraction: 0.35,
    },
    control: { highLimit: null, outages: [{ from: '01-06', to: '01-07', kind: 'pump' }] },
  },
  'unglazed by wind and sky, level tubes, own step': {
    ...plain,
    array: {
      ...plain.array,
      panels: 4,
      collector: {
        area: 2,
        eta0: 0.82,
        a1: 14,
        a2: 0,
        a3: 2.5,
        a4: 0.8,
        a6: 0.02,
        a7: 0.01,
        glazed: false,
        incidenceModifier: { angles, values: [1, 1, 0.98, 0.9, 0.6, 0] },
      },
    },
    loop: { heatBridgeFactor: 1.6, outdoorShare: 0.7 },
  },
  'two covers, twenty nodes, long thin pipes': {
    ...plain,
    array: {
      ...plain.array,
      collector: {
        ...panel,
        skyCoefficient: 0.3,
        incidenceModifier: { covers: 2, refractiveIndex: 1.526, extinction: 8, thickness: 0.004 },
      },
    },
    loop: { pipeLength: 60, pipeInnerDiameter: 0.01, pipeOuterDiameter: 0.012 },
    tank: { ...plain.tank, nodes: 20, lossCoefficient: 4 },
    draw: { profile: 'XL', mains: 'from-weather' },
  },
  'two tanks charged in turn': {
    ...plain,
    array: { ...plain.array, panels: 4 },
    pump: { drive: 'mains' },
    tank: {
      ...plain.tank,
      volume: 0.12,
      second: { charging: 'in-turn', volume: 0.1, roomTemperature: 10, divertAt: 45, inletDiameter: 0.015 },
    },
  },
  'two tanks in series without a limit': {
    ...plain,
    array: { ...plain.array, panels: 6 },
    tank: { volume: 0.08, initialTemperature: 85, second: { charging: 'series', volume: 0.06, coil: { length: 8 } } },
    draw: { ...plain.draw, dailyVolume: 0.04 },
    control: { highLimit: null },
  },
};
