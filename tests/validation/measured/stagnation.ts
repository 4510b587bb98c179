/** Stagnation of published certificates (Solar Keymark data sheets): stated, and by their coefficients. */
import { stagnationTemperature } from '@noonloop/sim-core/formulas';
import { measuredRows } from './sets.ts';

export const CERTIFICATES_FILE = 'certificates/certificates.csv';

/** A sheet, at 1000 W/m² and 30 °C. */
export interface StagnationRow {
  readonly source: string;
  /** [°C] */
  readonly stated: number;
  /** By η0, a1 and a2. [°C] */
  readonly byCoefficients: number;
}

export const stagnationRows = (): StagnationRow[] =>
  measuredRows(CERTIFICATES_FILE)
    .filter((row) => row.stagnation_C_1000_30 && row.a1)
    .map((row) => ({
      source: row.source!,
      stated: Number(row.stagnation_C_1000_30),
      byCoefficients: stagnationTemperature(
        { area: Number(row.gross_area_m2), eta0: Number(row.eta0_beam), a1: Number(row.a1), a2: Number(row.a2) },
        1000,
        30,
      ),
    }));
