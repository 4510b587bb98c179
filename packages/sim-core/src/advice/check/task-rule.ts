// What the rules of the calendar share.
import type { SystemDesign } from '../../design/design.ts';
import { type Fact, fact, type Saying, say } from '../../input/saying.ts';
import type { MaintenanceTask, TaskReasonCode, WearNumbers } from './maintenance-types.ts';

/** Month and day of a task, 0 January. */
export type Season = readonly [month: number, day: number];

/** What a rule knows. */
export interface RuleContext {
  readonly design: SystemDesign;
  readonly wear: WearNumbers;
  /** Total hardness of the mains; `null`: not known. [mol/m³] */
  readonly hardness: number | null;
  /** `none` for a tank without. */
  readonly anode: 'magnesium' | 'powered' | 'none';
  /** Age of the fluid at the start. [years] */
  readonly fluidAge: number;
  /** Whether dust, birds or pollen soil the modules more than rain cleans. */
  readonly dusty: boolean;
  /** First month of spring at the place, 0 January. */
  readonly spring: number;
  /** When the fluid is tested, in time to mend it before the first frost. */
  readonly beforeFrost: Season;
  /** When the house is made ready, before the first frost. */
  readonly readyForFrost: Season;
}

/** A task before it has dates. */
export interface Rule extends Omit<MaintenanceTask, 'dates' | 'who' | 'basis'> {
  /** When it is best done. */
  readonly season: Season;
}

/** A reason with its numbers. */
export const because = (code: TaskReasonCode, facts: Saying['facts'] = {}): Saying<TaskReasonCode> => say(code, facts);

/** Reasons that hold. */
export const where = (holds: boolean, ...reasons: readonly Saying<TaskReasonCode>[]): Saying<TaskReasonCode>[] =>
  holds ? [...reasons] : [];

export const hours = (value: number): Fact => fact(value, 'h');
export const volume = (value: number): Fact => fact(value, 'm³');
