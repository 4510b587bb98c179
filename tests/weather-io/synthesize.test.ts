import { type SyntheticInput, synthesizeYear, WeatherError, type WeatherIssue } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { hourlySun } from '../../packages/weather-io/src/sun/hourly.ts';
import { clearestDay, clearnessOfShare } from '../../packages/weather-io/src/synthesize/daily-clearness.ts';
import { hourOverDay } from '../../packages/weather-io/src/synthesize/hourly-light.ts';
import { monthlyMeans } from '../../packages/weather-io/src/synthesize/months.ts';
import { gaussFrom } from '../../packages/weather-io/src/synthesize/random.ts';

/** Invented, for an invented place. */
const input = {
  site: { name: 'invented', latitude: 41, longitude: -77.5, elevation: 300, utcOffset: -5 },
  monthly: {
    dailyGhi_kWh_per_m2: [1.9, 2.8, 3.9, 4.9, 5.7, 6.2, 6.1, 5.3, 4.3, 3.0, 2.0, 1.6],
    dryBulb: [-4, -2, 3, 9, 15, 20, 22, 21, 17, 11, 5, -1],
    dailyRange: [9, 10, 11, 12, 13, 13, 13, 12, 12, 11, 9, 8],
    relativeHumidity: [0.72, 0.7, 0.66, 0.62, 0.65, 0.68, 0.7, 0.73, 0.75, 0.71, 0.73, 0.75],
    windSpeed: [3.6, 3.7, 3.8, 3.6, 3, 2.6, 2.4, 2.2, 2.4, 2.8, 3.3, 3.4],
  },
  seed: 5,
} satisfies SyntheticInput;
const year = synthesizeYear(input);

const faultsOf = (change: unknown): readonly WeatherIssue[] => {
  try {
    synthesizeYear({ ...input, ...(change as object) });
  } catch (error) {
    if (error instanceof WeatherError) return error.issues;
    throw error;
  }
  throw new Error('The input was taken, though it is faulty.');
};

/** Daily clearness of a year. */
function clearnessOfDays(made: typeof year): Float64Array {
  const { light, normal } = hourlySun(made);
  return Float64Array.from({ length: 365 }, (_, day) => {
    let [global, top] = [0, 0];
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      global += made.columns.ghi[hour]!;
      top += light[hour]! * normal[hour]!;
    }
    return global / top;
  });
}

describe('means come back [what was put in; 0.5 % asked, rounding found]', () => {
  it.each([
    ['ghi', input.monthly.dailyGhi_kWh_per_m2.map((value) => value / 0.024)],
    ['dryBulb', input.monthly.dryBulb],
    ['relativeHumidity', input.monthly.relativeHumidity],
    ['windSpeed', input.monthly.windSpeed],
  ] as const)('%s', (key, expected) => {
    monthlyMeans(year.columns[key]!).forEach((mean, month) => {
      expect(Math.abs(mean - expected[month]!)).toBeLessThan(1e-6 * Math.max(1, Math.abs(expected[month]!)));
    });
  });

  it('daily range within 15 %: the course between the days cuts and adds a little', () => {
    for (let month = 0; month < 12; month++) {
      const ranges = Array.from({ length: 28 }, (_, day) => {
        const first = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334][month]! * 24 + day * 24;
        const hours = year.columns.dryBulb.subarray(first, first + 24);
        return Math.max(...hours) - Math.min(...hours);
      });
      const mean = ranges.reduce((sum, value) => sum + value, 0) / ranges.length;
      expect(Math.abs(mean / input.monthly.dailyRange[month]! - 1)).toBeLessThan(0.15);
    }
  });

  it.each([
    [-65, 0],
    [0, 4294967295],
    [69, 77],
  ])('at latitude %d too, with seed %d', (latitude, seed) => {
    const clearness = [0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.5, 0.4, 0.35];
    const made = synthesizeYear({
      site: { latitude },
      monthly: { clearness, dryBulb: new Array<number>(12).fill(10) },
      seed,
    });
    const { light, normal } = hourlySun(made);
    const top = monthlyMeans(light.map((value, hour) => value * normal[hour]!));
    monthlyMeans(made.columns.ghi).forEach((mean, month) => {
      const expected = clearness[month]! * top[month]!;
      expect(Math.abs(mean - expected)).toBeLessThanOrEqual(0.005 * expected + 1e-9);
    });
  });
});

describe('the same input gives the same bits [ours]', () => {
  it('twice', () => expect(synthesizeYear(input).columns).toEqual(year.columns));
  it('another seed, another year', () =>
    expect(synthesizeYear({ ...input, seed: 6 }).columns.ghi).not.toEqual(year.columns.ghi));
  it('without humidity the light is the same', () => {
    const { relativeHumidity: _, ...rest } = input.monthly;
    expect(synthesizeYear({ ...input, monthly: rest }).columns.ghi).toEqual(year.columns.ghi);
  });
});

describe('light [published formulas]', () => {
  it('GHI = DHI + DNI cos Z over the sunlit part of each hour [closure]', () => {
    const { light, lit } = hourlySun(year);
    const { ghi, dni, dhi } = year.columns;
    const apart = ghi.map((global, hour) => {
      const beam = lit[hour]! > 0 ? (dni[hour]! * light[hour]!) / lit[hour]! : 0;
      return Math.abs(global - dhi[hour]! - beam);
    });
    expect(Math.max(...apart)).toBeLessThan(1e-9);
  });

  it('no light with the sun down, none beyond the top of the air', () => {
    const { light, normal } = hourlySun(year);
    const { ghi } = year.columns;
    expect(Math.min(...ghi)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...ghi.map((value, hour) => value - light[hour]! * normal[hour]!))).toBeLessThanOrEqual(1e-9);
  });

  it('hour over day at noon and 3 h off, sunset at 6 h: a + b = 1.08235 and a + b cos 45° [Collares-Pereira & Rabl, by hand]', () => {
    // sin 30° = 0.5: a = 0.6598, b = 0.42255
    expect(hourOverDay(1, Math.PI / 2)).toBeCloseTo(1.08235, 5);
    expect(hourOverDay(Math.SQRT1_2, Math.PI / 2)).toBeCloseTo(0.6598 + 0.42255 * Math.SQRT1_2, 5);
  });

  it('its mean over the day, weighted with the top of the air, is 1 within 1.5 % [Collares-Pereira & Rabl state so; 13 day lengths]', () => {
    for (let sunset = 1; sunset <= 2.2; sunset += 0.1) {
      let [shaped, flat] = [0, 0];
      for (let angle = 0; angle < sunset; angle += 0.001) {
        const top = Math.cos(angle) - Math.cos(sunset);
        shaped += top * hourOverDay(Math.cos(angle), sunset);
        flat += top;
      }
      expect(Math.abs(shaped / flat - 1)).toBeLessThan(0.015);
    }
  });
});

describe('clearness of days', () => {
  const steepness = (mean: number): number => {
    const ratio = (clearestDay(mean) - 0.05) / (clearestDay(mean) - mean);
    return -1.498 + (1.184 * ratio - 27.182 * Math.exp(-1.5 * ratio)) / (clearestDay(mean) - 0.05);
  };
  const bendt = (k: number, mean: number): number => {
    const g = steepness(mean);
    const most = clearestDay(mean);
    if (k <= 0.05) return 0;
    return k >= most ? 1 : (Math.exp(g * 0.05) - Math.exp(g * k)) / (Math.exp(g * 0.05) - Math.exp(g * most));
  };
  const hollands = (k: number, mean: number): number => {
    const most = 0.864;
    const ratio = most / (most - mean);
    const l = (2 * ratio - 17.519 * Math.exp(-1.3118 * ratio) - 1062 * Math.exp(-5.0426 * ratio)) / most;
    const c = (l * l * most) / (Math.exp(l * most) - 1 - l * most);
    if (k >= most) return 1;
    return c * (Math.exp(l * k) * ((1 - k / most) / l + 1 / (most * l * l)) - (1 / l + 1 / (most * l * l)));
  };
  /** Greatest distance between the days of a month and a curve, in shares of the days. */
  const distance = (days: readonly number[], curve: (k: number) => number): number =>
    Math.max(...days.toSorted((a, b) => a - b).map((k, at) => Math.abs((at + 0.5) / days.length - curve(k))));
  const months = new Map<number, number[]>();
  const monthOfDays = (clearness: number): number[] => {
    const known = months.get(clearness);
    if (known !== undefined) return known;
    const made = synthesizeYear({
      site: { latitude: 40 },
      monthly: { clearness: new Array<number>(12).fill(clearness), dryBulb: new Array<number>(12).fill(10) },
    });
    const days = [...clearnessOfDays(made).subarray(181, 212)];
    months.set(clearness, days);
    return days;
  };

  it.each([0.3, 0.5, 0.7])(
    'mean %f: a month lies within 0.02 of the curve of Bendt et al. [Duffie & Beckman eq. 2.9.6 to 2.9.8, from memory]',
    (mean) => expect(distance(monthOfDays(mean), (k) => bendt(k, mean))).toBeLessThan(0.02),
  );

  // The two published curves are 0.06 to 0.10 apart; the month may be no farther from the second than the first is.
  it.each([0.3, 0.5, 0.7])('mean %f: within 0.12 of the curve of Hollands & Huget [1983, from memory]', (mean) => {
    expect(distance(monthOfDays(mean), (k) => hollands(k, mean))).toBeLessThan(0.12);
  });

  it.each([-300, -2, -1e-9, 0, 1e-9, 2, 300])(
    'steepness %f: shares 0 and 1 are the ends, and the way between rises [closed form]',
    (g) => {
      expect(clearnessOfShare(0, g, 0.75)).toBeCloseTo(0.05, 9);
      expect(clearnessOfShare(1, g, 0.75)).toBeCloseTo(0.75, 9);
      const way = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => clearnessOfShare(share, g, 0.75));
      expect(way).toEqual(way.toSorted((a, b) => a - b));
    },
  );

  it('days remember: lag-1 correlation of 3 years between 0.15 and 0.33 [0.29 of the Gaussian series behind, Graham et al.]', () => {
    let [product, square] = [0, 0];
    for (let seed = 1; seed <= 3; seed++) {
      const made = synthesizeYear({
        site: { latitude: 40 },
        monthly: { clearness: new Array<number>(12).fill(0.5), dryBulb: new Array<number>(12).fill(10) },
        seed,
      });
      const days = clearnessOfDays(made);
      for (let day = 0; day < 364; day++) {
        product += (days[day]! - 0.5) * (days[day + 1]! - 0.5);
        square += (days[day]! - 0.5) ** 2;
      }
    }
    expect(product / square).toBeGreaterThan(0.15);
    expect(product / square).toBeLessThan(0.33);
  });
});

describe('air [published formulas, ours]', () => {
  it('warmest between 14 and 17 h solar time on the mean, coldest between 4 and 7 h [common practice]', () => {
    const course = Array.from({ length: 24 }, (_, hour) => {
      let sum = 0;
      for (let day = 0; day < 365; day++) sum += year.columns.dryBulb[day * 24 + hour]!;
      return sum / 365;
    });
    const warmest = course.indexOf(Math.max(...course));
    const coldest = course.indexOf(Math.min(...course));
    expect([warmest >= 14 && warmest <= 16, coldest >= 4 && coldest <= 6]).toEqual([true, true]);
  });

  it('clear days have the greater range: correlation above 0.5', () => {
    const clear = clearnessOfDays(year);
    const range = clear.map((_, day) => {
      const hours = year.columns.dryBulb.subarray(day * 24, day * 24 + 24);
      return Math.max(...hours) - Math.min(...hours);
    });
    expect(correlation(clear, range)).toBeGreaterThan(0.5);
  });

  it('dew point is below dry bulb and humidity at most 1', () => {
    const { dryBulb, dewPoint, relativeHumidity } = year.columns;
    expect(dewPoint!.every((value, hour) => value <= dryBulb[hour]! + 1e-9)).toBe(true);
    expect(relativeHumidity!.every((value) => value > 0 && value <= 1)).toBe(true);
  });

  it('random deviates: mean 0 and variance 1 within 4 standard errors of 100,000 [normal distribution]', () => {
    const gauss = gaussFrom(3);
    let [sum, square] = [0, 0];
    for (let count = 0; count < 100_000; count++) {
      const value = gauss();
      sum += value;
      square += value * value;
    }
    expect(Math.abs(sum / 100_000)).toBeLessThan(4 / Math.sqrt(100_000));
    expect(Math.abs(square / 100_000 - 1)).toBeLessThan(4 * Math.sqrt(2 / 100_000));
  });
});

function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (list: Float64Array) => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [ma, mb] = [mean(a), mean(b)];
  let [ab, aa, bb] = [0, 0, 0];
  a.forEach((value, at) => {
    ab += (value - ma) * (b[at]! - mb);
    aa += (value - ma) ** 2;
    bb += (b[at]! - mb) ** 2;
  });
  return ab / Math.sqrt(aa * bb);
}

describe('what a person types [ours]', () => {
  const { dryBulb } = input.monthly;

  it('MJ and °F are the same year as kWh and °C', () => {
    const made = synthesizeYear({
      ...input,
      monthly: {
        dailyGhi_MJ_per_m2: input.monthly.dailyGhi_kWh_per_m2.map((value) => value * 3.6),
        dryBulb_degF: dryBulb.map((value) => value * 1.8 + 32),
        dailyRange_degF: input.monthly.dailyRange.map((value) => value * 1.8),
      },
    });
    for (const key of ['ghi', 'dryBulb'] as const) {
      const worst = made.columns[key].map((value, hour) => Math.abs(value - year.columns[key][hour]!));
      expect(Math.max(...worst)).toBeLessThan(1e-6);
    }
  });

  it('sunshine 0.5 is clearness 0.5 [FAO-56 eq. 35: 0.25 + 0.50 n/N]', () => {
    const made = (light: { clearness: number[] } | { sunshineFraction: number[] }) =>
      synthesizeYear({ site: { latitude: 40 }, monthly: { ...light, dryBulb } });
    const half = new Array<number>(12).fill(0.5);
    const fromSunshine = made({ sunshineFraction: half });
    expect(fromSunshine.columns.ghi).toEqual(made({ clearness: half }).columns.ghi);
    expect(fromSunshine.assumptions.map(({ code }) => code)).toEqual([
      'synthetic-year',
      'light-from-sunshine',
      'split-by-erbs',
      'range-from-clearness',
      'no-humidity',
      'no-wind',
      'longitude-from-zone',
      'elevation-unknown',
    ]);
  });

  it.each([
    ['eleven months', { monthly: { clearness: [0.5], dryBulb } }, 'monthly.clearness', 'a list of twelve numbers'],
    [
      'two ways of light',
      { monthly: { clearness: dryBulb, sunshineFraction: dryBulb, dryBulb } },
      'monthly',
      'light as one of',
    ],
    ['no light', { monthly: { dryBulb } }, 'monthly', 'light as one of'],
    ['no temperature', { monthly: { clearness: new Array(12).fill(0.5) } }, 'monthly', 'temperature as one of'],
    ['a name that is not known', { monthly: { ...input.monthly, ghi: dryBulb } }, 'monthly.ghi', 'one of dailyGhi'],
    [
      'per cent',
      { monthly: { ...input.monthly, relativeHumidity: dryBulb.with(3, 65) } },
      'monthly.relativeHumidity[0]',
      '65 % is 0.65',
    ],
    [
      'text',
      { monthly: { ...input.monthly, dryBulb: ['a', ...dryBulb.slice(1)] } },
      'monthly.dryBulb[0]',
      'a number from -70',
    ],
    [
      'months from July',
      {
        monthly: {
          dailyGhi_kWh_per_m2: input.monthly.dailyGhi_kWh_per_m2.map((_, at, all) => all[(at + 6) % 12]!),
          dryBulb,
        },
      },
      'monthly.dailyGhi_kWh_per_m2[0]',
      'top of the air',
    ],
    ['a latitude of 95', { site: { latitude: 95 } }, 'site.latitude', '-90 to 90'],
    ['a seed of 0.5', { seed: 0.5 }, 'seed', 'a whole number'],
  ])('%s', (_, change, column, expected) => {
    expect(faultsOf(change)[0]).toMatchObject({
      code: 'bad-option',
      file: 'synthesizeYear',
      column,
      expected: expect.stringContaining(expected),
    });
  });
});
