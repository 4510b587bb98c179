// The day that is most like one with a gap.

/** Furthest day that is looked at, at first and where none is whole. [d] */
const REACHES = [15, 30, 60];

/** Differences that count alike: 0.1 in clearness, 3 K, 15 days, one use before. Judgement. */
const CLEARNESS_UNIT = 0.1;
const AIR_UNIT_K = 3;
const DAY_UNIT = 15;

/** Hours of a day that must be known for their likeness to count. */
const ENOUGH_HOURS = 2;

/** What is known of all days; `NaN` where missing. */
interface KnownHours {
  /** Clearness of each hour; `NaN` also where the sun is down. Shape [8760]. [-] */
  readonly clearness: Float64Array;
  /** Shape [8760]. [°C] */
  readonly dryBulb: Float64Array;
  /** Whether all that has to be taken from a day is there. Shape [365]. */
  readonly whole: Uint8Array;
}

/** Finds like days; a day that has lent its hours already is less liked, so that a long gap is not one day over and over. */
export class LikeDays {
  readonly #known: KnownHours;
  readonly #uses = new Uint16Array(365);
  readonly #chosen = new Map<number, number>();

  constructor(known: KnownHours) {
    this.#known = known;
  }

  /** The whole day most like a day, within 15 days or as near as there is one; `null` where none is within 60. */
  of(day: number): number | null {
    const chosen = this.#chosen.get(day);
    if (chosen !== undefined) return chosen;
    for (const reach of REACHES) {
      let best: number | null = null;
      let least = Number.POSITIVE_INFINITY;
      for (let step = 1; step <= 2 * reach; step++) {
        // Near days first, so that they win ties: −1, +1, −2, +2, …
        const away = (step + 1) >> 1;
        const other = (day + (step % 2 === 1 ? -away : away) + 365) % 365;
        if (this.#known.whole[other] === 0) continue;
        const unlike = this.#unlike(day, other) + (away / DAY_UNIT) ** 2 + this.#uses[other]!;
        if (unlike < least) [best, least] = [other, unlike];
      }
      if (best === null) continue;
      this.#uses[best]!++;
      this.#chosen.set(day, best);
      return best;
    }
    return null;
  }

  /** Mean square of the differences in the hours that both days know. */
  #unlike(day: number, other: number): number {
    const { clearness, dryBulb } = this.#known;
    const part = (values: Float64Array, unit: number): number => {
      let sum = 0;
      let count = 0;
      for (let hour = 0; hour < 24; hour++) {
        const difference = (values[day * 24 + hour]! - values[other * 24 + hour]!) / unit;
        if (Number.isNaN(difference)) continue;
        sum += difference * difference;
        count++;
      }
      return count < ENOUGH_HOURS ? 0 : sum / count;
    };
    return part(clearness, CLEARNESS_UNIT) + part(dryBulb, AIR_UNIT_K);
  }
}
