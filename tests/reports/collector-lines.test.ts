import { describe, expect, it } from 'vitest';
import { collectorChart, ReportError } from '../../packages/reports/src/index.ts';

const plate = { name: 'plate & <glass>', eta0: 0.7, a1: 6, a2: 0.012 };

describe('collectorChart [requirement]', () => {
  it('draws lines, limits and readings, says in words what they are, and escapes names', async () => {
    const points = [
      { reducedTemperature: 0.02, efficiency: 0.57, error: 0.05 },
      { reducedTemperature: null, efficiency: null, error: 9 }, // covered
    ];
    const limits = [
      { ...plate, eta0: 0.62 },
      { ...plate, eta0: 0.75 },
    ] as const;
    const svg = await collectorChart([
      { ...plate, limits, points },
      { ...plate, name: 'tubes', eta0: 0.62, a1: 1.1 },
    ]);
    // 0.7 − (6 + 0.012 × 30) × 30/800 = 0.4615
    expect(svg).toContain('efficiency 70 % at the air’s temperature, 46 % at 30 K');
    expect(svg).toContain('plate &amp; ');
    expect(svg).not.toContain('<glass>');
    expect(svg).not.toMatch(/NaN|undefined/);
    expect(await collectorChart([plate])).toBe(await collectorChart([plate]));
    expect(await collectorChart([plate], { width: 320, theme: 'dark' })).toMatch(/^<svg/);
  });

  it('refuses nothing, no numbers and odd light', async () => {
    await expect(collectorChart([])).rejects.toThrow(ReportError);
    await expect(collectorChart([{ ...plate, a1: Number.NaN }])).rejects.toThrow(/a1/);
    await expect(collectorChart([plate], { irradiance: 5 })).rejects.toThrow(/irradiance/);
  });
});
