/** Random designs for property tests and for `tests/bench/random-designs.ts`. */
import type { SystemInput } from '@noonloop/sim-core';
import fc from 'fast-check';
import { headOf, modules, pumps } from './drives.ts';
import { draws, hasStore, heaters, tanks } from './houses.ts';
import { number, seldom } from './number.ts';
import { arrays } from './roofs.ts';

const loops = fc
  .record({
    fluid: fc.constantFrom('water', 'propylene-glycol', 'ethylene-glycol'),
    pipeLength: number(2, 80),
    outdoorShare: number(0, 1),
    staticHeight: number(0, 15),
    vesselVolume: number(0.001, 0.04),
    steamPower: number(0, 300),
    heatBridgeFactor: number(1, 3),
    leak: fc.constantFrom(0, 1e-9),
    makeUp: fc.boolean(),
    plate: fc.record({
      conductance: number(20, 5000),
      secondaryFlow: number(5e-6, 3e-4),
      returnHeight: number(0, 1),
    }),
    ways: fc.constantFrom(
      { exchanger: 'coil', checkValve: true },
      { exchanger: 'coil', checkValve: false },
      { exchanger: 'plate', checkValve: true },
    ),
    // What has no fluid of its own is water, and has no flow by buoyancy.
    layout: fc.constantFrom('closed', 'closed', 'drain-back', 'direct'),
    drainBelow: fc.constantFrom(null, 0.5, 5),
    drainBack: fc.record({ siphon: fc.boolean(), shareStaying: number(0, 0.2), vesselLoss: number(0, 5) }),
    /** Share of the pump's head. */
    lift: number(0, 0.95),
  })
  .map(({ ways, ...loop }) => ({ ...loop, ...ways }));

const controls = fc.record({
  highLimit: fc.constantFrom(null, 60, 85),
  mode: fc.constantFrom(undefined, 'difference', 'schedule'),
  difference: fc.record({
    start: number(4, 15),
    stop: number(0, 4),
    collectorSensor: fc.constantFrom('absorber', 'pipe'),
    tankSensorHeight: number(0, 1),
    minimumRunTime: fc.constantFrom(0, 300, 900),
  }),
  schedule: fc.constantFrom(
    [[9, 16]],
    [
      [0, 2],
      [7, 24],
    ],
  ),
  nightCooling: seldom(fc.constantFrom({ above: 70, until: 60 }, { above: 45, until: 40 })),
  outages: fc.constantFrom(
    [],
    [{ from: '12-20', to: '01-10', kind: 'pump' }],
    [{ from: '06-01', to: '06-20', kind: 'power' }],
  ),
});

/** How a second tank is charged: only the first where the loop has no coil or needs no pump, and not in turn with cooling by night. */
const ways = ({ charging }: { readonly charging: string }, byCoil: boolean, nightCooling: unknown) => ({
  charging: !byCoil ? 'first' : charging === 'in-turn' && nightCooling !== null ? 'series' : charging,
});

/** Designs from cramped to absurd, all valid: what does not go with another part is left out. */
export const designs = fc
  .record({
    array: arrays,
    pump: pumps,
    pv: modules,
    loop: loops,
    coil: fc.record({ length: number(2, 40), top: number(0.1, 1) }),
    tank: tanks,
    draw: draws,
    heater: heaters,
    control: controls,
  })
  .map(({ control, draw, loop: { drainBack, lift, ...loop }, tank, ...design }) => {
    const { array, heater, pump } = design;
    const isClosed = loop.layout === 'closed';
    const nightCooling = isClosed && pump.drive === 'mains' ? control.nightCooling : null;
    const checkValve = loop.checkValve || !isClosed || array.groups.length > 0;
    const byCoil = checkValve && loop.exchanger === 'coil' && loop.layout !== 'direct';
    return {
      ...design,
      tank: {
        ...tank,
        second: tank.second === null ? null : { ...tank.second, ...ways(tank.second, byCoil, nightCooling) },
      },
      loop: {
        ...loop,
        fluid: isClosed ? loop.fluid : 'water',
        checkValve,
        drainBack: { ...drainBack, lift: lift * headOf(pump) },
      },
      draw: { ...draw, ring: hasStore(heater) ? draw.ring : null },
      control: { ...control, nightCooling },
    };
  }) as fc.Arbitrary<SystemInput>;
