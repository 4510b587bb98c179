// When a file may mean several instants, the sun tells which.
import { bestOffset, type ClosureInput, closureRms, contradicts } from './closure.ts';
import type { Sequence } from './table/sequence.ts';
import { LEAP_DAY_START, monthAndDay } from './time/calendar.ts';
import type { WeatherAssumption } from './year.ts';

/**
 * Chooses the instant at which the irradiance closes. The first candidate, the format's own, stays unless another closes
 * much better (see `contradicts`).
 *
 * @param candidates - In UTC, from the start of the stamped hour. [h]
 * @param notes - Receives what was found.
 * @returns One of the candidates. [h]
 */
export function settleInstant(
  input: Omit<ClosureInput, 'starts'>,
  sequence: Sequence,
  candidates: readonly number[],
  notes: WeatherAssumption[],
): number {
  const closure = { ...input, starts: stampedHours(sequence) };
  const own = { offset: candidates[0]!, rms: closureRms(closure, candidates[0]!) };
  const best = bestOffset(closure, candidates);
  const chosen = contradicts(best, own) ? best : own;
  const found =
    chosen === own
      ? 'as the format has it'
      : `where the format with the zone of its header (${instant(own.offset)}) leaves ${own.rms.toFixed(1)} W/m²`;
  const text = `Irradiance is taken at ${instant(chosen.offset)}: there GHI = DHI + DNI cos Z closes to ${chosen.rms.toFixed(1)} W/m² rms, ${found}.`;
  notes.push({ code: chosen === own ? 'closure-confirms-stamps' : 'instant-from-closure', text });
  return chosen.offset;
}

const instant = (offset: number): string =>
  `the stamped hour ${offset - 1 < 0 ? '−' : '+'} ${Math.abs(Number((offset - 1).toFixed(4)))} h in UTC`;

/** Start of each stamped hour as if the stamps were in UTC. [ms] */
function stampedHours({ years, leap }: Sequence): Float64Array {
  return Float64Array.from(years, (year, hour) => {
    if (leap && hour >= LEAP_DAY_START && hour < LEAP_DAY_START + 24) return Date.UTC(year, 1, 29, hour % 24);
    const ordinary = leap && hour >= LEAP_DAY_START + 24 ? hour - 24 : hour;
    const { month, day } = monthAndDay(Math.floor(ordinary / 24));
    return Date.UTC(year, month - 1, day, hour % 24);
  });
}
