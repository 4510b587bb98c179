/** What the lesson page shows, computed: one week of a tank, hour by hour, by the same `steps` that Node runs. */
import { defineSystem, type HourState, type SystemDesign, steps } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';

/** What a learner may change. */
export interface LessonInput {
  /** Collectors of 2 m². */
  readonly panels: number;
  /** Tank. [L] */
  readonly tank_L: number;
  /** Water of 45 °C used a day. [L] */
  readonly draw_L: number;
  /** Coil in the tank. [m] */
  readonly coil_m: number;
  /** Rated power of the module that drives the pump. [W] */
  readonly module_W: number;
  /** Whether the pump stops where the tank's top passes 85 °C. */
  readonly limit: boolean;
}

/** Bounds and steps of the inputs, for page and test alike. */
export const BOUNDS = {
  panels: { least: 1, most: 6, step: 1, start: 3 },
  tank_L: { least: 100, most: 600, step: 50, start: 300 },
  draw_L: { least: 0, most: 400, step: 25, start: 150 },
  coil_m: { least: 2, most: 30, step: 1, start: 12 },
  module_W: { least: 5, most: 40, step: 5, start: 20 },
} as const;

/** Where the page starts. */
export const START: LessonInput = { panels: 3, tank_L: 300, draw_L: 150, coil_m: 12, module_W: 20, limit: false };

/** Hours in a week. */
export const WEEK = 168;
/** Whole weeks in a year. */
export const WEEKS = 52;

/** One hour of the week. */
export interface LessonHour extends HourState {
  /** Outdoor air. [°C] */
  readonly air: number;
}

/** A design of the lesson's inputs; what is not asked takes its default. */
export function lessonDesign({ panels, tank_L, draw_L, coil_m, module_W, limit }: LessonInput): SystemDesign {
  const size = module_W / 20;
  return defineSystem({
    name: 'lesson',
    array: { panels, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
    pv: {
      module: {
        shortCircuitCurrent: 1.24 * size,
        maximumPowerCurrent: 1.14 * size,
        currentTemperatureCoefficient: 0.0007 * size,
      },
    },
    tank: { volume: tank_L / 1000, reliefTemperature: 99 },
    coil: { length: coil_m },
    draw: { dailyVolume: draw_L / 1000 },
    control: { highLimit: limit ? 85 : null },
  });
}

/** Runs from 1 January up to the end of a week, and gives that week. Week 0 starts on 1 January. */
export function lessonWeek(input: LessonInput, weather: WeatherYear, week: number): LessonHour[] {
  const from = week * WEEK;
  const hours: LessonHour[] = [];
  for (const state of steps(lessonDesign(input), weather)) {
    if (state.hour >= from) hours.push({ ...state, air: weather.columns.dryBulb[state.hour]! });
    if (state.hour === from + WEEK - 1) break;
  }
  return hours;
}

/** Number of a kind with a real minus. */
export const shown = (value: number, digits = 0): string => {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
};

/** One line of the readout: words for it and its value. */
export type Reading = readonly [label: string, value: string];

/** What the page reads out of an hour, in the order shown. */
export function readings(hour: LessonHour): Reading[] {
  const top = hour.tank.at(-1)!;
  const mean = hour.tank.reduce((sum, value) => sum + value, 0) / hour.tank.length;
  return [
    ['Sun on the panels', `${shown(hour.irradiance)} W/m²`],
    ['Outdoor air', `${shown(hour.air)} °C`],
    ['Absorber', `${shown(Math.max(...hour.absorber))} °C`],
    ['Pump', hour.loopFlow > 0 ? `${shown(hour.loopFlow * 6e4, 1)} L/min` : 'stands'],
    ['Coil into tank', `${shown(hour.coilHeat / 3.6e6, 2)} kWh`],
    ['Tank, top', `${shown(top, 1)} °C`],
    ['Tank, middle', `${shown(mean, 1)} °C`],
    ['Tank, bottom', `${shown(hour.tank[0]!, 1)} °C`],
    ['Draw takes', `${shown(hour.solarHeat / 3.6e6, 2)} kWh`],
  ];
}

/** Names of the days of the lesson's year, whose 1 January is a Monday. */
const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July'];
MONTHS.push('August', 'September', 'October', 'November', 'December');
const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Day of the year, 0 to 364, as "14 June". */
export function dayName(day: number): string {
  let left = day;
  let month = 0;
  while (left >= LENGTHS[month]!) left -= LENGTHS[month++]!;
  return `${left + 1} ${MONTHS[month]}`;
}

/** End of an hour of the week in words, such as "Tuesday 15:00". */
export const hourName = (hour: number): string => {
  const end = hour + 1;
  return end % 24 === 0 ? `${DAYS[Math.trunc(hour / 24)]} 24:00` : `${DAYS[Math.trunc(end / 24)]} ${end % 24}:00`;
};

/** One day of the week's table: name, sun [kWh/m²], delivered [kWh], hottest and coldest layer [°C]. */
export function dayRows(hours: readonly LessonHour[], week: number): string[][] {
  return DAYS.map((day, index) => {
    const part = hours.slice(24 * index, 24 * index + 24);
    const sum = (key: 'irradiance' | 'solarHeat') => part.reduce((total, hour) => total + hour[key], 0);
    const layers = part.flatMap((hour) => [...hour.tank]);
    return [
      `${day.slice(0, 3)} ${dayName(7 * week + index)}`,
      shown(sum('irradiance') / 1000, 1),
      shown(sum('solarHeat') / 3.6e6, 1),
      shown(Math.max(...layers), 1),
      shown(Math.min(...layers), 1),
    ];
  });
}
