/** The parts whose energy balance is kept, and the whole. */
export type BalancePart = 'collector' | 'pipes' | 'tank' | 'heater' | 'baseline' | 'whole';

/** Energy balance of one part: what came in, less what went out, less what stayed. */
export interface PartBalance {
  /** Worst hour: |residual| over the energy that flowed through the part in that hour. [-] */
  readonly worstRelative: number;
  /** Hour of the year with the worst residual, 0 to 8759. */
  readonly worstHour: number;
  /** Sum of the residuals over the year. [J] */
  readonly residual: number;
  /** Energy that went into the part over the year. [J] */
  readonly in: number;
  /** Energy that left it. [J] */
  readonly out: number;
  /** Stored at the end less stored at the start. [J] */
  readonly stored: number;
}
