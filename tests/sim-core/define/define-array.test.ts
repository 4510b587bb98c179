import { type DesignError, defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { plainInput } from '../../examples.ts';

/** Paths of the faults of an input. */
function faultyPaths(array: object, collector: object): string[] {
  try {
    defineSystem({
      ...plainInput,
      array: { ...plainInput.array, ...array, collector: { ...plainInput.array.collector, ...collector } },
    } as SystemInput);
  } catch (error) {
    return (error as DesignError).issues.map((issue) => issue.path);
  }
  throw new Error('the input was accepted');
}

const point = (azimuth: number, altitude: number) => ({ azimuth, altitude });
const table = { angles: [0, 60], values: [1, 0.9] };

describe('faults of the array, by path', () => {
  it.each([
    ['a3', { a3: 1.3 }], // 3.8 − 3 × 1.3 < 0: no loss without wind
    ['a3', { a3: -0.1 }],
    ['a4', { a4: 1.2 }],
    ['a4', { glazed: false, a4: null }],
    ['a6', { a6: 0.5 }],
    ['glazed', { glazed: 'yes' }],
    ['incidenceModifier', { incidenceModifier: { transversal: table, tubes: 'upright' } }],
    ['incidenceModifier', { incidenceModifier: { transversal: table, longitudinal: table, tubes: 'round' } }],
    ['dryCapacityShare', { dryCapacityShare: 0 }],
    ['skyCoefficient', { a4: 0.3, skyCoefficient: 0.2 }],
  ])('collector.%s: %j', (field, collector) => {
    expect(faultyPaths({}, collector)).toEqual([`array.collector.${field}`]);
  });

  it.each([
    ['windFactor', { windFactor: 3 }],
    ['inSeries', { panels: 3, inSeries: 2 }],
    ['inSeries', { inSeries: 0 }],
    ['skyModel', { skyModel: 'best' }],
    ['groundAlbedo', { groundAlbedo: [0.2, 0.3] }],
    ['groundAlbedo', { groundAlbedo: 20 }],
    ['snowAlbedo', { snowAlbedo: 2 }],
    ['snowOnPanels', { snowOnPanels: true }],
    ['horizon', { horizon: [] }],
    ['horizon', { horizon: 12 }],
    ['horizon.1.altitude', { horizon: [point(0, 10), point(90, 100)] }],
    ['horizon', { horizon: [point(90, 10), point(80, 10)] }],
    ['obstacle.distance', { obstacle: { distance: 0, width: 1, height: 1, azimuth: 180 } }],
    ['width', { width: 0 }],
    ['slopeLength', { slopeLength: '3 kg' }],
  ])('%s: %j', (field, array) => {
    expect(faultyPaths(array, {})).toEqual([`array.${field}`]);
  });
});
