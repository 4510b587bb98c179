/** From this weight on a cause is named; below, the answer is "cannot tell". Judgement, set before the proof. [-] */
export const NAMED_FROM = 0.75;

/** Above this mean square of deviations nothing is named: no cause explains the readings. Judgement. [-] */
export const WORST_FIT = 3;

/** Below it nothing is named: readings of gauges scatter more than that. Judgement, from logs of the development seeds. [-] */
const BEST_FIT = 0.2;
/** With fewer numbers than this chance alone may do it, and the bound falls with them. Judgement. */
const NUMBERS = 30;

/** Mean square below which so many numbers fit too well to have been read. [-] */
export const bestFit = (numbers: number): number => BEST_FIT * Math.min(1, numbers / NUMBERS);
