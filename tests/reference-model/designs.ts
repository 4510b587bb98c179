/** Nine designs that between them use every part. All invented. */
import { defineSystem, type SystemDesign, type SystemInput } from '@noonloop/sim-core';
import { MAINS_FAIL, NOBODY_HOME, PUMP_FAILS } from './days.ts';

const outages = [
  { from: PUMP_FAILS, to: PUMP_FAILS, kind: 'pump' as const },
  { from: MAINS_FAIL, to: MAINS_FAIL, kind: 'power' as const },
];

const plain: SystemInput = {
  array: { panels: 2, tilt: 35, azimuth: 10, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  pv: { tilt: 35, azimuth: 10 },
  tank: { volume: 0.3, initialTemperature: 30 },
  draw: { dailyVolume: 0.2, mains: 12, holidays: [NOBODY_HOME], profile: 'M' },
  control: { outages },
};

const INPUTS: Readonly<Record<string, SystemInput>> = {
  'as the defaults are, a heater of 65 °C': { ...plain, heater: { setTemperature: 65 } },
  'direct motor on two modules, small tank': {
    ...plain,
    array: {
      ...plain.array,
      panels: 3,
      horizon: [
        { azimuth: 60, altitude: 18 },
        { azimuth: 300, altitude: 5 },
      ],
    },
    pv: { tilt: 20, azimuth: 330, modules: 2 },
    pump: { drive: 'direct' },
    tank: { volume: 0.15, initialTemperature: 30 },
    heater: { kind: 'stored-electric', volume: 0.1, setTemperature: 57 },
    loop: { vesselVolume: '9 L' },
    draw: { ...plain.draw, mixingValve: false },
    control: { outages, highLimit: 55 },
  },
  'mains, by difference, flow-through gas': {
    ...plain,
    pump: { drive: 'mains' },
    draw: { profile: 'L', mains: 9, mixingValve: false },
    heater: { kind: 'instantaneous-gas', burnerPower: 18_000, minimumPower: 1000, minimumRise: 0 },
    control: { outages, mode: 'difference', difference: { start: 7, stop: 3 } },
  },
  'two tanks in series': {
    ...plain,
    array: { ...plain.array, panels: 3 },
    tank: {
      volume: 0.15,
      initialTemperature: 40,
      second: { volume: 0.2, initialTemperature: 20, roomTemperature: 8, coil: { length: 9, bottom: 0.1, top: 0.6 } },
    },
    heater: { setTemperature: 65 },
  },
  'by the clock, element in the tank': {
    ...plain,
    pump: { drive: 'mains' },
    heater: {
      kind: 'element',
      burnerPower: 2000,
      elementHeight: 0.6,
      setTemperature: 58,
      sparePv: { peakPower: 1500, houseLoad: 200 },
    },
    control: { outages, mode: 'schedule', schedule: [[8, 17]] },
  },
  'plate exchanger, water in the loop': {
    ...plain,
    loop: { exchanger: 'plate', fluid: 'water', plate: { returnHeight: 0.8 } },
    heater: { kind: 'instantaneous-electric', burnerPower: 21_000 },
  },
  'no check valve, sensor on the pipe': {
    ...plain,
    loop: { checkValve: false, staticHeight: 4 },
    heater: { setTemperature: 65 },
    control: {
      outages: outages.slice(1),
      mode: 'difference',
      difference: { collectorSensor: 'pipe', tankSensorHeight: 0.3 },
    },
  },
  'unglazed, two in a row, leak with make-up': {
    ...plain,
    array: {
      ...plain.array,
      panels: 4,
      inSeries: 2,
      collector: { area: 2, eta0: 0.82, a1: 14, a2: 0, a3: 2.5, a4: 0.8, a6: 0.02, a7: 0.01, glazed: false },
    },
    heater: { setTemperature: 65 },
    loop: { leak: '0.3 L/day', makeUp: true, fluid: 'ethylene-glycol' },
  },
  'tubes that boil, tank too small, leak': {
    ...plain,
    array: {
      ...plain.array,
      panels: 3,
      collector: {
        area: 2,
        eta0: 0.7,
        a1: 1.2,
        a2: 0.004,
        incidenceModifier: {
          tubes: 'upright',
          transversal: { angles: [0, 30, 60, 80], values: [1, 1.1, 1.3, 0.9] },
          longitudinal: { angles: [0, 30, 60, 80], values: [1, 0.98, 0.9, 0.5] },
        },
      },
    },
    heater: { setTemperature: 65 },
    loop: { pressure: '0.5 bar', vesselVolume: '60 L', vesselPrecharge: '0.5 bar', leak: '3 L/day' },
    tank: { volume: 0.12, initialTemperature: 60, reliefTemperature: 95 },
    control: { outages, highLimit: null },
  },
};

export const DESIGNS: readonly (readonly [string, SystemDesign])[] = Object.entries(INPUTS).map(([name, input]) => [
  name,
  defineSystem(input),
]);
