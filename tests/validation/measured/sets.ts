/** Measured data as it lies in the shared folder, and how far a model is off it. */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { sharedFile } from '../../shared.ts';

/** A measured table as it stands. */
export const measuredText = (path: string): string => readFileSync(sharedFile(`measured/${path}`), 'utf8');

/** Rows of a measured table: text by the names of the head. */
export function measuredRows(path: string): Record<string, string>[] {
  return Papa.parse<Record<string, string>>(measuredText(path), { header: true, skipEmptyLines: true }).data;
}

/** Measured and modelled, pair by pair. */
export interface Pairs {
  readonly measured: readonly number[];
  readonly modelled: readonly number[];
}

/** How far a model is off: model less measurement. [unit of the pairs] */
export interface Misfit {
  readonly count: number;
  /** Mean of the measurement. */
  readonly mean: number;
  readonly bias: number;
  /** Root of the mean square. */
  readonly rmse: number;
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export function misfit({ measured, modelled }: Pairs): Misfit {
  const off = modelled.map((value, at) => value - measured[at]!);
  return {
    count: off.length,
    mean: mean(measured),
    bias: mean(off),
    rmse: Math.sqrt(mean(off.map((value) => value * value))),
  };
}

/** The value below which a share of the list lies, linear between neighbours. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const next = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return sorted[below]! + (place - below) * (next - sorted[below]!);
}
