import type { Saying } from '../../input/saying.ts';
import type { Doer } from './cards.ts';

/** All tasks that a calendar may hold. */
export const TASKS = [
  'loop-pressure',
  'catch-vessel',
  'pump',
  'sensors',
  'module-cleaning',
  'roof-look',
  'winter-look',
  'tap-temperature',
  'tank-relief-look',
  'powered-anode',
  'hydrogen',
  'carbon-monoxide-alarm',
  'glycol-test',
  'glycol-change',
  'vessel-precharge',
  'loop-relief-valve',
  'strainer',
  'backflow-preventer',
  'flush',
  'descale',
  'tank-relief-valve',
  'potable-expansion',
  'heater-inlet',
  'anode',
  'mixing-valve',
  'flue',
  'bonding',
] as const;

/** Kinds of task. */
export type MaintenanceCode = (typeof TASKS)[number];

/** All reasons of tasks. */
export const TASK_REASONS = [
  'over-limit',
  'never-over-limit',
  'made-up',
  'freeze-margin',
  'freezes',
  'before-frost',
  'fluid-life',
  'overdue',
  'pressure-swing',
  'lost',
  'loses-nothing',
  'stagnation',
  'boiling',
  'relieved',
  'never-relieved',
  'flakes',
  'pump-hours',
  'starts-the-pump',
  'judged-by-them',
  'only-power',
  'hottest-absorber',
  'hot-tank',
  'through-tank',
  'hardness',
  'hardness-unknown',
  'tank-relieved',
  'tank-never-relieved',
  'swell',
  'hot-draws',
  'valve-alone',
  'no-valve',
  'two-weeks-unused',
  'burns-fuel',
  'fill-line',
  'fill-connection',
  'metal-on-the-roof',
] as const;

/** Why a task is due, and why so often. */
export type TaskReasonCode = (typeof TASK_REASONS)[number];

/** All bases of intervals. */
export const TASK_BASES = [
  'practice',
  'practice-and-judgement',
  'judgement',
  'fluid-makers',
  'fluid-life',
  'expansion-codes',
  'valve-test',
  'backflow-codes',
  'lightning-codes',
  'tank-makers',
  'alarm-advice',
] as const;

/** Where the usual interval comes from. */
export type TaskBasisCode = (typeof TASK_BASES)[number];

/** Who does each task, and where its usual interval comes from. An owner looks, listens, reads and rinses. */
export const TASK_DUTIES: Readonly<
  Record<
    MaintenanceCode,
    {
      /** Who may do it. */
      readonly who: Doer;
      /** What it rests on. */
      readonly basis: TaskBasisCode;
    }
  >
> = {
  'loop-pressure': { who: 'owner', basis: 'practice' },
  'catch-vessel': { who: 'owner', basis: 'practice-and-judgement' },
  pump: { who: 'owner', basis: 'practice' },
  sensors: { who: 'owner', basis: 'practice' },
  'module-cleaning': { who: 'owner', basis: 'practice-and-judgement' },
  'roof-look': { who: 'owner', basis: 'practice' },
  'winter-look': { who: 'owner', basis: 'practice' },
  'tap-temperature': { who: 'owner', basis: 'practice-and-judgement' },
  'tank-relief-look': { who: 'owner', basis: 'practice' },
  'powered-anode': { who: 'owner', basis: 'practice' },
  hydrogen: { who: 'owner', basis: 'tank-makers' },
  'carbon-monoxide-alarm': { who: 'owner', basis: 'alarm-advice' },
  'glycol-test': { who: 'licensed trade', basis: 'fluid-makers' },
  'glycol-change': { who: 'licensed trade', basis: 'fluid-life' },
  'vessel-precharge': { who: 'licensed trade', basis: 'practice' },
  'loop-relief-valve': { who: 'licensed trade', basis: 'practice' },
  strainer: { who: 'licensed trade', basis: 'practice' },
  'backflow-preventer': { who: 'licensed trade', basis: 'backflow-codes' },
  flush: { who: 'licensed trade', basis: 'practice-and-judgement' },
  descale: { who: 'licensed trade', basis: 'judgement' },
  'tank-relief-valve': { who: 'licensed trade', basis: 'practice' },
  'potable-expansion': { who: 'licensed trade', basis: 'expansion-codes' },
  'heater-inlet': { who: 'licensed trade', basis: 'judgement' },
  anode: { who: 'licensed trade', basis: 'practice' },
  'mixing-valve': { who: 'licensed trade', basis: 'valve-test' },
  flue: { who: 'licensed trade', basis: 'practice' },
  bonding: { who: 'licensed trade', basis: 'lightning-codes' },
};

/** One task of the calendar; its words are those of `@noonloop/reports`. */
export interface MaintenanceTask {
  /** Stable short code, such as `glycol-test`. */
  readonly code: MaintenanceCode;
  /** Who does it: an owner looks, listens, reads and rinses; what opens a part under pressure is for the trade. */
  readonly who: Doer;
  /** Time between two of them; `null`: on an occasion that its words name. [months] */
  readonly everyMonths: number | null;
  /** Dates as `YYYY-MM-DD`, the first not before the calendar's start. */
  readonly dates: readonly string[];
  /** Numbers in its words. */
  readonly facts: Saying['facts'];
  /** Why, and why so often, with the numbers of the run. */
  readonly reasons: readonly Saying<TaskReasonCode>[];
  /** Where the usual interval comes from. */
  readonly basis: TaskBasisCode;
}

/** What a year of the run says that maintenance depends on. */
export interface WearNumbers {
  /** Hours in which the absorber is above the fluid's limit with fluid in it: what has boiled out does not age. [h] */
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
  /** Hours with a draw while it is. [h] */
  readonly hotDrawHours: number;
  /** Hottest water at the tank's top. [°C] */
  readonly hottestTank: number;
  /** Coldest mains. [°C] */
  readonly coldestMains: number;
  /** By how much the tank's water swells from the one to the other. [m³] */
  readonly swell: number;
  /** Water through the tank. [m³] */
  readonly throughTank: number;
  /** Least margin between fluid's freezing point and coldest part; negative: it freezes. [K] */
  readonly freezeMargin: number;
  /** First hour after the warmest month with the outdoor air below 0 °C; `null`: none. */
  readonly firstFrost: number | null;
  /** Month with the most stagnation, 0 January; `null`: none. */
  readonly stagnationMonth: number | null;
}
