// Stamps that stand in columns of their own.
import { type StampReader, wholeNumber } from '../table/sequence.ts';

/**
 * Reader of year, month, day, hour and minute from the cells at these indexes.
 *
 * @param year - Year of all rows where no cell holds it (`cells[0]` below 0).
 */
export function numberStamps(cells: readonly number[], year = 0): StampReader {
  const [yearCell, monthCell, dayCell, hourCell, minuteCell] = cells as [number, number, number, number, number];
  return (row, out) => {
    out.year = yearCell < 0 ? year : wholeNumber(row[yearCell]);
    out.month = wholeNumber(row[monthCell]);
    out.day = wholeNumber(row[dayCell]);
    out.hour = wholeNumber(row[hourCell]);
    out.minute = minuteCell < 0 ? 0 : wholeNumber(row[minuteCell]);
    return true;
  };
}
