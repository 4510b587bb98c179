/** Columns of a run's own steps, energies and volumes over the step, temperatures at its end. */
export type StepColumns = Readonly<
  Record<
    | 'irradiance'
    | 'pvIrradiance'
    | 'ambientTemperature'
    | 'absorberTemperature'
    | 'tankTopTemperature'
    | 'tankMeanTemperature'
    | 'tankBottomTemperature'
    | 'loopFlow'
    | 'pumpRunning'
    | 'pumpPvEnergy'
    | 'pumpElectricity'
    | 'collectorHeat'
    | 'pipeLoss'
    | 'coilHeat'
    | 'tankLoss'
    | 'solarHeat'
    | 'hotVolume'
    | 'tapHeat'
    | 'heaterHeat',
    Float64Array
  >
>;

/** Some days of a run at its own step. Row `s` of hour `h` after {@link firstHour} has index `h × stepsPerHour + s`. */
export interface RunSteps {
  /** First hour of the year that is kept, 0 to 8759. */
  readonly firstHour: number;
  /** Hours that are kept. [h] */
  readonly hours: number;
  /** Steps in an hour. */
  readonly stepsPerHour: number;
  /** Means of the step, sums over it, states at its end, in the units of the hourly columns of the same name. Shape [hours × steps]. */
  readonly columns: StepColumns;
}
