import type { EnergyPrice } from './prices.ts';

/** What a system costs to buy, fit and set up, less grants. */
export interface Investment {
  /** With new parts. [currency] */
  readonly new: number;
  /** With used parts; left out: not reckoned. [currency] */
  readonly used?: number;
}

/** Prices and expectations. Nothing is guessed: without them a report has no money in it. */
export interface MoneyOptions {
  /** Currency code of three capital letters, such as `USD`; only shown. */
  readonly currency: string;
  /** What the backup heater is fed with. The heater's efficiency is in the fuel of the run already. */
  readonly fuel: EnergyPrice;
  /** What the house without the sun burns, where that is another carrier. Default {@link fuel}. */
  readonly baselineFuel?: EnergyPrice;
  /** Electricity of pump and controls. Needed where a run draws any; default {@link fuel} where that is electricity. */
  readonly electricity?: EnergyPrice;
  /** Price of the system, new and, where wanted, used. [currency] */
  readonly investment: number | Investment;
  /** Upkeep in the first year. Default 0. [currency / a] */
  readonly maintenance?: number;
  /** Rise of upkeep by the year. Default 0. [-] */
  readonly maintenanceEscalation?: number;
  /** What money set aside would earn, inflation included. [-] */
  readonly discountRate: number;
  /** Whole years that are reckoned, 1 to 100. [a] */
  readonly life: number;
}

/** Whether a system pays at one investment. */
export interface MoneyCase {
  /** Parts bought new or used. */
  readonly parts: 'new' | 'used';
  /** At the start. [currency] */
  readonly investment: number;
  /** Investment over the first year's net saving; `null`: that saving is not positive. [a] */
  readonly simplePayback: number | null;
  /**
   * When the present worth of the savings reaches the investment, linear within the year; `null`: not within the life. [a]
   */
  readonly discountedPayback: number | null;
  /** Present worth of all net savings, less the investment. [currency] */
  readonly netPresentValue: number;
  /** Discount rate at which that is 0; `null`: none between −99 % and 1000 %. [-] */
  readonly internalRateOfReturn: number | null;
  /** Present worth of all costs of the solar heat over that of the heat: investment, upkeep, the pump's electricity. [currency/J] */
  readonly levelisedCostOfHeat: number | null;
}

/** One year of payments. */
export interface MoneyYear {
  /** 1 for the first. [a] */
  readonly year: number;
  /** Energy without the sun less energy with it, at that year's prices. [currency] */
  readonly energySaving: number;
  /** Upkeep. [currency] */
  readonly maintenance: number;
  /** Saving less upkeep, brought to the start. [currency] */
  readonly presentValue: number;
}

/** Money and carbon dioxide of one design. */
export interface Money {
  /** As given. */
  readonly currency: string;
  /** Energy bill of the first year with the solar system: fuel and the electricity of heater and pump. [currency] */
  readonly billWith: number;
  /** Energy bill of the first year without it. [currency] */
  readonly billWithout: number;
  /** The difference. [currency] */
  readonly energySaving: number;
  /** Upkeep in the first year. [currency] */
  readonly maintenance: number;
  /** New, then used where given. */
  readonly cases: readonly MoneyCase[];
  /** Year by year. */
  readonly years: readonly MoneyYear[];
  /** Carbon dioxide a year with the solar system; `null` where a factor is missing. [kg] */
  readonly co2With: number | null;
  /** Without it. [kg] */
  readonly co2Without: number | null;
  /** The difference. [kg] */
  readonly co2Saved: number | null;
  /** What this rests on, a sentence each, in metric units. */
  readonly assumptions: readonly string[];
}
