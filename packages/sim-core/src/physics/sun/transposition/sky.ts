/**
 * What the sky models have in common. Each sees a uniform sky, a share `ring` of its light that comes from around the sun
 * and a share `horizon` added along the horizon; the models differ in how these follow from sun and weather.
 *
 *     circumsolar = D ring R,   sky = D [ (1 − ring)(1 + cos β)/2 + horizon sin β ],   R = max(cos θ, 0) / max(cos Z, floor)
 */
import { requireNumber } from '../../../input/errors.ts';

/** One instant of sky and sun, as a sky model needs it. */
export interface SkyConditions {
  /** Diffuse horizontal irradiance, ≥ 0. [W/m²] */
  readonly dhi: number;
  /** Direct normal irradiance, ≥ 0. [W/m²] */
  readonly dni: number;
  /** Extraterrestrial irradiance on a plane that faces the sun. [W/m²] */
  readonly extraterrestrialNormal: number;
  /** Zenith of the sun without refraction, 0 to 90. [°] */
  readonly zenith: number;
  /** Cosine of the incidence angle, see `incidenceCosine`; may be negative. [-] */
  readonly incidenceCosine: number;
  /** Of the plane, from the horizontal, 0 to 180. [°] */
  readonly tilt: number;
}

/** Sky light on a plane, in two parts that a collector treats differently. */
export interface SkyIrradiance {
  /** From around the sun: it meets the glass at the beam's angle. [W/m²] */
  readonly circumsolar: number;
  /** From the rest of the sky: its uniform part and the band above the horizon. [W/m²] */
  readonly sky: number;
}

/** What brightness and clearness depend on. @internal */
type BrightSky = Pick<SkyConditions, 'dhi' | 'dni' | 'zenith' | 'extraterrestrialNormal'>;

/** What makes one sky model. @internal */
export interface SkyKernel {
  /** Floor of cos Z under the ratio R. [-] */
  readonly minimumCosZenith: number;
  /** Writes `ring` to `out[at]` and `horizon` to `out[at + 1]`; they do not depend on the plane. [-] */
  brightness(sky: BrightSky, out: Float64Array, at: number): void;
}

/** Public face of a model: checks, then takes its kernel. @internal */
export function skyOnPlane(kernel: SkyKernel, conditions: SkyConditions): SkyIrradiance {
  const { dhi, dni, zenith, extraterrestrialNormal } = conditions;
  requireNumber('dhi', dhi, 0, 1500, 'W/m²');
  requireNumber('dni', dni, 0, 1500, 'W/m²');
  requireNumber('extraterrestrialNormal', extraterrestrialNormal, 1300, 1450, 'W/m²');
  requireNumber('zenith', zenith, 0, 90, '°');
  requireNumber('incidenceCosine', conditions.incidenceCosine, -1, 1, '');
  requireNumber('tilt', conditions.tilt, 0, 180, '°');
  const bright = new Float64Array(2);
  kernel.brightness(conditions, bright, 0);
  const tilt = (conditions.tilt * Math.PI) / 180;
  const cosZenith = Math.cos((zenith * Math.PI) / 180);
  const ring = bright[0]! * ringRatio(conditions.incidenceCosine, cosZenith, kernel.minimumCosZenith);
  const rest = restOfSky(bright[0]!, bright[1]!, skyViewFactor(Math.cos(tilt)), Math.sin(tilt));
  // A negative band along the horizon is taken from the ring, so that neither part is negative and the sum stays.
  return { circumsolar: dhi * Math.max(ring + Math.min(rest, 0), 0), sky: dhi * Math.max(rest, 0) };
}

/** Share of the uniform sky that a plane sees, by cos β. [-] @internal */
export const skyViewFactor = (cosTilt: number): number => (1 + cosTilt) / 2;

/** Share of a plane's view that is ground, by cos β. [-] @internal */
export const groundViewFactor = (cosTilt: number): number => (1 - cosTilt) / 2;

/** R: light from the sun's direction on the plane over that on the horizontal. [-] @internal */
export const ringRatio = (incidenceCos: number, cosZenith: number, floor: number): number =>
  Math.max(incidenceCos, 0) / Math.max(cosZenith, floor);

/** Sky without the ring, per diffuse horizontal; may be negative. [-] @internal */
export const restOfSky = (ring: number, horizon: number, viewFactor: number, sinTilt: number): number =>
  (1 - ring) * viewFactor + horizon * sinTilt;
