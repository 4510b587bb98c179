// What the rules of the calendar share.
import type { SystemDesign } from '../../design/design.ts';
import type { MaintenanceTask, WearNumbers } from './maintenance-types.ts';

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
  /** Spring and autumn of the place, 0 January. */
  readonly spring: number;
  readonly autumn: number;
}

/** A task before it has dates. */
export interface Rule extends Omit<MaintenanceTask, 'dates'> {
  /** Month and day at which it is best done: 0 January. */
  readonly season: readonly [month: number, day: number];
}

/** Basis of most intervals. */
export const PRACTICE = 'common practice, no source';

/** `1,234 h`. */
export const hours = (value: number): string => `${Math.round(value).toLocaleString('en')} h`;
/** `1.5 L` of m³. */
export const litres = (value: number): string => `${(value * 1000).toFixed(1)} L`;
/** A number of a task. */
export const number = (label: string, value: number, unit: string) => ({ label, value, unit });
