import { formatQuantity } from '@noonloop/reports';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatDay, formatHour, monthOfDay } from '../../packages/reports/src/calendar.ts';
import { formatDesignValue } from '../../packages/reports/src/quantities.ts';
import { formatNumber, roundToSum, shownDifference, toDisplay } from '../../packages/reports/src/units.ts';

describe('units of output', () => {
  it.each([
    ['energy', 3.6e9, 'metric', '1,000 kWh'],
    ['energy', 1055.05585262e6, 'us', '1,000 kBtu'], // Btu (IT), NIST SP 811 appendix B
    ['fuel', 1.0548e10, 'us', '100.0 therm'], // therm (US) 1.054 804e8 J, NIST SP 811 appendix B
    ['volume', 3.785411784, 'us', '1,000 gal'],
    ['volume', 0.3, 'metric', '300 L'],
    ['temperature', 100, 'us', '212 °F'],
    ['temperature', -40, 'us', '−40 °F'],
    ['temperatureDifference', 5, 'us', '9 °F'],
    ['area', 1, 'us', '11 ft²'],
    ['pressure', 689_475.7293168, 'us', '100 psi'],
    ['pressure', 150_000, 'metric', '1.5 bar'],
    ['irradiance', 1000, 'us', '317 Btu/(h·ft²)'],
    ['fraction', 0.4567, 'metric', '45.7 %'],
    ['hours', -0.01, 'metric', '0 h'], // never −0
  ] as const)('%s of %d in %s is %s [NIST SP 811]', (kind, value, units, text) => {
    expect(formatQuantity(value, kind, units)).toBe(text);
  });

  it('shows no number as a dash, not as 0 or NaN [definition]', () => {
    expect(formatQuantity(null, 'fraction', 'us')).toBe('–');
  });

  it('groups thousands and rounds half away from zero [definition]', () => {
    expect(formatNumber(1234567.5, 0)).toBe('1,234,568');
    expect(formatNumber(-1234.25, 1)).toBe('−1,234.3');
    expect(formatNumber(-0.4, 0)).toBe('0');
  });

  it('takes the difference of what is shown: 100.4 and 103.6 kWh differ by 4 [definition]', () => {
    expect(shownDifference(103.6 * 3.6e6, 100.4 * 3.6e6, 'energy', 'metric')).toBe(4);
  });

  it('rounds parts to the rounded sum, each by less than one last digit [property]', () => {
    const values = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(values, fc.constantFrom(0, 1, 3), (parts, digits) => {
        const step = 10 ** -digits;
        const rounded = roundToSum(parts, digits);
        const sum = parts.reduce((total, part) => total + part, 0);
        const shown = rounded.reduce((total, part) => total + part, 0);
        expect(Math.abs(shown - sum)).toBeLessThanOrEqual(0.5 * step + 1e-8);
        parts.forEach((part, index) => {
          expect(Math.abs(rounded[index]! - part)).toBeLessThan(step + 1e-9);
        });
      }),
    );
  });

  it('writes a design value in the units of the report [NIST SP 811]', () => {
    expect(formatDesignValue(0.3, 'm³', 'tank.volume', 'metric')).toBe('300 L');
    expect(formatDesignValue(0.3, 'm³', 'tank.volume', 'us')).toBe('79.25 gal');
    expect(formatDesignValue(1.8, 'W/K', 'tank.lossCoefficient', 'us')).toBe('3.412 Btu/(h·°F)');
    expect(formatDesignValue(0.0196, 'm', 'loop.pipeInnerDiameter', 'metric')).toBe('19.6 mm');
    expect(formatDesignValue(0.0254, 'm', 'loop.pipeInnerDiameter', 'us')).toBe('1 in');
    expect(formatDesignValue(15, 'W', 'pump.shutOffPower', 'us')).toBe('15 W');
    expect(formatDesignValue(10_000, 'W', 'heater.burnerPower', 'us')).toBe('34.12 kBtu/h');
    expect(formatDesignValue(0, '-', 'loop.outdoorShare', 'us')).toBe('0');
    expect(formatDesignValue(null, '°C', 'control.highLimit', 'us')).toBe('none');
  });
});

describe('calendar', () => {
  it('is that of a non-leap year: hour 1416 starts 1 March, hour 8759 ends 31 December [calendar]', () => {
    expect(formatHour(0)).toBe('1 Jan 00:00');
    expect(formatHour(1416)).toBe('1 Mar 00:00');
    expect(formatHour(8759)).toBe('31 Dec 23:00');
    expect(formatDay(364)).toBe('31 Dec');
    expect([0, 30, 31, 58, 59, 364].map(monthOfDay)).toEqual([0, 0, 1, 1, 2, 11]);
  });

  it('converts linearly: 20 °C is 68 °F [closed form]', () => {
    expect(toDisplay(20, 'temperature', 'us')).toBe(68);
  });
});
