import { readFileSync } from 'node:fs';
import { extraterrestrialNormal, sunPosition } from '@noonloop/weather-io/sun';
import { describe, expect, it } from 'vitest';
import { hasShared, sharedFile } from '../shared.ts';

const TABLE = 'reference/solar.csv';

describe('sun position', () => {
  it('2003-10-17 12:30:30 UTC−7 at 39.742476, −105.1786: zenith 50.12795°, azimuth 194.34024° [NREL SPA, Reda & Andreas 2008, worked example; true zenith by its algorithm]', () => {
    const { zenith, azimuth } = sunPosition({
      time: Date.UTC(2003, 9, 17, 19, 30, 30),
      latitude: 39.742476,
      longitude: -105.1786,
    });
    // suncalc follows Meeus' short series, stated there to 0.01°.
    expect(Math.abs(zenith - 50.127954)).toBeLessThan(0.01);
    expect(Math.abs(azimuth - 194.34024)).toBeLessThan(0.01);
  });

  it.skipIf(!hasShared(TABLE))(
    'differs by less than 0.05° above the horizon, 0.005° in the mean [NREL SPA table, pvlib]',
    () => {
      const rows = readRows();
      let sum = 0;
      for (const { zenith, azimuth, ...query } of rows) {
        const sun = sunPosition(query);
        expect(Math.abs(sun.zenith - zenith)).toBeLessThan(0.05);
        const turn = Math.abs(sun.azimuth - azimuth);
        // On the sky: near the zenith a degree of azimuth is little.
        expect(Math.min(turn, 360 - turn) * Math.sin((zenith * Math.PI) / 180)).toBeLessThan(0.05);
        sum += Math.abs(sun.zenith - zenith);
      }
      expect(rows).toHaveLength(420);
      expect(sum / rows.length).toBeLessThan(0.005);
    },
  );

  it.skipIf(!hasShared(TABLE))(
    'extraterrestrial normal equals the table to its last digit [Spencer 1971, pvlib]',
    () => {
      for (const { time, extraterrestrial } of readRows()) {
        expect(Math.abs(extraterrestrialNormal(time) - extraterrestrial)).toBeLessThan(0.00006);
      }
    },
  );
});

function readRows() {
  const [, ...lines] = readFileSync(sharedFile(TABLE), 'utf8').trim().split('\n');
  return lines.map((line) => {
    const [time, latitude, longitude, zenith, azimuth, extraterrestrial] = line.split(',') as [string, ...string[]];
    return {
      time: Date.parse(time),
      latitude: Number(latitude),
      longitude: Number(longitude),
      zenith: Number(zenith),
      azimuth: Number(azimuth),
      extraterrestrial: Number(extraterrestrial),
    };
  });
}
