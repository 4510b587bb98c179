/** Prices of energy by any unit that bills use, and the carbon dioxide of each carrier. */
import { ReportError } from '../errors.ts';
import { checkNumber } from './factors.ts';

/** What a bill is for. */
export type PricedCarrier = 'natural-gas' | 'propane' | 'heating-oil' | 'electricity';

/** Unit of a bill. Volumes and masses of fuel need {@link EnergyPrice.grossCalorificValue_kWh}. */
export type BillUnit = 'kWh' | 'MJ' | 'GJ' | 'therm' | 'm3' | 'ft3' | 'L' | 'gal' | 'kg' | 'lb';

/** Price of one form of energy. */
export interface EnergyPrice {
  /** What is bought. */
  readonly carrier: PricedCarrier;
  /** Price of one unit today, taxes as the reader wants them. [currency / unit] */
  readonly price: number;
  /** Unit of the price. */
  readonly per: BillUnit;
  /** Gross calorific value of one unit, as the bill states it; only for units of volume or mass, there required. [kWh / unit] */
  readonly grossCalorificValue_kWh?: number;
  /** Rise of the price by the year, inflation included. Default 0. [-] */
  readonly escalation?: number;
  /** Carbon dioxide of one kWh by gross calorific value. Default by carrier; none for electricity, whose grids differ. [kg/kWh] */
  readonly co2_kg_per_kWh?: number;
  /** Where {@link co2_kg_per_kWh} is from; shown in reports. */
  readonly co2Source?: string;
}

const KWH = 3.6e6; // [J]
const THERM = 105_480_400; // [J] therm (US), NIST SP 811 (2008) appendix B
const MMBTU = 1055.05585262e6; // [J] a million Btu (IT), NIST SP 811 appendix B

const ENERGY_UNITS: Partial<Record<BillUnit, number>> = { kWh: KWH, MJ: 1e6, GJ: 1e9, therm: THERM };
const AMOUNTS: readonly BillUnit[] = ['m3', 'ft3', 'L', 'gal', 'kg', 'lb'];

const CARRIERS: Record<PricedCarrier, { readonly word: string; readonly co2_kg_per_mmBtu: number | null }> = {
  'natural-gas': { word: 'natural gas', co2_kg_per_mmBtu: 53.06 },
  propane: { word: 'propane', co2_kg_per_mmBtu: 62.87 },
  'heating-oil': { word: 'heating oil', co2_kg_per_mmBtu: 73.96 },
  electricity: { word: 'electricity', co2_kg_per_mmBtu: null },
};

const CO2_SOURCE =
  'US 40 CFR part 98, table C-1, by gross calorific value (heating oil: distillate no. 2), read in a public copy';

/** A price made comparable. */
export interface ResolvedPrice {
  /** What is bought. */
  readonly carrier: PricedCarrier;
  /** In words. */
  readonly word: string;
  /** Price today. [currency/J] */
  readonly perJoule: number;
  /** Rise by the year. [-] */
  readonly escalation: number;
  /** Carbon dioxide; `null`: no factor. [kg/J] */
  readonly co2PerJoule: number | null;
  /** Where the factor is from; empty where there is none. */
  readonly co2Source: string;
}

/**
 * Reads a price.
 *
 * @param path - place of the price, for errors
 * @throws {@link ReportError} for an unknown carrier or unit, a number out of range, or a missing calorific value.
 * @internal
 */
export function resolvePrice(price: EnergyPrice, path: string): ResolvedPrice {
  const { carrier, per, grossCalorificValue_kWh, escalation = 0, co2_kg_per_kWh } = price;
  if (!Object.hasOwn(CARRIERS, carrier))
    throw new ReportError(
      `${path}.carrier`,
      JSON.stringify(carrier) ?? 'nothing',
      `one of ${Object.keys(CARRIERS).join(', ')}`,
      'Choose the nearest.',
    );
  checkNumber(`${path}.price`, price.price, 0, 'Give the price of one unit.');
  if (!(Number.isFinite(escalation) && escalation > -1))
    throw new ReportError(`${path}.escalation`, `${escalation}`, 'a fraction above −1', 'Give 0.02 for 2 % a year.');
  const { word, co2_kg_per_mmBtu } = CARRIERS[carrier];
  if (co2_kg_per_kWh !== undefined)
    checkNumber(`${path}.co2_kg_per_kWh`, co2_kg_per_kWh, 0, 'Give kilograms of carbon dioxide by the kWh.');
  const co2PerJoule =
    co2_kg_per_kWh !== undefined ? co2_kg_per_kWh / KWH : co2_kg_per_mmBtu === null ? null : co2_kg_per_mmBtu / MMBTU;
  return {
    carrier,
    word,
    perJoule: price.price / joulesOf(per, grossCalorificValue_kWh, path),
    escalation,
    co2PerJoule,
    co2Source:
      co2_kg_per_kWh !== undefined
        ? (price.co2Source ?? 'given by the reader, no source stated')
        : co2PerJoule === null
          ? ''
          : CO2_SOURCE,
  };
}

function joulesOf(per: BillUnit, calorific: number | undefined, path: string): number {
  const joules = ENERGY_UNITS[per];
  if (joules !== undefined) {
    if (calorific !== undefined)
      throw new ReportError(
        `${path}.grossCalorificValue_kWh`,
        `${calorific}`,
        `nothing with a price by the ${per}`,
        'It belongs to prices by volume or mass.',
      );
    return joules;
  }
  if (!AMOUNTS.includes(per))
    throw new ReportError(
      `${path}.per`,
      JSON.stringify(per) ?? 'nothing',
      `one of ${[...Object.keys(ENERGY_UNITS), ...AMOUNTS].join(', ')}`,
      'Choose the unit of the bill.',
    );
  if (!(typeof calorific === 'number' && calorific > 0 && Number.isFinite(calorific)))
    throw new ReportError(
      `${path}.grossCalorificValue_kWh`,
      JSON.stringify(calorific) ?? 'nothing',
      `the gross calorific value of one ${per} in kWh, above 0`,
      'Gas and oil differ from place to place; the bill or the supplier states it.',
    );
  return calorific * KWH;
}
