import { DesignError, defineSystem, type RunResult, type SystemInput, simulate } from '@noonloop/sim-core';
import { collectorStages } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { shareFlow } from '../../../packages/sim-core/src/physics/loop/branches.ts';
import { circulate } from '../../../packages/sim-core/src/physics/loop/coil-step.ts';
import { RING } from '../../../packages/sim-core/src/physics/loop/ring.ts';
import { hiddenShare } from '../../../packages/sim-core/src/physics/sun/covers.ts';
import { compileArrayDrivers } from '../../../packages/sim-core/src/year/group-drivers.ts';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
type Roof = Partial<SystemInput['array']>;
const design = (array: Roof) => defineSystem({ ...plainInput, array: { ...plainInput.array, ...array } });
/** A year by steps of an hour, for sums and directions. */
const run = (array: Roof): RunResult => simulate(design(array), weather, { stepsPerHour: 1 });
/** Five weeks of early summer by the usual steps, for what must be alike. */
const weeks = (array: Roof) => liveSpan(design(array), weather, 2900, 2900 + 35 * 24);
const heat = (result: Pick<RunResult, 'columns'>): number => sum(result.columns.solarHeat);
const more = (panels: number, other: object = {}) => ({ name: 'more', panels, ...other });

describe('groups on one loop', () => {
  it('lose beam without sun in as many hours as one array does [definition]', () => {
    const lost = (array: Roof) => compileArrayDrivers(design(array), weather, 1).lostBeamHours;
    expect(lost({})).toBeGreaterThan(0); // twilight, whose middle of the hour is dark
    expect(lost({ groups: [more(1)] })).toBe(lost({}));
  });

  it('of one kind are today’s array, however they are counted out [requirement: 1e-9]', () => {
    const whole = heat(weeks({ panels: 4 }));
    for (const [first, second] of [
      [2, 2],
      [1, 3],
    ] as const)
      expect(Math.abs(heat(weeks({ panels: first, groups: [more(second)] })) / whole - 1)).toBeLessThan(1e-9);
  });

  it('one behind the other are a string, but for where its loss is linearised [requirement: 0.01 %]', () => {
    const string = heat(weeks({ panels: 4, inSeries: 2 }));
    expect(Math.abs(heat(weeks({ panels: 2, groups: [more(2, { stage: 2 })] })) / string - 1)).toBeLessThan(1e-4);
  });

  it('keep the energy balance at rounding, and add up to what the loop got [conservation]', () => {
    const glazing = { area: 2, eta0: 0.85, a1: 14, a2: 0, a3: 2, glazed: false };
    const result = run({
      azimuth: 90,
      groups: [more(2, { azimuth: 270, collector: glazing }), more(2, { stage: 2, inSeries: 2, lightShare: 0.3 })],
    });
    for (const { worstRelative } of Object.values(result.balance)) expect(worstRelative).toBeLessThan(1e-9);
    const total = result.groups!.reduce((all, group) => all + group.heat, 0);
    expect(total / sum(result.columns.collectorHeat)).toBeCloseTo(1, 9);
    const light = result.groups!.reduce((all, group) => all + group.irradiation, 0);
    expect(light / (sum(result.columns.irradiance) * 3600 * 12)).toBeCloseTo(1, 9);
  });

  it('east and west lie between the worse half doubled and what each half alone would give [requirement]', () => {
    const pair = run({ panels: 2, azimuth: 90, groups: [more(2, { azimuth: 270 })] });
    const [east, west] = pair.groups!;
    const halves = [90, 270].map((azimuth) => sum(run({ panels: 2, azimuth }).columns.collectorHeat));
    // On one loop each half cools the other's warm fluid when its own sun is gone, and the tank is warmer for both.
    expect(east!.heat + west!.heat).toBeLessThan(halves[0]! + halves[1]!);
    expect(east!.heat + west!.heat).toBeGreaterThan(Math.min(...halves));
  });

  it('a panel under a tree takes heat from the good ones, a clogged one brings none and boils [requirement]', () => {
    const good = run({ panels: 3 });
    const shaded = run({ panels: 3, groups: [more(1, { lightShare: 0.1 })] });
    expect(sum(shaded.columns.collectorHeat)).toBeLessThan(sum(good.columns.collectorHeat));
    const collector = { ...plainInput.array.collector, ratedPressureDrop: 1e5, ratedFlow: 1e-6 };
    const clogged = run({ panels: 3, groups: [more(1, { collector })] });
    expect(heat(clogged)).toBeLessThan(heat(good));
    expect(sum(clogged.columns.boiling)).toBeGreaterThan(sum(good.columns.boiling));
    expect(clogged.groups![1]!.heat).toBeLessThan(0.05 * clogged.groups![0]!.heat);
  });

  it('settle, finely cut, at the reference along the flow [closed form; 0.02 % of the rise with 40 nodes a panel]', () => {
    const west = { eta0: 0.7, a1: 5, a2: 0.01, area: 1.5 };
    const groups = [more(1, { collector: west }), more(1, { name: 'behind', stage: 2, lightShare: 0.4 })];
    const { loop, tank } = assemble(design({ groups }), weather, { collectorNodes: 40 });
    const { circuit, step } = loop;
    const branches = circuit.branches!;
    const [density, viscosity, rate, ambient] = [1000, 1e-3, 200, 15];
    shareFlow(branches, { flow: 5e-5, density, viscosity });
    [700, 500, 280].forEach((light, at) => {
      branches[at]!.conditions.absorbed = light;
    });
    Object.assign(step.conditions, { absorbed: 0, ambient, room: 20, duration: 600 });
    Object.assign(step.stream, { flow: 5e-5, capacityRate: rate });
    for (let time = 0; time < 100; time++) {
      tank.temperature.fill(30);
      circulate(circuit, step);
    }
    const strings = branches.map(({ a1, a2, conditions, end, first, laminar, nodeArea, turbulent }) => ({
      area: nodeArea * (end - first),
      absorbed: conditions.absorbed,
      a1,
      a2,
      series: 1,
      parallel: 1,
      laminarResistance: (laminar * viscosity) / density,
      turbulentResistance: turbulent / density,
    }));
    const inlet = circuit.ring[RING.inlet]!;
    const reference = collectorStages([strings.slice(0, 2), strings.slice(2)], {
      flow: 5e-5 * density,
      specificHeat: rate / (5e-5 * density),
      inlet,
      ambient,
    });
    const expected = reference.stages.flat();
    branches.forEach(({ outlet, share }, at) => {
      expect(Math.abs((outlet - inlet) / (expected[at]!.outlet - inlet) - 1)).toBeLessThan(2e-4);
      expect(share).toBeCloseTo(expected[at]!.flow / (5e-5 * density), 9);
    });
    expect(Math.abs((step.exchange.outlet - inlet) / (reference.outlet - inlet) - 1)).toBeLessThan(2e-4);
  });

  it('are not let run by buoyancy, and their stages have no gap [requirement]', () => {
    const refused = (input: object) => () => defineSystem({ ...plainInput, ...input } as SystemInput);
    const roof = { ...plainInput.array, groups: [more(1)] };
    expect(refused({ array: roof, loop: { checkValve: false } })).toThrow(DesignError);
    expect(refused({ array: { ...roof, groups: [more(1, { stage: 3 })] } })).toThrow(/stages without a gap/);
  });

  it('are read again as they were written out, defaults with their sources [requirement]', () => {
    const written = design({
      groups: [more(2, { collector: { ...plainInput.array.collector, glazed: false, a1: 14 } })],
    });
    expect(defineSystem(JSON.parse(JSON.stringify(written)))).toEqual(written);
    expect(written.assumptions.map(({ path }) => path)).toContain('array.groups.0.collector.fluidContent');
  });
});

describe('tilt by season', () => {
  it('has on each day the light of that day’s plane [requirement]', () => {
    const light = (array: Roof) => compileArrayDrivers(design(array), weather, 2);
    const both = light({ tilt: 55, summerTilt: { tilt: 20, days: '04-01..09-30' } });
    const [winter, summer] = [light({ tilt: 55 }), light({ tilt: 20 })];
    const [first, end] = [90 * 48, 273 * 48]; // 1 April is the 91st day, 30 September the 273rd
    for (const column of ['irradiance', 'absorbed', 'pvIrradiance'] as const) {
      expect(both[column].slice(first, end)).toEqual(summer[column].slice(first, end));
      expect(both[column].slice(0, first)).toEqual(winter[column].slice(0, first));
      expect(both[column].slice(end)).toEqual(winter[column].slice(end));
    }
    const alone = light({ tilt: 55, summerTilt: { tilt: 20, days: '04-01..09-30', withModule: false } });
    expect(alone.pvIrradiance).toEqual(winter.pvIrradiance);
  });
});

describe('covers', () => {
  it('let their shares through, one over the other, past the turn of the year [by hand]', () => {
    const covers = [
      { days: '12-30..01-02', lightShare: 0.5 },
      { days: '01-02..01-02', lightShare: 0.2 },
    ];
    const hidden = hiddenShare(0.8, covers);
    const day = (at: number) => 1 - hidden[24 * at + 5]!;
    for (const [at, share] of [
      [0, 0.4],
      [1, 0.08],
      [2, 0.8],
      [362, 0.8],
      [363, 0.4],
    ] as const)
      expect(day(at)).toBeCloseTo(share, 12);
  });

  it('keep a sheeted array from stagnation while nobody draws [requirement]', () => {
    const holidays = { ...plainInput.draw, holidays: ['07-01..07-31'] };
    const input = { ...plainInput, draw: holidays, array: { ...plainInput.array, panels: 4 } };
    const hours = (array: object) =>
      sum(
        liveSpan(defineSystem({ ...input, array: { ...input.array, ...array } }), weather, 4344, 5088).columns
          .stagnation,
      );
    expect(hours({})).toBeGreaterThan(10);
    expect(hours({ covers: [{ days: '07-01..07-31' }] })).toBe(0);
  });
});
