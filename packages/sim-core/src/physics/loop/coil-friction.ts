/**
 * Friction in a coiled tube, where the secondary flow of the bend adds to the drop and keeps the flow laminar for longer.
 *
 * Laminar: White (1929), Proc. R. Soc. A 123, 645, with the Dean number De = Re √(d/D), for 11.6 < De < 2000; 64/Re below it.
 *
 *     f = (64/Re) / [1 − (1 − (11.6/De)^0.45)^(1/0.45)]
 *
 * Turbulent: f = 0.3164 Re^−0.25 + 0.03 √(d/D) (VDI heat atlas, section Gc; Mishra & Gupta 1979). Both were read in open
 * implementations that cite these sources. Where the two cross, near Schmidt's critical Re, the larger is taken (judgement), so
 * that the drop rises with the flow everywhere.
 */

/** f Re² of a coiled tube. @param curvature - Bore over winding diameter, d/D. [-] @internal */
export function coilFrictionNumber(curvature: number, reynolds: number): number {
  const root = Math.sqrt(curvature);
  const dean = reynolds * root;
  if (dean <= 11.6) return 64 * reynolds;
  const base = 1 - Math.exp(0.45 * Math.log(11.6 / dean)); // powers as exp(log): twice as fast here
  const laminar = (64 * reynolds) / (1 - Math.exp(Math.log(base) / 0.45));
  const turbulent = (0.3164 / Math.sqrt(Math.sqrt(reynolds)) + 0.03 * root) * reynolds * reynolds;
  return Math.max(laminar, turbulent);
}

/** Schmidt's (1967) end of laminar flow in a coil, 2300 (1 + 8.6 (d/D)^0.45). [-] */
export const criticalReynolds = (curvature: number): number => 2300 * (1 + 8.6 * curvature ** 0.45);
