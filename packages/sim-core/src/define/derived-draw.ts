import type { DrawDesign } from '../design/design.ts';
import { M_PROFILE_SOURCE, mProfileShares } from '../physics/draw/default-shape.ts';
import { drawProfile } from '../physics/draw/profile.ts';
import { WATER_HEAT_CAPACITY } from '../physics/tank/tank.ts';
import type { Fill } from './derived-array.ts';
import type { CheckedInput } from './schema/system.ts';

/** Cold water at which a tapping profile's day is turned into a volume for reports (EN 13203-2; from memory). [°C] */
const PROFILE_COLD_WATER = 10;

/** Mixed water a head on each day; judgement. [m³] */
const WATER_A_HEAD = 0.05;

/** Defaults of the draw that follow from its other fields. */
export function drawDefaults(draw: CheckedInput['draw'], fill: Fill): DrawDesign {
  const { dailyVolume, people, volumePerPerson, volumes, hourlyShares, ...rest } = draw;
  const profile = draw.profile === undefined ? null : drawProfile(draw.profile);
  const keepsProfileHeat = profile?.dailyEnergy != null && dailyVolume === undefined && people === undefined;
  const ofPeople = () =>
    people! *
    fill('draw.volumePerPerson', volumePerPerson, WATER_A_HEAD, 'm³', 'judgement: showers and sinks of one person');
  const ofRecord = (record: readonly number[]) => record.reduce((sum, value) => sum + value, 0) / 365;
  const ofProfile = () => profile!.dailyEnergy! / (WATER_HEAT_CAPACITY * (draw.tapTemperature - PROFILE_COLD_WATER));
  return {
    ...rest,
    profile: profile?.name ?? null,
    keepsProfileHeat,
    dailyVolume: dailyVolume ?? (volumes ? ofRecord(volumes) : keepsProfileHeat ? ofProfile() : ofPeople()),
    hourlyShares:
      profile?.hourlyShares ??
      (volumes ? shapeOf(volumes) : fill('draw.hourlyShares', hourlyShares, mProfileShares, '-', M_PROFILE_SOURCE)),
    volumes: volumes ?? null,
    valveTemperature: fill(
      'draw.valveTemperature',
      draw.valveTemperature,
      draw.tapTemperature,
      '°C',
      'judgement: as the taps want it',
    ),
  };
}

/** Mean day of a record, as shares; level where nothing is drawn. */
function shapeOf(record: readonly number[]): readonly number[] {
  const parts = record.length / 365 / 24;
  const sums = new Array<number>(24).fill(0);
  record.forEach((value, index) => {
    sums[Math.trunc(index / parts) % 24]! += value;
  });
  const total = sums.reduce((sum, value) => sum + value, 0);
  return sums.map((value) => (total > 0 ? value / total : 1 / 24));
}
