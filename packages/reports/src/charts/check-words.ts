/** Gauges of a checked log in words, and their numbers in the units of a report. */
import type { CheckedNumber } from '@noonloop/sim-core';
import { displayUnit, formatNumber, toDisplay, type UnitKind, type Units } from '../units.ts';

type Gauge = CheckedNumber['gauge'];

interface GaugeWords {
  readonly word: string;
  readonly kind: UnitKind;
  /** Decimals of the finest gauge of its kind, finer than in a report. */
  readonly digits: Readonly<Record<Units, number>>;
}

const DEGREES = { kind: 'temperature', digits: { metric: 1, us: 1 } } as const;

/** In the order of the picture. The meter may count gas or electricity: shown as heat, not by the units of a bill. */
const GAUGES: Readonly<Record<Gauge, GaugeWords>> = {
  tankTopTemperature: { word: 'Tank top', ...DEGREES },
  flowTemperature: { word: 'Hot pipe', ...DEGREES },
  returnTemperature: { word: 'Cold pipe', ...DEGREES },
  loopPressure: { word: 'Loop pressure', kind: 'pressure', digits: { metric: 2, us: 1 } },
  heaterMeter: { word: 'Heater’s meter since its reading before', kind: 'energy', digits: { metric: 1, us: 0 } },
};

/** All gauges. */
export const GAUGE_KEYS = Object.keys(GAUGES) as readonly Gauge[];

/** What a gauge is called. */
export const gaugeWord = (gauge: Gauge): string => GAUGES[gauge].word;

/** Its unit. */
export const gaugeUnit = (gauge: Gauge, units: Units): string => displayUnit(GAUGES[gauge].kind, units).symbol;

/** A reading in its unit, not rounded. @param value - as in the check, in SI or °C */
export const shownReading = (value: number, gauge: Gauge, units: Units): number =>
  toDisplay(value, GAUGES[gauge].kind, units);

/** A reading without its unit. @param value - as in the check, in SI or °C */
export const formatReading = (value: number, gauge: Gauge, units: Units): string =>
  formatNumber(shownReading(value, gauge, units), GAUGES[gauge].digits[units]);
