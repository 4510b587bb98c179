import { DesignError, defineSystem, type RunResult, type SystemInput, simulate, thinning } from '@noonloop/sim-core';
import { burstProtection, fluidProperties, steamReach } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { stepHour } from '../../../packages/sim-core/src/year/step.ts';
import { inventedValley, plainInput, sum, withPanels } from '../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
/** A year by steps of half an hour: leaks and frost go by the hour. */
const withLoop = (loop: SystemInput['loop'], more: Partial<SystemInput> = {}): RunResult =>
  simulate(defineSystem({ ...plainInput, ...more, loop }), weather, { stepsPerHour: 2 });
/** The default loop, by number of panels. */
const byPanels = new Map(
  [1, 2, 3, 6].map((panels) => [panels, withLoop({}, { array: { ...plainInput.array, panels } })]),
);
const water = withLoop({ fluid: 'water' });
const hottest = { array: { ...plainInput.array, panels: 5 }, draw: { dailyVolume: 0.1 } };

describe('loop pressure by default', () => {
  it.each([1, 2, 3, 6])(
    'never opens the relief valve and never lacks pressure with %d panels [direction that physics demands]',
    (panels) => {
      const { loop, columns, design } = byPanels.get(panels)!;
      expect(loop.relieved).toBe(0);
      expect(loop.circulationFails).toBeNull();
      expect(loop.lowestPressure).toBeGreaterThan(design.loop.fillPressure - 0.2e5);
      expect(loop.highestPressure).toBeGreaterThan(design.loop.fillPressure);
      expect(loop.highestPressure).toBeLessThan(0.9 * design.loop.reliefPressure + 1);
      expect(columns.glycolMassFraction.every((x) => Math.abs(x - 0.4) < 1e-12)).toBe(true);
    },
  );

  it('leaves pressure at gauge and collectors apart by the column of liquid [ρ g H] [requirement]', () => {
    const { loop } = defineSystem(plainInput);
    const { density } = fluidProperties({ fluid: 'propylene-glycol', glycolMassFraction: 0.4, temperature: 10 });
    expect(loop.fillPressure - loop.pressure).toBeCloseTo(density * 9.80665 * 6, 6);
    expect(loop.pressure).toBe(1.3e5); // makers' manuals: 1.0 or 1.3 bar and 0.1 bar for each metre
    const byGauge = defineSystem({ ...plainInput, loop: { fillPressure: loop.fillPressure } }).loop;
    expect(byGauge.pressure).toBeCloseTo(loop.pressure, 6);
    expect(byGauge.vesselVolume).toBeCloseTo(loop.vesselVolume, 12);
  });
});

const small = { vesselVolume: '1.5 L', reliefPressure: '3 bar' };
const tooSmall = withLoop(small, hottest);

describe('a vessel that is too small', () => {
  const result = tooSmall;

  it('lets fluid out in stagnation, counted in litres, and has too little pressure when cold [requirement]', () => {
    expect(sum(result.columns.loopReliefVolume)).toBeCloseTo(result.loop.relieved, 12);
    expect(result.loop.relieved).toBeGreaterThan(1e-4);
    expect(Math.max(...result.columns.loopMaximumPressure)).toBeCloseTo(3e5, 6);
    expect(result.loop.circulationFails).not.toBeNull();
    expect(result.notices.map((notice) => notice.code)).toEqual(
      expect.arrayContaining(['loop-relief-valve', 'loop-pressure-low']),
    );
  });

  it('thins the glycol where mains water replaces what the valve let out [requirement]', () => {
    const refilled = withLoop({ ...small, makeUp: true }, hottest);
    expect(refilled.loop.madeUp).toBeGreaterThan(1e-4);
    expect(refilled.columns.glycolMassFraction[8759]!).toBeLessThan(0.39);
    expect(refilled.columns.freezingPoint[8759]!).toBeGreaterThan(refilled.freezingPoint);
    // But for minutes of one cold morning: by −5 °C the whole loop shrinks by more than so small a vessel holds.
    expect(sum(refilled.columns.lowPressure)).toBeLessThan(1);
    expect(sum(result.columns.lowPressure)).toBeGreaterThan(1000);
  });
});

describe('what a year says of its loop [definitions, by its own columns]', () => {
  const most = (column: Float64Array) => column.reduce((high, value) => Math.max(high, value));
  const least = (column: Float64Array) => column.reduce((low, value) => Math.min(low, value));

  it('has the extremes of any moment, not of the hours’ ends', () => {
    const { columns, loop } = tooSmall;
    expect(loop.highestPressure).toBe(most(columns.loopMaximumPressure));
    expect(loop.lowestPressure).toBe(least(columns.loopPressure));
    expect(loop.coldestAbsorber).toBe(least(columns.absorberMinimumTemperature));
    expect(loop.coldestPipe).toBe(least(columns.pipeMinimumTemperature));
    expect(loop.circulationFails).toBe(columns.lowPressure.findIndex((share) => share > 0));
    // Three panels stand an hour or two in the sun: the steam's push is over before the hour is.
    const { columns: ofThree, loop: three } = liveSpan(withPanels(3), weather, ...EARLY_SUMMER);
    expect(three.highestPressure).toBe(most(ofThree.loopMaximumPressure));
    expect(three.highestPressure).toBeGreaterThan(most(ofThree.loopPressure));
  });

  it('counts frost by the hour: depth below the freezing point, hours below bursting, the leak in full', () => {
    const { columns, design, loop } = withLoop({ glycolMassFraction: 0.08, leak: '0.5 mL/day' });
    const cold = columns.absorberMinimumTemperature.map((t, hour) =>
      Math.min(t, columns.pipeMinimumTemperature[hour]!),
    );
    const { freezingPoint } = fluidProperties({ fluid: 'propylene-glycol', glycolMassFraction: 0.08, temperature: 20 });
    const burst = burstProtection('propylene-glycol', 0.08);
    expect(loop.deepestFreezing).toBeCloseTo(freezingPoint - least(cold), 9);
    expect(loop.deepestFreezing).toBeGreaterThan(burst - least(cold) + 1);
    expect(loop.burstPoint).toBeCloseTo(burst, 6);
    expect(loop.burstHours).toBe(cold.filter((t) => t < burst).length);
    expect(loop.absorberFreezingHours).toBe(columns.absorberMinimumTemperature.filter((t) => t < freezingPoint).length);
    expect(loop.pipeFreezingHours).toBe(columns.pipeMinimumTemperature.filter((t) => t < freezingPoint).length);
    expect(loop.lost).toBeCloseTo(0.5e-6 * 365, 12);
    expect(loop.madeUp).toBe(0);
    const { elevation } = weather.site;
    const standard = 101_325 * (1 - 2.25577e-5 * elevation) ** 5.25588; // ISO 2533
    const mean = weather.columns.pressure?.reduce((total, value) => total + value / 8760, 0) ?? standard;
    expect(loop.airPressure).toBeCloseTo(mean, 3);
    expect(loop.steam).toEqual(steamReach(design, loop.airPressure));
  });

  it('works a thinned mixture into flow and coil with the first hour of each month', () => {
    const design = defineSystem({ ...plainInput, loop: { leak: '0.2 L/day', makeUp: true } });
    const machine = assemble(design, weather);
    const share = () => machine.loop.fluid.glycolMassFraction;
    let hour = 0;
    for (const monthEnds of [744, 1416, 2160]) {
      const before = share();
      for (; hour < monthEnds - 1; hour++) stepHour(machine, hour);
      expect(share()).toBe(before);
      stepHour(machine, hour++);
      expect(share()).toBe(machine.columns.glycolMassFraction[monthEnds - 1]);
      expect(share()).toBeLessThan(before);
    }
  });

  it('keeps the tables of a mixture that has not thinned [requirement]', () => {
    const machine = assemble(defineSystem({ ...plainInput, loop: { makeUp: true } }), weather);
    const { fluid } = machine.loop;
    stepHour(machine, 743); // the hour after which a month begins
    expect(machine.loop.fluid).toBe(fluid);
  });
});

describe('a slow leak', () => {
  it('without make-up empties the vessel, and circulation fails [content of the vessel over the leak]', () => {
    const result = withLoop({ leak: '0.02 L/day' });
    const { loop } = result.design;
    const cushion =
      loop.vesselVolume *
      (1 - (loop.vesselPrecharge + result.loop.airPressure) / (loop.fillPressure + result.loop.airPressure));
    const day = cushion / (0.02e-3 * 1);
    // Warm fluid keeps the loop under pressure for a while longer: its expansion, some 3 % of 10 L, is 15 days of the leak.
    const failed = result.loop.circulationFails!;
    expect(failed / 24).toBeGreaterThan(day - 15);
    expect(failed / 24).toBeLessThan(day + 30);
    expect(sum(result.columns.solarHeat.subarray(failed + 72))).toBeLessThan(
      0.6 * sum(byPanels.get(2)!.columns.solarHeat.subarray(failed + 72)),
    );
    expect(result.columns.glycolMassFraction[8759]).toBeCloseTo(0.4, 12);
  });

  it('with make-up thins the glycol as x ρ = x0 ρ0 exp(−q t/V) [closed form of a stirred volume]', () => {
    const result = withLoop({ leak: '0.03 L/day', makeUp: true });
    const { loop, coil, array } = result.design;
    const bore = (d: number) => (Math.PI / 4) * d ** 2;
    const density = (glycolMassFraction: number) =>
      fluidProperties({ fluid: 'propylene-glycol', glycolMassFraction, temperature: 10 }).density;
    const cushion =
      loop.vesselVolume *
      (1 - (loop.vesselPrecharge + result.loop.airPressure) / (loop.fillPressure + result.loop.airPressure));
    const volume =
      bore(loop.pipeInnerDiameter) * loop.pipeLength +
      bore(coil.innerDiameter) * coil.length +
      array.panels * array.collector.fluidContent +
      cushion;
    for (const hour of [999, 4379, 8759]) {
      // In glycol by volume, x ρ.
      const x = result.columns.glycolMassFraction[hour]!;
      const share = (x * density(x)) / (0.4 * density(0.4));
      expect(share / Math.exp((-0.03e-3 * (hour + 1)) / 24 / volume)).toBeCloseTo(1, 5);
    }
    expect(result.loop.lost).toBeCloseTo(0.03e-3 * 365, 9);
    expect(result.loop.madeUp / result.loop.lost).toBeCloseTo(1, 1);
    expect(result.loop.circulationFails).toBeNull();
    for (const balance of Object.values(result.balance)) expect(balance.worstRelative).toBeLessThan(1e-9);
    expect(result.notices.map((notice) => notice.code)).toContain('glycol-thinned');
  });

  it('says when protection ends: within hours of the closed form of a stirred volume [mass balance]', () => {
    const leak = '0.05 L/day';
    const { loop, columns, design } = withLoop({ leak, makeUp: true });
    const coldest = Math.min(loop.coldestAbsorber, loop.coldestPipe);
    const hour = loop.protectionEnds!;
    const { daysToFreezing } = thinning(design, { leak, coldest });
    expect(Math.abs((hour + 1) / 24 - daysToFreezing)).toBeLessThan(0.15); // the vessel holds a little less in the valley’s air
    expect(columns.freezingPoint[hour]!).toBeGreaterThan(coldest);
    expect(columns.freezingPoint[hour - 1]!).toBeLessThanOrEqual(coldest);
    expect(loop.absorberFreezingHours + loop.pipeFreezingHours).toBeGreaterThan(0);
    expect(loop.deepestFreezing).toBeGreaterThan(0);
  });
});

describe('freezing', () => {
  it('states the margin also where it is safe: the coldest part less the freezing point, and its hour [direction that physics demands]', () => {
    const { loop, columns } = byPanels.get(2)!;
    const cold = columns.absorberMinimumTemperature.map((value, hour) =>
      Math.min(value, columns.pipeMinimumTemperature[hour]!),
    );
    const margins = cold.map((value, hour) => value - columns.freezingPoint[hour]!);
    expect(loop.freezeMargin).toBe(Math.min(...margins));
    expect(margins[loop.freezeMarginHour]).toBe(loop.freezeMargin);
    expect(loop.freezeMargin).toBeGreaterThan(0);
    expect(water.loop.freezeMargin).toBeCloseTo(-water.loop.deepestFreezing, 12);
  });

  it('counts the hours of water in the cold, none with glycol [requirement]', () => {
    expect(water.loop.absorberFreezingHours).toBeGreaterThan(100);
    expect(water.loop.burstHours).toBeGreaterThan(100);
    expect(water.loop.protectionEnds).toBe(0);
    const { loop } = byPanels.get(2)!;
    expect(loop.absorberFreezingHours).toBe(0);
    expect(loop.burstHours).toBe(0);
    expect(loop.protectionEnds).toBeNull();
  });
});

describe('bad input', () => {
  it.each([
    ['loop.fillPressure', { pressure: 1e5, fillPressure: 2e5 }],
    ['loop.fillPressure', { fillPressure: '0.1 bar' }],
    ['loop.reliefPressure', { reliefPressure: '2.3 bar' }],
    ['loop.reliefPressure', { reliefPressure: '0.5 bar' }],
    ['loop.reliefPressure', { vesselPrecharge: '5.9 bar' }],
    ['loop.staticHeight', { staticHeight: -1 }],
    ['loop.fillTemperature', { fillTemperature: 200 }],
    ['loop.vesselVolume', { vesselVolume: 0 }],
    ['loop.vesselPrecharge', { vesselPrecharge: '2 m' }],
    ['loop.minimumPressure', { minimumPressure: -2e5 }],
    ['loop.leak', { leak: -1 }],
    ['loop.makeUp', { makeUp: 'yes' }],
    ['loop.checkValve', { checkValve: 1 }],
  ])('is refused at %s [requirement]', (path, loop) => {
    expect.assertions(2);
    try {
      defineSystem({ ...plainInput, loop: loop as never });
    } catch (error) {
      expect(error).toBeInstanceOf(DesignError);
      expect((error as DesignError).issues.map((issue) => issue.path)).toContain(path);
    }
  });

  it('is refused at coil.windingDiameter and array.collector.fluidContent [requirement]', () => {
    expect(() => defineSystem({ ...plainInput, coil: { windingDiameter: 0.05 } })).toThrow('coil.windingDiameter');
    const collector = { ...plainInput.array.collector, fluidContent: 1 };
    expect(() => defineSystem({ ...plainInput, array: { ...plainInput.array, collector } })).toThrow(
      'array.collector.fluidContent',
    );
  });
});
