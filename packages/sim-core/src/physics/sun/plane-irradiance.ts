/** What reaches a plane, part by part. */

/** Irradiance on a plane; step `s` of hour `h` has index `h × stepsPerHour + s`, hour 0 begins on 1 January at 00:00. */
export interface PlaneIrradiance {
  /** Steps in an hour. */
  readonly stepsPerHour: number;
  /** Direct from the sun. Shape [8760 × stepsPerHour]. [W/m²] */
  readonly beam: Float64Array;
  /** Sky light from around the sun; meets the glass at the beam's angle. [W/m²] */
  readonly circumsolar: Float64Array;
  /** Rest of the sky light. [W/m²] */
  readonly sky: Float64Array;
  /** Reflected by the ground. [W/m²] */
  readonly ground: Float64Array;
  /** Sum of the four. [W/m²] */
  readonly total: Float64Array;
  /** Cosine of the beam's incidence angle; 0 where the sun is down or behind the plane, and in hours without light. [-] */
  readonly incidenceCosine: Float64Array;
  /** Beam in the file while the sun is down through the whole hour; left out. Per area that faces the sun, a year. [J/m²] */
  readonly lostBeam: number;
  /** Hours in which beam was left out. */
  readonly lostBeamHours: number;
}
