import type { Drivers } from './drivers.ts';
import type { RunColumns } from './result.ts';

/**
 * The columns of a run before its first hour; those of mains and taps are the drivers'.
 *
 * @param spare - Arrays to be used anew, from {@link ownColumns}; taken out.
 */
export function emptyColumns(drivers: Drivers, spare: Float64Array[]): RunColumns {
  const column = () => spare.pop()?.fill(0) ?? new Float64Array(8760);
  return {
    irradiance: column(),
    pvIrradiance: column(),
    ambientTemperature: drivers.ambient,
    absorberTemperature: column(),
    absorberMinimumTemperature: column(),
    collectorOutletTemperature: column(),
    tankTopTemperature: column(),
    tankMaximumTemperature: column(),
    tankBottomTemperature: column(),
    tankMeanTemperature: column(),
    loopFlow: column(),
    pumpRunning: column(),
    pumpPvEnergy: column(),
    pumpElectricity: column(),
    noFlowInSun: column(),
    stagnation: column(),
    boiling: column(),
    highLimit: column(),
    collectorHeat: column(),
    pipeLoss: column(),
    coilHeat: column(),
    heatGivenBack: column(),
    tankLoss: column(),
    loadHeat: column(),
    solarHeat: column(),
    thermosiphonFlow: column(),
    thermosiphonHeat: column(),
    loopPressure: column(),
    loopMaximumPressure: column(),
    loopReliefVolume: column(),
    lowPressure: column(),
    glycolMassFraction: column(),
    freezingPoint: column(),
    pipeMinimumTemperature: column(),
    reliefVolume: column(),
    reliefHeat: column(),
    mainsTemperature: drivers.mains,
    tapVolume: drivers.tapVolume,
    hotVolume: column(),
    tapHeatAsked: column(),
    unfiredVolume: column(),
    unfiredShortfall: column(),
    undisinfectedVolume: column(),
    tapHeat: column(),
    tapTemperature: column(),
    heaterHeat: column(),
    heaterFuel: column(),
    heaterPvEnergy: column(),
    heaterLoss: column(),
    ringLoss: column(),
    hotPipeLoss: column(),
    heaterElectricity: column(),
    baselineHeat: column(),
    baselineFuel: column(),
    baselineElectricity: column(),
  };
}

/** The arrays of a run's columns, without those that are the weather's or the drivers'. */
export function ownColumns(columns: RunColumns): Float64Array[] {
  const { ambientTemperature: _air, mainsTemperature: _mains, tapVolume: _taps, ...own } = columns;
  return Object.values(own);
}
