/** Readings of a run without lots, and what is first in a weighing of them. */
import type { GaugeLog, GaugeReading } from '@noonloop/weather-io';
import { CAUSES, type CauseCode } from '../../../../packages/sim-core/src/advice/check/causes.ts';
import { valueAt } from '../../../../packages/sim-core/src/advice/check/observe.ts';
import type { Trace } from '../../../../packages/sim-core/src/advice/check/span-run.ts';
import type { Weighing } from '../../../../packages/sim-core/src/advice/check/weigh.ts';

/** The likeliest cause. */
export const first = ({ weights }: Weighing): CauseCode => CAUSES.reduce((a, b) => (weights[b] > weights[a] ? b : a));

/** Readings of a run at hours of the log, each with what its gauge is off. */
export const readingsOf = (
  trace: Trace,
  hours: readonly number[],
  off: (at: number) => readonly number[],
): GaugeReading[] =>
  hours.map((hour, at) => {
    const show = (column: Float64Array, of = 0): number => valueAt(column, trace.from, hour) + (off(at)[of] ?? 0);
    return {
      hour,
      line: null,
      tankTopTemperature: show(trace.tankTopTemperature, 0),
      flowTemperature: show(trace.flowTemperature, 1),
      returnTemperature: show(trace.returnTemperature, 2),
      loopPressure: show(trace.loopPressure, 3),
      pumpRuns: null,
      heaterMeter: null,
    };
  });
/** The log that they make. */
export const logOf = (readings: GaugeReading[]): GaugeLog => ({
  source: 'x',
  calendarYear: 2023,
  readings,
  assumptions: [],
});
