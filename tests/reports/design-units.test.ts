import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { designUnitSource } from '../../packages/reports/schema/design-units.ts';
import { designUnit } from '../../packages/reports/src/design-units.ts';

it('the units of a design’s fields are those of its schema; run packages/reports/schema/write.ts when not [requirement]', () => {
  const path = new URL('../../packages/reports/src/design-unit-table.ts', import.meta.url);
  expect(readFileSync(path, 'utf8')).toBe(designUnitSource());
  expect(designUnit('tank.volume')).toBe('m³');
  expect(designUnit('array.groups[1].collector.a7')).toBe('s/m');
  expect([designUnit('loop.heatBridgeFactor'), designUnit('constructor')]).toEqual(['', '']);
});
