// What gauges are called, and how they may be wrong.
import type { MeasuredKey } from './observe.ts';

/** Names of gauges. */
export const GAUGE_NAMES: Readonly<Record<MeasuredKey, string>> = {
  tankTopTemperature: 'thermometer at the tank’s top',
  flowTemperature: 'thermometer on the hot pipe',
  returnTemperature: 'thermometer on the cold pipe',
  loopPressure: 'pressure gauge',
  heaterMeter: 'heater’s meter',
};

/** Wrong gauges: offsets and their spread. Judgement. */
export const OFFSETS: Readonly<Record<'temperature' | 'pressure', readonly (readonly [number, number])[]>> = {
  temperature: [
    [7, 2.5],
    [-7, 2.5],
    [15, 5],
    [-15, 5],
  ],
  pressure: [
    [50_000, 15_000],
    [-50_000, 15_000],
    [120_000, 40_000],
    [-120_000, 40_000],
  ],
};
/** A gauge that is stuck may be stuck anywhere here: middle and spread. Judgement. */
export const STUCK = { temperature: [40, 30], pressure: [150_000, 100_000] } as const;
