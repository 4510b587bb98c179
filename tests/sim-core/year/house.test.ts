import {
  DesignError,
  defineSystem,
  type HeaterKind,
  type RunResult,
  type SystemInput,
  simulate,
} from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../property/span.ts';

const weather = await inventedValley();

/** A year by coarse steps, for what only a whole run says. */
const run = (over: Partial<SystemInput>): RunResult =>
  simulate(defineSystem({ ...plainInput, ...over }), weather, { stepsPerHour: 2 });

/** Five weeks of spring, for what shows in any hour. */
const weeks = (over: Partial<SystemInput>) => liveSpan(defineSystem({ ...plainInput, ...over }), weather, 2160, 3000);

const year = ({ columns }: Pick<RunResult, 'columns'>) => ({
  delivered: sum(columns.solarHeat),
  heater: sum(columns.heaterHeat),
  baseline: sum(columns.baselineHeat),
  taps: sum(columns.tapHeat),
  asked: sum(columns.tapHeatAsked),
  peak: Math.max(...columns.tankMaximumTemperature),
});

const KINDS: readonly HeaterKind[] = [
  'stored-gas',
  'stored-electric',
  'instantaneous-gas',
  'instantaneous-electric',
  'element',
];

describe.each(KINDS)('five weeks with %s', (kind) => {
  const result = weeks({ heater: { kind } });

  it('closes every balance to 1e-9 in every hour [conservation]', () => {
    for (const [part, { worstRelative }] of Object.entries(result.balance)) {
      expect(worstRelative, part).toBeLessThan(1e-9);
      expect(worstRelative, part).toBeGreaterThan(0);
    }
  });

  it('adds up: sun and heater give the taps and the heater’s losses [conservation]', () => {
    const { delivered, heater, taps } = year(result);
    const rest = delivered + heater - taps - sum(result.columns.heaterLoss);
    // What the heater's own water gained or lost over the weeks.
    expect(Math.abs(rest)).toBeLessThan(0.15 * 4.1468e6 * 5);
  });

  it('saves against the same house without the sun, by its own carrier [direction that physics demands]', () => {
    const { columns, design } = result;
    expect(design.heater.carrier).toBe(kind.endsWith('gas') ? 'gas' : 'electricity');
    expect(design.baseline.carrier).toBe(design.heater.carrier);
    expect(sum(columns.heaterFuel)).toBeLessThan(0.8 * sum(columns.baselineFuel));
    expect(sum(columns.heaterElectricity)).toBeCloseTo(design.heater.standbyPower * 840 * 3600, 3);
  });
});

describe('heaters of other kinds', () => {
  it('a heater without water of its own has books that are measured against a litre [definition]', () => {
    const design = defineSystem({ ...plainInput, heater: { kind: 'instantaneous-gas' } });
    // A residual is measured against 1 mK of it at least: 4146.8 J/K × 0.001 K.
    expect(assemble(design, weather, {}).books.balance.heater.floor).toBeCloseTo(4.1468, 9);
  });

  it('an instantaneous heater burns for the taps alone: no standby loss in the baseline [requirement]', () => {
    const { baseline, asked } = year(weeks({ heater: { kind: 'instantaneous-gas' } }));
    expect(baseline / asked).toBeCloseTo(1, 6);
  });

  it('one that cannot modulate low leaves tepid water, counted and said [requirement]', () => {
    const fine = run({ heater: { kind: 'instantaneous-gas', minimumPower: 0 } });
    const coarse = run({ heater: { kind: 'instantaneous-gas', minimumPower: 9000 } });
    expect(year(fine).taps / year(fine).asked).toBeCloseTo(1, 3);
    expect(year(coarse).taps).toBeLessThan(0.995 * year(coarse).asked);
    expect(coarse.notices.map((notice) => notice.code)).toContain('heater-not-firing');
    expect(fine.notices.map((notice) => notice.code)).not.toContain('heater-not-firing');
  });

  it('what passes an instantaneous heater unheated is counted: litres, what they lack, and hours [books of the run]', () => {
    const { columns } = weeks({ heater: { kind: 'instantaneous-gas' } });
    const { hotVolume, unfiredVolume, unfiredShortfall, undisinfectedVolume, tapHeatAsked, tapHeat } = columns;
    expect(sum(unfiredVolume)).toBeGreaterThan(0.1 * sum(hotVolume));
    // It is strong enough for every draw that it fires for: all that the taps lack passed it unheated. Where the outlet ends a draw
    // warmer than foreseen they get a little more than asked.
    const missing = sum(tapHeatAsked) - sum(tapHeat);
    expect(sum(unfiredShortfall)).toBeGreaterThanOrEqual(missing);
    expect(sum(unfiredShortfall)).toBeLessThan(1.001 * missing);
    const whole = run({ heater: { kind: 'instantaneous-gas' } });
    const hours = whole.columns.unfiredShortfall.filter((value) => value > 0).length;
    expect(whole.notices.find(({ code }) => code === 'heater-not-firing')?.hours).toBe(hours);
    for (const part of [unfiredVolume, undisinfectedVolume])
      expect(part.every((volume, hour) => volume <= hotVolume[hour]! + 1e-15)).toBe(true);
    // Set to 50 °C, it disinfects nothing: only what the sun made hotter is free of it.
    expect(sum(undisinfectedVolume)).toBeGreaterThan(0.5 * sum(hotVolume));
  });

  it('draws too small to light it pass unheated, however cold [requirement]', () => {
    const draw = { dailyVolume: 0.2, flow: '2 L/min' };
    const small = weeks({ heater: { kind: 'instantaneous-gas', minimumPower: 0 }, draw });
    const any = weeks({ heater: { kind: 'instantaneous-gas', minimumPower: 0, minimumFlow: 0 }, draw });
    expect(sum(small.columns.unfiredVolume)).toBe(sum(small.columns.hotVolume));
    expect(sum(small.columns.heaterHeat)).toBe(0);
    expect(sum(any.columns.tapHeat) / sum(any.columns.tapHeatAsked)).toBeCloseTo(1, 3);
    expect(small.design.assumptions.find(({ path }) => path === 'heater.minimumFlow')?.source).toMatch(/flow switches/);
  });

  it('a store at 60 °C lets through cooler what a large draw takes out of it, and nothing passes it unheated [definition]', () => {
    const { columns } = weeks({});
    expect(sum(columns.unfiredVolume)).toBe(0);
    expect(sum(columns.undisinfectedVolume)).toBeLessThan(0.05 * sum(columns.hotVolume));
    const cool = weeks({ heater: { setTemperature: 50 } }).columns;
    expect(sum(cool.undisinfectedVolume)).toBeGreaterThan(0.5 * sum(cool.hotVolume));
  });

  it('a weak one falls short of the taps at full power [direction that physics demands]', () => {
    const weak = weeks({ heater: { kind: 'instantaneous-electric', burnerPower: 3000 } });
    expect(year(weak).taps).toBeLessThan(0.9 * year(weak).asked);
  });

  it('an element costs the sun a part of its tank, and holds the taps [direction that physics demands]', () => {
    const element = year(weeks({ heater: { kind: 'element' } }));
    const after = year(weeks({ heater: { kind: 'stored-electric' } }));
    expect(element.delivered).toBeLessThan(after.delivered);
    expect(element.taps / element.asked).toBeCloseTo(1, 3);
  });

  it('an element’s baseline is a stored electric heater of the stated size [requirement]', () => {
    const { baseline } = defineSystem({ ...plainInput, heater: { kind: 'element', baselineVolume: '50 gal' } });
    expect(baseline.kind).toBe('stored-electric');
    expect(baseline.volume).toBeCloseTo(0.18927, 5);
  });
});

describe('half the step moves the delivered energy by less than 0.1 % and the peak by less than 0.2 K', () => {
  it.each([
    ['a stored electric heater', { heater: { kind: 'stored-electric' } }, 12],
    ['an instantaneous gas heater', { heater: { kind: 'instantaneous-gas' } }, 12],
    ['an element', { heater: { kind: 'element' } }, 24],
    ['profile M by the minute', { draw: { profile: 'M' } }, 24],
    ['profile L by the minute', { draw: { profile: 'L' } }, 24],
  ] as const)('%s [requirement]', (_, over, stepsPerHour) => {
    // Ten weeks of early summer, when the tank is at its hottest.
    const span = (steps?: number) =>
      year(liveSpan(defineSystem({ ...plainInput, ...over }), weather, ...EARLY_SUMMER, steps));
    const [here, finer] = [span(), span(stepsPerHour)];
    expect(Math.abs(finer.delivered / here.delivered - 1)).toBeLessThan(0.001);
    expect(Math.abs(finer.peak - here.peak)).toBeLessThan(0.2);
  });
});

describe('taps', () => {
  it('get the heat that was asked for, to 0.1 %, from a store that can hold its setting [requirement]', () => {
    const { taps, asked, baseline } = year(weeks({}));
    expect(Math.abs(taps / asked - 1)).toBeLessThan(0.001);
    expect(baseline).toBeGreaterThan(asked);
  });

  it('may run above the valve’s setting by its accuracy, and as hot as the heater where it cannot control [requirement]', () => {
    const exact = weeks({ draw: { dailyVolume: 0.2, valveAccuracy: 0 } });
    const loose = weeks({ draw: { dailyVolume: 0.2, valveAccuracy: 3 } });
    const narrow = weeks({ draw: { dailyVolume: 0.2, valveMinimumDifference: 20 } });
    expect(Math.max(...exact.columns.tapTemperature)).toBeCloseTo(45, 9);
    expect(Math.max(...loose.columns.tapTemperature)).toBeCloseTo(48, 9);
    expect(Math.max(...narrow.columns.tapTemperature)).toBeGreaterThan(59); // heater at 60 °C: 15 K over the setting
    expect(sum(narrow.columns.tapHeat)).toBe(sum(exact.columns.tapHeat));
  });

  it('fall short where the valve is set below what they want [requirement]', () => {
    const { columns } = weeks({ draw: { dailyVolume: 0.2, valveTemperature: 40 } });
    expect(sum(columns.tapHeat)).toBeLessThan(0.9 * sum(columns.tapHeatAsked));
  });
});

describe('faults of heater and draw, by path', () => {
  const pathsOf = (over: object): string[] => {
    try {
      defineSystem({ ...plainInput, ...over } as SystemInput);
    } catch (error) {
      expect(error).toBeInstanceOf(DesignError);
      return (error as DesignError).issues.map((issue) => issue.path);
    }
    return [];
  };

  it.each([
    ['heater.kind', { heater: { kind: 'wood-stove' } }],
    ['heater.volume', { heater: { kind: 'instantaneous-gas', volume: 0.1 } }],
    ['heater.lossCoefficient', { heater: { kind: 'element', lossCoefficient: 2 } }],
    ['heater.minimumPower', { heater: { kind: 'stored-gas', minimumPower: 3000 } }],
    ['heater.minimumPower', { heater: { kind: 'instantaneous-gas', minimumPower: 30_000, burnerPower: 20_000 } }],
    ['heater.minimumRise', { heater: { kind: 'instantaneous-gas', minimumRise: -1 } }],
    ['heater.minimumFlow', { heater: { kind: 'stored-gas', minimumFlow: '2 L/min' } }],
    ['heater.elementHeight', { heater: { kind: 'element', elementHeight: 1.2 } }],
    ['heater.elementHeight', { heater: { kind: 'stored-gas', elementHeight: 0.5 } }],
    ['heater.baselineVolume', { heater: { baselineVolume: 0.2 } }],
    ['heater.standbyPower', { heater: { standbyPower: -2 } }],
    ['heater.carrier', { heater: { carrier: 'gas' } }],
    ['baseline', { baseline: {} }],
    ['tank.inletDiameter', { tank: { volume: 0.3, inletDiameter: 0 } }],
    ['tank.sedimentDepth', { tank: { volume: 0.3, sedimentDepth: -0.1 } }],
    ['tank.sedimentDepth', { tank: { volume: 0.3, height: 1.2, sedimentDepth: 0.7 } }],
    ['draw.dailyVolume', { draw: {} }],
    ['draw.dailyVolume', { draw: { profile: 'morning' } }],
    ['draw.profile', { draw: { profile: '4XL' } }],
    ['draw.people', { draw: { people: -1 } }],
    ['draw.people', { draw: { people: 3, dailyVolume: 0.2 } }],
    ['draw.volumePerPerson', { draw: { dailyVolume: 0.2, volumePerPerson: 0.05 } }],
    ['draw.hourlyShares', { draw: { profile: 'M', hourlyShares: new Array(24).fill(1) } }],
    ['draw.weekdayFactors', { draw: { dailyVolume: 0.2, weekdayFactors: [1, 1] } }],
    ['draw.firstWeekday', { draw: { dailyVolume: 0.2, firstWeekday: 'someday' } }],
    ['draw.holidays', { draw: { dailyVolume: 0.2, holidays: ['02-30..03-01'] } }],
    ['draw.holidays', { draw: { dailyVolume: 0.2, holidays: '07-10..07-24' } }],
    ['draw.summerTime', { draw: { dailyVolume: 0.2, summerTime: '03-31' } }],
    ['draw.volumes', { draw: { volumes: [1, 2, 3] } }],
    ['draw.volumes', { draw: { volumes: new Array(8760 * 7).fill(0) } }],
    ['draw.volumes', { draw: { volumes: new Array(8760).fill(-1) } }],
    ['draw.dailyVolume', { draw: { volumes: new Array(8760).fill(0), dailyVolume: 0.2 } }],
    ['draw.flow', { draw: { dailyVolume: 0.2, flow: 0 } }],
    ['draw.valveTemperature', { draw: { dailyVolume: 0.2, valveTemperature: 90 } }],
    ['draw.valveAccuracy', { draw: { dailyVolume: 0.2, valveAccuracy: -1 } }],
    ['draw.valveMinimumDifference', { draw: { dailyVolume: 0.2, valveMinimumDifference: 50 } }],
  ])('%s of %j [requirement]', (path, over) => {
    expect(pathsOf(over)).toEqual([path]);
  });
});
