import type { BillUnit, EnergyPrice } from './prices.ts';

/** What a system costs to buy, fit and set up, less grants; one of the two or both. */
export interface Investment {
  /** With new parts; left out: not reckoned. [currency] */
  readonly new?: number;
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
  /** Price of the system, new and used; left out: bills alone, and below which price the system pays. [currency] */
  readonly investment?: number | Investment;
  /** Upkeep in the first year. Default 0. [currency / a] */
  readonly maintenance?: number;
  /** Rise of upkeep by the year. Default {@link inflation}. [-] */
  readonly maintenanceEscalation?: number;
  /** What money set aside would earn: above inflation, or with it where {@link inflation} is given. [-] */
  readonly discountRate: number;
  /**
   * Rise of all prices by the year, held by {@link discountRate} too; fuel and upkeep rise by it where they have no escalation of
   * their own. Left out: all rates are real, above inflation, and what has no escalation stays the same in today's money. [-]
   */
  readonly inflation?: number;
  /** Whole years that are reckoned, 1 to 100. [a] */
  readonly life: number;
}

/** What one of several designs has of its own; the rest stands once for all. */
export type DesignPrices = Partial<Omit<MoneyOptions, 'currency' | 'discountRate' | 'inflation'>>;

/** Prices of several designs: what is the same for all, and what each has of its own, in the order of the designs. */
export type MoneySettings = Omit<MoneyOptions, 'fuel' | 'life'> &
  Partial<Pick<MoneyOptions, 'fuel' | 'life'>> & {
    /** What each design has of its own. Left out: one price for all. */
    readonly designs?: readonly DesignPrices[];
  };

/** Prices for a report: one set for all designs, with `designs` for what each has of its own, or a whole set for each. */
export type MoneyGiven = MoneySettings | readonly MoneyOptions[];

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
  /**
   * Present worth of all costs of the solar heat over that of the heat: investment, upkeep, the pump's electricity. It is below
   * {@link Money.levelisedCostOfFuelHeat} where the net present value is above 0. [currency/J]
   */
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

/** Fuel of one year in the unit of its bill. */
export interface BilledFuel {
  /** What it is, in words. */
  readonly word: string;
  /** Unit of the bill. */
  readonly unit: BillUnit;
  /** With the solar system. [unit] */
  readonly with: number;
  /** Without it; `null` where the house without it takes another fuel or another unit. [unit] */
  readonly without: number | null;
  /** The difference. [unit] */
  readonly saved: number | null;
  /** The difference in words, `84 gallons of propane`. */
  readonly savedWords: string | null;
}

/** Money and carbon dioxide of one design. */
export interface Money {
  /** As given. */
  readonly currency: string;
  /** Fuel as its bill counts it. */
  readonly fuel: BilledFuel;
  /** Energy bill of the first year with the solar system: fuel and the electricity of heater and pump. [currency] */
  readonly billWith: number;
  /** Energy bill of the first year without it. [currency] */
  readonly billWithout: number;
  /** The difference. [currency] */
  readonly energySaving: number;
  /** Upkeep in the first year. [currency] */
  readonly maintenance: number;
  /** Years reckoned. [a] */
  readonly life: number;
  /** Present worth of all net savings: the system pays where it costs less. [currency] */
  readonly worthOfSavings: number;
  /** Present worth of the energy that the solar heat saves over that of the heat: what {@link MoneyCase.levelisedCostOfHeat} is to be held against. [currency/J] */
  readonly levelisedCostOfFuelHeat: number | null;
  /** New, then used, as given; none where no investment was given. */
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
