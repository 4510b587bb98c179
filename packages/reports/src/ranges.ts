/** Bands of the leading numbers as ranges that people read: `35 to 70`. */
import type { BandShare, Bands, MeasureBand } from '@noonloop/sim-core';
import { DEFINITIONS, type NumberKey } from './definitions.ts';
import { ReportError } from './errors.ts';
import type { ReportOptions } from './options.ts';
import { displayUnit, formatNumber, roundTo, toDisplay, type Units } from './units.ts';

/** A range has about so many steps, so that its ends say no more than it knows. Judgement: 8 % of 1843 reads 1,700 to 2,000. */
const STEPS = 8;

/** Bands of a design; `null` where there are none. @throws {@link ReportError} where there are fewer or more sets than designs. @internal */
export function bandsAt({ bands }: ReportOptions, index: number, count: number): Bands | null {
  if (bands === undefined) return null;
  const list = Array.isArray(bands) ? (bands as readonly Bands[]) : [bands as Bands];
  if (Array.isArray(bands) && list.length !== count)
    throw new ReportError(
      'bands',
      `${list.length}`,
      `${count}, one for each design`,
      'Give the bands of every design.',
    );
  return list[index] ?? null;
}

/** 1, 2 or 5 times a power of ten, to which a range so wide is rounded. @param width - in any unit; 0 for whole ones */
export function rangeStep(width: number): number {
  if (!(width > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(width / STEPS));
  const size = width / STEPS / power;
  return power * (size < 1.5 ? 1 : size < 3.5 ? 2 : size < 7.5 ? 5 : 10);
}

/** `1,700 to 2,000`, ends rounded to the range; empty where they then are one. @param values - low and high, as shown @param digits - the finest that the number is shown with */
export function rangeText([low, high]: readonly [number, number], digits = 0): string {
  const step = Math.max(rangeStep(high - low), 10 ** -digits);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const [from, to] = [low, high].map((end) => formatNumber(roundTo(Math.round(end / step) * step, decimals), decimals));
  return from === to ? '' : `${from} to ${to}`;
}

/** Hours of events: `35 to 70`, from `none` on. */
export function hoursRange(low: number, high: number): string {
  if (high < 0.5) return '';
  return low < 0.5
    ? `none to ${formatNumber(Math.max(1, Math.round(high / rangeStep(high)) * rangeStep(high)), 0)}`
    : rangeText([low, high]);
}

/** The range of a band without its unit; empty where it has no width. */
export function bandRange(key: NumberKey, { low, high }: Pick<MeasureBand, 'low' | 'high'>, units: Units): string {
  const { kind } = DEFINITIONS[key];
  if (kind === 'hours' || kind === 'wholeHours') return hoursRange(low, high);
  const { digits } = displayUnit(kind, units);
  const shown = [toDisplay(low, kind, units), toDisplay(high, kind, units)] as const;
  return shown[0] === shown[1] ? '' : rangeText(shown, digits);
}

/** `about 50 h (35 to 70)`: value, unit and range in one. */
export function bandWords(key: NumberKey, band: Pick<MeasureBand, 'value' | 'low' | 'high'>, units: Units): string {
  const { kind } = DEFINITIONS[key];
  const { symbol } = displayUnit(kind, units);
  const range = bandRange(key, band, units);
  const shown = toDisplay(band.value, kind, units);
  if (kind === 'hours' && shown < 0.5) return range === '' ? 'none' : `none (${range})`;
  const step = Math.max(1, rangeStep(toDisplay(band.high, kind, units) - toDisplay(band.low, kind, units)));
  const about = formatNumber(kind === 'hours' ? Math.round(shown / step) * step || shown : shown, 0);
  return `about ${about} ${symbol}${range === '' ? '' : ` (${range})`}`;
}

const PART_WORDS: Readonly<Record<BandShare['name'], string>> = {
  light: 'the light of the place',
  'sky-model': 'the light on the panels',
  dirt: 'dirt on the glass',
  'other-years': 'the weather of the year',
  optics: 'the panels’ efficiency',
  'collector-loss': 'the panels’ losses',
  coil: 'the coil',
  'tank-loss': 'the tank’s loss',
  'cold-water': 'the cold water',
  'water-use': 'the water used',
  burner: 'the heater',
};

const WATER_WORDS: Readonly<Record<MeasureBand['water'], string>> = {
  meter: 'They hold for the water that is stated; another use moves all of it.',
  people: 'Households of as many people differ: litres off a meter would narrow it.',
  unknown: 'Nobody said who uses the water: people, or litres off a meter, would narrow it.',
};

/** How sure the numbers are, in sentences. @param bands - of the first design @internal */
export function bandsInWords(bands: Bands): string {
  const band = bands.fuelSaved ?? Object.values(bands)[0];
  if (band === undefined) return 'no leading number could be banded.';
  const [first, second] = band.parts;
  const causes = [first, second].flatMap((part) => (part === undefined ? [] : [PART_WORDS[part.name]]));
  const years = band.oneYear ? 'in one year to come' : 'in the mean of many years';
  return `of 100 such houses ${formatNumber(100 * band.share, 0)} lie within the ranges, ${years}. Most of their width comes from ${causes.join(' and ')}. ${WATER_WORDS[band.water]}`;
}
