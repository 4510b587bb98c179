import { ReportError, summarize } from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import { DEFINITIONS, NUMBER_KEYS } from '../../packages/reports/src/definitions.ts';
import { fixture } from './fixture.ts';

const result = fixture({ panels: 4 });
const summary = summarize(result);

/** Same order of adding as a reader with a spreadsheet: month by month. */
const monthly = (key: (typeof NUMBER_KEYS)[number]): number =>
  summary.months.reduce((total, month) => total + month[key]!, 0);

describe('summarize', () => {
  it('takes straight sums over months whose sum is the year to the last bit [definition]', () => {
    for (const key of ['deliveredEnergy', 'stagnationHours', 'heaterFuel', 'tapVolume', 'irradiation'] as const)
      expect(summary.year[key], key).toBe(monthly(key));
  });

  it('lets every additive number of the months add up to the year within 12 roundings of a double [closed form]', () => {
    for (const key of NUMBER_KEYS.filter((one) => DEFINITIONS[one].additive)) {
      const scale = Math.max(Math.abs(summary.year.irradiation), Math.abs(summary.year[key]!));
      expect(Math.abs(monthly(key) - summary.year[key]!), key).toBeLessThanOrEqual(24 * Number.EPSILON * scale);
    }
  });

  it('delivers the sum of solarHeat and counts stagnation in shares of hours [definition]', () => {
    const total = result.columns.solarHeat.reduce((sum, value) => sum + value, 0);
    expect(summary.year.deliveredEnergy / total).toBeCloseTo(1, 12);
    const hours = result.columns.stagnation.filter((share) => share > 0).length;
    expect(hours).toBeGreaterThan(0);
    expect(summary.year.stagnationHours).toBeCloseTo(0.75 * hours, 9); // the fixture marks 0.75 of each
  });

  it('finds the peak of the tank and its hour, the hottest and the coldest absorber [definition]', () => {
    const { tankMaximumTemperature, absorberTemperature, absorberMinimumTemperature } = result.columns;
    expect(summary.year.peakTankTemperature).toBe(Math.max(...tankMaximumTemperature));
    expect(tankMaximumTemperature[summary.year.peakTankHour]).toBe(summary.year.peakTankTemperature);
    expect(summary.year.hottestAbsorber).toBe(Math.max(...absorberTemperature));
    expect(summary.year.coldestAbsorber).toBe(Math.min(...absorberMinimumTemperature));
  });

  it('finds extremes in the first and the last hour of every month too [definition]', () => {
    const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (const place of ['first', 'last'] as const) {
      const { columns, ...rest } = fixture();
      const high = new Float64Array(8760).fill(40);
      const low = new Float64Array(8760).fill(10);
      const hours = lengths.map((_, month) => {
        const before = 24 * lengths.slice(0, month).reduce((days, length) => days + length, 0);
        return place === 'first' ? before : before + 24 * lengths[month]! - 1;
      });
      for (const [month, hour] of hours.entries()) {
        high[hour] = 50 + month;
        low[hour] = -month - 1;
      }
      const edges = {
        ...columns,
        tankMaximumTemperature: high,
        absorberTemperature: high,
        absorberMinimumTemperature: low,
      };
      const { months, year } = summarize({ ...rest, columns: edges });
      expect(months.map(({ peakTankHour }) => peakTankHour)).toEqual(hours);
      expect(months.map(({ hottestAbsorberHour }) => hottestAbsorberHour)).toEqual(hours);
      expect(months.map(({ coldestAbsorberHour }) => coldestAbsorberHour)).toEqual(hours);
      expect([year.peakTankTemperature, year.coldestAbsorber, year.peakTankHour]).toEqual([61, -12, hours[11]]);
    }
  });

  it('shares the heat between sun and burner, and compares fuel with the baseline [definition]', () => {
    const { deliveredEnergy, heaterHeat, heaterFuel, baselineFuel, solarFraction, fuelSaving, fuelSaved } =
      summary.year;
    expect(solarFraction).toBeCloseTo(deliveredEnergy / (deliveredEnergy + heaterHeat), 15);
    expect(fuelSaving).toBeCloseTo(1 - heaterFuel / baselineFuel, 15);
    expect(fuelSaved).toBe(baselineFuel - heaterFuel);
  });

  it('puts the array area of 4 × 2.4 m² into the sunlight [definition]', () => {
    const perSquareMetre = result.columns.irradiance.reduce((sum, value) => sum + value * 3600, 0);
    expect(summary.year.irradiation / (perSquareMetre * 9.6)).toBeCloseTo(1, 12);
  });

  it('names the part that closes worst: the tank with 4e-13 [fixture]', () => {
    expect(summary.worstBalance).toEqual({ part: 'tank', worstRelative: 4e-13, hour: 4000 });
  });

  it('has no fraction, rather than NaN, where nothing flows [definition]', () => {
    const empty = fixture();
    for (const column of ['solarHeat', 'heaterHeat', 'baselineFuel', 'heaterFuel'] as const)
      empty.columns[column].fill(0);
    expect(summarize(empty).year.solarFraction).toBeNull();
    expect(summarize(empty).months[5]!.fuelSaving).toBeNull();
  });

  it('refuses a column with a hole and one that is not a year, by name [definition]', () => {
    const holed = fixture();
    holed.columns.tapHeat[77] = Number.NaN;
    expect(() => summarize(holed)).toThrow(ReportError);
    expect(() => summarize(holed)).toThrow(/columns\.tapHeat\[77\]: found NaN/);
    const short = fixture();
    const cut = { ...short, columns: { ...short.columns, hotVolume: new Float64Array(24) } };
    expect(() => summarize(cut)).toThrow(/columns\.hotVolume: found 24 values, expected 8760/);
  });
});
