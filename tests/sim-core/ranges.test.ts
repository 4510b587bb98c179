import { DesignError, type DrawProfileName } from '@noonloop/sim-core';
import {
  beamIncidenceModifier,
  boilingPoint,
  burstProtection,
  type CollectorConditions,
  type CollectorRating,
  cellTemperature,
  cellTemperatureInWind,
  coilExchange,
  collectorEfficiency,
  counterflowExchange,
  diffuseModifiers,
  diodeParameters,
  drawProfile,
  exchangerRatio,
  type FluidQuery,
  flowCorrection,
  fluidProperties,
  glycolMassForFreezing,
  glycolMassFromVolume,
  glycolVolumeFromMass,
  glycolVolumeOfMixture,
  mainsColumn,
  mainsTemperature,
  type PvLoad,
  pvOperatingPoint,
  seriesRatio,
  stagnationTemperature,
  usefulPower,
} from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { inventedYear } from './physics/sun/weather.ts';

// Names and units in an error are for the reader alone: no formula would miss them, so they are looked at here.
const rating: CollectorRating = { area: 2, eta0: 0.75, a1: 3.5, a2: 0.015 };
const instant: CollectorConditions = { beamIrradiance: 800, meanFluidTemperature: 50, ambientTemperature: 20 };
const climate = { annualMean: 10, monthlyRange: 20, southern: false };
const removal = { area: 2, removalLoss: 4, capacityRate: 100 };
const exchanger = { effectiveness: 0.6, minimumRate: 100 };
const streams = { conductance: 500, hotCapacityRate: 200, coldCapacityRate: 250, hotInlet: 60, coldInlet: 20 };
const panel = {
  photocurrent: 1.24,
  saturationCurrent: 7.4e-10,
  seriesResistance: 0.35,
  shuntConductance: 0.004,
  modifiedIdeality: 1.0174,
  currentTemperatureCoefficient: 0,
};
const stc = { irradiance: 1000, cellTemperature: 25 };
const year = inventedYear(8, 16, 500, 100);
const hot: WeatherYear = { ...year, columns: { ...year.columns, dryBulb: new Float64Array(8760).fill(61) } };

const rate = (change: Partial<CollectorRating>) => () => usefulPower({ ...rating, ...change }, instant);
const at = (change: Partial<CollectorConditions>) => () => usefulPower(rating, { ...instant, ...change });
const flow =
  (change: Partial<typeof removal>, use = 100) =>
  () =>
    flowCorrection({ ...removal, ...change }, use);
const cell = (change: object) => () => diodeParameters(panel, { ...stc, ...change });
const load = (on: object) => () => pvOperatingPoint(panel, stc, on as PvLoad);
const plates = (change: Partial<typeof streams>) => () => counterflowExchange({ ...streams, ...change });
const inCoil = (change: object) => () =>
  coilExchange({ conductance: 500, capacityRate: 200, inletTemperature: 60, tankTemperature: 20, ...change });
const fluid = (query: object) => () => fluidProperties({ fluid: 'water', temperature: 20, ...query } as FluidQuery);
const through = (angles: number[], values: number[]) => () => beamIncidenceModifier({ angles, values }, 0);

/** Place of the fault, and how what was expected ends: the last bound with its unit, if it has one. */
type Fault = readonly [path: string, ending: string, call: () => unknown];

const collectors: readonly Fault[] = [
  ['area', 'm²', rate({ area: 0 })],
  ['eta0', 'to 1', rate({ eta0: 1.1 })],
  ['a1', 'W/(m²·K)', rate({ a1: -1 })],
  ['a2', 'W/(m²·K²)', rate({ a2: 2 })],
  ['a3', 'to 10000000', rate({ a3: -1 })],
  ['beamIrradiance', 'W/m²', at({ beamIrradiance: -1 })],
  ['diffuseIrradiance', 'W/m²', at({ diffuseIrradiance: 3000 })],
  ['beamModifier', 'to 2', at({ beamModifier: 3 })],
  ['diffuseModifier', 'to 2', at({ diffuseModifier: -0.1 })],
  ['meanFluidTemperature', '°C', at({ meanFluidTemperature: 501 })],
  ['ambientTemperature', '°C', at({ ambientTemperature: -91 })],
  ['windSpeed', 'm/s', at({ windSpeed: -1 })],
  ['longwaveIrradiance', 'W/m²', at({ longwaveIrradiance: 1001 })],
  ['temperatureRate', 'K/s', at({ temperatureRate: 11 })],
  ['irradiance', 'W/m²', () => stagnationTemperature(rating, -1, 20)],
  ['ambient', '°C', () => stagnationTemperature(rating, 800, 71)],
  ['a1', 'a1 or a2 more than 0', () => stagnationTemperature({ ...rating, a1: 0, a2: 0 }, 800, 20)],
  ['beamIrradiance', 'more than 0 W/m²', () => collectorEfficiency(rating, { ...instant, beamIrradiance: 0 })],
  ['area', 'to 1000000 m²', flow({ area: 0 })],
  ['removalLoss', 'to 100 W/(m²·K)', flow({ removalLoss: 101 })],
  ['capacityRate', 'to 1000000 W/K', flow({ capacityRate: -1 })],
  ['capacityRate', 'to 1000000 W/K', flow({}, 0)],
  ['removalLoss', 'the fluid’s capacity rate per area', flow({ capacityRate: 8 })],
  ['panels', 'to 1000', () => seriesRatio(removal, 0.5)],
  ['effectiveness', 'to 1', () => exchangerRatio(removal, { ...exchanger, effectiveness: 1.1 })],
  ['minimumRate', 'to 1000000 W/K', () => exchangerRatio(removal, { ...exchanger, minimumRate: 0 })],
  ['incidenceAngle', 'to 90 °', () => beamIncidenceModifier({ b0: 0.1 }, 91)],
  ['incidenceModifier.b0', 'to 1', () => beamIncidenceModifier({ b0: 1.1 }, 0)],
  ['incidenceModifier.values[1]', 'to 2', through([0, 60], [1, 2.1])],
  ['incidenceModifier.angles', 'as many as the values', through([0, 91], [1, 1])],
  ['incidenceModifier.angles', 'as many as the values', through([10, 30], [1, 1])],
  ['incidenceModifier.angles', 'as many as the values', through([0, 30, 30], [1, 0.9, 0.8])],
  ['tilt', 'to 90 °', () => diffuseModifiers({ b0: 0.1 }, 91)],
];

const fluids: readonly Fault[] = [
  ['fluid', '"propylene-glycol" or "ethylene-glycol"', fluid({ fluid: 'brine' })],
  ['glycolMassFraction', 'to 0', fluid({ glycolMassFraction: 0.1 })],
  ['temperature', 'to 140 °C (liquid)', fluid({ temperature: -1 })],
  ['temperature', '°C (liquid at this pressure)', fluid({ temperature: 105, absolutePressure: 101_325 })],
  ['glycolMassFraction', 'to 0', () => boilingPoint('water', 0.1, 1e5)],
  ['absolutePressure', 'Pa', () => boilingPoint('propylene-glycol', 0.4, 22.0e6)],
  ['glycolMassFraction', 'to 0', () => burstProtection('water', 0.1)],
  ['volumeFraction', 'to 1', () => glycolMassFromVolume('propylene-glycol', 1.2)],
  ['massFraction', 'to 1', () => glycolVolumeFromMass('propylene-glycol', 1.2)],
  ['massFraction', 'to 0.6', () => glycolVolumeOfMixture('propylene-glycol', 0.7)],
  ['freezingPoint', '°C', () => glycolMassForFreezing('propylene-glycol', 1)],
];

const exchangers: readonly Fault[] = [
  ['conductance', 'to 1000000000 W/K', plates({ conductance: -1 })],
  ['capacityRate', 'to 1000000000 W/K', plates({ hotCapacityRate: 0 })],
  ['capacityRate', 'to 1000000000 W/K', plates({ coldCapacityRate: 0 })],
  ['temperature', 'to 1000 °C', plates({ hotInlet: 1001 })],
  ['temperature', 'to 1000 °C', plates({ coldInlet: -274 })],
  ['capacityRate', 'to 1000000000 W/K', inCoil({ capacityRate: 0 })],
  ['temperature', 'to 1000 °C', inCoil({ inletTemperature: Number.NaN })],
  ['temperature', 'to 1000 °C', inCoil({ tankTemperature: 1001 })],
];

const draws: readonly Fault[] = [
  ['annualMean', '°C', () => mainsTemperature({ ...climate, annualMean: 61 }, 10)],
  ['monthlyRange', 'K', () => mainsTemperature({ ...climate, monthlyRange: -1 }, 10)],
  ['dayOfYear', 'to 366 d', () => mainsTemperature(climate, 367)],
  ['weather.dryBulb', 'to 60 °C (mean of the year)', () => mainsColumn('from-weather', hot)],
  ['draw.mains', 'to 40 °C', () => mainsColumn(41, year)],
  ['draw.mains', '[°C], or { mean, swing }', () => mainsColumn([1, 2, 3], year)],
  ['draw.mains[1]', 'to 40 °C', () => mainsColumn([10, -1, ...new Array<number>(10).fill(10)], year)],
  ['profile', 'XL, XXL, level, morning, evening', () => drawProfile('weekend' as DrawProfileName)],
];

const photovoltaics: readonly Fault[] = [
  ['irradiance', 'to 2000 W/m²', cell({ irradiance: -1 })],
  ['cellTemperature', 'to 150 °C', cell({ cellTemperature: -61 })],
  ['irradiance', 'to 2000 W/m²', () => cellTemperature(-1, 20, 45)],
  ['ambient', 'to 70 °C', () => cellTemperature(800, 71, 45)],
  ['nominalOperatingCellTemperature', 'to 90 °C', () => cellTemperature(800, 20, 19)],
  ['efficiency', 'to 0.5', () => cellTemperature(800, 20, 45, 0.6)],
  ['irradiance', 'to 2000 W/m²', () => cellTemperatureInWind(2001, 20, 1)],
  ['ambient', 'to 70 °C', () => cellTemperatureInWind(800, -91, 1)],
  ['windSpeed', 'to 100 m/s', () => cellTemperatureInWind(800, 20, -1)],
  ['load.resistance', 'to 1000000000 Ω', load({ kind: 'resistance', resistance: -1 })],
  ['load.backEmf', 'to 1000 V', load({ kind: 'motor', backEmf: -1, resistance: 3 })],
  ['load.resistance', 'to 1000000000 Ω', load({ kind: 'motor', backEmf: 5, resistance: -1 })],
  ['load.voltage', 'to 1000 V', load({ kind: 'voltage', voltage: -1 })],
  ['load.kind', '"maximum-power", "resistance", "motor", "voltage", "open" or "measured"', load({ kind: 'fan' })],
];

describe('a value that cannot be', () => {
  it.each([...collectors, ...fluids, ...exchangers, ...draws, ...photovoltaics])(
    '%s is named, what was expected ends with %s, and there is something to do about it [definition]',
    (path, ending, call) => {
      let caught: unknown;
      try {
        call();
      } catch (error) {
        caught = error;
      }
      expect(caught).toBeInstanceOf(DesignError);
      const [issue] = (caught as DesignError).issues;
      expect(issue).toMatchObject({ path, expected: expect.stringMatching(/[^ ]$/) });
      expect(issue!.expected.slice(-ending.length)).toBe(ending);
      expect(issue!.remedy).not.toBe('');
    },
  );
});

describe('what only an instant with more than beam shows', () => {
  it('efficiency is over all the light, beam and diffuse [definition]', () => {
    const conditions = { ...instant, diffuseIrradiance: 200 };
    expect(collectorEfficiency(rating, conditions)).toBeCloseTo(usefulPower(rating, conditions) / (2 * 1000), 12);
  });

  it('without a long-wave value the sky is taken as black at the air’s temperature: a4 then does nothing [by hand]', () => {
    expect(usefulPower({ ...rating, a4: 0.9 }, instant)).toBeCloseTo(usefulPower(rating, instant), 9);
  });

  it('stagnation without light is the air’s temperature, also without a linear loss [by hand]', () => {
    expect(stagnationTemperature({ ...rating, a1: 0 }, 0, 15)).toBe(15);
  });
});
