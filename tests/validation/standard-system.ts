import { defineSystem, type RunResult, type SystemInput, simulate } from '@noonloop/sim-core';
import { coilConductance, pipeLossConductance } from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { WATER_HEAT_CAPACITY } from '../../packages/sim-core/src/physics/tank/tank.ts';
import { MONTH_HOURS, type MonthlyInput, monthlyFraction } from './monthly-method.ts';

/** Real climates of the comparison, by file. */
export const CLIMATES = [
  ['Greensboro, 36° N', 'weather/tmy3-greensboro-nc.csv'],
  ['Piedmont, 45° N', 'weather/pvgis-45N-8E.csv'],
  ['Sand Point, 55° N', 'weather/tmy3-sand-point-ak.csv'],
  ['Colorado, 41° N, 2200 m', 'weather/nsrdb-40N-108W-2017-30min.csv'],
] as const;
/** Panels of 1.5 m². */
export const PANELS = [1, 2, 3, 4] as const;
export const TANKS_L = [200, 400] as const;
const PANEL_AREA = 1.5;
/** Both sides see the same cold water, that of the standard's tests. [°C] */
const COLD = 10;
const WANTED = 40;
/** Heat of tapping profile M. [kWh] */
const DAILY_HEAT_kWh = 5.845;

/** What a variant of the standard system changes, to show a mechanism by switching it off. */
export type Variant = (input: SystemInput) => SystemInput;

/** A tank that cannot keep layers: the simulations behind the method's correlation had a mixed one (from memory). */
export const mixedTank: Variant = (input) => ({
  ...input,
  tank: { ...input.tank, nodes: 4, verticalConductivity: 100 },
});

/**
 * The standard system: flat plates at 45° south, PV-run pump in their plane without a high limit, a tank that only preheats, in a
 * heated room, a flow-through heater that fills up to 40 °C, draws of
 * tapping profile M by hours. Its pipes are written out, for a standard system does not follow our defaults: insulation of 0.040 W/(m·K) without
 * heat bridges, which the method's loss of pipes does not know either, and a clean coil.
 */
export function standardInput(panels: number, tank_L: number): SystemInput {
  const collector = { area: PANEL_AREA, eta0: 0.78, a1: 3.6, a2: 0.014 };
  return {
    array: { panels, tilt: 45, azimuth: 180, collector },
    tank: { volume: tank_L / 1000, roomTemperature: 20 },
    draw: {
      dailyVolume: (DAILY_HEAT_kWh * 3.6e6) / (WATER_HEAT_CAPACITY * (WANTED - COLD)),
      tapTemperature: WANTED,
      mains: COLD,
    },
    heater: {
      kind: 'instantaneous-electric',
      setTemperature: WANTED,
      burnerPower: 24_000,
      minimumPower: 0,
      minimumRise: 0,
      minimumFlow: 0,
    },
    loop: { insulationConductivity: 0.04, heatBridgeFactor: 1 },
    coil: { fouling: 1e-4 },
    control: { highLimit: null },
  };
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);

/** Twelve means of an hourly column. */
function monthlyMeans(column: Float64Array): number[] {
  let from = 0;
  return MONTH_HOURS.map((hours) => {
    const mean = sum(column.subarray(from, from + hours)) / hours;
    from += hours;
    return mean;
  });
}

/** Annual fraction by the simulation: heat delivered by the solar tank over heat asked. [-] */
export const simulatedFraction = ({ columns }: RunResult): number => sum(columns.solarHeat) / sum(columns.tapHeatAsked);

/** What the method is told of pipes and exchanger: those of the design, or that they are unknown. */
export type Known = 'known' | 'unknown';

/** The same system for the monthly method, with the weather of the run. */
export function monthlyInput({ columns, design }: RunResult, parts: Known): MonthlyInput {
  const { coil, loop } = design;
  const { area, eta0, a1, a2 } = design.array.collector;
  const total = area * design.array.panels;
  const flow = sum(columns.loopFlow) / sum(columns.pumpRunning);
  const { fluid, glycolMassFraction } = loop;
  // The coil in the middle of its work: fluid of 50 °C in water of 40 °C, the mean flow of the running pump.
  const ofCoil = coilConductance({ coil, fluid, glycolMassFraction, flow, fluidTemperature: 50, tankTemperature: 40 });
  return {
    area: total,
    eta0,
    a1,
    a2,
    modifier: 0.94,
    loop: { exchanger: parts === 'known' ? ofCoil.conductance : 100 * total },
    ...(parts === 'known' ? { pipeLoss: pipeLossConductance(loop) * loop.pipeLength } : {}),
    tankVolume_L: design.tank.volume * 1000,
    wanted: WANTED,
    cold: new Array<number>(12).fill(COLD),
    air: monthlyMeans(columns.ambientTemperature),
    irradiance: monthlyMeans(columns.irradiance),
    use_kWh: MONTH_HOURS.map((hours) => (DAILY_HEAT_kWh * hours) / 24),
  };
}

/** One row of the comparison. */
export interface Comparison {
  readonly climate: string;
  readonly area: number;
  readonly tank_L: number;
  readonly simulated: number;
  /** The method with pipes and exchanger of the design, and as if they were unknown. */
  readonly method: number;
  readonly methodUnknown: number;
  readonly result: RunResult;
}

/** Runs one system in one climate. */
export function compareOne(
  climate: string,
  weather: WeatherYear,
  panels: number,
  tank_L: number,
  { variant = (input) => input, stepsPerHour = 12 }: { variant?: Variant; stepsPerHour?: number } = {},
): Comparison {
  const result = simulate(defineSystem(variant(standardInput(panels, tank_L))), weather, { stepsPerHour });
  const simulated = simulatedFraction(result);
  const method = monthlyFraction(monthlyInput(result, 'known'));
  const methodUnknown = monthlyFraction(monthlyInput(result, 'unknown'));
  return { climate, area: PANEL_AREA * panels, tank_L, simulated, method, methodUnknown, result };
}
