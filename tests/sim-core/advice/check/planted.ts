import type { SystemDesign } from '@noonloop/sim-core';
import type { GaugeLog, GaugeReading, WeatherYear } from '@noonloop/weather-io';
import type { CauseCode } from '../../../../packages/sim-core/src/advice/check/causes.ts';
import { LIME_CONDUCTIVITY } from '../../../../packages/sim-core/src/advice/check/faults.ts';
import { dayHouses } from '../../../../packages/sim-core/src/advice/check/library.ts';
import { gaussFrom, uniformFrom } from '../../../../packages/sim-core/src/advice/check/lots.ts';
import { MEASURED, type MeasuredKey, valueAt } from '../../../../packages/sim-core/src/advice/check/observe.ts';
import { SHAPES } from '../../../../packages/sim-core/src/advice/check/shapes.ts';
import { runSpan, type Span, type Trace } from '../../../../packages/sim-core/src/advice/check/span-run.ts';
import {
  type House,
  type ModelUncertainty,
  moved,
  PARAMETERS,
  plainHouse,
  type ReadingNoise,
} from '../../../../packages/sim-core/src/advice/check/uncertainty.ts';
import { scaledLight } from '../../../../packages/sim-core/src/physics/sun/scaled-light.ts';

/** Gauges that a notebook holds. */
export type GaugeSet = readonly (MeasuredKey | 'pumpRuns')[];

export const GAUGE_SETS: Readonly<Record<string, GaugeSet>> = {
  'all gauges': [
    'tankTopTemperature',
    'flowTemperature',
    'returnTemperature',
    'loopPressure',
    'pumpRuns',
    'heaterMeter',
  ],
  'tank, both pipes, pump': ['tankTopTemperature', 'flowTemperature', 'returnTemperature', 'pumpRuns'],
  'tank, pressure, pump': ['tankTopTemperature', 'loopPressure', 'pumpRuns'],
};

/** A log of our own making: invented, with what was planted. */
export interface Planted {
  readonly cause: CauseCode;
  readonly log: GaugeLog;
  readonly since: number | null;
  /** Relative or in K, by which the house differs from the model. */
  readonly differs: Readonly<Record<string, number>>;
}

export interface PlantOptions {
  readonly design: SystemDesign;
  readonly weather: WeatherYear;
  /** Span of the runs; readings begin `settle` hours after its start. */
  readonly span: Span;
  readonly settle: number;
  readonly uncertainty: ModelUncertainty;
  readonly noise: ReadingNoise;
  readonly cause: CauseCode;
  readonly gauges: GaugeSet;
  readonly readings: number;
  readonly seed: number;
  /** Whether the fault is there all through; else it begins within the span in half of the logs. */
  readonly allThrough?: boolean;
}

/** Runs a house that differs at random from the model, with a fault of random severity and beginning, and reads its gauges. */
export function plant(options: PlantOptions): Planted {
  const { cause, design, gauges, noise, settle, span, uncertainty, weather } = options;
  const uniform = uniformFrom(options.seed);
  const gauss = gaussFrom(uniform);
  const between = (from: number, to: number): number => from + uniform() * (to - from);
  const { house, differs } = otherHouse(plainHouse(design, weather), uncertainty, gauss, between, options.seed);

  const first = span.from + settle;
  const sudden = uniform() < 0.5 && options.allThrough !== true;
  const since = cause === 'healthy' || !sudden ? null : between(first, first + 0.8 * (span.to - first));
  const fault = faultFor(cause, design, uniform, between);
  const change = fault.sudden ? since : null;
  const healthy = runHouse(house, span);
  const trace =
    fault.apply === null
      ? healthy
      : change === null
        ? runHouse({ ...house, design: fault.apply(house.design) }, span)
        : runSwitched(house, fault.apply, span, Math.round(change));

  const times = readingTimes(first, span.to - 1, options.readings, uniform, between);
  const offsets = Object.fromEntries(
    MEASURED.map((key) => [
      key,
      gauss() * (key === 'loopPressure' ? uncertainty.fillPressure : uncertainty.thermometer),
    ]),
  ) as Record<MeasuredKey, number>;
  const meterFactor = 1 + uncertainty.meter * gauss();
  const meterStart = between(1e9, 1e10);
  const wrongOnes = MEASURED.filter((key) => key !== 'heaterMeter' && gauges.includes(key));
  const wrongKey = wrongOnes[Math.trunc(uniform() * wrongOnes.length)]!;
  const wrong = wrongGauge(wrongKey, uniform, between);
  let lastMeter = 0;
  const readings = times.map((hour): GaugeReading => {
    const really = hour + (noise.time / 3600) * gauss();
    const reading: Record<string, number | boolean | null> = { hour, line: null };
    for (const key of [...MEASURED, 'pumpRuns'] as const) reading[key] = null;
    for (const key of MEASURED.filter((name) => gauges.includes(name))) {
      const truth = valueAt(trace[key], trace.from, really);
      if (key === 'heaterMeter') {
        lastMeter = Math.max(lastMeter, meterStart + truth * meterFactor + noise.meter * gauss());
        reading[key] = lastMeter;
        continue;
      }
      const scatter = gauss() * (key === 'loopPressure' ? noise.pressure : noise.temperature);
      const isWrong = cause === 'sensor-wrong' && key === wrongKey && (since === null || hour >= since);
      const slip = uniform() < 0.01 ? (key === 'loopPressure' ? 60_000 : 15) * (uniform() < 0.5 ? -1 : 1) : 0;
      reading[key] = (isWrong ? wrong(truth) : truth) + offsets[key] + scatter + slip;
    }
    if (gauges.includes('pumpRuns')) {
      const heard = (fault.turnsAsHealthy ? healthy : trace).pumpRuns;
      const place = Math.min(Math.max(Math.trunc(really - trace.from), 0), heard.length - 1);
      const runs = uniform() < heard[place]!;
      reading.pumpRuns = uniform() < 0.03 ? !runs : runs;
    }
    return reading as unknown as GaugeReading;
  });
  const log = { source: `invented log ${options.seed}`, calendarYear: 2023, readings, assumptions: [] };
  return { cause, log, since: change, differs };
}

type Between = (from: number, to: number) => number;

function otherHouse(plain: House, uncertainty: ModelUncertainty, gauss: () => number, between: Between, seed: number) {
  const differs: Record<string, number> = {};
  let house = plain;
  for (const key of PARAMETERS) {
    differs[key] = gauss() * uncertainty[key];
    house = moved(house, key, differs[key]);
  }
  const sun = Math.max(-0.3, gauss() * uncertainty.sun);
  differs.sun = sun;
  house = { ...house, weather: scaledLight(house.weather, () => 1 + sun) };
  const [days] = dayHouses(house, uncertainty, 1, seed + 77_000_000);
  const mean = 1 + (differs.draw ?? 0);
  const habits = { ...days!.habits, dailyDraw: days!.habits.dailyDraw!.map((value) => value * mean) };
  // What nobody states: other pipes, other scale, another glass, finer layers.
  const { array, coil, loop, tank } = house.design;
  const design: SystemDesign = {
    ...house.design,
    array: {
      ...array,
      collector: { ...array.collector, incidenceModifier: { b0: between(0.06, 0.16) } },
    },
    coil: { ...coil, fouling: coil.fouling * between(0.5, 3) },
    loop: { ...loop, insulationThickness: loop.insulationThickness * between(0.6, 1.3) },
    tank: { ...tank, nodes: 30 },
  };
  return { house: { design, weather: days!.weather, habits }, differs };
}

const FINE = 12;
const runHouse = ({ design, weather, habits }: House, span: Span): Trace =>
  runSpan(design, weather, span, habits, { stepsPerHour: FINE });

/** The fault comes within the span. */
function runSwitched(house: House, apply: (design: SystemDesign) => SystemDesign, span: Span, at: number): Trace {
  const { design, weather, habits } = house;
  const before = runSpan(design, weather, { from: span.from, to: at }, habits, { stepsPerHour: FINE });
  const after = runSpan(apply(design), weather, { from: at, to: span.to }, habits, {
    stepsPerHour: FINE,
    start: before.end,
  });
  const join = (a: Float64Array, b: Float64Array, plus = 0) =>
    Float64Array.from([...a, ...b.map((value) => value + plus)]);
  return {
    from: span.from,
    tankTopTemperature: join(before.tankTopTemperature, after.tankTopTemperature),
    flowTemperature: join(before.flowTemperature, after.flowTemperature),
    returnTemperature: join(before.returnTemperature, after.returnTemperature),
    loopPressure: join(before.loopPressure, after.loopPressure),
    pumpRuns: join(before.pumpRuns, after.pumpRuns),
    heaterMeter: join(before.heaterMeter, after.heaterMeter, before.heaterMeter.at(-1)!),
    end: after.end,
  };
}

interface PlantedFault {
  readonly apply: ((design: SystemDesign) => SystemDesign) | null;
  readonly turnsAsHealthy: boolean;
  readonly sudden: boolean;
}

/** A fault between the mild and the severe form of the hypotheses, at no degree of theirs. */
function faultFor(cause: CauseCode, healthy: SystemDesign, uniform: () => number, between: Between): PlantedFault {
  const fault = (apply: PlantedFault['apply'], extra: Partial<PlantedFault> = {}): PlantedFault => ({
    apply,
    turnsAsHealthy: false,
    sudden: true,
    ...extra,
  });
  const half = uniform() < 0.5;
  switch (cause) {
    case 'healthy':
    case 'sensor-wrong':
      return fault(null);
    case 'no-flow': {
      const share = between(0, 1);
      return half
        ? fault(SHAPES.stopped, { turnsAsHealthy: true })
        : fault((design) => SHAPES.throttled(design, share));
    }
    case 'pump-fault': {
      const left = between(0.16, 0.3);
      return half ? fault(SHAPES.stopped) : fault((design) => SHAPES.weakModule(design, left));
    }
    case 'lost-fluid': {
      const vessels = 0.01 * 6 ** uniform();
      const fall = between(0.5, 1.1) * healthy.loop.pressure;
      return half
        ? fault((design) => SHAPES.leaking(design, vessels), { turnsAsHealthy: true, sudden: false })
        : fault((design) => SHAPES.lowPressure(design, fall), { turnsAsHealthy: true });
    }
    case 'scaled-coil': {
      const resistance = (0.001 * 20 ** uniform()) / LIME_CONDUCTIVITY; // 1 to 20 mm of lime
      return fault((design) => SHAPES.scaled(design, resistance));
    }
    case 'sediment': {
      const buried = between(0.5, 0.95);
      return fault((design) => SHAPES.silted(design, buried));
    }
    case 'dirty-or-shaded': {
      const lost = between(0.2, 0.6);
      const aside = between(25, 65) * (uniform() < 0.5 ? -1 : 1);
      return half ? fault((design) => SHAPES.dirty(design, lost)) : fault((design) => SHAPES.shaded(design, aside));
    }
    case 'check-valve':
      return fault(SHAPES.openCheckValve);
    case 'high-limit': {
      const below = between(12, 42);
      return fault((design) => SHAPES.lowLimit(design, below));
    }
    case 'vessel-charge': {
      const gasLeft = between(0.12, 0.4);
      return fault((design) => SHAPES.flatVessel(design, gasLeft), { sudden: false });
    }
    case 'dip-tube': {
      const mouth = between(0.004, 0.01);
      return fault((design) => SHAPES.stirred(design, mouth));
    }
    case 'thermostat': {
      const off = between(8, 20) * (uniform() < 0.5 ? -1 : 1);
      return fault((design) => SHAPES.thermostat(design, off));
    }
    case 'mixing-valve': {
      const below = between(6, 15);
      return fault((design) => SHAPES.coolValve(design, below));
    }
  }
}

function wrongGauge(key: MeasuredKey, uniform: () => number, between: Between): (truth: number) => number {
  const pressure = key === 'loopPressure';
  const sign = uniform() < 0.5 ? -1 : 1;
  const offset = sign * (pressure ? between(40_000, 150_000) : between(5, 20));
  const stuckAt = pressure ? between(30_000, 300_000) : between(15, 80);
  return uniform() < 0.2 ? () => stuckAt : (truth) => truth + offset;
}

/** Mornings, noons and evenings of random days. */
function readingTimes(from: number, to: number, count: number, uniform: () => number, between: Between): number[] {
  const hours = new Set<number>();
  for (let tries = 0; hours.size < count && tries < 50 * count; tries++) {
    const day = Math.trunc(between(from, to) / 24);
    const clock = [7, 13, 19][Math.trunc(3 * uniform())]! + between(-1.5, 1.5);
    const hour = Math.round(4 * (24 * day + clock)) / 4;
    if (hour > from && hour < to) hours.add(hour);
  }
  return [...hours].sort((a, b) => a - b);
}
