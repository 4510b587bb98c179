import { describe, expect, it } from 'vitest';
import type { TappingName } from '../../packages/sim-core/src/design/house.ts';
import { drawProfile } from '../../packages/sim-core/src/physics/draw/profile.ts';
import { hasShared } from '../shared.ts';
import { number, referenceTable } from './reference-table.ts';

const TABLE = 'reference/tapping-profiles.csv';
const rows = referenceTable(TABLE);
const NAMES: readonly TappingName[] = ['3XS', 'XXS', 'XS', 'S', 'M', 'L', 'XL', 'XXL'];

describe.skipIf(!hasShared(TABLE))('tapping profiles against tapping-profiles.csv', () => {
  it.each(NAMES)('%s: every draw [Regulation (EU) No 812/2013, Annex VII, Table 3, read apart]', (name) => {
    const expected = rows.filter((row) => row.profile === name);
    const { events } = drawProfile(name);
    expect(events).toHaveLength(expected.length);
    expected.forEach((row, index) => {
      const event = events[index]!;
      const [hours, minutes] = String(row.time).split(':').map(Number);
      expect(event.start).toBe(hours! * 3600 + minutes! * 60);
      expect(event.energy).toBeCloseTo(number(row, 'energy_kWh') * 3.6e6, 6);
      expect(event.flow * 6e4).toBeCloseTo(number(row, 'flow_l_min'), 9);
      expect(event.usefulTemperature).toBe(number(row, 'Tm_C'));
      const peak = number(row, 'Tp_C');
      expect(event.peakTemperature).toBe(Number.isNaN(peak) ? null : peak);
    });
  });
});

describe('tapping profiles', () => {
  it.each([
    ['3XS', 0.345],
    ['XXS', 2.1],
    ['XS', 2.1],
    ['S', 2.1],
    ['M', 5.845],
    ['L', 11.655],
    ['XL', 19.07],
    ['XXL', 24.53],
  ] as const)('%s: %f kWh a day [Q_ref of the regulation’s table]', (name, energy_kWh) => {
    expect(drawProfile(name).dailyEnergy! / 3.6e6).toBeCloseTo(energy_kWh, 9);
  });

  it('volumes above 10 °C: 6.029 L at 25, 3.014 at 40, 14.067 at 55, 103.49 at 40 °C [computed apart, ρc 4.18 MJ/(m³·K)]', () => {
    const volume_L = (name: TappingName, hours: number, minutes: number): number =>
      drawProfile(name).events.find((event) => event.start === hours * 3600 + minutes * 60)!.volume * 1000;
    expect(volume_L('M', 7, 0)).toBeCloseTo(6.029, 3);
    expect(volume_L('M', 18, 15)).toBeCloseTo(3.014, 3);
    expect(volume_L('M', 20, 30)).toBeCloseTo(14.067, 3);
    expect(volume_L('M', 7, 5)).toBeCloseTo(40.191, 3);
    expect(volume_L('L', 8, 5)).toBeCloseTo(103.49, 2);
  });
});
