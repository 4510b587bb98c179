/** Columns and balance of the reference model. */
import type { BalancePart, RunColumns } from '@noonloop/sim-core';
import { HOURS } from './days.ts';
import type { Exchange } from './loop.ts';

type Columns = Record<keyof RunColumns, Float64Array>; // those of parts that it does not have are missing
type Stored = Record<Exclude<BalancePart, 'whole'>, number>;

/** Every column of a run's result, by name. */
export const COLUMN_NAMES = [
  'irradiance',
  'pvIrradiance',
  'ambientTemperature',
  'absorberTemperature',
  'absorberMinimumTemperature',
  'collectorOutletTemperature',
  'tankTopTemperature',
  'tankMaximumTemperature',
  'tankBottomTemperature',
  'tankMeanTemperature',
  'loopFlow',
  'pumpRunning',
  'pumpPvEnergy',
  'pumpElectricity',
  'noFlowInSun',
  'stagnation',
  'boiling',
  'highLimit',
  'collectorHeat',
  'pipeLoss',
  'coilHeat',
  'heatGivenBack',
  'tankLoss',
  'solarHeat',
  'thermosiphonFlow',
  'thermosiphonHeat',
  'loopPressure',
  'loopMaximumPressure',
  'loopReliefVolume',
  'lowPressure',
  'glycolMassFraction',
  'freezingPoint',
  'pipeMinimumTemperature',
  'reliefVolume',
  'reliefHeat',
  'mainsTemperature',
  'tapVolume',
  'hotVolume',
  'tapHeatAsked',
  'unfiredVolume',
  'unfiredShortfall',
  'undisinfectedVolume',
  'tapHeat',
  'tapTemperature',
  'heaterHeat',
  'heaterFuel',
  'heaterPvEnergy',
  'heaterLoss',
  'heaterElectricity',
  'baselineHeat',
  'baselineFuel',
  'baselineElectricity',
] as const satisfies readonly (keyof RunColumns)[];

export class Books {
  readonly columns = Object.fromEntries(COLUMN_NAMES.map((name) => [name, new Float64Array(HOURS)])) as Columns;
  element = 0;
  baselineLoss = 0;
  baselineTaps = 0;
  private absorbed = 0;
  private loss = 0;

  private readonly start: Stored;

  constructor(start: Stored) {
    this.start = start;
  }

  highest(name: keyof RunColumns, hour: number, before: number, now: number): void {
    this.columns[name][hour] = Math.max(before, now);
  }

  lowest(name: keyof RunColumns, hour: number, before: number, now: number): void {
    this.columns[name][hour] = Math.min(before, now);
  }

  loop(hour: number, done: Exchange): void {
    const { columns } = this;
    this.absorbed += done.absorbed;
    this.loss += done.loss;
    columns.collectorHeat[hour]! += done.collected;
    columns.pipeLoss[hour]! += done.pipeLoss;
    columns.coilHeat[hour]! += done.coil;
    columns.heatGivenBack[hour]! += Math.max(0, -done.coil);
  }

  close(end: Stored): Record<BalancePart, { in: number; out: number; stored: number }> {
    const total = (name: keyof RunColumns) => this.columns[name].reduce((sum, value) => sum + value, 0);
    const stored = (part: keyof Stored) => end[part] - this.start[part];
    const burner = total('heaterHeat') - this.element;
    const solar = total('solarHeat') + this.element;
    const lost =
      this.loss + total('pipeLoss') + total('tankLoss') + total('reliefHeat') + total('heaterLoss') + total('tapHeat');
    return {
      collector: { in: this.absorbed, out: this.loss + total('collectorHeat'), stored: stored('collector') },
      pipes: { in: total('collectorHeat'), out: total('pipeLoss') + total('coilHeat'), stored: stored('pipes') },
      tank: {
        in: total('coilHeat') + this.element,
        out: total('tankLoss') + solar + total('reliefHeat'),
        stored: stored('tank'),
      },
      heater: {
        in: solar - this.element + burner + this.element,
        out: total('heaterLoss') + total('tapHeat'),
        stored: stored('heater'),
      },
      baseline: { in: total('baselineHeat'), out: this.baselineLoss + this.baselineTaps, stored: stored('baseline') },
      whole: {
        in: this.absorbed + total('heaterHeat'),
        out: lost,
        stored: stored('collector') + stored('pipes') + stored('tank') + stored('heater'),
      },
    };
  }
}
