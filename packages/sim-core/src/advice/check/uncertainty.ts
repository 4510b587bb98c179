// What is uncertain about house and weather, by how much unless told, and how a run shows it.
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { quantityOr } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import { changeCollectors } from '../../physics/collector/groups.ts';
import { withLossTimes } from '../../physics/tank/tank-pair.ts';
import { type Habits, PLAIN_HABITS } from './span-run.ts';

const judged = 'judgement';

/** Uncertainty of house and weather, each as one standard deviation. */
export interface ModelUncertainty {
  /** Of eta0, relative; default 0.05. [-] */
  readonly eta0: number;
  /** Of a1 and a2 together, relative; default 0.15. [-] */
  readonly collectorLoss: number;
  /** Of the tank's loss coefficient, relative; default 0.25. [-] */
  readonly tankLoss: number;
  /** Of the backup heater's standby loss, relative; default 0.25. [-] */
  readonly heaterLoss: number;
  /** Of the mean daily draw, relative; default 0.2. [-] */
  readonly draw: number;
  /** Of one day's draw about the mean, relative; default 0.4. [-] */
  readonly dailyDraw: number;
  /** Of the sun in the weather file, relative, the same for all days; default 0.04. [-] */
  readonly sun: number;
  /** Of one day's sun about that, relative; default 0.08: a station some kilometres away. [-] */
  readonly dailySun: number;
  /** Of the mains; default 1.5. [K] */
  readonly mains: number;
  /** Of the room around the tank; default 3. [K] */
  readonly room: number;
  /** Of the fill pressure; default 15 kPa. [Pa] */
  readonly fillPressure: number;
  /** Of the place and the contact of a thermometer, the same in all its readings; default 1.5. [K] */
  readonly thermometer: number;
  /** Of what the meter counts against what the heater gives (its efficiency), relative; default 0.08. [-] */
  readonly meter: number;
  /** Of the model itself in a temperature, lasting some two days; default 1. [K] */
  readonly model: number;
}

/** Scatter of one reading, each as one standard deviation. */
export interface ReadingNoise {
  /** Of a thermometer; default 1. [K] */
  readonly temperature: number;
  /** Of the pressure gauge; default 5 kPa. [Pa] */
  readonly pressure: number;
  /** Of the meter: its last digit; default 1 MJ. [J] */
  readonly meter: number;
  /** Of the time written down; default 10 min. [s] */
  readonly time: number;
  /** Share of readings of the pump that are wrong; default 0.05. [-] */
  readonly pump: number;
}

export const uncertaintySchema = z.strictObject({
  eta0: quantityOr('fraction', 0.001, 0.5, 0.05, judged),
  collectorLoss: quantityOr('fraction', 0.001, 1, 0.15, judged),
  tankLoss: quantityOr('fraction', 0.001, 1, 0.25, judged),
  heaterLoss: quantityOr('fraction', 0.001, 1, 0.25, judged),
  draw: quantityOr('fraction', 0.001, 1, 0.2, judged),
  dailyDraw: quantityOr('fraction', 0.001, 2, 0.4, judged),
  sun: quantityOr('fraction', 0.001, 0.5, 0.04, judged),
  dailySun: quantityOr('fraction', 0.001, 1, 0.08, judged),
  mains: quantityOr('temperatureDifference', 0.01, 15, 1.5, judged),
  room: quantityOr('temperatureDifference', 0.01, 15, 3, judged),
  fillPressure: quantityOr('pressure', 100, 2e5, 15_000, judged),
  thermometer: quantityOr('temperatureDifference', 0.01, 20, 1.5, judged),
  meter: quantityOr('fraction', 0.001, 1, 0.08, judged),
  model: quantityOr('temperatureDifference', 0.01, 20, 1, judged),
});

export const noiseSchema = z.strictObject({
  temperature: quantityOr('temperatureDifference', 0.05, 20, 1, judged),
  pressure: quantityOr('pressure', 100, 1e5, 5000, judged),
  meter: z
    .custom<number>(() => true)
    .default(1e6)
    .superRefine((value, context) => {
      if (typeof value === 'number' && value >= 1e3 && value <= 1e9) return;
      context.addIssue({
        code: 'custom',
        params: { found: String(value).slice(0, 40), expected: 'a number from 1e3 to 1e9 J', remedy: 'Give joules.' },
      });
    }),
  time: quantityOr('duration', 0, 7200, 600, judged),
  pump: quantityOr('fraction', 0.001, 0.3, 0.05, judged),
});

/** What is uncertain all through a run and moves it. `eta0` stands for the sun in the weather file too: they do the same. */
export const PARAMETERS = ['eta0', 'collectorLoss', 'tankLoss', 'draw', 'mains', 'heaterLoss', 'room'] as const;

/** How many of them, from the first, act otherwise in a faulty system than in a healthy one; the rest hardly do. */
export const PARAMETERS_OF_FAULTS = 5;

/** Name of one of them. */
type ParameterKey = (typeof PARAMETERS)[number];

/** A house in a weather, with its habits. */
export interface House {
  readonly design: SystemDesign;
  readonly weather: WeatherYear;
  readonly habits: Habits;
}

/** One standard deviation of each. */
export const deviationOf = (key: ParameterKey, uncertainty: ModelUncertainty): number =>
  key === 'eta0' ? Math.hypot(uncertainty.eta0, uncertainty.sun) : uncertainty[key];

/** House as the design and the file say. */
export const plainHouse = (design: SystemDesign, weather: WeatherYear): House => ({
  design,
  weather,
  habits: PLAIN_HABITS,
});

/**
 * Moves one uncertain thing.
 *
 * @param by - Relative, or in K for mains and room.
 */
export function moved(house: House, key: ParameterKey, by: number): House {
  const { design, habits } = house;
  const { heater, tank } = design;
  const factor = 1 + by;
  switch (key) {
    case 'eta0':
      return withCollectors(house, ({ eta0 }) => ({ eta0: eta0 * factor }));
    case 'collectorLoss':
      return withCollectors(house, ({ a1, a2 }) => ({ a1: a1 * factor, a2: a2 * factor }));
    case 'tankLoss':
      return { ...house, design: { ...design, tank: withLossTimes(tank, factor) } };
    case 'heaterLoss':
      return {
        ...house,
        design: { ...design, heater: { ...heater, lossCoefficient: heater.lossCoefficient * factor } },
      };
    case 'draw': {
      const daily = habits.dailyDraw ?? new Float64Array(365).fill(1);
      return { ...house, habits: { ...habits, dailyDraw: daily.map((value) => value * factor) } };
    }
    case 'mains':
      return { ...house, habits: { ...habits, mains: habits.mains + by } };
    case 'room':
      return { ...house, design: { ...design, tank: { ...tank, roomTemperature: tank.roomTemperature + by } } };
  }
}

const withCollectors = (house: House, change: Parameters<typeof changeCollectors>[1]): House => ({
  ...house,
  design: changeCollectors(house.design, change),
});
