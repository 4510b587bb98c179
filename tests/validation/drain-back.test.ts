import {
  coolByNight,
  drained,
  dryStanding,
  fillTime,
  refilled,
  stagnationTemperature,
} from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { hasMoreCases, moreCases } from './more-cases.ts';

type Case = Readonly<Record<string, number>>;
const near = (found: number, expected: number, relative = 1e-6): void => {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.max(Math.abs(expected), 1e-6));
};

describe.skipIf(!hasMoreCases)('drain-back [reference: closed forms against ODE and enthalpy books; 1e-6]', () => {
  it.each(moreCases<Case>('drain_back', 'heat_left'))('$panels panels at $T_collector_C °C drain', (one) => {
    const found = drained({
      dryCapacity: one.panels! * one.capacity_dry_J_K!,
      content: one.panels! * one.content_kg!,
      shareStaying: one.share_staying!,
      specificHeat: one.cp_J_kgK!,
      temperature: one.T_collector_C!,
      ambient: one.T_ambient_C!,
      vesselContent: one.vessel_kg!,
      vesselTemperature: one.T_vessel_C!,
    });
    near(found.heatLeft, one.heat_left_kJ! * 1e3);
    near(found.heatBroughtBack, one.heat_brought_back_kJ! * 1e3);
    near(found.vesselTemperature, one.T_vessel_after_C!);
  });

  it.each(moreCases<Record<string, number | number[]>>('drain_back', 'dry_standing'))(
    'dry in $G_W_m2 W/m² from $T_start_C °C',
    (row) => {
      const one = row as Case;
      const collector = { area: one.area_m2!, absorbed: one.eta0! * one.G_W_m2!, a1: one.a1!, a2: one.a2! };
      const start = one.T_start_C!;
      const ambient = one.T_ambient_C!;
      const at = (minutes: number) =>
        dryStanding(collector, one.capacity_dry_J_K!, { start, ambient, duration: 60 * minutes });
      (row.minutes as number[]).forEach((minutes, place) => {
        near(at(minutes), (row.T_C as number[])[place]!);
      });
      if (one.minutes_to_100C !== undefined) near(at(one.minutes_to_100C), 100);
      const rating = { area: 1, eta0: one.eta0!, a1: one.a1!, a2: one.a2! };
      near(stagnationTemperature(rating, one.G_W_m2!, ambient), one.T_stagnation_C!);
    },
  );

  it.each(moreCases<Case>('drain_back', 'refill'))('$T_dry_C °C filled with $T_fill_C °C', (one) => {
    const water = { capacity: one.fill_kg! * one.cp_J_kgK!, temperature: one.T_fill_C! };
    const found = refilled(one.capacity_dry_J_K!, one.T_dry_C!, water);
    near(found.temperature, one.T_mixed_C!);
    near(found.steam, one.steam_kg!);
  });

  it.each(moreCases<Case>('drain_back', 'lift'))('a pump of $H0_m m fills $panels_l L at $z_top_m m', (one) => {
    const perFlow = 60_000 ** 2; // m/(L/min)² to m/(m³/s)²
    const found = fillTime({
      shutOffHead: one.H0_m!,
      pumpFall: one.c! * perFlow,
      friction: one.b! * perFlow,
      bore: one.riser_l_m! / 1000,
      rise: one.z_top_m! - one.z_level_m!,
      content: one.panels_l! / 1000,
      vesselArea: one.vessel_area_m2!,
    });
    near(found.lift, one.lift_full_open_m!);
    expect(found.fills).toBe(one.fills);
    near(found.siphonFlow * 60_000, one.flow_with_siphon_l_min!);
    near(found.work, one.work_of_lifting_J!);
    if (!found.fills) return;
    near(found.time / 60, one.minutes_to_full!);
    near(found.openFlow * 60_000, one.flow_at_full_l_min!);
  });
});

describe.skipIf(!hasMoreCases)('night cooling of a stirred tank [reference: exponential against an ODE; 1e-6]', () => {
  it.each(moreCases<Case>('night_cooling'))('$mass_kg kg from $T_start_C °C for $hours h', (one) => {
    const fromAir = 5.670374419e-8 * (one.T_ambient_C! + 273.15) ** 4;
    const { end, throughCollectors, throughWall } = coolByNight({
      capacity: one.mass_kg! * one.cp_J_kgK!,
      start: one.T_start_C!,
      lossCoefficient: one.UA_W_K!,
      room: one.T_room_C!,
      area: one.area_m2!,
      a1: one.a1!,
      skyLoss: one.a4! > 0 ? one.a4! * (fromAir - one.E_L_W_m2!) : 0,
      ambient: one.T_ambient_C!,
      capacityRate: one.flow_kg_s! * one.cp_J_kgK!,
      duration: one.hours! * 3600,
    });
    near(end, one.T_end_C!);
    near(throughCollectors / 3.6e6, one.heat_through_collector_kWh!);
    near(throughWall / 3.6e6, one.heat_through_tank_wall_kWh!);
  });
});
