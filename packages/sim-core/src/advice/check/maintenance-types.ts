/** One task of the calendar. */
export interface MaintenanceTask {
  /** Stable short code, such as `glycol-test`. */
  readonly code: MaintenanceCode;
  /** What to do. */
  readonly what: string;
  /** Dates as `YYYY-MM-DD`, the first not before the calendar's start. */
  readonly dates: readonly string[];
  /** Time between two of them. [months] */
  readonly everyMonths: number;
  /** Why, and why so often, with the numbers of the run. */
  readonly reason: string;
  /** The numbers the reason rests on, in the unit of each. */
  readonly numbers: readonly {
    /** What it is. */
    readonly label: string;
    /** In the unit beside it. */
    readonly value: number;
    /** Unit of the value. */
    readonly unit: string;
  }[];
  /** Where the usual interval comes from. */
  readonly basis: string;
  /** Who does it. */
  readonly who: 'owner' | 'licensed trade';
  /** What can hurt someone, and what to keep to. */
  readonly caution: string;
}

/** Kinds of task. */
export type MaintenanceCode =
  | 'glycol-test'
  | 'glycol-change'
  | 'vessel-precharge'
  | 'loop-pressure'
  | 'loop-relief-valve'
  | 'tank-relief-valve'
  | 'strainer'
  | 'flush'
  | 'anode'
  | 'descale'
  | 'sensors'
  | 'pump'
  | 'module-cleaning'
  | 'mixing-valve'
  | 'roof-look'
  | 'winter-look';

/** What a year of the run says that maintenance depends on. */
export interface WearNumbers {
  /** Hours in which the absorber is above the fluid's limit. [h] */
  readonly hoursOverFluidLimit: number;
  /** Hours of stagnation. [h] */
  readonly stagnationHours: number;
  /** Hours with boiled-out collectors. [h] */
  readonly boilingHours: number;
  /** Hottest absorber. [°C] */
  readonly hottestAbsorber: number;
  /** Hours of a running pump. [h] */
  readonly pumpHours: number;
  /** Largest less smallest loop pressure at the gauge. [Pa] */
  readonly pressureSwing: number;
  /** Liquid lost by leak and relief. [m³] */
  readonly lost: number;
  /** Mains water that replaced it. [m³] */
  readonly madeUp: number;
  /** Let out by the loop's relief valve. [m³] */
  readonly relieved: number;
  /** Let out by the tank's relief valve. [m³] */
  readonly tankRelieved: number;
  /** Hours with the tank's top above 60 °C. [h] */
  readonly hotTankHours: number;
  /** Water through the tank. [m³] */
  readonly throughTank: number;
  /** Least margin between fluid's freezing point and coldest part; negative: it freezes. [K] */
  readonly freezeMargin: number;
  /** First hour after the warmest month with the outdoor air below 0 °C; `null`: none. */
  readonly firstFrost: number | null;
  /** Month with the most stagnation, 0 January; `null`: none. */
  readonly stagnationMonth: number | null;
}
