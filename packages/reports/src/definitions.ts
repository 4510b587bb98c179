/** One table of what every reported number means. Wherever a number is shown, its text comes from here. */
import type { PeriodSummary } from './summary.ts';
import type { UnitKind } from './units.ts';

/** What a number means. */
export interface Definition {
  /** Name before a number. */
  readonly label: string;
  /** Decides unit and digits. */
  readonly kind: UnitKind;
  /** Whether the months add up to the year. */
  readonly additive: boolean;
  /** What is counted, in words. */
  readonly definition: string;
}

const sum = (label: string, kind: UnitKind, definition: string): Definition => ({
  label,
  kind,
  additive: true,
  definition,
});
const single = (label: string, kind: UnitKind, definition: string): Definition => ({
  label,
  kind,
  additive: false,
  definition,
});

/** Key of a number: every field of a {@link PeriodSummary} but the hours of extremes. */
export type NumberKey = Exclude<keyof PeriodSummary, 'peakTankHour' | 'hottestAbsorberHour' | 'coldestAbsorberHour'>;

/** Label, unit kind and definition of each number of a {@link PeriodSummary}, in the order in which reports show them. */
export const DEFINITIONS: Readonly<Record<NumberKey, Definition>> = {
  deliveredEnergy: sum(
    'Energy delivered',
    'energy',
    'Heat that the draw took out of the solar tank, above the temperature of the cold mains.',
  ),
  stagnationHours: sum(
    'Stagnation',
    'hours',
    'Hours in which sun falls on the collectors, no fluid moves and the absorber is above the stagnation limit of the run. Shares of hours are added up.',
  ),
  peakTankTemperature: single(
    'Peak tank temperature',
    'temperature',
    'Highest temperature of the hottest part of the solar tank at any step of the period.',
  ),
  sunShare: single(
    'Hot water by the sun',
    'fraction',
    'Share of the heat asked for at the taps that the sun made: of each day the energy delivered, at most what the taps asked for, so that a hot day makes up for no dull one; what the heater keeps itself warm with is left out. Our definition.',
  ),
  solarFraction: single(
    'Solar fraction',
    'fraction',
    'Energy delivered, divided by the sum of energy delivered and the heat that the burner put into its water.',
  ),
  fuelSaving: single(
    'Fractional energy saving',
    'fraction',
    'One minus the fuel burnt with the solar system over the fuel that the same heater burns for the same house without it.',
  ),
  fuelSaved: sum(
    'Fuel saved',
    'fuel',
    'Fuel without the solar system less fuel with it, by gross calorific value. Electricity is not counted in it.',
  ),
  heaterFuel: sum(
    'Fuel, with solar',
    'fuel',
    'Fuel that the backup heater burns after the solar tank, by gross calorific value; with an electric heater or heat pump its electricity from the mains.',
  ),
  heaterPvEnergy: sum(
    'Spare PV into the heater',
    'electricity',
    'Electricity that the backup heater takes from the house’s own PV before it takes any from the mains. It is not in the fuel; the house without the solar system has the same PV.',
  ),
  baselineFuel: sum(
    'Fuel, without solar',
    'fuel',
    'Fuel that the same heater burns for the same house and weather without the solar system, by gross calorific value.',
  ),
  heaterHeat: sum(
    'Burner heat',
    'energy',
    'Heat that the burner of the backup heater puts into its water, with the solar system.',
  ),
  baselineHeat: sum(
    'Burner heat, without solar',
    'energy',
    'Heat that the burner of the same heater puts into its water without the solar system.',
  ),
  pumpHours: sum('Pump runs', 'hours', 'Hours in which the pump moves fluid. Shares of hours are added up.'),
  pumpElectricity: sum(
    'Electricity of the pump',
    'electricity',
    'Electricity that the pump takes from the mains; none where it runs on its own PV modules.',
  ),
  heaterElectricity: sum(
    'Electricity of heater controls',
    'electricity',
    'Electricity that the controls of the backup heater, and the pump of a hot-water ring, draw from the mains; it heats no water. What an electric heater heats with is its fuel.',
  ),
  baselineElectricity: sum(
    'Electricity of controls, no solar',
    'electricity',
    'Electricity that the controls of the same house’s heater draw without the solar system.',
  ),
  boilingHours: sum(
    'Boiling',
    'hours',
    'Hours in which fluid has boiled out of the collectors and nothing circulates. Shares of hours are added up.',
  ),
  lowPressureHours: sum(
    'Too little loop pressure',
    'hours',
    'Hours in which the pump would run and the loop has too little pressure to circulate. Shares of hours are added up.',
  ),
  noFlowHours: sum(
    'Sun without flow',
    'hours',
    'Hours in which sun falls on the collectors and no fluid moves, hot or not: sun too weak to start the pump counts too.',
  ),
  highLimitHours: sum(
    'Stopped by the high limit',
    'hours',
    'Hours in which the pump would run, by light and controller, and the high limit of the tank keeps it off. Shares of hours are added up.',
  ),
  hottestAbsorber: single(
    'Hottest absorber',
    'temperature',
    'Highest temperature of the hottest part of the absorber at any step of the period.',
  ),
  coldestAbsorber: single(
    'Coldest absorber',
    'temperature',
    'Lowest temperature of the coldest part of the absorber at any step of the period.',
  ),
  tapVolume: sum('Water used at the taps', 'volume', 'Mixed water that the house used at its taps.'),
  hotVolume: sum(
    'Hot water drawn',
    'volume',
    'Hot water that was drawn from the heater, through the solar tank, for the taps.',
  ),
  tapHeatAsked: sum(
    'Heat asked for at the taps',
    'energy',
    'Heat that the taps ask for, above the temperature of the cold mains.',
  ),
  tapHeat: sum(
    'Heat at the taps',
    'energy',
    'Heat that came out at the taps, above the temperature of the cold mains.',
  ),
  irradiation: sum(
    'Sunlight on collectors',
    'energy',
    'Irradiance on the collector plane times the area of all panels, added up over the period.',
  ),
  collectorLoss: sum(
    'Not collected',
    'energy',
    'Sunlight on the collectors less the heat that the fluid carried out of them: light reflected, heat lost from the panels, sun while no fluid moved.',
  ),
  collectorHeat: sum(
    'Heat from the collectors',
    'energy',
    'Heat that the fluid carried out of the collectors, less what it carried in.',
  ),
  pipeLoss: sum('Lost by pipes', 'energy', 'Heat lost by the pipes of the collector loop.'),
  coilHeat: sum('Heat from the coil', 'energy', 'Heat that the coil gave to the tank, less what it took from it.'),
  heatGivenBack: sum(
    'Heat given back',
    'energy',
    'Heat that the coil took back out of the tank while the loop ran with fluid colder than the tank’s water, as in weak light.',
  ),
  tankLoss: sum('Lost by solar tank', 'energy', 'Heat lost by the solar tank to its room.'),
  loadHeat: sum(
    'Heat to pool or rooms',
    'energy',
    'Heat that a pool or rooms take out of the solar tank. It is not in the energy delivered, which is that of hot water, nor in what is saved.',
  ),
  heaterLoss: sum(
    'Lost by backup heater',
    'energy',
    'Standby heat lost by the backup heater to its room, with the solar system.',
  ),
  ringLoss: sum(
    'Lost by the hot-water ring',
    'energy',
    'Heat lost by the recirculation ring while its pump runs, and what its water and pipe cooled in its rests. The house without the solar system has the same ring.',
  ),
  hotPipeLoss: sum(
    'Lost on the way to the taps',
    'energy',
    'Heat of hot water that cools in the pipe to the taps between draws, and that the pipe loses while water runs; the tap’s water is counted after it.',
  ),
  burnerLoss: sum(
    'Lost in burning',
    'energy',
    'Fuel burnt with the solar system less the heat that it put into the water; below zero with a heat pump: what it took from the air.',
  ),
  reliefVolume: sum('Let out by relief valve', 'discharge', 'Water let out by the relief valve of the solar tank.'),
  loopReliefVolume: sum(
    'Let out by the loop’s valve',
    'discharge',
    'Fluid let out by the relief valve of the collector loop.',
  ),
  reliefHeat: sum(
    'Heat let out of the tank',
    'energy',
    'Heat in the water let out by the relief valve of the solar tank, above the temperature of the cold mains.',
  ),
};

/** Numbers of what few houses have: reports leave them out where they are 0 in all designs. */
export const WHERE_USED: readonly NumberKey[] = ['heaterPvEnergy', 'loadHeat', 'ringLoss', 'hotPipeLoss'];

/** Keys in the order of reports. */
export const NUMBER_KEYS = Object.keys(DEFINITIONS) as readonly NumberKey[];

/** Columns of the monthly tables. */
export const MONTH_KEYS = [
  'irradiation',
  'deliveredEnergy',
  'heaterHeat',
  'sunShare',
  'fuelSaved',
  'stagnationHours',
  'peakTankTemperature',
] as const satisfies readonly NumberKey[];

/** What the columns of the balance table mean. */
export const BALANCE_DEFINITION =
  'Residual: energy in, less energy out, less the change of what is stored. Worst hour: the largest residual of one hour over the energy that flowed through the part in that hour; anything above 1e−9 is a fault of the program.';
