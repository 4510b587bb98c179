// A clock that is put forward in summer.
import { IANAZone } from 'luxon';

/** Changes of a clock fall on whole quarters of an hour of UTC, so that one look-up holds for a quarter. [s] */
const QUARTER = 900;
const DAY = 86_400;

/** The clock of a place by its IANA name; times are seconds, local ones counted as if they were UTC. */
export class ZoneClock {
  readonly #zone: IANAZone;
  readonly #offsets = new Map<number, number>();

  constructor(name: string) {
    this.#zone = IANAZone.create(name);
  }

  /** Clock minus UTC at a moment. [s] */
  offset(utc: number): number {
    const day = Math.floor(utc / DAY) * DAY;
    const offset = this.#lookUp(day);
    // No clock is changed twice within a day.
    return offset === this.#lookUp(day + DAY) ? offset : this.#lookUp(Math.floor(utc / QUARTER) * QUARTER);
  }

  #lookUp(utc: number): number {
    let offset = this.#offsets.get(utc);
    if (offset === undefined) {
      offset = this.#zone.offset(utc * 1000) * 60;
      this.#offsets.set(utc, offset);
    }
    return offset;
  }

  /** Standard time minus UTC in a year: the lesser of winter's and summer's. [s] */
  standardOffset(year: number): number {
    return Math.min(this.offset(Date.UTC(year, 0, 1) / 1000), this.offset(Date.UTC(year, 6, 1) / 1000));
  }

  /**
   * Standard time of what the clock shows.
   *
   * @param wall - What the clock shows. [s]
   * @param after - Where the clock shows a time twice, the first is meant that comes later than this standard time. [s]
   * @returns NaN for a time that the clock skips. [s]
   */
  toStandard(wall: number, after: number): number {
    const standard = this.standardOffset(new Date(wall * 1000).getUTCFullYear());
    // Largest offset first: the earlier moment.
    const offsets = [this.offset(wall - standard - DAY), this.offset(wall - standard + DAY)].sort((a, b) => b - a);
    let found = Number.NaN;
    for (const offset of offsets) {
      const utc = wall - offset;
      if (this.offset(utc) !== offset) continue;
      found = utc + standard;
      if (found > after) break;
    }
    return found;
  }

  /** How far the clock is ahead of standard time in each hour of standard time of a year of 365 days. Shape [8760]. [s] */
  ahead(year: number): Float64Array {
    const standard = this.standardOffset(year);
    const start = Date.UTC(year, 0, 1) / 1000 - standard;
    return Float64Array.from({ length: 8760 }, (_, hour) => this.offset(start + hour * 3600) - standard);
  }
}
