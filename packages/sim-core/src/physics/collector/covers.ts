/** Light through one or two equal plates of glass or plastic, ray by ray: what an incidence modifier is made of. */
import type { IncidenceModifierCover } from '../../design/array.ts';
import { requireNumber } from '../../input/errors.ts';

/** Cover of a collector, by its matter. */
export type CoverOptics = IncidenceModifierCover;

/** Where a ray's light goes. */
export interface CoverShares {
  /** τ: through all plates. [-] */
  readonly transmittance: number;
  /** ρ: back. [-] */
  readonly reflectance: number;
  /** What the plates keep. [-] */
  readonly absorptance: number;
}

const DEGREE = Math.PI / 180;
/** Cosine of incidence below which all light goes back: it runs along the plate, and Fresnel's r is 1 but for 1e-7. [-] */
const GRAZING = 1e-7;

/**
 * Transmittance, reflectance and absorptance of a cover, both polarisations carried through apart and then averaged.
 *
 *     sin θ₂ = sin θ/n,   t_a = e^(−K L/cos θ₂),   r by Fresnel
 *     one plate:    τ = t_a (1 − r)²/(1 − (r t_a)²),   ρ = r + t_a² r (1 − r)²/(1 − (r t_a)²)
 *     two plates:   τ² /(1 − ρ²) and ρ + τ² ρ/(1 − ρ²) of the one
 *
 * @param cover - Matter and thickness.
 * @param incidenceAngle - θ, 0 to 90. [°]
 * @throws {@link DesignError} for a number out of its range.
 * @see Duffie & Beckman (2013) §5.1 to 5.3, without their product form.
 */
export function coverShares(cover: CoverOptics, incidenceAngle: number): CoverShares {
  requireCover(cover);
  requireNumber('incidenceAngle', incidenceAngle, 0, 90, '°');
  const cosine = Math.cos(incidenceAngle * DEGREE);
  const transmittance = throughPlates(cover, cosine, 'through');
  const reflectance = throughPlates(cover, cosine, 'back');
  return { transmittance, reflectance, absorptance: 1 - transmittance - reflectance };
}

/**
 * Share of the light that a plate behind the cover takes: τ α/(1 − (1 − α) ρ₆₀), ρ₆₀ the cover's reflectance at 60° for what the plate sends back.
 *
 * @param absorptance - α of the plate. [-]
 * @see Duffie & Beckman (2013) §5.4; {@link coverShares}.
 */
export function coverTransmittanceAbsorptance(cover: CoverOptics, absorptance: number, incidenceAngle: number): number {
  requireNumber('absorptance', absorptance, 0, 1, '');
  const { transmittance } = coverShares(cover, incidenceAngle);
  return (transmittance * absorptance) / (1 - (1 - absorptance) * coverShares(cover, 60).reflectance);
}

/** τ(θ)/τ(0) by cos θ. [-] @internal */
export const coverModifier = (cover: CoverOptics, cosine: number): number =>
  throughPlates(cover, cosine, 'through') / throughPlates(cover, 1, 'through');

/** Mean of both polarisations. */
function throughPlates(cover: CoverOptics, cosine: number, way: 'through' | 'back'): number {
  if (cosine < GRAZING) return way === 'through' ? 0 : 1;
  const { extinction, refractiveIndex: n, thickness } = cover;
  const inside = Math.sqrt(1 - (1 - cosine * cosine) / (n * n));
  const kept = Math.exp((-extinction * thickness) / inside);
  const across = ((cosine - n * inside) / (cosine + n * inside)) ** 2;
  const along = ((n * cosine - inside) / (n * cosine + inside)) ** 2;
  return (ofPlates(cover.covers, across, kept, way) + ofPlates(cover.covers, along, kept, way)) / 2;
}

/** τ or ρ of the plates for one polarisation. */
function ofPlates(covers: number, r: number, kept: number, way: 'through' | 'back'): number {
  const inner = (1 - r) ** 2 / (1 - (r * kept) ** 2);
  const t = kept * inner;
  const back = r + kept * kept * r * inner;
  if (covers === 1) return way === 'through' ? t : back;
  const between = 1 - back * back;
  return way === 'through' ? (t * t) / between : back + (t * t * back) / between;
}

/** @throws DesignError for a number out of its range. @internal */
export function requireCover({ covers, extinction, refractiveIndex, thickness }: CoverOptics): void {
  requireNumber('covers', Number.isInteger(covers) ? covers : Number.NaN, 1, 2, '');
  requireNumber('refractiveIndex', refractiveIndex, 1, 3, '');
  requireNumber('extinction', extinction, 0, 500, '1/m');
  requireNumber('thickness', thickness, 0, 0.05, 'm');
}
