import { checkChart, ReportError, renderCheckHtml } from '@noonloop/reports';
import type { CheckedNumber, LogCheck } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { DARK, LIGHT } from '../../packages/reports/src/charts/palette.ts';

const DAY = 24;
const reading = (
  gauge: CheckedNumber['gauge'],
  day: number,
  [found, low, expected, high]: readonly [number, number, number, number],
  slip = false,
): CheckedNumber => ({
  at: day,
  line: day + 2,
  gauge,
  hour: 180 * DAY + day * DAY + 7,
  found,
  expected,
  low,
  high,
  deviation: (1.96 * (found - expected)) / (high - expected),
  outside: found < low || found > high,
  slip,
});

/** Invented. */
const check: LogCheck = {
  verdict: 'check-valve',
  reason: 'leads',
  doubts: [],
  causes: [
    {
      cause: 'check-valve',
      weight: 0.82,
      form: { code: 'check-valve-open', facts: {} },
      since: 182 * DAY,
      gauge: null,
      evidence: [],
    },
    {
      cause: 'sensor-wrong',
      weight: 0.13,
      form: { code: 'gauge-low', facts: { gauge: 'tankTopTemperature', offset: { value: 10, unit: 'K' } } },
      since: null,
      gauge: 'tankTopTemperature',
      evidence: [],
    },
  ],
  numbers: [
    reading('tankTopTemperature', 0, [58, 49, 63, 77]),
    reading('loopPressure', 0, [160_000, 140_000, 155_000, 170_000]),
    reading('tankTopTemperature', 1, [41, 48, 60.5, 73]),
    reading('tankTopTemperature', 3, [90, 50, 61, 72], true),
    reading('loopPressure', 3, [190_000, 139_000, 154_000, 169_000]),
    reading('heaterMeter', 3, [7.2e6, -3.6e5, 9e6, 1.8e7]),
    reading('tankTopTemperature', 6, [66, 52, 65, 78]),
  ],
  next: null,
  fit: 1,
  cautions: ['valve-too-high'],
  notes: [],
  unseen: [],
  remarks: ['Note of the <owner>.'],
};
const of = (gauge: CheckedNumber['gauge']) => check.numbers.filter((number) => number.gauge === gauge);

/** Its chart in light and metric units, drawn once. */
const drawn = checkChart(check, { units: 'metric', theme: 'light' });

type Mark = {
  readonly x: number;
  readonly y: number;
  readonly shape: 'circle' | 'up' | 'down';
  fill: string;
};

/** Marks of the readings, gauge by gauge. [px] */
function marksOf(svg: string): Mark[] {
  // Arrows at the ends of a range that goes on beyond its panel are no readings.
  const all = svg
    .replace(new RegExp(`<path [^>]*fill="(${LIGHT.axis}|${DARK.axis})"[^>]*>`, 'g'), '')
    .matchAll(/<path d="(M[^"]+)" transform="matrix\(([^)]+)\)" fill="([^"]+)"/g);
  return [...all].map(([, path, matrix, fill]) => {
    const [a, , , , x, y] = matrix!.split(',').map(Number) as [number, number, number, number, number, number];
    const shape = path!.includes('A') ? 'circle' : a < 0 ? 'down' : 'up';
    return { x, y, shape, fill: fill! };
  });
}

/** Height at which a panel shows a value, by two of the labels of its axis. [px] */
function scaleOf(svg: string, labels: readonly [string, string]): (value: number) => number {
  const [first, second] = labels.map((label) => {
    const found = new RegExp(`translate\\(\\S+ ([\\d.]+)\\)"[^>]*>${label}</text>`).exec(svg);
    expect(found, label).not.toBeNull();
    return { value: Number(label.replace(',', '')), y: Number(found![1]) };
  }) as [{ value: number; y: number }, { value: number; y: number }];
  return (value) => first.y + ((value - first.value) * (second.y - first.y)) / (second.value - first.value);
}

describe('checkChart', () => {
  it.each([
    ['metric', (value: number) => value, ['60', '80'], 1e-5, ['1.4', '1.6']],
    ['us', (value: number) => 1.8 * value + 32, ['150', '200'], 1 / 6894.757293168, ['20', '24']],
  ] as const)(
    '%s: each mark stands where its number is [definition]',
    async (units, degrees, labels, bar, pressures) => {
      const svg = await (units === 'us' ? checkChart(check, { units }) : drawn);
      expect(svg).toContain(units === 'us' ? 'Tank top [°F]' : 'Tank top [°C]');
      expect(svg).toContain(units === 'us' ? 'Loop pressure [psi]' : 'Loop pressure [bar]');
      const marks = marksOf(svg);
      const readings = marks;
      expect(readings).toHaveLength(check.numbers.length);
      const top = scaleOf(svg, labels);
      const pressure = scaleOf(svg, pressures);
      const tank = of('tankTopTemperature');
      // Labels and lines stand on whole pixels.
      tank.forEach(({ found }, at) => {
        expect(Math.abs(readings[at]!.y - top(degrees(found)))).toBeLessThan(1.1);
      });
      of('loopPressure').forEach(({ found }, at) => {
        expect(Math.abs(readings[tank.length + at]!.y - pressure(found * bar))).toBeLessThan(1.1);
      });
      const perDay = (readings[1]!.x - readings[0]!.x) / 1;
      expect(readings[2]!.x - readings[0]!.x).toBeCloseTo(3 * perDay, 1);
      expect(readings[3]!.x - readings[0]!.x).toBeCloseTo(6 * perDay, 1);
      // One path holds the bars of a gauge, each from low to high.
      const bars = new RegExp(`<path d="([^"]+)" fill="none" stroke="${LIGHT.axis}" stroke-width="7"`).exec(svg)![1]!;
      const ends = [...bars.matchAll(/M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/g)].map((one) => one.slice(1).map(Number));
      expect(ends).toHaveLength(tank.length);
      tank.forEach(({ low, high }, at) => {
        const [x, lower, same, upper] = ends[at]!;
        expect([x, same]).toEqual([same, x]);
        expect(x).toBeCloseTo(readings[at]!.x, 0);
        expect(Math.abs(lower! - top(degrees(low)))).toBeLessThan(1.1);
        expect(Math.abs(upper! - top(degrees(high)))).toBeLessThan(1.1);
      });
    },
  );

  it('readings outside differ in shape and in direction; slips are hollow [definition]', async () => {
    for (const [theme, { ink }] of [
      ['light', LIGHT],
      ['dark', DARK],
    ] as const) {
      const shown = marksOf(await (theme === 'light' ? drawn : checkChart(check, { theme })));
      expect(shown.map(({ shape, fill }) => [shape, fill])).toEqual([
        ['circle', ink],
        ['down', ink],
        ['up', 'none'], // 90 against 50 to 72, a slip
        ['circle', ink],
        ['circle', ink],
        ['up', ink],
        ['circle', ink],
      ]);
    }
  });

  it('a range far wider than the readings ends in arrows and does not flatten them [definition]', async () => {
    const wide = check.numbers.map((number) =>
      number.gauge === 'tankTopTemperature' ? { ...number, low: -88, high: 130 } : number,
    );
    const svg = await checkChart({ ...check, numbers: wide });
    const heights = marksOf(svg)
      .slice(0, of('tankTopTemperature').length)
      .map(({ y }) => y);
    expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(96 / 4); // of the panel's 96 px
    expect(svg.match(new RegExp(`transform="matrix[^>]*fill="${LIGHT.axis}"`, 'g'))!.length).toBeGreaterThanOrEqual(8);
  });

  it('bars of the causes are as long as their weights [definition]', async () => {
    const svg = await drawn;
    const lengths = [...svg.matchAll(/<path d="M4 \d+(?:\.\d+)?l([\d.]+) 0l[^"]*" fill="#1f2328"/g)].map((one) =>
      Number(one[1]),
    );
    expect(lengths).toHaveLength(2);
    check.causes.forEach(({ weight }, at) => {
      expect(Math.abs(lengths[at]! - weight * (760 - 80))).toBeLessThan(1);
    });
    expect(svg).toContain('>82 %</text>');
    expect(svg).toContain('>13 %</text>');
  });

  it('says in words what it shows, in its units, with the cautions; escapes what others wrote [requirement]', async () => {
    const svg = await checkChart(check, { title: 'my <house>, 300 L', units: 'us' });
    expect(svg).toContain('Tank top: 2 of 4 outside, Loop pressure: 1 of 2 outside');
    expect(svg).toContain('82 % check valve leaks: the loop cools the tank at night; 13 % a gauge shows wrong values');
    expect(svg).toContain('>my &lt;house&gt;, 300 L</text>');
    expect(svg).toContain('The thermometer at the tank’s top shows some 18 °F too little, all through the log.');
    expect(svg).toContain('Hotter taps scald: water of 122 °F burns in 3');
    expect(svg).not.toMatch(/NaN|undefined|<owner>|<house>/);
    const again = await checkChart(check, { title: 'my <house>, 300 L', units: 'us' });
    expect(again).toBe(svg);
    expect(await checkChart(check, { width: 320, theme: 'page' })).toMatch(/^<svg .*var\(--nl-ink\)/s);
  });

  it('the line of the beginning stands at its hour, and only where a cause is named [definition]', async () => {
    const since = /<path d="M([\d.]+) [\d.]+L\1 [\d.]+" fill="none" stroke="#1f2328"[^>]*stroke-dasharray/g;
    const svg = await drawn;
    const lines = [...svg.matchAll(since)].map((one) => Number(one[1]));
    expect(lines).toHaveLength(3); // tank, pressure, meter
    const [first, next] = marksOf(svg);
    const [perDay, begin] = [next!.x - first!.x, first!.x];
    // The first reading is at 07:00 of day 180.
    expect(Math.abs(lines[0]! - (begin + perDay * (2 - 7 / 24)))).toBeLessThan(1);
    expect(svg).toContain('likely since here');
    const open = await checkChart({ ...check, verdict: 'cannot-tell' });
    expect(open).not.toMatch(since);
    expect(open).not.toContain('likely since here');
  });

  it('a log of looks at the pump alone has causes and no panels [requirement]', async () => {
    const svg = await checkChart({ ...check, numbers: [] });
    expect(svg).toContain('No gauge with a number was read');
    expect(marksOf(svg)).toHaveLength(0);
  });

  it('refuses what cannot be drawn [requirement]', async () => {
    const broken = (change: Partial<CheckedNumber>) => ({ ...check, numbers: [{ ...check.numbers[0]!, ...change }] });
    await expect(checkChart({ ...check, causes: [] })).rejects.toThrow(ReportError);
    await expect(checkChart(broken({ found: Number.NaN }))).rejects.toThrow(/numbers\[0\]\.found: found NaN/);
    await expect(checkChart(broken({ gauge: 'toString' as 'heaterMeter' }))).rejects.toThrow(/numbers\[0\]\.gauge/);
    await expect(checkChart({ ...check, causes: [{ ...check.causes[0]!, weight: 2 }] })).rejects.toThrow(/weight/);
    await expect(checkChart(check, { units: 'imperial' as 'us' })).rejects.toThrow(/units/);
    await expect(checkChart(check, { width: Number.NaN })).rejects.toThrow(/width/);
  });
});

describe('renderCheckHtml [requirement]', () => {
  it('is one page with verdict, cautions, pictures, evidence, next test and every reading, in one system of units', async () => {
    const evidence = [
      {
        kind: 'gauge',
        gauge: 'tankTopTemperature',
        count: 5,
        before: null,
        after: -4,
        strayHealthy: 5,
        strayFaulty: 2,
        gain: 3,
      },
      { kind: 'pump', found: 3, count: 7, healthy: 6, faulty: 2 },
    ] as const;
    const next = {
      card: 'pressure-cold',
      who: 'owner',
      outcomes: [
        { seen: 'lower', causes: ['sensor-wrong', 'scaled-coil'] },
        { seen: 'as-filled', causes: ['check-valve'] },
      ],
      facts: { fill: { value: 211_000, unit: 'Pa' }, fall: { value: 30_000, unit: 'Pa' } },
      gain: 0.4,
    } as const;
    const causes = check.causes.map((cause) => ({ ...cause, evidence }));
    const notes = [{ code: 'no-meter', facts: {} }] as const;
    const page = await renderCheckHtml({ ...check, causes, next, notes }, { units: 'us', title: '<x>' });
    expect(page).toContain('<p class="answer">Likely: check valve leaks: the loop cools the tank at night');
    expect(page.match(/<svg xmlns/g)).toHaveLength(2);
    expect(page).toContain('water of 122\u00a0°F burns in 3 minutes');
    expect(page).toContain('<h3>82\u00a0%: check valve leaks');
    expect(page).toContain('5 readings, on average 7.2\u00a0°F below a healthy system');
    expect(page).toContain('running in 3 of 7 looks');
    // Digits that a gauge bears, and names in place of codes.
    expect(page).toMatch(/filling \(31.psi by the design\)/);
    expect(page).toMatch(/it is lower by more than 4.4.psi: a gauge shows wrong values<\/li>/);
    expect(page).not.toContain('scaled-coil');
    expect(page).toContain('For you: Read the pressure at dawn');
    expect(page).toContain('No meter was read');
    expect(page).toContain('Note of the &lt;owner&gt;.');
    expect(page.match(/<tr><th scope="row">/g)).toHaveLength(check.numbers.length);
    expect(page).toContain(
      '<td>Tank top [°F]</td><td>194.0</td><td>122.0</td><td>161.6</td><td>outside, taken for a slip</td>',
    ); // 90, 50, 72 °C
    expect(page).not.toMatch(/NaN|undefined|<owner>|<x>|<script|src=|href="[^#]|°C/);
    expect(await renderCheckHtml(check)).toContain('<h1>Gauge readings, checked</h1>');
  });
});
