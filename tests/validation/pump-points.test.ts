import type { PumpCurveDesign } from '@noonloop/sim-core';
import {
  type PumpCurvePoint,
  pumpCurvePoint,
  pvOperatingPoint,
  stringOf,
  throughPoints,
} from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { monotoneCubic } from '../../packages/sim-core/src/physics/monotone-cubic.ts';
import { hasMoreCases, moreCases } from './more-cases.ts';

const LITRE_PER_MINUTE = 1 / 60_000;
const near = (found: number, expected: number, relative = 1e-6): void => {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.max(Math.abs(expected), 1e-9));
};

interface Operating {
  V: number;
  lift_m: number;
  k: number;
  at_measured_voltage: boolean;
  Q_l_min: number;
  H_m: number;
  P_W: number;
  Q_true_l_min?: number;
  Q_cubic_l_min?: number;
}
interface PumpCase {
  pump?: { volts: number[]; curves: { Q_l_min: number[]; H_m: number[]; P_W: number[] }[] };
  interpolant?: { V: number; slope_m_per_l_min: number[]; Q_mid_l_min: number[]; H_mid_m: number[] }[];
  known_curve?: { Q_l_min: number[]; H_m: number[] };
  operating: Operating[];
}
const cases = moreCases<PumpCase>('pump_points');
const curvesOf = (volts: number[], curves: { Q_l_min: number[]; H_m: number[]; P_W?: number[] }[]): PumpCurveDesign[] =>
  curves.map(({ H_m, P_W, Q_l_min }, at) => ({
    voltage: volts[at]!,
    points: Q_l_min.map((flow, point) => ({
      flow: flow * LITRE_PER_MINUTE,
      head: H_m[point]!,
      power: P_W?.[point] ?? 100,
    })),
  }));
/** The loop of the reference: lift and a friction with the power 1.75 of the flow [L/min]. */
const onLoop = (curves: PumpCurveDesign[], { V, k, lift_m }: Operating): PumpCurvePoint =>
  pumpCurvePoint(curves, V, (flow) => lift_m + k * (flow / LITRE_PER_MINUTE) ** 1.75);

describe.skipIf(!hasMoreCases)('a pump by points [reference: library pchip and the formulas apart; 1e-6]', () => {
  const measured = cases.filter(({ pump }) => pump !== undefined);
  it('has the slopes and values between the points of the usual monotone cubic', () => {
    for (const { interpolant, pump } of measured) {
      interpolant!.forEach((one, at) => {
        const { Q_l_min, H_m } = pump!.curves[at]!;
        monotoneCubic(Q_l_min, H_m).slope.forEach((slope, point) => {
          near(slope, one.slope_m_per_l_min[point]!);
        });
        one.Q_mid_l_min.forEach((flow, point) => {
          near(throughPoints(Q_l_min, H_m, flow), one.H_mid_m[point]!);
        });
      });
    }
  });

  it('meets its loop at measured voltages and, by affinity, between them', () => {
    for (const { operating, pump } of measured) {
      const curves = curvesOf(pump!.volts, pump!.curves);
      for (const one of operating) {
        const { electricalPower, flow, head } = onLoop(curves, one);
        near(flow / LITRE_PER_MINUTE, one.Q_l_min);
        near(head, one.H_m);
        near(electricalPower, one.P_W);
      }
    }
  });

  it('follows a known parabola through six of its points to 0.02 % of the flow', () => {
    for (const { known_curve, operating } of cases.filter((one) => one.known_curve !== undefined)) {
      const curves = curvesOf([24], [known_curve!]);
      for (const one of operating) {
        const flow = onLoop(curves, { ...one, V: 24 }).flow / LITRE_PER_MINUTE;
        near(flow, one.Q_cubic_l_min!);
        near(flow, one.Q_true_l_min!, 2e-4);
      }
    }
  });
});

interface Module {
  name: string;
  IL_ref: number;
  I0_ref: number;
  Rs: number;
  Rsh_ref: number;
  a_ref: number;
  alpha_sc: number;
}
interface Row {
  module: string;
  in_series: number;
  in_parallel: number;
  G_W_m2: number;
  T_cell_C: number;
  runs: boolean;
  beyond_last_point: boolean;
  V_V: number | null;
  I_A: number | null;
  share_of_P_mp: number | null;
  Q_l_min: number | null;
  V_oc_V: number;
  P_mp_W: number;
  ohm?: number;
}
const modules = new Map(
  moreCases<Module>('module_on_motor', 'modules').map((one) => [
    one.name,
    {
      photocurrent: one.IL_ref,
      saturationCurrent: one.I0_ref,
      seriesResistance: one.Rs,
      shuntConductance: 1 / one.Rsh_ref,
      modifiedIdeality: one.a_ref,
      currentTemperatureCoefficient: one.alpha_sc,
    },
  ]),
);
const arrayOf = (row: Row) => stringOf(modules.get(row.module)!, row.in_series, row.in_parallel);
const light = (row: Row) => ({ irradiance: row.G_W_m2, cellTemperature: row.T_cell_C });

describe.skipIf(!hasMoreCases)('modules on a measured motor [reference: Lambert W and 30 digits; 1e-6]', () => {
  const V = moreCases<number>('module_on_motor', 'motor', 'V').slice(2);
  const I = moreCases<number>('module_on_motor', 'motor', 'I').slice(2);
  const flows = moreCases<number>('module_on_motor', 'motor', 'Q_l_min').slice(2);

  it.each(moreCases<Row>('module_on_motor', 'rows'))(
    '$module, $in_series in series, $in_parallel side by side, $G_W_m2 W/m², $T_cell_C °C',
    (row) => {
      const load = { kind: 'measured' as const, voltages: V, currents: I };
      const found = () => pvOperatingPoint(arrayOf(row), light(row), load);
      near(pvOperatingPoint(arrayOf(row), light(row), { kind: 'open' }).voltage, row.V_oc_V);
      near(pvOperatingPoint(arrayOf(row), light(row), { kind: 'maximum-power' }).power, row.P_mp_W);
      if (row.beyond_last_point) {
        expect(found).toThrow(/load.voltages: found 21 V/);
        return;
      }
      const { current, power, voltage } = found();
      if (!row.runs) {
        expect([current, power]).toEqual([0, 0]);
        return;
      }
      near(voltage, row.V_V!);
      near(current, row.I_A!);
      near(power / row.P_mp_W, row.share_of_P_mp!, 1e-5);
      near(throughPoints(V, flows, voltage), row.Q_l_min!);
    },
  );

  it.each(moreCases<Row>('element_on_module'))('$module on $ohm ohm, $G_W_m2 W/m²', (row) => {
    const { power, voltage } = pvOperatingPoint(arrayOf(row), light(row), { kind: 'resistance', resistance: row.ohm! });
    near(voltage, row.V_V!);
    near(power / row.P_mp_W, row.share_of_P_mp!, 1e-5);
  });
});

describe('terminals left open [closed form: I = 0]', () => {
  it('have the open-circuit voltage and no power', () => {
    const module = {
      photocurrent: 1.24,
      saturationCurrent: 8.5e-10,
      seriesResistance: 0.45,
      shuntConductance: 0,
      modifiedIdeality: 1.0174,
      currentTemperatureCoefficient: 0.0007,
    };
    const { current, power, voltage } = pvOperatingPoint(
      module,
      { irradiance: 1000, cellTemperature: 25 },
      { kind: 'open' },
    );
    expect(voltage).toBeCloseTo(1.0174 * Math.log(1 + 1.24 / 8.5e-10), 9);
    expect([current, power]).toEqual([0, 0]);
  });
});
