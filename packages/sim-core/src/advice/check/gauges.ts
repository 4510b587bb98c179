// How gauges may be wrong.

/** Wrong gauges: offsets and their spread. Judgement. [K], [Pa] */
export const OFFSETS: Readonly<Record<'temperature' | 'pressure', readonly (readonly [number, number])[]>> = {
  temperature: [
    [7, 2.5],
    [-7, 2.5],
    [15, 5],
    [-15, 5],
  ],
  pressure: [
    [50_000, 15_000],
    [-50_000, 15_000],
    [120_000, 40_000],
    [-120_000, 40_000],
  ],
};
/** A gauge that is stuck may be stuck anywhere here: middle and spread. Judgement. [°C], [Pa] */
export const STUCK = { temperature: [40, 30], pressure: [150_000, 100_000] } as const;
