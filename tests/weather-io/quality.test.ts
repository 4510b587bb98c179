import { checkWeather, qualityChart, synthesizeYear, type WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { LIGHT_LIMITS, lightLimit } from '../../packages/weather-io/src/irradiance/limits.ts';
import { inventedValley } from '../examples.ts';

const twelve = (value: number) => new Array<number>(12).fill(value);
const synthetic = synthesizeYear({
  site: { latitude: 40, longitude: -105, utcOffset: -7, elevation: 1600 },
  monthly: { clearness: twelve(0.5), dryBulb: twelve(10) },
});

const report = checkWeather(synthetic);

describe('limits [BSRN recommendations V2.0, from memory, worked by hand at cos Z 0.5, S 1400 W/m²]', () => {
  it.each([
    ['ghi', 'possible', 1.5 * 1400 * 0.435275 + 100],
    ['ghi', 'rare', 1.2 * 1400 * 0.435275 + 50],
    ['dhi', 'possible', 0.95 * 1400 * 0.435275 + 50],
    ['dhi', 'rare', 0.75 * 1400 * 0.435275 + 30],
    ['dni', 'possible', 1400],
    ['dni', 'rare', 0.95 * 1400 * 0.870551 + 10],
  ] as const)('%s %s', (key, which, expected) => {
    expect(Math.abs(lightLimit(LIGHT_LIMITS[key][which], 1400, 0.5) - expected)).toBeLessThan(0.01);
  });
});

describe('checkWeather [ours]', () => {
  it('a synthetic year has no fault, and its clock is right', () => {
    expect(report.findings.filter(({ weight }) => weight === 'fault')).toEqual([]);
    expect(Math.abs(report.clock.late!)).toBeLessThan(0.1);
    expect(report.clock.lateByClosure).toBeNull(); // split from GHI: it closes by itself
  });

  it('finds a wrong zone in it by symmetry alone', () => {
    const { clock } = checkWeather({ ...synthetic, site: { ...synthetic.site, utcOffset: -5 } });
    expect(clock.causes.join()).toContain('UTC-7 would fit, UTC-5 is stated');
  });

  it('changes nothing, and lists ten worst rows at most, worst first', () => {
    const ghi = synthetic.columns.ghi.map((value, hour) => (hour % 24 === 0 ? 10 + (hour % 7) : value));
    const before = ghi.slice();
    const { findings } = checkWeather({ ...synthetic, columns: { ...synthetic.columns, ghi } });
    const night = findings.find(({ code }) => code === 'light-at-night')!;
    expect(ghi).toEqual(before);
    expect([night.count, night.worst.length]).toEqual([365, 10]);
    expect(night.worst[0]!.value).toBe(16);
  });

  it('a year without light does not tell its clock', () => {
    const zero = new Float64Array(8760);
    const dark: WeatherYear = { ...synthetic, columns: { ...synthetic.columns, ghi: zero, dni: zero, dhi: zero } };
    const { clock, findings } = checkWeather(dark);
    expect(clock.late).toBeNull();
    expect(findings.map(({ code, count }) => [code, count])).toEqual([
      ['light-sum', 8760],
      ['no-light-by-day', 365],
    ]);
  });

  // On the equator and at the polar circle: damage.test.ts.
  it('near the poles nothing breaks', () => {
    for (const latitude of [-78, 89]) {
      const year = synthesizeYear({ site: { latitude }, monthly: { clearness: twelve(0.5), dryBulb: twelve(0) } });
      const { clock, findings } = checkWeather(year);
      expect(findings.filter(({ code }) => code === 'clock' || code === 'hemisphere')).toEqual([]);
      expect(clock.late === null || Math.abs(clock.late) < 0.2).toBe(true);
    }
  });
});

describe('qualityChart [ours]', () => {
  it('is one self-contained SVG below 150 kB, the same twice, with what a file says escaped', async () => {
    const named = checkWeather({ ...(await inventedValley()), source: '<script>&"\u0001' });
    const svg = qualityChart(named);
    expect([svg.startsWith('<svg xmlns="http://www.w3.org/2000/svg"'), svg.endsWith('</svg>')]).toEqual([true, true]);
    expect(svg.length).toBeLessThan(150_000);
    expect(qualityChart(named)).toBe(svg);
    for (const word of ['<script', 'href', '\u0001', 'NaN', 'undefined']) expect(svg).not.toContain(word);
    expect(svg).toContain('&lt;script&gt;&amp;&quot;');
  });

  it('sunrise and sunset on 21 June at 40° north: 4:31 and 19:32 local time [almanac rule: 15.0 h of sun between true altitudes of 0, by hand]', () => {
    const [rise, set] = report.sunriseSunset.subarray(2 * 171, 2 * 171 + 2);
    // cos ω = −tan 40° tan 23.44° → ω = 111.33°: half the day is 7.42 h; noon at 12:02 (equation of time −1.8 min).
    expect(Math.abs(rise! - (12.03 - 7.422))).toBeLessThan(0.03);
    expect(Math.abs(set! - (12.03 + 7.422))).toBeLessThan(0.03);
  });
});
