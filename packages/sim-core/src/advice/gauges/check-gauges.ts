import type { GaugeLog } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { WATER_HEAT_CAPACITY } from '../../physics/tank/tank.ts';
import { quantileOf } from './changes.ts';
import { type Days, daysOf, HOT } from './days.ts';
import { quietDecay } from './nights.ts';
import { findingsOf, type Papers } from './rules.ts';
import { type Series, seriesOf } from './series.ts';
import type { GaugeCheck, GaugeFigure, GaugeFigureKey, GaugeUntoldCode } from './types.ts';

/** A limit is no lower than this, whatever a log has seen. Judgement. [°C] */
const LEAST_LIMIT = 45;

/**
 * What frequent readings tell without weather and without a run: whether the loop cools the tank at night, whether the pump stands or
 * moves nothing though the collector is hot, whether starts and stops have moved apart from their gauges, whether less heat is carried
 * or the tank cools faster than before (docs/theory/check-gauges.md). And what a calibration can read off them: start and stop
 * difference, the tank's time constant, its loss. It needs no year, and takes less than a second for a year of 5-minute readings.
 *
 * It says nothing of what needs the weather: dirty or shaded panels, thinned fluid, how much heat there should have been. What was
 * wrong from the first reading on is told by absolute rules alone; `untold` lists all that.
 *
 * @param log - From `readLog` or of the same shape: `collectorTemperature`, one or two of the tank, readings every 30 min or closer,
 *   7 days or more; pump, room, air and light where known.
 * @param design - From `defineSystem`, where papers are at hand: of it count settings, volume and loss that were written, no default.
 * @throws {@link DesignError} listing all faults of the log at once, by path.
 * @example
 * const { verdict, findings, figures } = checkGauges(await readLog('house.csv', layout));
 */
export function checkGauges(log: GaugeLog, design: SystemDesign | null = null): GaugeCheck {
  const series = seriesOf(log);
  const { written, heatCapacity } = papersOf(design);
  const days = daysOf(series, written.limit ?? seenLimit(series));
  const findings = findingsOf(series, days, written);
  return {
    verdict: findings[0]?.fault ?? 'nothing-seen',
    findings,
    figures: figuresOf(days, heatCapacity),
    untold: untoldOf(series, days, design, heatCapacity),
    days: days.hour.length,
    span: [series.hour[0]!, series.hour.at(-1)!],
    remarks: log.assumptions.map(({ text }) => text),
  };
}

/** Where nobody says it, the limit is at the tank's highest, if collectors stood hot at all. [°C] */
function seenLimit({ collector, bottom, top, speed }: Series): number {
  const stood = top.some((_, at) => !(speed[at]! > 0) && collector[at]! - bottom[at]! > HOT);
  return stood ? Math.max(quantileOf(top, 0.999), LEAST_LIMIT) : Number.POSITIVE_INFINITY;
}

interface Known {
  readonly written: Papers & { readonly limit: number | null };
  /** Of the tank, where its volume is known. [W h/K] */
  readonly heatCapacity: number | null;
}

/** What of a design was written by someone who knows, and not filled in. */
function papersOf(design: SystemDesign | null): Known {
  if (design === null) return { written: { start: null, decay: null, limit: null }, heatCapacity: null };
  const { assumptions, control, tank } = design;
  const written = (path: string) => !assumptions.some((one) => one.path === path || path.startsWith(`${one.path}.`));
  // Of two tanks it is not known in which the gauges sit.
  const heatCapacity = tank.second === null ? (tank.volume * WATER_HEAT_CAPACITY) / 3600 : null;
  return {
    written: {
      start: control.mode === 'difference' && written('control.difference.start') ? control.difference.start : null,
      decay: heatCapacity !== null && written('tank.lossCoefficient') ? tank.lossCoefficient / heatCapacity : null,
      limit: written('control.highLimit') ? control.highLimit : null,
    },
    heatCapacity,
  };
}

function figuresOf(days: Days, heatCapacity: number | null): GaugeFigure[] {
  const figure = (key: GaugeFigureKey, unit: string, values: Float64Array): GaugeFigure[] => {
    const count = values.filter((value) => !Number.isNaN(value)).length;
    const [low, value, high] = [0.25, 0.5, 0.75].map((share) => quantileOf(values, share));
    return count < 3 ? [] : [{ key, unit, value: value!, low: low!, high: high!, count }];
  };
  const quiet = quietDecay(days).map((value) => (value <= 0 ? Number.NaN : value));
  const standing = figure('hottest-standing', '°C', days.hottest);
  return [
    ...figure('start-difference', 'K', days.start),
    ...figure('stop-difference', 'K', days.stop),
    ...figure('running-difference', 'K', days.running),
    ...figure('carried', '1/h', days.carried),
    ...figure(
      'night-time-constant',
      'h',
      quiet.map((value) => 1 / value),
    ),
    ...(heatCapacity === null
      ? []
      : figure(
          'tank-loss',
          'W/K',
          quiet.map((value) => value * heatCapacity),
        )),
    ...figure('start-light', 'W/m²', days.startLight),
    ...standing.map((one) => ({ ...one, value: Math.max(...days.hottest.filter((value) => !Number.isNaN(value))) })),
  ];
}

function untoldOf(
  { has }: Series,
  days: Days,
  design: SystemDesign | null,
  heatCapacity: number | null,
): GaugeUntoldCode[] {
  const counted = (values: Float64Array) => values.filter((value) => !Number.isNaN(value)).length;
  const where = (holds: boolean, code: GaugeUntoldCode): GaugeUntoldCode[] => (holds ? [code] : []);
  const pump = has('pumpSpeed') || has('pumpRuns');
  return [
    'no-weather',
    'fault-from-the-start',
    'sensor-that-steers',
    'flow-or-fouling',
    ...where(!pump, 'no-pump'),
    ...where(!has('tankBottomTemperature'), 'no-bottom'),
    ...where(!has('roomTemperature'), 'no-room'),
    ...where(!has('light'), 'no-light'),
    ...where(heatCapacity === null, 'no-volume'),
    ...where(design === null, 'no-settings'),
    ...where(counted(days.decay) < 5, 'few-nights'),
    ...where(pump && counted(days.start) < 5, 'few-starts'),
    'not-an-inspection',
  ];
}
