import { DesignError, defineSystem, type SystemInput } from '@noonloop/sim-core';
import { DrawError, parseDraw, parseWeather, WeatherError } from '@noonloop/weather-io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseSettings } from '../../packages/reports/src/cli/settings-file.ts';
import { toSi } from '../../packages/sim-core/src/input/quantity.ts';
import { plainInput } from '../examples.ts';

/** Faults of a design; anything else that is thrown fails the test. */
function faultsOf(input: unknown): DesignError['issues'] {
  try {
    defineSystem(input as SystemInput);
  } catch (error) {
    if (error instanceof DesignError) return error.issues;
    throw error;
  }
  return [];
}

const nested = (depth: number): unknown => {
  let value: unknown = 1;
  for (let level = 0; level < depth; level++) value = level % 2 === 0 ? [value] : { a: value };
  return value;
};

/** Every place of a design at which something may be put. */
const places: readonly [string, (value: unknown) => unknown][] = [
  ['the whole', (value) => value],
  ['tank', (tank) => ({ ...plainInput, tank })],
  ['tank.volume', (volume) => ({ ...plainInput, tank: { volume } })],
  ['an unknown field', (value) => ({ ...plainInput, what: value })],
  ['draw.mains', (mains) => ({ ...plainInput, draw: { ...plainInput.draw, mains } })],
  ['draw.holidays', (value) => ({ ...plainInput, draw: { ...plainInput.draw, holidays: [value] } })],
  ['draw.volumes', (volumes) => ({ ...plainInput, draw: { volumes } })],
  ['draw.hourlyShares', (value) => ({ ...plainInput, draw: { ...plainInput.draw, hourlyShares: [value] } })],
  ['control.schedule', (value) => ({ ...plainInput, control: { schedule: [value] } })],
  ['control.outages', (value) => ({ ...plainInput, control: { outages: [{ from: value, to: value, kind: value }] } })],
  ['array.horizon', (value) => ({ ...plainInput, array: { ...plainInput.array, horizon: [value] } })],
  ['name', (name) => ({ ...plainInput, name })],
];

describe('hostile designs', () => {
  it.each(places)('nesting of 50 000 levels at %s is refused in words [requirement]', (_, put) => {
    const faults = faultsOf(put(nested(50_000)));
    expect(faults.length).toBeGreaterThan(0);
    for (const { found } of faults) expect(found.length).toBeLessThan(100);
  });

  it.each(places)('a ring at %s is refused in words [requirement]', (_, put) => {
    const ring: Record<string, unknown> = {};
    ring.self = ring;
    expect(faultsOf(put(ring)).length).toBeGreaterThan(0);
  });

  it.each(['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'valueOf'])(
    'a field named %s is an unknown field, and changes no prototype [requirement]',
    (key) => {
      const text = `{"${key}": {"polluted": true}, "tank": {"volume": 0.3, "${key}": {"polluted": true}}}`;
      const input = { ...plainInput, ...JSON.parse(text) };
      Object.defineProperty(input, key, { value: { polluted: true }, enumerable: true });
      faultsOf(input);
      faultsOf(JSON.parse(text));
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
      const design = defineSystem({ ...plainInput });
      expect(Object.getPrototypeOf(design.tank)).toBe(Object.prototype);
    },
  );

  it('long texts and a million items come back cut, soon [requirement]', () => {
    const start = performance.now();
    const faults = [
      ...faultsOf({ ...plainInput, tank: { volume: '9'.repeat(1e6) } }),
      ...faultsOf({ ...plainInput, ['x'.repeat(1e6)]: 1 }),
      ...faultsOf({ ...plainInput, name: 'x'.repeat(1e6) }),
      ...faultsOf({ ...plainInput, draw: { volumes: new Array(1e6).fill('1 L') } }),
    ];
    expect(faults).toHaveLength(4);
    for (const { found, path } of faults) expect(found.length + path.length).toBeLessThan(150);
    expect(performance.now() - start).toBeLessThan(5000);
  });
});

describe('unit strings are read, never run', () => {
  it.each([
    '1 m; process.exit()',
    'import("fs") m',
    '3 * 4 m',
    '2 m + 1 m',
    'sqrt(4) m',
    'evaluate("1") m',
    '1 m = 2',
    '1 [1,2] m',
    '1 {"a":1}',
    '1 constructor',
    '1 __proto__',
    '1 toString',
    '1e400 m',
    '1 m^1e9',
    `1 ${'m '.repeat(1000)}`,
    '0x10 m',
    '１ m',
    '1 m\u0000',
    "1 m' OR '1'='1",
  ])('%s is no length [requirement]', (text) => {
    expect(toSi(text, 'length')).toBeNull();
  });

  it('any text gives a finite number or nothing [property]', () => {
    // Of all there are; the library's own 'binary' first writes down a million of them.
    const codePoint = fc.integer({ min: 0, max: 0x10ffff }).map((point) => String.fromCodePoint(point));
    fc.assert(
      fc.property(fc.oneof(fc.string({ maxLength: 80 }), fc.string({ unit: codePoint, maxLength: 80 })), (text) => {
        for (const value of [toSi(text, 'length'), toSi(`1 ${text}`, 'power')])
          expect(value === null || Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 300, seed: 7 },
    );
  });
});

describe('hostile settings files', () => {
  it('aliases that multiply, deep brackets and deep indents are refused in words [requirement]', () => {
    const levels = Array.from({ length: 12 }, (_, level) => {
      const item = level === 0 ? 'x' : `*a${level - 1}`;
      return `a${level}: &a${level} [${new Array(10).fill(item)}]`;
    });
    const hostile = [
      levels.join('\n'),
      '['.repeat(100_000),
      `${'{a: '.repeat(10_000)}1`,
      Array.from({ length: 2000 }, (_, level) => `${' '.repeat(level)}a:`).join('\n'),
      `${'- '.repeat(5000)}1`,
      `"${'\\u0000'.repeat(100)}": !!binary x`,
      '? [a]\n: 1',
      'a: 1\n---\na: 2',
    ];
    for (const text of hostile) {
      try {
        parseSettings(text, 'hostile.yaml');
        expect.unreachable(text.slice(0, 40));
      } catch (error) {
        expect((error as Error).name).toBe('Refusal');
        expect((error as Error).message.length).toBeLessThan(5000);
      }
    }
  });

  it('__proto__ in a file changes no prototype [requirement]', () => {
    const { value } = parseSettings(
      '__proto__: { polluted: true }\ntank: { constructor: { prototype: { polluted: true } } }',
      'x',
    );
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect((value as Record<string, unknown>).polluted).toBeUndefined();
    expect(faultsOf(value).length).toBeGreaterThan(0);
  });

  it('any text is read or refused [property]', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'[]{}:,&*!|>-? \n\t"\'ab1#%@`'), maxLength: 60 }), (text) => {
        try {
          const { lineOf } = parseSettings(text, 'x');
          expect(lineOf('a.b[1]') ?? 1).toBeGreaterThan(0);
        } catch (error) {
          expect((error as Error).name).toBe('Refusal');
        }
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});

// Names in pages and spreadsheets: tests/reports/formats.test.ts, what others wrote.
describe('hostile tables', () => {
  it('any text is no record of water, in words [property]', () => {
    const layout = { column: 'w', quantity: 'meter', unit: 'L', time: { timestamp: 't' }, clock: 'standard' } as const;
    const letters = fc.constantFrom(...'0123456789:-T,;"\n\r =+@\u0000');
    fc.assert(
      fc.property(fc.string({ unit: letters, maxLength: 200 }), (text) => {
        for (const [read, type] of [
          [() => parseDraw(`t,w\n${text}`, layout), DrawError],
          [() => parseWeather(text), WeatherError],
        ] as const) {
          try {
            read();
          } catch (error) {
            expect(error).toBeInstanceOf(type);
          }
        }
      }),
      { numRuns: 100, seed: 7 },
    );
  });

  it('a layout that is hostile itself [requirement]', () => {
    for (const value of [nested(50_000), { toString: 1 }, Object.create(null), [], null, 1n, Symbol.iterator]) {
      for (const key of ['column', 'quantity', 'unit', 'time', 'clock', 'zone', 'span', 'maxBytes']) {
        const layout = { column: 'w', quantity: 'flow', unit: 'L/min', time: 'row-order', step: 60, clock: 'standard' };
        expect(() =>
          parseDraw('w\n1', { ...layout, clock: 'daylight-saving', zone: 'x', [key]: value } as never),
        ).toThrow(DrawError);
      }
    }
  });
});
