/** Numbers that advice returns besides its main answer, each computed here apart from the design's own dimensions. */
import {
  compareCollectors,
  freezeAtSite,
  glycolAgeing,
  glycolForSite,
  type RunResult,
  simulate,
  sizeCoil,
  sizePumpDrive,
  thinning,
} from '@noonloop/sim-core';
import {
  burstProtection,
  cellTemperature,
  coilConductance,
  fluidProperties,
  glycolVolumeFromMass,
  moduleParameters,
  pumpOperatingPoint,
  pvOperatingPoint,
} from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, withPanels } from '../../examples.ts';
import { EARLY_SUMMER, litWithin } from '../../property/span.ts';

const weather = await inventedValley();
const design = withPanels(2);
const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2;

/** A dark year of one air, its sky as warm as the air. */
const levelYear = (air: number, coldHour: number, cold: number): WeatherYear => {
  const dryBulb = new Float64Array(8760).fill(air);
  dryBulb[coldHour] = cold;
  const dark = new Float64Array(8760);
  const skyLongwave = dryBulb.map((value) => 5.670374419e-8 * (value + 273.15) ** 4);
  return { ...weather, columns: { ...weather.columns, ghi: dark, dni: dark, dhi: dark, dryBulb, skyLongwave } };
};

describe('glycol for a site [volumes by hand; gas law of the vessel]', () => {
  it('pours glycol in for collectors, pipe, coil and what the vessel holds when filled', () => {
    const { array, coil, loop } = design;
    const found = glycolForSite(design, weather);
    const inLoop =
      array.panels * array.collector.fluidContent +
      circle(loop.pipeInnerDiameter) * loop.pipeLength +
      circle(coil.innerDiameter) * coil.length;
    expect(found.loopVolume).toBeCloseTo(inLoop, 12);
    const { pressure } = weather.columns;
    const air =
      pressure === null
        ? 101_325 * (1 - 2.25577e-5 * weather.site.elevation) ** 5.25588
        : pressure.reduce((sum, value) => sum + value / 8760, 0);
    const held = loop.vesselVolume * (1 - (loop.vesselPrecharge + air) / (loop.fillPressure + air));
    expect(found.vesselVolume).toBeCloseTo(held, 9);
    const share = glycolVolumeFromMass('propylene-glycol', found.massFraction);
    expect(found.glycolVolume).toBeCloseTo(share * (inLoop + held), 9);
    expect(found.glycolVolume / (inLoop + held)).toBeLessThan(0.6); // glycol, not the water beside it
    expect(found.burstPoint).toBe(burstProtection('propylene-glycol', found.massFraction));
  });
});

describe('cold against the fluid [one cold hour in a level year, by hand]', () => {
  it('tells the coldest air, and the depth below bursting apart from that below freezing', () => {
    const year = levelYear(3, 500, -21);
    const report = freezeAtSite(design, year, 0.3);
    const freezing = fluidProperties({
      fluid: 'propylene-glycol',
      glycolMassFraction: 0.3,
      temperature: 20,
    }).freezingPoint;
    const burst = burstProtection('propylene-glycol', 0.3);
    expect(report.coldestAir).toBe(-21);
    expect(report.coldest).toBeCloseTo(-21, 9); // its sky is as warm
    expect([report.coldestHour, report.hoursBelowFreezing]).toEqual([500, 1]);
    expect(report.deepestBelowFreezing).toBeCloseTo(freezing + 21, 9);
    expect([report.hoursBelowBurst, report.deepestBelowBurst]).toEqual([0, 0]);
    expect(burst).toBeLessThan(-21);
    const colder = freezeAtSite(design, levelYear(3, 500, -45), 0.3);
    expect(colder.hoursBelowBurst).toBe(1);
    expect(colder.deepestBelowBurst).toBeCloseTo(burst + 45, 9);
    expect(colder.deepestBelowFreezing).toBeCloseTo(freezing + 45, 9);
  });
});

describe('thinning [Melinder’s freezing point turned round]', () => {
  it('ends where the mixture freezes at the coldest hour', () => {
    const { leastMassFraction } = thinning(design, { leak: '0.05 L/day', coldest: -12 });
    const point = fluidProperties({
      fluid: 'propylene-glycol',
      glycolMassFraction: leastMassFraction,
      temperature: 20,
    }).freezingPoint;
    expect(point).toBeCloseTo(-12, 4);
  });
});

describe('ageing [Σ 2^((T − limit)/10 K), by hand]', () => {
  const run = simulate(design, weather, { stepsPerHour: 1 });
  const level = (temperature: number): RunResult => ({
    ...run,
    columns: {
      ...run.columns,
      absorberTemperature: new Float64Array(8760).fill(temperature),
      boiling: new Float64Array(8760),
    },
  });

  it('wants a test in each hour in which fifty hours at the limit have gathered', () => {
    const atLimit = glycolAgeing(level(design.loop.fluidLimit));
    expect(atLimit.equivalentHours).toBeCloseTo(8760, 6);
    expect(atLimit.testHours).toEqual(Array.from({ length: 11 }, (_, test) => 50 * (test + 1) - 1));
    // Ten kelvin under the limit at half the pace; forty-one under it not at all.
    expect(glycolAgeing(level(design.loop.fluidLimit - 10)).testHours[0]).toBe(99);
    expect(glycolAgeing(level(design.loop.fluidLimit - 41)).testHours).toEqual([]);
  });

  it('of compared collectors is that of each year; the hottest tank is the hottest of any hour', () => {
    const { rows } = compareCollectors(plainInput, litWithin(weather, ...EARLY_SUMMER), {
      candidates: [2, 4].map((panels) => ({
        name: `${panels}`,
        collector: plainInput.array!.collector!,
        panels,
        grossArea: 2.2,
        weightFull: 40,
        price: 400,
      })),
    });
    for (const { glycolHours, hottestTank, run: year } of rows) {
      const { absorberTemperature, boiling, tankMaximumTemperature } = year.columns;
      let hours = 0;
      for (const [hour, t] of absorberTemperature.entries())
        if (t >= 80 && boiling[hour] === 0) hours += 2 ** ((t - 120) / 10);
      expect(year.design.loop.fluidLimit).toBe(120);
      if (boiling.every((share) => share === 0)) expect(glycolHours).toBeCloseTo(hours, 6);
      else expect(glycolHours).toBeGreaterThan(hours);
      expect(hottestTank).toBe(Math.max(...tankMaximumTemperature));
    }
    expect(rows[1]!.glycolHours).toBeGreaterThan(rows[0]!.glycolHours);
  });
});

describe('sizing [definitions, by single formulas]', () => {
  it('says at what difference the coil as designed would work', () => {
    const { coil, loop } = design;
    const { conductance } = coilConductance({
      coil,
      fluid: loop.fluid,
      glycolMassFraction: loop.glycolMassFraction,
      flow: (0.7e-3 / 60) * 4,
      fluidTemperature: 50,
      tankTemperature: 40,
    });
    expect(sizeCoil(design).differenceAsDesigned).toBeCloseTo((600 * 4) / conductance, 9);
  });

  it('gives the flow in full sun for each square metre, and the rise that it makes', () => {
    const { pump, pv } = design;
    const irradiance = 1000;
    const cell = cellTemperature(irradiance, 15, pv.module.nominalOperatingCellTemperature);
    const { power } = pvOperatingPoint(
      moduleParameters(pv.module),
      { irradiance, cellTemperature: cell },
      { kind: 'maximum-power' },
    );
    const { flow } = pumpOperatingPoint(design, {
      electricalPower: pump.boosterEfficiency * pv.modules * power,
      fluidTemperature: 45,
    });
    const { flowPerArea, riseInFullSun } = sizePumpDrive(design);
    expect(flowPerArea / (flow / 4)).toBeCloseTo(1, 6);
    // η0 G A over the heat of the flow, 3.9 MJ/(m³ K).
    expect(riseInFullSun / ((0.75 * 1000 * 4) / (3.9e6 * flow))).toBeCloseTo(1, 6);
  });
});
