/** Sheets, shade cloth and trees over collectors. */
import type { ArrayCoverDesign } from '../../design/array.ts';
import { everyHour } from '../column.ts';
import { inRange, readDayRange } from '../draw/days.ts';

/**
 * Share of the light that does not get to collectors: all that is over them lets its own share through. Days begin at 00:00 standard time.
 *
 * @param lightShare - What the place lets through all year. [-]
 * @returns Shape [8760]. [-]
 */
export function hiddenShare(lightShare: number, covers: readonly ArrayCoverDesign[]): Float64Array {
  const ranges = covers.map(({ days, lightShare: through }) => ({ range: readDayRange(days)!, through }));
  return everyHour((hour) =>
    ranges.reduce(
      (hidden, { range, through }) => (inRange(range, Math.trunc(hour / 24)) ? 1 - (1 - hidden) * through : hidden),
      1 - lightShare,
    ),
  );
}
