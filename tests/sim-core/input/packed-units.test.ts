import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, describe, expect, it } from 'vitest';
import { DIMENSIONS } from '../../../packages/sim-core/src/input/quantity.ts';
import { convertUnit as full } from '../../../packages/sim-core/src/input/units.ts';

const UNITS = (
  'm ft in mm cm yd m^2 ft^2 cm^2 kg lb g oz m^3 L gal ml ft^3 m^3/s L/min gal/min L/h degC degF K degR deg rad W kW BTU/h hp ' +
  'Pa kPa bar psi V mV A mA ohm kohm m/s ft/s km/h mi/h s min h day W/(m^2,K) BTU/(h,ft^2,degF) kWh/m^2 J/m^2 MJ/m^2 kJ/(m^2,K) ' +
  'W/(m,K) W/K BTU/(h,degF) m^2,K/W s/m mA/K V/K J/(m^3,K) furlong banana'
)
  .split(' ')
  .map((unit) => unit.replaceAll(',', ' '));
const AMOUNTS = [0, 1, -40, 98.6, 1e-7, 12345.678];

// Bundled, as packing does: by itself the class is a twentieth of the library whose every file Node would read.
const folder = mkdtempSync(join(tmpdir(), 'noonloop-units-'));
afterAll(() => rmSync(folder, { recursive: true }));
const outfile = join(folder, 'units.mjs');
const entry = fileURLToPath(new URL('../../../packages/sim-core/pack/unit-class.ts', import.meta.url));
await build({
  entryPoints: [entry],
  outfile,
  bundle: true,
  format: 'esm',
  platform: 'neutral',
  mainFields: ['module', 'main'],
});
const { convertUnit: packed } = (await import(pathToFileURL(outfile).href)) as { convertUnit: typeof full };

const attempt = (convert: () => number): number | string => {
  try {
    return convert();
  } catch {
    return 'refused';
  }
};

describe('the unit class that a packed sim-core carries, against the whole unit library [requirement: same bits]', () => {
  const targets = [...new Set(Object.values(DIMENSIONS).map(({ target }) => target))].filter((unit) => unit !== '');

  it('converts and refuses alike, bit by bit, every unit into every unit of a field', () => {
    const differing: string[] = [];
    let converted = 0;
    for (const from of UNITS)
      for (const to of targets)
        for (const amount of AMOUNTS) {
          const whole = attempt(() => full(amount, from, to));
          const alone = attempt(() => packed(amount, from, to));
          if (!Object.is(whole, alone)) differing.push(`${amount} ${from} → ${to}: ${whole} and ${alone}`);
          // What is refused is refused for its units: another amount would say the same, and errors are dear.
          if (typeof whole !== 'number' && typeof alone !== 'number') break;
          converted += 1;
        }
    expect(differing).toEqual([]);
    expect(converted).toBeGreaterThan(300);
  });
});
