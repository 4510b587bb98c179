/** What collectors in rows side by side do to the flow. */
import type { CollectorDesign, CollectorGroupDesign } from '../../design/array.ts';
import { waterDensity, waterViscosity } from '../fluid/water.ts';

/** Share of a collector's rated drop that is laminar, hence proportional to viscosity and flow; judgement, no source. [-] */
const COLLECTOR_LAMINAR_SHARE = 0.5;

/** Collectors of one kind, in rows side by side. */
export type CollectorRows = Pick<CollectorGroupDesign, 'panels' | 'inSeries'> & {
  /** One panel's rated drop and flow. */
  readonly collector: Pick<CollectorDesign, 'ratedPressureDrop' | 'ratedFlow'>;
};

/** Drop = laminar μ Q + turbulent ρ Q², Q through all rows together: they share it, and within a row every panel adds its drop. [1/m³], [1/m⁴] */
export function rowsDrop({ collector, inSeries, panels }: CollectorRows): { laminar: number; turbulent: number } {
  const rows = panels / inSeries;
  return {
    laminar:
      (COLLECTOR_LAMINAR_SHARE * collector.ratedPressureDrop * inSeries) /
      (waterViscosity(20) * collector.ratedFlow * rows),
    turbulent:
      ((1 - COLLECTOR_LAMINAR_SHARE) * collector.ratedPressureDrop * inSeries) /
      (waterDensity(20) * (collector.ratedFlow * rows) ** 2),
  };
}
