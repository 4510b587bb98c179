import { readFileSync } from 'node:fs';
import { DesignError, defineSystem, pumpCurvesFromCsv, simulate } from '@noonloop/sim-core';
import { moduleParameters, pvOperatingPoint } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
const issuesOf = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    if (error instanceof DesignError) return error.issues;
    throw error;
  }
  return [];
};

/** The default pump, measured: 3 m (1 − q²), 10 W + 6 W q, q share of 10 L/min. */
const points = (many: number) =>
  Array.from({ length: many }, (_, at) => {
    const q = (0.98 * at) / (many - 1);
    return { flow: (q * 10) / 60_000, head: 3 * (1 - q * q), power: 10 + 6 * q };
  });
const measured = { voltage: 12, points: points(8) };

describe('a pump by measured points', () => {
  it('in eight points of a known curve brings ten weeks of the curve itself, 0.1 % of the heat [closed form of the curve]', () => {
    const heat = (pump: object) =>
      sum(
        liveSpan(defineSystem({ ...plainInput, pump: { ...plainInput.pump, ...pump } }), weather, ...EARLY_SUMMER)
          .columns.solarHeat,
      );
    const known = heat({});
    expect(Math.abs(heat({ curves: [measured] }) - known) / known).toBeLessThan(1e-3);
  });

  it('needs the light that carries its start current at its start voltage [requirement]', () => {
    const { pump } = defineSystem({ ...plainInput, pump: { curves: [measured], drive: 'direct' } });
    expect(pump.startVoltage).toBe(6);
    // An eighth of the power at half the voltage: affinity.
    expect(pump.motor.frictionCurrent).toBeCloseTo(10 / 8 / 6, 9);
    expect(pump.motor.startCurrent).toBeGreaterThan(pump.motor.frictionCurrent);
    expect(pump.openFlow * 60_000).toBeCloseTo(10, 1);
  });

  it('refuses numbers that its points already give, points that do not rise, and a pump that makes power [requirement]', () => {
    expect(issuesOf(() => defineSystem({ ...plainInput, pump: { curves: [measured], shutOffHead: 4 } }))).toMatchObject(
      [{ path: 'pump.shutOffHead', found: '4 beside pump.curves' }],
    );
    const turned = { ...measured, points: measured.points.toReversed() };
    expect(issuesOf(() => defineSystem({ ...plainInput, pump: { curves: [turned] } }))[0]!.path).toBe('pump.curves');
    const free = { ...measured, points: measured.points.map((point) => ({ ...point, power: 0.5 })) };
    expect(issuesOf(() => defineSystem({ ...plainInput, pump: { curves: [free] } }))[0]!.expected).toContain(
      'more power',
    );
  });

  it('says where it worked beyond its points or before them, and not where it did not [requirement]', () => {
    const noticeOf = (of: typeof measured.points) => {
      const design = defineSystem({ ...plainInput, pump: { curves: [{ voltage: 12, points: of }] } });
      return simulate(design, weather, { stepsPerHour: 1 }).notices.find(({ code }) => code === 'pump-points-ended');
    };
    const many = points(50);
    // The loop takes 7 to 8 of the 10 L/min of open flow, whatever the speed.
    expect(noticeOf(many)).toBeUndefined();
    const below = noticeOf(many.slice(0, 25))!;
    expect(below.facts).toMatchObject({ least: { value: 0 }, most: { value: many[24]!.flow } });
    expect(below.hours).toBeGreaterThan(2000);
    expect(noticeOf(many.slice(46))!.hours).toBeGreaterThan(2000);
  });

  it('is read again as it was written out [requirement]', () => {
    const design = defineSystem({ ...plainInput, pump: { curves: [measured], drive: 'direct' } });
    expect(defineSystem(JSON.parse(JSON.stringify(design)))).toEqual(design);
  });
});

describe('a table of a pump', () => {
  it('becomes curves, whatever the order of its rows [requirement]', () => {
    const text = readFileSync(new URL('../../../docs/examples/pumps/invented-pump.csv', import.meta.url), 'utf8');
    const curves = pumpCurvesFromCsv(text);
    expect(curves.map(({ voltage, points: rows }) => [voltage, rows.length])).toEqual([
      [12, 5],
      [24, 5],
    ]);
    const [comment, header, ...rows] = text.trim().split('\n');
    expect(pumpCurvesFromCsv([comment, header, ...rows.toReversed()].join('\n'))).toEqual(curves);
  });

  it('says which line is no row, and what header is wanted [requirement]', () => {
    const header = 'voltage_V,flow_L_per_min,head_m,power_W';
    expect(
      issuesOf(() => pumpCurvesFromCsv(`${header}\n12,0,1.5,3\n12,x,1,3\n12,,1,3`)).map(({ path }) => path),
    ).toEqual(['line 3', 'line 4']);
    expect(issuesOf(() => pumpCurvesFromCsv('V,Q\n1,2'))[0]!.expected).toContain(header);
    expect(issuesOf(() => pumpCurvesFromCsv(7 as never))).toHaveLength(1);
  });
});

describe('a module by measured points', () => {
  const plate = defineSystem(plainInput).pv.module;
  // What a module of that plate gives, by the single diode: 24 points.
  const curve = Array.from({ length: 24 }, (_, at) => {
    const voltage = (21 * at) / 23;
    const parameters = moduleParameters(plate);
    const at25 = { irradiance: 1000, cellTemperature: 25 };
    return { voltage, current: pvOperatingPoint(parameters, at25, { kind: 'voltage', voltage }).current };
  });

  it('has the plate that its points were made from, 0.5 % [closed form: single diode]', () => {
    const { module } = defineSystem({ ...plainInput, pv: { module: { ivPoints: curve } } }).pv;
    for (const name of [
      'shortCircuitCurrent',
      'openCircuitVoltage',
      'maximumPowerCurrent',
      'maximumPowerVoltage',
    ] as const)
      expect(Math.abs(module[name] / plate[name] - 1)).toBeLessThan(5e-3);
  });

  it('refuses points that leave an end open, and the plate beside them [requirement]', () => {
    const half = curve.slice(0, 12);
    expect(issuesOf(() => defineSystem({ ...plainInput, pv: { module: { ivPoints: half } } }))[0]!.found).toContain(
      'A as',
    );
    const both = { ivPoints: curve, openCircuitVoltage: 21 };
    expect(issuesOf(() => defineSystem({ ...plainInput, pv: { module: both } }))[0]!.path).toBe(
      'pv.module.openCircuitVoltage',
    );
  });
});
