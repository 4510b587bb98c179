// Light at a file's own step, beside its hours.
import type { TimeSource } from './formats/format.ts';
import { shiftOf, toLocalYear } from './normalize.ts';
import type { Sequence } from './table/sequence.ts';
import type { FineLight, WeatherAssumption, WeatherColumns } from './year.ts';

/** Coarsest and finest step that is kept. Rows of a minute are no more light, only more of them; judgement. [1/h] */
const KEPT = [2, 12] as const;

/** Light as a file has it, a row each; `null` where it has none. */
export type FineRows = Readonly<Record<'ghi' | 'dni' | 'dhi', Float64Array | null>>;

/** From the start of a row to the middle of what its light stands for. [rows] */
function middleOfRow({ midpoint }: Pick<TimeSource, 'midpoint'>, { firstMinute, stepsPerHour }: Sequence): number {
  return typeof midpoint === 'number' ? 0.5 + (midpoint - 0.5) * stepsPerHour : firstMinute * stepsPerHour;
}

/** The same of the hour that these rows are averaged to. [h] */
const middleOfHour = ({ midpoint }: Pick<TimeSource, 'midpoint'>): number =>
  typeof midpoint === 'number' ? midpoint : 0.5;

/** Where the rows of a file stand in the local year. */
export interface RowTimes {
  readonly sequence: Sequence;
  readonly time: Pick<TimeSource, 'midpoint'>;
  /** From the start of a file's hour, counted as local, to the middle of its irradiance. [h] */
  readonly light: number;
}

/**
 * Lays the light of a file into steps of the local year.
 *
 * @param rows - As the file has them, whole and in order.
 * @param hourly - The year's hours, beam and diffuse completed: where the file has global light alone, their shares hold for the steps of the hour.
 * @returns `undefined` where the rows are hours, or finer than is kept.
 */
export function fineLightOf(
  rows: FineRows,
  hourly: Pick<WeatherColumns, 'ghi' | 'dni' | 'dhi'>,
  { light, sequence, time }: RowTimes,
  notes: WeatherAssumption[],
): FineLight | undefined {
  const { stepsPerHour } = sequence;
  const [coarsest, finest] = KEPT;
  if (stepsPerHour < coarsest || stepsPerHour > finest) {
    const text = `Rows of ${60 / stepsPerHour} minutes are read as hours; steps of 5 to 30 minutes are kept.`;
    notes.push({ code: 'own-step-left-out', text });
    return undefined;
  }
  const later = (light - middleOfHour(time)) * stepsPerHour;
  const { hours: steps, midpoint } = shiftOf(middleOfRow(time, sequence) + later);
  const local = (values: Float64Array) => toLocalYear(values, steps, stepsPerHour);
  const ghi = local(rows.ghi!);
  const split = rows.dni === null || rows.dhi === null;
  const shareOf = (column: Float64Array): Float64Array =>
    ghi.map((value, step) => {
      const hour = Math.trunc(step / stepsPerHour);
      return hourly.ghi[hour]! > 0 ? (value * column[hour]!) / hourly.ghi[hour]! : 0;
    });
  const text = `The light is kept at the file’s own step of ${60 / stepsPerHour} minutes; air and the rest are means of the hour.`;
  notes.push({ code: 'own-step', text });
  if (split) {
    const shares = 'Beam and diffuse of each step are its global light in the shares of its hour.';
    notes.push({ code: 'own-step-shares', text: shares });
  }
  return {
    stepsPerHour,
    midpoint,
    ghi,
    dni: split ? shareOf(hourly.dni) : local(rows.dni!),
    dhi: split ? shareOf(hourly.dhi) : local(rows.dhi!),
  };
}
