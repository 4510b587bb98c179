import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { boilingPoint } from '../../../../packages/sim-core/src/formulas.ts';
import {
  DesignError,
  defineSystem,
  freezeAtSite,
  freezeOfRun,
  glycolAgeing,
  glycolForSite,
  glycolFromReading,
  glycolVerdict,
  type RunResult,
  simulate,
  thinning,
} from '../../../../packages/sim-core/src/index.ts';
import { inventedValley, plainInput, withPanels } from '../../../examples.ts';

const design = withPanels(2);

const years = new Map<number, RunResult>();
/** A year in the invented valley by steps of twenty minutes, simulated once for each count of panels. */
async function yearWith(panels: number): Promise<RunResult> {
  const year = years.get(panels) ?? simulate(withPanels(panels), await inventedValley(), { stepsPerHour: 3 });
  years.set(panels, year);
  return year;
}

/** A year of one air and one long-wave irradiance, dark. */
function darkYear(weather: WeatherYear, air: number, longwave: number): WeatherYear {
  const level = (value: number) => new Float64Array(8760).fill(value);
  return {
    ...weather,
    columns: {
      ...weather.columns,
      dryBulb: level(air),
      ghi: level(0),
      dni: level(0),
      dhi: level(0),
      skyLongwave: level(longwave),
    },
  };
}

describe('freezeAtSite', () => {
  it('night-sky cooling of a dark year is s D/a1 [by hand]', async () => {
    const weather = darkYear(await inventedValley(), 0, 220);
    const black = 5.670374419e-8 * 273.15 ** 4;
    const deficit = ((1 + Math.cos((40 * Math.PI) / 180)) / 2) * (black - 220);
    const { skyCoefficient, a1 } = design.array.collector;
    const drop = (skyCoefficient * deficit) / a1;
    const { deepestSkyCooling, coldest, hoursBelowFreezing, hoursBySky } = freezeAtSite(design, weather, 0.02);
    expect(deepestSkyCooling).toBeCloseTo(drop, 9);
    expect(coldest).toBeCloseTo(-drop, 9);
    // All year below the freezing point of 2 % glycol (−0.5 °C), and none of it by the air alone.
    expect([hoursBelowFreezing, hoursBySky]).toEqual([8760, 8760]);
  });

  it('water freezes in a panel at air above 0 °C under a clear sky [common practice, no source]', async () => {
    const water = defineSystem({ ...plainInput, loop: { fluid: 'water' } });
    const report = freezeAtSite(water, darkYear(await inventedValley(), 2, 200));
    expect(report.hoursBelowFreezing).toBe(8760);
    expect(report.hoursBelowBurst).toBe(8760);
    expect(report.cautions.map(({ code }) => code)).toEqual(['fluid-may-split']);
  });

  it('more glycol, fewer hours; burst hours are fewer than slush hours [direction that physics demands]', async () => {
    const weather = await inventedValley();
    const reports = [0, 0.1, 0.2, 0.3, 0.4].map((share) => freezeAtSite(design, weather, share));
    for (const [at, report] of reports.entries()) {
      expect(report.hoursBelowBurst).toBeLessThanOrEqual(report.hoursBelowFreezing);
      expect(report.monthsBelowFreezing.reduce((sum, hours) => sum + hours, 0)).toBe(report.hoursBelowFreezing);
      if (at > 0) expect(report.hoursBelowFreezing).toBeLessThanOrEqual(reports[at - 1]!.hoursBelowFreezing);
    }
    expect(reports[0]!.season!.first).toBeGreaterThan(4344);
    expect(reports[0]!.season!.last).toBeLessThan(4344);
  });

  it('the coldest hour agrees with a run within half a kelvin, the run a little warmer [two models]', async () => {
    const weather = await inventedValley();
    const run = await yearWith(2);
    const report = freezeOfRun(run);
    const site = freezeAtSite(design, weather);
    expect(report.coldest).toBeGreaterThan(site.coldest - 0.01);
    expect(report.coldest).toBeLessThan(site.coldest + 0.5);
    expect(report.coldest).toBe(Math.min(run.loop.coldestAbsorber, run.loop.coldestPipe));
    expect(report.hoursBelowFreezing).toBe(0);
    // What there is to spare, also where it is safe.
    expect(report.margin).toBeCloseTo(report.coldest - run.freezingPoint, 9);
    expect(report.margin).toBeGreaterThan(0);
    expect(report.marginHour).toBe(report.coldestHour);
    expect(site.margin).toBeCloseTo(site.coldest - site.freezingPoint, 9);
  });

  it('refuses shares out of range [requirement]', async () => {
    const weather = await inventedValley();
    expect(() => freezeAtSite(design, weather, 0.7)).toThrow(/glycolMassFraction/);
  });
});

describe('thinned run', () => {
  it('freezeOfRun counts what the run counts; thinning gives its date within hours of the run’s [requirement]', async () => {
    const weather = await inventedValley();
    const leaky = defineSystem({ ...plainInput, loop: { leak: '0.05 L/day', makeUp: true } });
    const run = simulate(leaky, weather, { stepsPerHour: 3 });
    const report = freezeOfRun(run);
    expect(report.hoursBelowFreezing).toBeGreaterThanOrEqual(
      Math.max(run.loop.absorberFreezingHours, run.loop.pipeFreezingHours),
    );
    expect(report.hoursBelowBurst).toBe(run.loop.burstHours);
    expect(report.deepestBelowFreezing).toBeCloseTo(run.loop.deepestFreezing, 9);
    const { daysToFreezing, daysToBursting, months, volume } = thinning(leaky, {
      leak: '0.05 L/day',
      coldest: report.coldest,
    });
    expect(Math.abs(run.loop.protectionEnds! / 24 - daysToFreezing)).toBeLessThan(0.2);
    expect(report.margin).toBeCloseTo(run.loop.freezeMargin, 9);
    expect(daysToBursting!).toBeGreaterThan(daysToFreezing);
    // x ρ = x0 ρ0 e^(−q t/V): after 300 days, densities 1037.6 and 1011.9 kg/m³ at 10 °C [Melinder, by hand].
    const byHand = (0.4 * 1037.62 * Math.exp((-0.05e-3 * 300) / volume)) / 1011.9;
    expect(months[10]!.massFraction).toBeCloseTo(byHand, 3);
  });

  it('tells protected, unprotected and bad input apart [requirement]', () => {
    expect(thinning(design, { leak: '0.1 L/day', coldest: -30 }).daysToFreezing).toBe(0);
    expect(() => thinning(design, { leak: 0, coldest: 5 } as never)).toThrow(/leak[\s\S]*coldest/);
    expect(() =>
      thinning(defineSystem({ ...plainInput, loop: { fluid: 'water' } }), { leak: 1e-9, coldest: -5 }),
    ).toThrow(/glycol/);
  });
});

describe('glycolForSite', () => {
  it('its freezing point is the coldest hour less the margin [Melinder, inverted]', async () => {
    const weather = await inventedValley();
    const { freezingPoint, coldest, steps, volumeFraction, glycolVolume, burstOnlyVolumeFraction, massFraction } =
      glycolForSite(design, weather, {
        margin: '9 degF',
      });
    expect(freezingPoint).toBeCloseTo(coldest - 5, 6);
    expect(burstOnlyVolumeFraction).toBeLessThan(volumeFraction);
    expect(steps.map(({ code }) => code)).toContain('share-glycol');
    // Loop, and what the vessel holds at the fill pressure: topped up with water it would be too weak [by hand].
    const { loop, array, coil } = design;
    const bore = (diameter: number) => (Math.PI / 4) * diameter ** 2;
    const inLoop =
      array.panels * array.collector.fluidContent +
      bore(loop.pipeInnerDiameter) * loop.pipeLength +
      bore(coil.innerDiameter) * coil.length;
    const air = weather.columns.pressure!.reduce((sum, value) => sum + value, 0) / 8760;
    const held = loop.vesselVolume * (1 - (loop.vesselPrecharge + air) / (loop.fillPressure + air));
    expect(held).toBeCloseTo(0.003, 4); // 3 L of reserve, in the valley’s air
    expect(glycolVolume).toBeCloseTo(volumeFraction * (inLoop + held), 9);
    expect(freezeAtSite(design, weather, massFraction).hoursBelowFreezing).toBe(0);
  });

  it('mild sites get the least share; impossible ones are refused [requirement]', async () => {
    const weather = await inventedValley();
    const mild = glycolForSite(design, darkYear(weather, 15, 380), { leastVolumeFraction: '30 %' });
    expect(mild.volumeFraction).toBeCloseTo(0.3, 9);
    expect(() => glycolForSite(design, darkYear(weather, -55, 100))).toThrow(/strongest mixture/);
    expect(() => glycolForSite(design, weather, { margin: 'much', leastVolumeFraction: 2 } as never)).toThrow(
      DesignError,
    );
  });
});

describe('glycolAgeing', () => {
  it('counts by the run’s own columns, what boiled out at the boiling point under the relief valve’s pressure [requirement]', async () => {
    const run = await yearWith(3);
    const ageing = glycolAgeing(run, { limit: 110 });
    const { absorberTemperature, boiling } = run.columns;
    const hottestLiquid = boilingPoint('propylene-glycol', 0.4, 6e5 + run.loop.airPressure);
    expect(boiling.some((share) => share > 0)).toBe(true);
    let hours = 0;
    let equivalent = 0;
    absorberTemperature.forEach((t, hour) => {
      if (t > 120) hours += 1 - boiling[hour]!;
      const liquid = Math.min(t, hottestLiquid);
      if (t >= 70)
        equivalent += (1 - boiling[hour]!) * 2 ** ((t - 110) / 10) + boiling[hour]! * 2 ** ((liquid - 110) / 10);
    });
    expect(ageing.hoursAbove.find(({ temperature }) => temperature === 120)!.hours).toBeCloseTo(hours, 9);
    expect(ageing.equivalentHours).toBeCloseTo(equivalent, 6);
    expect(ageing.monthsToTest).toBeGreaterThanOrEqual(3);
    expect(ageing.monthsToTest).toBeLessThanOrEqual(12);
  });

  it('a hotter array asks for tests sooner [requirement]', async () => {
    const some = glycolAgeing(await yearWith(2));
    const many = glycolAgeing(await yearWith(3));
    expect(many.equivalentHours).toBeGreaterThan(some.equivalentHours);
    expect(many.monthsToTest).toBeLessThanOrEqual(some.monthsToTest);
  });

  it('pH [a trade magazine’s page, in the safety values]', () => {
    expect([12, 10, 8.5, 8.2, 7.5, 7, 6.9].map(glycolVerdict)).toEqual([
      'doubtful', // makers fill at 8 to 10 (from memory)
      'fresh',
      'fresh',
      'in use',
      'renew soon',
      'renew soon',
      'renew now',
    ]);
    expect(() => glycolVerdict(99)).toThrow(/pH/);
  });
});

describe('glycolFromReading', () => {
  // fluids.md, "Freezing point turned round": three digits.
  it.each([
    [-5, 0.153, 0.14],
    [-10, 0.254, 0.235],
    [-15, 0.332, 0.305],
    [-20, 0.394, 0.362],
    [-25, 0.443, 0.411],
    [-30, 0.484, 0.454],
    [-35, 0.519, 0.493],
    [-40, 0.549, 0.528],
  ])('freezing at %f °C is %f propylene, %f ethylene glycol by mass [requirement]', (value, propylene, ethylene) => {
    const of = (glycol: 'propylene-glycol' | 'ethylene-glycol') =>
      glycolFromReading({ glycol, scale: 'freezing-point', value }).massFraction;
    expect(Math.abs(of('propylene-glycol') - propylene)).toBeLessThan(0.0006);
    expect(Math.abs(of('ethylene-glycol') - ethylene)).toBeLessThan(0.0006);
  });

  // A dealer's chart of propylene glycol: 30 % by volume reads 22 to 23 °Bx, 50 % some 35 to 36 (from memory).
  it.each([
    [22.5, 0.3],
    [35.5, 0.5],
  ])('%f °Bx is near %f by volume [from memory]', (value, volume) => {
    const { volumeFraction, error } = glycolFromReading({ scale: 'brix', value });
    expect(Math.abs(volumeFraction - volume)).toBeLessThan(error + 0.01);
  });

  it('index and density come back [round trip; density of 50 % ethylene glycol at 20 °C by Melinder’s polynomial]', () => {
    const { massFraction, error } = glycolFromReading({ glycol: 'ethylene-glycol', scale: 'density', value: 1064.5 });
    expect(massFraction).toBeGreaterThan(0.47);
    expect(massFraction).toBeLessThan(0.53);
    expect(error).toBeLessThan(0.02);
    const weak = glycolFromReading({ scale: 'density', value: 1035 });
    expect(weak.error).toBeGreaterThan(error); // hardly denser than water
    const warm = glycolFromReading({ scale: 'refractive-index', value: 1.377, temperature: 35 });
    const cool = glycolFromReading({ scale: 'refractive-index', value: 1.377, temperature: 20 });
    expect(warm.massFraction).toBeGreaterThan(cool.massFraction);
    expect(warm.worstFreezingPoint).toBeGreaterThan(warm.freezingPoint);
  });

  it('refuses what no mixture reads, and bad words, at once [requirement]', () => {
    expect(() => glycolFromReading({ scale: 'brix', value: 49 })).toThrow(/0 to 60 %/);
    try {
      glycolFromReading({ scale: 'density', value: 'thick', glycol: 'oil', temperature: 90 } as never);
      expect.unreachable();
    } catch (error) {
      expect((error as DesignError).issues.map(({ path }) => path).sort()).toEqual(['glycol', 'temperature', 'value']);
    }
  });
});
