/** The key figures of a run: names, meanings, units. */

/** Numbers of one month or of the year. What each means in full: `DEFINITIONS` of the reports. */
export interface PeriodSummary {
  /** Heat that the draw took out of the solar tank, above mains. [J] */
  readonly deliveredEnergy: number;
  /** Sun, no flow, absorber above the stagnation limit. [h] */
  readonly stagnationHours: number;
  /** Hottest node of the tank. [°C] */
  readonly peakTankTemperature: number;
  /** Hour of the year of {@link peakTankTemperature}, the first of equals, 0 to 8759. [h] */
  readonly peakTankHour: number;
  /**
   * Share of the heat asked for at the taps that the sun made, day by day at most all of it; `null` where none was asked for,
   * 0 to 1. [-]
   */
  readonly sunShare: number | null;
  /** Delivered over delivered and burner's heat; `null` where both are 0. [-] */
  readonly solarFraction: number | null;
  /** 1 − fuel with over fuel without; `null` where nothing is burnt without. [-] */
  readonly fuelSaving: number | null;
  /** Fuel without less fuel with, gross calorific value. [J] */
  readonly fuelSaved: number;
  /** Fuel with the solar system. [J] */
  readonly heaterFuel: number;
  /** Electricity that the backup heater takes from the house's spare PV. [J] */
  readonly heaterPvEnergy: number;
  /** Fuel without the solar system. [J] */
  readonly baselineFuel: number;
  /** Burner's heat into the water, with the solar system. [J] */
  readonly heaterHeat: number;
  /** Burner's heat into the water, without the solar system. [J] */
  readonly baselineHeat: number;
  /** The pump moves fluid. [h] */
  readonly pumpHours: number;
  /** Taken by the pump from the mains. [J] */
  readonly pumpElectricity: number;
  /** Taken by the controls of the backup heater from the mains, besides {@link heaterFuel}. [J] */
  readonly heaterElectricity: number;
  /** The same without the solar system. [J] */
  readonly baselineElectricity: number;
  /** Fluid has boiled out of the collectors. [h] */
  readonly boilingHours: number;
  /** The pump would run and the loop has too little pressure. [h] */
  readonly lowPressureHours: number;
  /** Sun on the collectors, no fluid moves. [h] */
  readonly noFlowHours: number;
  /** The pump would run and the high limit keeps it off. [h] */
  readonly highLimitHours: number;
  /** Hottest part of the absorber. [°C] */
  readonly hottestAbsorber: number;
  /** Hour of the year of {@link hottestAbsorber}, 0 to 8759. [h] */
  readonly hottestAbsorberHour: number;
  /** Coldest part of the absorber. [°C] */
  readonly coldestAbsorber: number;
  /** Hour of the year of {@link coldestAbsorber}, 0 to 8759. [h] */
  readonly coldestAbsorberHour: number;
  /** Mixed water used at the taps. [m³] */
  readonly tapVolume: number;
  /** Hot water drawn for it. [m³] */
  readonly hotVolume: number;
  /** Heat that the taps asked for, above mains. [J] */
  readonly tapHeatAsked: number;
  /** Heat that came out at the taps, above mains. [J] */
  readonly tapHeat: number;
  /** Sunlight on the whole array. [J] */
  readonly irradiation: number;
  /** Sunlight on the array less {@link collectorHeat}. [J] */
  readonly collectorLoss: number;
  /** Heat carried out of the array by the fluid. [J] */
  readonly collectorHeat: number;
  /** Lost by the pipes of the loop. [J] */
  readonly pipeLoss: number;
  /** From the coil into the tank. [J] */
  readonly coilHeat: number;
  /** Taken back out of the tank by the coil. [J] */
  readonly heatGivenBack: number;
  /** Lost by the solar tank. [J] */
  readonly tankLoss: number;
  /** Taken out of the solar tank by a pool or rooms. [J] */
  readonly loadHeat: number;
  /** Standby loss of the backup heater. [J] */
  readonly heaterLoss: number;
  /** Lost by a recirculation ring. [J] */
  readonly ringLoss: number;
  /** Lost by the pipe from heater or ring to the taps. [J] */
  readonly hotPipeLoss: number;
  /** Fuel and spare PV less the heat that they put into water; negative with a heat pump: what the air gave. [J] */
  readonly burnerLoss: number;
  /** Water let out by the tank's relief valve. [m³] */
  readonly reliefVolume: number;
  /** Fluid let out by the loop's relief valve. [m³] */
  readonly loopReliefVolume: number;
  /** Heat let out by the tank's relief valve. [J] */
  readonly reliefHeat: number;
}

/** Name of a key figure. */
export type Measure = keyof PeriodSummary;

/** Unit of every key figure; its keys are the names that studies take as measures. */
export const MEASURE_UNITS: Readonly<Record<Measure, string>> = {
  deliveredEnergy: 'J',
  stagnationHours: 'h',
  peakTankTemperature: '°C',
  peakTankHour: 'h',
  sunShare: '-',
  solarFraction: '-',
  fuelSaving: '-',
  fuelSaved: 'J',
  heaterFuel: 'J',
  heaterPvEnergy: 'J',
  baselineFuel: 'J',
  heaterHeat: 'J',
  baselineHeat: 'J',
  pumpHours: 'h',
  pumpElectricity: 'J',
  heaterElectricity: 'J',
  baselineElectricity: 'J',
  boilingHours: 'h',
  lowPressureHours: 'h',
  noFlowHours: 'h',
  highLimitHours: 'h',
  hottestAbsorber: '°C',
  hottestAbsorberHour: 'h',
  coldestAbsorber: '°C',
  coldestAbsorberHour: 'h',
  tapVolume: 'm³',
  hotVolume: 'm³',
  tapHeatAsked: 'J',
  tapHeat: 'J',
  irradiation: 'J',
  collectorLoss: 'J',
  collectorHeat: 'J',
  pipeLoss: 'J',
  coilHeat: 'J',
  heatGivenBack: 'J',
  tankLoss: 'J',
  loadHeat: 'J',
  heaterLoss: 'J',
  ringLoss: 'J',
  hotPipeLoss: 'J',
  burnerLoss: 'J',
  reliefVolume: 'm³',
  loopReliefVolume: 'm³',
  reliefHeat: 'J',
};

/** Key figures that every row has. */
export const DEFAULT_MEASURES = [
  'deliveredEnergy',
  'sunShare',
  'solarFraction',
  'fuelSaving',
  'fuelSaved',
  'heaterFuel',
  'pumpHours',
  'stagnationHours',
  'peakTankTemperature',
  'hottestAbsorber',
  'coldestAbsorber',
  'tapHeatAsked',
  'tapHeat',
] as const satisfies readonly Measure[];

/** Name of a key figure that every row has. */
export type DefaultMeasure = (typeof DEFAULT_MEASURES)[number];
