import { describe, expect, it } from 'vitest';
import type { LoopFluid } from '../../packages/sim-core/src/design/design.ts';
import { sizeExpansionVessel } from '../../packages/sim-core/src/physics/loop/expansion.ts';
import { closeRing, makeRing, NUMBERS, RING, setPace } from '../../packages/sim-core/src/physics/loop/ring.ts';
import { conduct, conductionFactors } from '../../packages/sim-core/src/physics/tank/conduction.ts';
import { loseToRoom, nodeDecays } from '../../packages/sim-core/src/physics/tank/losses.ts';
import { drawThrough } from '../../packages/sim-core/src/physics/tank/transport.ts';
import { type ReferenceCase, referenceCases } from './reference-json.ts';

/** Every case of a formula, and how many there must be. */
function everyCase(formula: string, count: number, check: (row: ReferenceCase) => void): void {
  const cases = referenceCases(formula);
  it.skipIf(cases.length === 0)(`${formula}: ${count} cases [requirement]`, () => {
    expect(cases.length).toBe(count);
    for (const row of cases) check(row);
  });
}

describe('all cases of section 6, closed forms of the tank [collector-and-tank.json, ten digits]', () => {
  everyCase('mixed_tank_cooling', 3, ({ T0, T_room, UA, mass, cp, hours, T_C }) => {
    const temperature = Float64Array.of(T0!);
    const decay = nodeDecays(Float64Array.of(UA!), mass! * cp!, 300);
    for (let step = 0; step < 12 * hours!; step++) loseToRoom(temperature, decay, mass! * cp!, T_room!);
    expect(temperature[0]).toBeCloseTo(T_C!, 7);
  });

  // A coil piece of the circuit behind a part that gives one temperature whatever comes: exact for any step.
  everyCase(
    'mixed_tank_heating',
    2,
    ({ T0, T_in, T_room, UA_coil, mcp, UA_loss, mass, cp, hours, effectiveness, T_C }) => {
      const epsilon = 1 - Math.exp(-UA_coil! / mcp!);
      expect(epsilon).toBeCloseTo(effectiveness!, 9);
      for (const stepsPerHour of [1, 12]) {
        const ring = makeRing(2);
        const tank = ring.subarray(NUMBERS, 2 * NUMBERS);
        ring[RING.own] = 1;
        ring[RING.rest] = T_in!;
        ring[RING.start] = T_in!;
        setPace(ring, 0, 1e9);
        tank[RING.own] = epsilon;
        tank[RING.share] = (epsilon * mcp!) / (epsilon * mcp! + UA_loss!);
        tank[RING.rest] = (UA_loss! * T_room!) / (epsilon * mcp! + UA_loss!);
        tank[RING.start] = T0!;
        setPace(ring, NUMBERS, ((epsilon * mcp! + UA_loss!) * 3600) / (stepsPerHour * mass! * cp!));
        for (let step = 0; step < stepsPerHour * hours!; step++) {
          closeRing(ring);
          tank[RING.start]! += tank[RING.rise]!;
        }
        expect(tank[RING.start]).toBeCloseTo(T_C!, 7);
      }
    },
  );

  const columns = new Map<string, Float64Array>();
  everyCase('conduction_column', 9, ({ z, hours, height, T_bottom, T_top, diffusivity, step_at, T_C }) => {
    const nodes = 600;
    const spacing = height! / nodes;
    // Cases at several heights of one column.
    const key = JSON.stringify([hours, height, T_bottom, T_top, diffusivity, step_at]);
    let temperature = columns.get(key)!;
    if (temperature === undefined) {
      temperature = Float64Array.from({ length: nodes }, (_, node) =>
        (node + 0.5) * spacing < step_at! - 1e-9 ? T_bottom! : T_top!,
      );
      const factors = conductionFactors(diffusivity!, spacing, 60, nodes);
      for (let step = 0; step < 60 * hours!; step++) conduct(temperature, factors);
      columns.set(key, temperature);
    }
    const place = z! / spacing - 0.5;
    const node = Math.floor(place + 1e-9);
    const found = temperature[node]! + (place - node) * (temperature[node + 1]! - temperature[node]!);
    expect(Math.abs(found - T_C!)).toBeLessThan(0.01); // the front starts between two nodes' middles
  });

  everyCase('plug_flow', 2, ({ diameter, drawn_l, area_m2, front_height_m }) => {
    const area = (Math.PI / 4) * diameter! ** 2;
    expect(area).toBeCloseTo(area_m2!, 9);
    const nodes = 20;
    const height = 1.2;
    const temperature = new Float64Array(nodes).fill(60);
    for (let draw = 0; draw < 60; draw++) drawThrough(temperature, (drawn_l! / 60_000 / (area * height)) * nodes, 10);
    const left = temperature.reduce((sum, t) => sum + (t - 10) / 50, 0) * (height / nodes);
    expect(height - left).toBeCloseTo(front_height_m!, 8);
  });

  // Explicit steps of 1/4000 node smear less than endlessly short ones, by that share.
  everyCase('stirred_nodes_washout', 24, ({ nodes, tank_volumes, outlet_fraction_old, share_recovered }) => {
    const stepsPerNode = 4000;
    const temperature = new Float64Array(nodes!).fill(1);
    const steps = Math.round(tank_volumes! * nodes! * stepsPerNode);
    let outlet = 1;
    let recovered = 0;
    for (let step = 0; step < steps; step++) {
      outlet = drawThrough(temperature, 1 / stepsPerNode, 0, 0);
      recovered += outlet / (stepsPerNode * nodes!);
    }
    expect(Math.abs(outlet - outlet_fraction_old!)).toBeLessThan(5e-4);
    expect(Math.abs(recovered - share_recovered!)).toBeLessThan(5e-4);
  });
});

// Rows: fluid, mass fraction, expansion from 10 °C to 60, 90, 100 and 120 °C [%].
const expansions: readonly (readonly [LoopFluid, number, readonly number[]])[] = [
  ['water', 0, [1.679, 3.563, 4.315, 6.001]],
  ['propylene-glycol', 0.3, [2.685, 4.843, 5.611, 7.169]],
  ['propylene-glycol', 0.4, [3.111, 5.435, 6.245, 7.874]],
  ['propylene-glycol', 0.5, [3.445, 5.897, 6.738, 8.409]],
  ['ethylene-glycol', 0.4, [2.651, 4.794, 5.591, 7.297]],
];

describe('thermal expansion from 10 °C [from densities by IAPWS-95 and Melinder 2010, computed apart, four digits]', () => {
  it.each(expansions)('%s, mass fraction %f: to 60, 90, 100, 120 °C %j %%', (fluid, glycol, percent) => {
    [60, 90, 100, 120].forEach((maximumTemperature, column) => {
      const { expansionCoefficient } = sizeExpansionVessel({
        fluid,
        glycolMassFraction: glycol,
        systemVolume: 0.02,
        fillTemperature: 10,
        maximumTemperature,
        steamVolume: 0,
        reserveVolume: 0.001,
        prechargePressure: 1.5e5,
        endPressure: 5.4e5,
      });
      // Above 100 °C our water is extrapolated (density 0.05 %); else four digits and two density formulations of 5e-6.
      const tolerance = fluid === 'water' ? (maximumTemperature > 100 ? 0.06 : 0.0015) : 6e-4;
      expect(Math.abs(100 * expansionCoefficient - percent[column]!)).toBeLessThan(tolerance);
    });
  });
});
