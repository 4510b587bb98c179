import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { JSON_SCHEMA_VERSION, type MoneyOptions, renderJson } from '@noonloop/reports';
import type { RunResult } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { REPORT_SCHEMA } from '../../packages/reports/src/formats/json-schema.ts';
import { fixture } from './fixture.ts';

/** The part of zod that is used here; the root package does not depend on it. */
interface ZodReader {
  readonly z: {
    fromJSONSchema(schema: unknown): {
      safeParse(value: unknown): { readonly success: boolean; readonly error?: { readonly message: string } };
    };
  };
}

// zod is there for the designs of the simulator; it also reads JSON Schema.
const { z } = createRequire(new URL('../../packages/sim-core/package.json', import.meta.url))('zod') as ZodReader;

const folder = new URL('../../packages/reports/', import.meta.url);
const published = JSON.parse(readFileSync(new URL('schema/report-1.json', folder), 'utf8'));
const schema = z.fromJSONSchema(published);
const money: MoneyOptions = {
  currency: 'EUR',
  fuel: { carrier: 'natural-gas', price: 0.1, per: 'kWh' },
  investment: { new: 2000, used: 900 },
  discountRate: 0.03,
  life: 20,
};

/** The run with a second tank of invented numbers. */
function withSecondTank(run: RunResult): RunResult {
  const { tankTopTemperature: column } = run.columns;
  const [topTemperature, bottomTemperature, meanTemperature] = [column, column, column];
  const columns = { topTemperature, bottomTemperature, meanTemperature, maximumTemperature: column, loss: column };
  return {
    ...run,
    secondTank: { columns: { ...columns, coilHeat: column }, balance: run.balance.tank, peak: 80, peakOfFirst: 90 },
  };
}

/** With two groups, and a loop that emptied. */
function drained() {
  const run = fixture();
  const drain = {
    times: 300,
    flashes: 0,
    content: 0.004,
    heatLeft: 1e8,
    heatBack: 2e8,
    fillingTime: 3e4,
    liftedInVain: 0,
  };
  const group = { name: 'west', area: 4, irradiation: 2e10, heat: 5e9 };
  return { ...run, loop: { ...run.loop, drain }, groups: [group, { ...group, name: 'old' }] };
}

const report: Record<string, unknown> = JSON.parse(renderJson(fixture()));

describe('the published JSON Schema', () => {
  it('has a place for groups and for what draining cost [requirement]', () => {
    const [run] = JSON.parse(renderJson(drained())).runs;
    expect(run.groups[0]).toEqual({ name: 'west', area_m2: 4, irradiation_J: 2e10, heat_J: 5e9 });
    expect(run.loop.drain).toEqual({
      times: 300,
      flashes: 0,
      content_m3: 0.004,
      heatLeft_J: 1e8,
      heatBack_J: 2e8,
      filling_s: 3e4,
      liftedInVain_s: 0,
    });
    const [closed] = JSON.parse(renderJson(fixture())).runs;
    expect([closed.groups, closed.loop.drain]).toEqual([[], null]);
  });

  it('is what the code says, and bears its version [definition]', () => {
    expect(published).toEqual(JSON.parse(JSON.stringify(REPORT_SCHEMA)));
    expect(published.properties.schemaVersion.const).toBe(JSON_SCHEMA_VERSION);
    const { exports } = JSON.parse(readFileSync(new URL('package.json', folder), 'utf8'));
    expect(exports[`./schema/report-${JSON_SCHEMA_VERSION}.json`]).toBe('./schema/report-1.json');
  });

  it.each([
    ['one design', () => renderJson(fixture())],
    [
      'three designs, prices and ranks',
      () =>
        renderJson([fixture({ panels: 2 }), fixture({ panels: 3 }), fixture({ panels: 4 })], {
          money: { ...money, designs: [1000, 2000, 3000].map((investment) => ({ investment })) },
          rankBy: 'netPresentValue',
          against: 'previous',
        }),
    ],
    ['hours, those of a second tank too', () => renderJson(withSecondTank(fixture()), { hours: true })],
    ['groups that drain', () => renderJson(drained())],
    ['names of others', () => renderJson(fixture({ name: '<script>"=cmd' }))],
  ])('accepts %s [zod]', (_, render) => {
    const { success, error } = schema.safeParse(JSON.parse(render()));
    expect(success, error?.message.slice(0, 600)).toBe(true);
  });

  it.each([
    ['a key that nobody knows', (whole: Record<string, unknown>) => ({ ...whole, extra: 1 })],
    ['another version', (whole: Record<string, unknown>) => ({ ...whole, schemaVersion: 2 })],
    ['no run', (whole: Record<string, unknown>) => ({ ...whole, runs: [] })],
    [
      'eleven months',
      ({ runs, ...whole }: Record<string, unknown>) => {
        const [run] = runs as { months: unknown[] }[];
        return { ...whole, runs: [{ ...run, months: run!.months.slice(1) }] };
      },
    ],
    [
      'a number as text',
      ({ runs, ...whole }: Record<string, unknown>) => {
        const [run] = runs as { year: Record<string, unknown> }[];
        return { ...whole, runs: [{ ...run, year: { ...run!.year, deliveredEnergy_J: '1' } }] };
      },
    ],
  ])('refuses %s [zod]', (_, spoil) => {
    expect(schema.safeParse(spoil(report)).success).toBe(false);
  });
});
