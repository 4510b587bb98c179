/** Prices of energy by any unit that bills use, made comparable. */
import { type BillUnit, contentOf, ENERGY_UNITS, FUELS, type PricedCarrier, UNIT_WORDS } from './fuels.ts';

export type { BillUnit, PricedCarrier } from './fuels.ts';

/** Price of one form of energy. */
export interface EnergyPrice {
  /** What is bought. */
  readonly carrier: PricedCarrier;
  /** Price of one unit today, taxes as the reader wants them. [currency / unit] */
  readonly price: number;
  /** Unit of the price. */
  readonly per: BillUnit;
  /**
   * Gross calorific value of one unit; only for units of volume or mass. Gas by the cubic metre needs it, as its bill states it;
   * default for liquids, wood and gas by the CCF: the common value, which reports name with its source. [kWh / unit]
   */
  readonly grossCalorificValue_kWh?: number;
  /** Rise of the price by the year. Default: as everything else, that is {@link MoneyOptions.inflation}. [-] */
  readonly escalation?: number;
  /** Carbon dioxide of one kWh by gross calorific value. Default by carrier; none for electricity and district heat, of which each place has its own. [kg/kWh] */
  readonly co2_kg_per_kWh?: number;
  /** Where {@link co2_kg_per_kWh} is from; shown in reports. */
  readonly co2Source?: string;
}

const KWH = 3.6e6; // [J]

/** A price made comparable. */
export interface ResolvedPrice {
  /** What is bought. */
  readonly carrier: PricedCarrier;
  /** In words. */
  readonly word: string;
  /** Unit of the bill. */
  readonly per: BillUnit;
  /** Heat in one unit. [J] */
  readonly joules: number;
  /** Where that is from; empty for units of energy. */
  readonly contentSource: string;
  /** Price today. [currency/J] */
  readonly perJoule: number;
  /** Rise by the year. [-] */
  readonly escalation: number;
  /** Carbon dioxide; `null`: no factor. [kg/J] */
  readonly co2PerJoule: number | null;
  /** Where the factor is from; empty where there is none. */
  readonly co2Source: string;
  /** Whether it is carbon dioxide of wood. */
  readonly biogenic: boolean;
}

/** Reads a price that has been checked. @param inflation - rise of the price where it has none of its own [-] @internal */
export function resolvePrice(price: EnergyPrice, inflation: number): ResolvedPrice {
  const { carrier, per, grossCalorificValue_kWh: given, escalation = inflation, co2_kg_per_kWh: factor } = price;
  const { word, co2, co2Source, biogenic } = FUELS[carrier];
  const common = contentOf(carrier, per);
  const joules = ENERGY_UNITS[per] ?? (given ?? common!.typical) * KWH;
  return {
    carrier,
    word,
    per,
    joules,
    contentSource: ENERGY_UNITS[per] !== undefined ? '' : given === undefined ? common!.source : 'as given',
    perJoule: price.price / joules,
    escalation,
    co2PerJoule: factor === undefined ? co2 : factor / KWH,
    co2Source: factor === undefined ? co2Source : (price.co2Source ?? 'given by the reader, no source stated'),
    biogenic,
  };
}

/** An amount in the unit of its bill, in words: `84 gallons of propane`. @param energy - by gross calorific value [J] @internal */
export function billedWords(energy: number, { joules, per, word }: ResolvedPrice): string {
  const amount = wholeAmount(energy / joules);
  const [one, many] = UNIT_WORDS[per];
  return `${amount} ${amount === '1' ? one : many} of ${word}`;
}

/** A number of the first sheet: three figures at most, whole, tens above a thousand; small ones keep two figures. @internal */
export function wholeAmount(value: number): string {
  const size = Math.abs(value);
  const step = size >= 10_000 ? 100 : size >= 1000 ? 10 : size >= 10 ? 1 : 0.1;
  const rounded = Math.round(size / step) * step;
  const text = step < 1 ? rounded.toFixed(1).replace(/\.0$/, '') : String(Math.round(rounded));
  const grouped = text.replace(/\B(?=(\d{3})+$)/g, text.includes('.') ? '' : ',');
  return value < 0 && text !== '0' ? `−${grouped}` : grouped;
}
