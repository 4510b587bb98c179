import { describe, expect, it } from 'vitest';
import {
  diodeParameters,
  type PvConditions,
  type PvModuleParameters,
  pvOperatingPoint,
} from '../../packages/sim-core/src/physics/pv/index.ts';
import { openCircuitVoltage, packDiode } from '../../packages/sim-core/src/physics/pv/single-diode.ts';
import { number, type ReferenceRow, referenceTable } from './reference-table.ts';

const rows = referenceTable('reference/pv-12digits.csv');

const moduleOf = (row: ReferenceRow): PvModuleParameters => ({
  photocurrent: number(row, 'I_L_ref_A'),
  saturationCurrent: number(row, 'I_o_ref_A'),
  seriesResistance: number(row, 'R_s_ohm'),
  shuntConductance: 1 / number(row, 'R_sh_ref_ohm'),
  modifiedIdeality: number(row, 'a_ref_V'),
  currentTemperatureCoefficient: number(row, 'alpha_sc_A_K'),
});

const conditionsOf = (row: ReferenceRow): PvConditions => ({
  irradiance: number(row, 'irradiance_W_m2'),
  cellTemperature: number(row, 'cell_temperature_C'),
});

const relative = (ours: number, theirs: number): number => Math.abs(ours - theirs) / Math.abs(theirs);

describe.skipIf(rows.length === 0)(
  'single diode after De Soto 2006 [two solvers agreeing to 1e-13, pv-12digits.csv]',
  () => {
    it('has 210 rows', () => {
      expect(rows.length).toBe(210);
    });

    it('gives short-circuit current and open-circuit voltage within 1e-9', () => {
      for (const row of rows) {
        const short = pvOperatingPoint(moduleOf(row), conditionsOf(row), { kind: 'voltage', voltage: 0 });
        expect(relative(short.current, number(row, 'i_sc_A'))).toBeLessThan(1e-9);
        const open = openCircuitVoltage(packDiode(diodeParameters(moduleOf(row), conditionsOf(row))));
        expect(relative(open, number(row, 'v_oc_V'))).toBeLessThan(1e-9);
      }
    });

    it('gives current, voltage and power at the maximum within 1e-9', () => {
      for (const row of rows) {
        const best = pvOperatingPoint(moduleOf(row), conditionsOf(row), { kind: 'maximum-power' });
        expect(relative(best.current, number(row, 'i_mp_A'))).toBeLessThan(1e-9);
        expect(relative(best.voltage, number(row, 'v_mp_V'))).toBeLessThan(1e-9);
        expect(relative(best.power, number(row, 'p_mp_W'))).toBeLessThan(1e-9);
      }
    });

    it.each([4, 8, 12, 15, 18])('gives the current at %i V within 1e-9 of the short-circuit current', (voltage) => {
      for (const row of rows) {
        const { current } = pvOperatingPoint(moduleOf(row), conditionsOf(row), { kind: 'voltage', voltage });
        const expected = number(row, `i_at_${voltage}V_A`);
        expect(Math.abs(current - expected)).toBeLessThan(1e-9 * Math.max(number(row, 'i_sc_A'), Math.abs(expected)));
      }
    });
  },
);

// Bracketed roots, ten digits (collector-and-tank.json). The values are for the equation itself: 1000 W/m² and 25 °C.
const reference: PvConditions = { irradiance: 1000, cellTemperature: 25 };
const bright: PvModuleParameters = {
  photocurrent: 1.24,
  saturationCurrent: 7.4e-10,
  seriesResistance: 0.35,
  shuntConductance: 1 / 250,
  modifiedIdeality: 1.0174,
  currentTemperatureCoefficient: 0,
};
const dim: PvModuleParameters = { ...bright, photocurrent: 0.31, shuntConductance: 1 / 1000 };

describe('single diode on loads [bracketed roots, ten digits]', () => {
  it.each([
    ['1.24 A', bright, 18.13000459, 1.106548853, 20.06173579, 21.53579519],
    ['0.31 A', dim, 17.06090533, 0.277232577, 4.729838749, 20.1303243],
  ] as const)(
    '%s: maximum power and open circuit; V and I there are firm to seven digits',
    (_name, module, v, i, p, voc) => {
      const best = pvOperatingPoint(module, reference, { kind: 'maximum-power' });
      expect(relative(best.power, p)).toBeLessThan(1e-9);
      expect(relative(best.voltage, v)).toBeLessThan(3e-7);
      expect(relative(best.current, i)).toBeLessThan(3e-7);
      expect(relative(openCircuitVoltage(packDiode(module)), voc)).toBeLessThan(1e-9);
    },
  );

  it.each([
    ['1.24 A', bright, 0, 1.238266427],
    ['1.24 A', bright, 5, 1.218294235],
    ['1.24 A', bright, 12, 1.190186015],
    ['1.24 A', bright, 17, 1.1505345],
    ['1.24 A', bright, 20, 0.8206468095],
    ['0.31 A', dim, 0, 0.3098915379],
    ['0.31 A', dim, 12, 0.2977871011],
    ['0.31 A', dim, 18, 0.2529505364],
  ] as const)('%s at a fixed voltage', (_name, module, voltage, expected) => {
    expect(relative(pvOperatingPoint(module, reference, { kind: 'voltage', voltage }).current, expected)).toBeLessThan(
      1e-9,
    );
  });

  it.each([
    ['1.24 A', bright, 14.1653872, 1.180448933],
    ['0.31 A', dim, 3.67461811, 0.3062181758],
  ] as const)('%s on a resistor of 12 Ω', (_name, module, voltage, current) => {
    const point = pvOperatingPoint(module, reference, { kind: 'resistance', resistance: 12 });
    expect(relative(point.voltage, voltage)).toBeLessThan(1e-9);
    expect(relative(point.current, current)).toBeLessThan(1e-9);
  });

  it.each([
    ['1.24 A, back-EMF 9 V', bright, 9, 12.56347892, 1.187826307],
    ['0.31 A, back-EMF 6 V', dim, 6, 6.908952818, 0.3029842728],
  ] as const)('%s, winding 3 Ω', (_name, module, backEmf, voltage, current) => {
    const point = pvOperatingPoint(module, reference, { kind: 'motor', backEmf, resistance: 3 });
    expect(relative(point.voltage, voltage)).toBeLessThan(1e-9);
    expect(relative(point.current, current)).toBeLessThan(1e-9);
  });
});
