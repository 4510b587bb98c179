import { drawProfile } from './profile.ts';

/** Hourly shares of the default day: tapping profile M. Shape [24]. [-] */
export const mProfileShares: readonly number[] = /* @__PURE__ */ drawProfile('M').hourlyShares;

/** Where {@link mProfileShares} come from. */
export const M_PROFILE_SOURCE =
  'EU regulation 812/2013, Annex VII, Table 3, profile M: shares of the day’s heat by hour';
