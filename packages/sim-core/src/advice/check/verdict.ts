/** From this weight on a cause is named; below, the answer is "cannot tell". Judgement, set before the proof. [-] */
export const NAMED_FROM = 0.75;

/** Above this mean square of deviations nothing is named: no cause explains the readings. Judgement. [-] */
export const WORST_FIT = 3;
