// When a file may mean several instants, the sun tells which.

import { bestOffset, type ClosureInput, closureRms, contradicts } from './closure.ts';
import type { Reading } from './formats/format.ts';
import { amount, said } from './said.ts';
import type { Sequence } from './table/sequence.ts';
import { LEAP_DAY_START, monthAndDay } from './time/calendar.ts';
import type { WeatherAssumption } from './year.ts';

/** Closure that another reading must reach: worse is a file with another fault, such as a wrong place. Judgement. [W/m²] */
const GOOD_CLOSURE = 15;

/**
 * Chooses the reading whose irradiance closes. The first, the format's own, stays unless another closes well and much better (see
 * `contradicts`).
 *
 * @param readings - The format's own first.
 * @param stampAt - From the start of the stamped hour to the stamp, for words. [h]
 * @param notes - Receives what was found; for a format's own reading only where `confirms` is set.
 * @returns One of the readings.
 */
export function settleReading(
  input: Omit<ClosureInput, 'starts'>,
  sequence: Sequence,
  readings: readonly Reading[],
  { stampAt, confirms }: { readonly stampAt: number; readonly confirms: boolean },
  notes: WeatherAssumption[],
): Reading {
  const closure = { ...input, starts: stampedHours(sequence) };
  const own = { offset: readings[0]!.light, rms: closureRms(closure, readings[0]!.light) };
  const best = bestOffset(
    closure,
    readings.map(({ light }) => light),
    1,
    own.rms,
  );
  const chosen = best.rms < GOOD_CLOSURE && contradicts(best, own) ? best : own;
  const instant = (offset: number): string =>
    `the stamped hour ${offset - stampAt < 0 ? '−' : '+'} ${Math.abs(Number((offset - stampAt).toFixed(4)))} h in UTC`;
  const at = instant(chosen.offset);
  const closes = amount(chosen.rms, 'W/m²', 1);
  const words =
    chosen === own
      ? said`Irradiance is taken at ${at}: there GHI = DHI + DNI cos Z closes to ${closes} rms, as the format has it.`
      : said`Irradiance is taken at ${at}: there GHI = DHI + DNI cos Z closes to ${closes} rms, where the format with the zone of its header (${instant(own.offset)}) leaves ${amount(own.rms, 'W/m²', 1)}.`;
  if (chosen !== own) notes.push({ code: 'instant-from-closure', ...words });
  else if (confirms) notes.push({ code: 'closure-confirms-stamps', ...words });
  return readings.find(({ light }) => light === chosen.offset)!;
}

/** Start of each stamped hour as if the stamps were in UTC. [ms] */
function stampedHours({ years, leap }: Sequence): Float64Array {
  return Float64Array.from(years, (year, hour) => {
    if (leap && hour >= LEAP_DAY_START && hour < LEAP_DAY_START + 24) return Date.UTC(year, 1, 29, hour % 24);
    const ordinary = leap && hour >= LEAP_DAY_START + 24 ? hour - 24 : hour;
    const { month, day } = monthAndDay(Math.floor(ordinary / 24));
    return Date.UTC(year, month - 1, day, hour % 24);
  });
}
