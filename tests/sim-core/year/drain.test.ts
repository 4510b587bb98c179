import { DesignError, defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { drained, fillTime, refilled } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { compilePumpControl } from '../../../packages/sim-core/src/physics/control/pump-control.ts';
import { absorberHeat, pipeHeat } from '../../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { emptyLoop, fillLoop } from '../../../packages/sim-core/src/physics/loop/drain.ts';
import { fillForStep } from '../../../packages/sim-core/src/physics/loop/filling.ts';
import { turnPump } from '../../../packages/sim-core/src/physics/loop/pump-drive.ts';
import { hasEvent } from '../../../packages/sim-core/src/year/events.ts';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { type Lived, liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
const pump = { drive: 'mains', shutOffHead: 7 } as const;
const drainBack = { layout: 'drain-back', fluid: 'water' } as const;
const direct = { layout: 'direct', fluid: 'water' } as const;
const house = (loop: SystemInput['loop'], other: Partial<SystemInput> = {}) =>
  defineSystem({ ...plainInput, pump, loop, array: { ...plainInput.array, panels: 3 }, ...other } as SystemInput);
const year = (loop: SystemInput['loop'], other: Partial<SystemInput> = {}) =>
  simulate(house(loop, other), weather, { stepsPerHour: 3 });
/** Three weeks of spring, for what compares two systems hour by hour; the frost wants January. */
const weeks = (loop: SystemInput['loop'], other: Partial<SystemInput> = {}, from = 2400, days = 21) =>
  liveSpan(house(loop, other), weather, from, from + 24 * days);
const heat = (result: Lived): number => sum(result.columns.solarHeat);

describe('an empty loop with a pump on its own module', () => {
  it('wants finer steps only in light that starts the pump [requirement]', () => {
    const machine = assemble(house(drainBack, { pump: { ...pump, drive: 'direct' } } as never), weather, {});
    const { control, drivers, loop } = machine;
    emptyLoop(loop.drain!, loop.circuit, 10);
    const [dull, bright] = [0.9, 1.1].map((share) => {
      drivers.pumpSupply[0] = share * control.startSupply;
      return hasEvent(machine, 0, 0);
    });
    expect([dull, bright]).toEqual([false, true]);
  });
});

describe('emptying and filling', () => {
  const { drain, circuit } = assemble(house({ ...drainBack, outdoorShare: 0 }), weather).loop;
  const [full, dry] = [drain!.full[0]!, drain!.dry[0]!];
  const nodes = circuit.absorber.length;
  const { vessel } = drain!;

  it('leaves and brings back what the reference says [closed form: heat balance]', () => {
    fillLoop(drain!, circuit, 0);
    circuit.absorber.fill(72);
    circuit.pipe[vessel] = 48;
    const before = absorberHeat(circuit) + pipeHeat(circuit);
    drain!.heatLeft = 0;
    drain!.heatBack = 0;
    emptyLoop(drain!, circuit, 12);
    const reference = drained({
      dryCapacity: nodes * dry,
      content: (nodes * (full - dry)) / 4180,
      shareStaying: 0,
      specificHeat: 4180,
      temperature: 72,
      ambient: 12,
      vesselContent: drain!.fullPipe[vessel]! / 4180,
      vesselTemperature: 48,
    });
    expect(drain!.heatLeft / reference.heatLeft).toBeCloseTo(1, 9);
    expect(drain!.heatBack / reference.heatBroughtBack).toBeCloseTo(1, 9);
    expect(circuit.pipe[vessel]).toBeCloseTo(reference.vesselTemperature, 9);
    expect((absorberHeat(circuit) + pipeHeat(circuit)) / before).toBeCloseTo(1, 12);
  });

  it('counts the heat of a steaming collector once, full or empty [conservation]', () => {
    if (drain!.empty) fillLoop(drain!, circuit, 0);
    Object.assign(circuit, { boilingPoint: 120, boiling: true });
    circuit.absorber.fill(200);
    circuit.pipe[vessel] = 48;
    const before = absorberHeat(circuit) + pipeHeat(circuit);
    emptyLoop(drain!, circuit, 12);
    expect((absorberHeat(circuit) + pipeHeat(circuit)) / before).toBeCloseTo(1, 12);
    expect(circuit.boiling).toBe(false);
    circuit.boilingPoint = Number.POSITIVE_INFINITY;
  });

  it.each([
    [120, 45],
    [600, 70],
  ])('fills metal at %d °C with water of %d °C: mixed, or 100 °C and steam [closed form]', (metal, water) => {
    if (!drain!.empty) emptyLoop(drain!, circuit, 20);
    circuit.absorber.fill(metal);
    circuit.pipe[vessel] = water;
    drain!.lost = 0;
    fillLoop(drain!, circuit, 0);
    const of = { capacity: full - dry, temperature: water };
    const { temperature, steam } = refilled(dry, Math.min(metal, 500), of);
    if (metal <= 500) expect(circuit.absorber[0]).toBeCloseTo(temperature, 9);
    else expect(circuit.absorber[0]).toBe(100);
    if (metal <= 500) expect(drain!.lost).toBeCloseTo(nodes * steam * 2.2565e6, 3);
    else expect(drain!.lost).toBeCloseTo(nodes * (dry * (metal - 100) + (full - dry) * (water - 100)), 3);
  });
});

describe('a year that drains back', () => {
  const run = year(drainBack);
  const spring = weeks(drainBack);

  it('neither boils nor freezes, and keeps its balance at rounding [requirement]', () => {
    expect(sum(run.columns.boiling)).toBe(0);
    expect(run.loop.absorberFreezingHours + run.loop.pipeFreezingHours).toBe(0);
    expect(Math.min(...run.columns.absorberMinimumTemperature)).toBeLessThan(0);
    for (const { worstRelative } of Object.values(run.balance)) expect(worstRelative).toBeLessThan(1e-9);
    expect(run.loop.drain!.times).toBeGreaterThan(100);
    expect(run.loop.drain!.heatLeft).toBeGreaterThan(0);
  });

  it('brings within 3 % of what water in a closed loop would [requirement]', () => {
    expect(Math.abs(heat(spring) / heat(weeks({ fluid: 'water' })) - 1)).toBeLessThan(0.03);
  });

  it('moves less without a full return: the lift stays [requirement]', () => {
    const open = weeks({ ...drainBack, drainBack: { siphon: false } });
    expect(sum(open.columns.loopFlow)).toBeLessThan(sum(spring.columns.loopFlow));
  });

  it('starts its pump with the power that lifts the water: s = √(lift/H0), P = s³ P0 [affinity laws]', () => {
    const design = house({ ...drainBack, drainBack: { lift: 4 } }, { pump: { shutOffHead: 7 } });
    expect(compilePumpControl(design.pump, design.control, 4).startSupply).toBeCloseTo((4 / 7) ** 1.5 * 10, 9);
    expect(compilePumpControl(design.pump, design.control).startSupply).toBe(2);
  });

  it('takes the time of the closed form to fill, by parts of any length [fillTime; friction straight in Q² within 4 %]', () => {
    const design = house(drainBack);
    const { drain: emptied, offer } = assemble(design, weather).loop;
    const { level, lifted, lifting, rest, rising } = emptied!.filling!;
    const answer = { flow: 0, power: 0 };
    Object.assign(offer, { supply: Number.POSITIVE_INFINITY, fluidTemperature: 40 });
    const filling = { ...emptied!.filling! };
    let parts = 0;
    while (!fillForStep(filling, offer, answer, 7)) parts++;
    expect(filling.time).toBeCloseTo(7 * parts + 7 * filling.part, 6);
    const levelFlow = answer.flow;
    const resistance = 7 / levelFlow ** 2;
    const reference = fillTime({
      shutOffHead: 7,
      pumpFall: 7 / design.pump.openFlow ** 2,
      friction: resistance - 7 / design.pump.openFlow ** 2,
      bore: rising / 6,
      rise: 6,
      content: rest,
      vesselArea: 1000,
    });
    expect(Math.abs(filling.time / reference.time - 1)).toBeLessThan(0.04);
    expect(Math.abs(lifted.flow / reference.openFlow - 1)).toBeLessThan(0.04);
    turnPump(lifting, offer, answer);
    const lift = answer.power;
    turnPump(level, offer, answer);
    expect(filling.power).toBe(lift);
    expect(lift).toBeLessThan(answer.power); // less flows
  });

  it('fills for minutes at each start, and the sun’s heat does not hang on the step [convergence]', () => {
    const { fillingTime, liftedInVain, times } = run.loop.drain!;
    expect(fillingTime / times).toBeGreaterThan(30);
    expect(fillingTime / times).toBeLessThan(600);
    expect(liftedInVain).toBe(0);
    const [coarse, fine] = [undefined, 30].map((steps) => liveSpan(house(drainBack), weather, 3600, 3840, steps));
    expect(Math.abs(sum(coarse!.columns.coilHeat) / sum(fine!.columns.coilHeat) - 1)).toBeLessThan(2e-3);
  });

  it('says where its module has not the power for the lift [requirement]', () => {
    const weak = { pump: { shutOffHead: 7, startPower: 1, stopPower: 0.5 } };
    const found = year({ ...drainBack, drainBack: { lift: 4 } }, weak);
    const { liftedInVain, fillingTime } = found.loop.drain!;
    expect(liftedInVain).toBeGreaterThan(0);
    expect(fillingTime).toBeGreaterThan(0);
    const hours = Math.ceil(liftedInVain / 3600);
    expect(found.notices.find(({ code }) => code === 'pump-cannot-lift')).toMatchObject({ hours });
    expect(run.notices.map(({ code }) => code)).not.toContain('pump-cannot-lift');
  });

  it('is refused with glycol, a pump that cannot lift, a vessel that does not hold it, or buoyancy [requirement]', () => {
    for (const loop of [
      { layout: 'drain-back' as const },
      { ...drainBack, drainBack: { lift: 7.5 } },
      { ...drainBack, drainBack: { vesselVolume: '1.5 L' } },
      { ...drainBack, checkValve: false },
    ])
      expect(() => house(loop)).toThrow(DesignError);
  });

  it('is read again as it was written out, and so is a direct one [requirement]', () => {
    for (const loop of [drainBack, direct]) {
      const written = house(loop);
      expect(defineSystem(JSON.parse(JSON.stringify(written)))).toEqual(written);
    }
  });

  it('drains groups as it drains one array [requirement: 1e-9]', () => {
    const groups = [{ name: 'more', panels: 2 }];
    const parted = weeks(drainBack, { array: { ...plainInput.array, panels: 1, groups } });
    expect(Math.abs(heat(parted) / heat(spring) - 1)).toBeLessThan(1e-9);
    expect(parted.loop.drain!.times).toBe(spring.loop.drain!.times);
  });
});

describe('the tank’s water in the collectors', () => {
  it('needs no exchanger: more heat than through the coil [requirement]', () => {
    expect(heat(weeks(direct))).toBeGreaterThan(0.98 * heat(weeks({ fluid: 'water' })));
  });

  it('runs to waste before it freezes, where it may; else it freezes [requirement]', () => {
    const january = (loop: SystemInput['loop']) => weeks(loop, {}, 0, 28);
    const drains = january(direct);
    const stays = january({ ...direct, drainBelow: null });
    expect(drains.loop.absorberFreezingHours + drains.loop.pipeFreezingHours).toBe(0);
    expect(drains.loop.drain!.times).toBeGreaterThan(10);
    expect(stays.loop.absorberFreezingHours).toBeGreaterThan(100);
    expect(stays.loop.drain!.times).toBe(0);
    for (const { worstRelative } of Object.values(drains.balance)) expect(worstRelative).toBeLessThan(1e-9);
  });
});
