import type { PartBalance } from './part-balance.ts';

/**
 * A residual is never measured against less than the heat that warms the part by this much: the last bits of a state of some
 * tens of degrees are no imbalance. [K]
 */
const SMALLEST_WARMING = 1e-3;

/** Running energy balance of one part. */
export interface BalanceKeeper {
  /** Stored heat at the end of the last hour. [J] */
  stored: number;
  /** Stored heat at the start of the year. [J] */
  readonly initial: number;
  /** Least flow that a residual is measured against. [J] */
  readonly floor: number;
  readonly totals: Float64Array;
  worstHour: number;
}

const TOTAL = { in: 0, out: 1, residual: 2, worst: 3 } as const;

/**
 * Opens the books of a part.
 *
 * @param stored - Heat in it above 0 °C. [J]
 * @param capacity - Its heat capacity. [J/K]
 */
export const openBalance = (stored: number, capacity: number): BalanceKeeper => ({
  stored,
  initial: stored,
  floor: capacity * SMALLEST_WARMING,
  totals: new Float64Array(4),
  worstHour: 0,
});

/** What an hour did to a part: one object of a run, filled anew for each. */
export interface BalanceEntry {
  /** Heat that went in. [J] */
  income: number;
  /** Heat that went out. [J] */
  spent: number;
  /** Sum of the sizes of all flows, whatever their sign: what the residual is measured against. [J] */
  through: number;
  /** Heat stored at the hour's end. [J] */
  stored: number;
}

/** Books one hour. Allocates nothing. */
export function bookHour(keeper: BalanceKeeper, hour: number, { income, spent, through, stored }: BalanceEntry): void {
  const kept = stored - keeper.stored;
  const residual = income - spent - kept;
  const relative = Math.abs(residual) / Math.max(through, Math.abs(kept), keeper.floor);
  const { totals } = keeper;
  totals[TOTAL.in]! += income;
  totals[TOTAL.out]! += spent;
  totals[TOTAL.residual]! += residual;
  if (!(relative <= totals[TOTAL.worst]!)) {
    totals[TOTAL.worst] = relative;
    keeper.worstHour = hour;
  }
  keeper.stored = stored;
}

/** Closes the books of a part. */
export const closeBalance = (keeper: BalanceKeeper): PartBalance => ({
  worstRelative: keeper.totals[TOTAL.worst]!,
  worstHour: keeper.worstHour,
  residual: keeper.totals[TOTAL.residual]!,
  in: keeper.totals[TOTAL.in]!,
  out: keeper.totals[TOTAL.out]!,
  stored: keeper.stored - keeper.initial,
});
