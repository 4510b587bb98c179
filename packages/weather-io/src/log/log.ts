import type { WeatherAssumption } from '../year.ts';

/** What one line of a notebook may hold. */
export interface GaugeReading {
  /** Hours from 00:00 on 1 January, local standard time, in a calendar without 29 February; 0 to 8760. [h] */
  readonly hour: number;
  /** Line in the file; `null` for a reading that was not read from one. */
  readonly line: number | null;
  /** Thermometer at the top of the solar tank. [°C] */
  readonly tankTopTemperature: number | null;
  /** Thermometer on the hot pipe of the loop, near the tank. [°C] */
  readonly flowTemperature: number | null;
  /** Thermometer on the cold pipe of the loop, near the tank. [°C] */
  readonly returnTemperature: number | null;
  /** Gauge of the loop. [Pa gauge] */
  readonly loopPressure: number | null;
  /** Whether the pump was heard or felt to turn. */
  readonly pumpRuns: boolean | null;
  /** Meter of the backup heater's gas or electricity: energy counted so far, from any start. [J] */
  readonly heaterMeter: number | null;
  /** Sensor of the collector. [°C] */
  readonly collectorTemperature?: number | null;
  /** Thermometer at the bottom of the solar tank, by the coil. [°C] */
  readonly tankBottomTemperature?: number | null;
  /** Air of the room in which the tank stands. [°C] */
  readonly roomTemperature?: number | null;
  /** Outdoor air in the shade. [°C] */
  readonly airTemperature?: number | null;
  /** What the pump is told to do or does, as a share of its full speed; 0 stands. [-] */
  readonly pumpSpeed?: number | null;
  /** Light on the panels or on level ground. [W/m²] */
  readonly light?: number | null;
}

/** Quantities of a reading. */
export type GaugeKey = Exclude<keyof GaugeReading, 'hour' | 'line'>;

/** Readings at irregular times within one calendar year. */
export interface GaugeLog {
  /** File name or label; shown in reports. */
  readonly source: string;
  /** Calendar year in which the readings were taken. */
  readonly calendarYear: number;
  /** In the order of their times; each holds at least one quantity. */
  readonly readings: readonly GaugeReading[];
  /** What was assumed or left out while reading, in the order found. */
  readonly assumptions: readonly WeatherAssumption[];
}
