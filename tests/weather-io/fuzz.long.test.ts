import { describe, expect, it } from 'vitest';
import { type FuzzFile, fuzz } from './fuzz.ts';
import { fuzzFile } from './fuzz-files.ts';
import { hasRealFiles, REAL_NAMES } from './real-files.ts';
import { plainLines } from './samples.ts';

// The whole run, 10,000 copies of each file, is tests/bench/fuzz-weather.ts; the seeds here are others than there.
const SEED = 500_000;

describe('mutated copies read to what their text says, or are refused with their place [a second, simple reader]', () => {
  it.skipIf(!hasRealFiles).each(REAL_NAMES)('60 copies of %s', (name) => {
    const { findings, counts } = fuzz(fuzzFile(name), 60, SEED);
    expect(findings).toEqual([]);
    expect(counts.refused).toBeGreaterThan(20);
    expect(counts.readAlike + counts.readAsChanged).toBeGreaterThan(3);
  });

  it('100 copies of our own layout [invented]', () => {
    const file: FuzzFile = {
      name: 'plain',
      lines: plainLines(),
      layout: {
        header: 9,
        names: 8,
        cells: { ghi: [4, 1], dni: [5, 1], dhi: [6, 1], dryBulb: [7, 1] },
        steps: 1,
        options: {},
      },
    };
    const { findings, counts } = fuzz(file, 100, SEED);
    expect(findings).toEqual([]);
    expect(counts.refused).toBeGreaterThan(20);
  });

  it('the simple reader sees a number that a reader would get wrong', () => {
    const file: FuzzFile = {
      name: 'plain',
      lines: plainLines(),
      layout: { header: 9, names: 8, cells: { ghi: [4, 2] }, steps: 1, options: {} }, // says that the unit is 2 W/m²
    };
    expect(fuzz(file, 20, SEED).findings[0]!.what).toMatch(/ghi sums to/);
  });
});
