import { WEEKDAYS } from '@noonloop/weather-io/calendar';
import type { DrawProfileName } from '../../design/house.ts';
import type { MainsDesign, MainsWave } from '../../design/mains.ts';
import { quote } from '../../input/errors.ts';
import { choice, defaulted, fault, flag, numbers, quantity, quantityOr } from '../../input/field.ts';
import { listShape, numberShape, shaped } from '../../input/shape.ts';
import * as z from '../../input/zod.ts';
import { HOUSEHOLD_SHAPES } from '../../physics/draw/household.ts';
import { TAPPING_TABLE } from '../../physics/draw/tapping-data.ts';
import { dayRange, dayRanges } from './calendar.ts';
import { hotPipeSchema, ringSchema } from './ring.ts';

const PROFILES = [...Object.keys(TAPPING_TABLE), ...Object.keys(HOUSEHOLD_SHAPES)] as DrawProfileName[];
const HOURS = 8760;
/** Most water in one part of a user's record. [m³] */
const MOST_WATER = 20;

/** `{ mean, swing, coldestDay }` whose every day is water that may come out of a main. */
function isWave(value: unknown): value is MainsWave {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const { mean, swing, coldestDay = 1, ...rest } = value as Record<string, unknown>;
  const numbers = [mean, swing, coldestDay].every((one) => typeof one === 'number' && Number.isFinite(one));
  if (!numbers || Object.keys(rest).length > 0) return false;
  const [middle, half, day] = [mean as number, (swing as number) / 2, coldestDay as number];
  return half >= 0 && middle - half >= 0 && middle + half <= 40 && day >= 1 && day <= 365;
}

const mainsSchema = shaped(
  z
    .custom<MainsDesign>(() => true)
    .transform((value, context): MainsDesign => {
      const fits = (item: unknown) => typeof item === 'number' && item >= 0 && item <= 40;
      if (isWave(value)) return { ...value };
      if (value === 'from-weather' || fits(value)) return value;
      if (Array.isArray(value) && value.length === 12 && value.every(fits)) return [...value] as readonly number[];
      fault(
        context,
        quote(value),
        '"from-weather", one temperature, twelve from January, or { mean, swing } in °C and K, each day from 0 to 40 °C',
        'Leave it out to compute the mains from the weather, by a correlation of the United States.',
      );
      return z.NEVER;
    }),
  {
    anyOf: [
      { const: 'from-weather' },
      numberShape(0, 40),
      listShape(numberShape(0, 40), 12, 12),
      {
        type: 'object',
        properties: {
          mean: { ...numberShape(0, 40), description: 'Mean of the year. [°C]' },
          swing: { ...numberShape(0, 40), description: 'Warmest day less coldest day. [K]' },
          coldestDay: {
            ...numberShape(1, 365),
            description: 'Coldest day, 1 on 1 January. Default 45, in the south 228. [d]',
          },
        },
        required: ['mean', 'swing'],
        additionalProperties: false,
      },
    ],
  },
);

const sharesSchema = numbers({ length: 24, minimum: 0, maximum: 1e6, unit: '-' }).superRefine((shares, context) => {
  if (shares.reduce((sum, share) => sum + share, 0) > 0) return;
  const remedy = 'Give a day with some use, or set dailyVolume to 0.';
  fault(context, 'shares that add up to 0', 'at least one hour with a draw', remedy);
});

/** A year of the user's own volumes, as a list or typed array. */
const recordSchema = shaped(
  z
    .custom<readonly number[] | Float64Array>(() => true)
    .transform((value, context): readonly number[] => {
      const list = Array.isArray(value) || value instanceof Float64Array ? value : [];
      const parts = list.length / HOURS;
      const fits = (item: unknown) => typeof item === 'number' && item >= 0 && item <= MOST_WATER;
      const misfit = list.findIndex((item) => !fits(item));
      if (Number.isInteger(parts) && parts > 0 && 60 % parts === 0 && misfit < 0) return Array.from(list);
      fault(
        context,
        misfit < 0 ? `${list.length} values` : `${quote(list[misfit])} at place ${misfit + 1}`,
        `8760 volumes, or 8760 times a divisor of 60, from 0 to ${MOST_WATER} m³`,
        'Give the mixed water of each hour, or of each equal part of an hour, from 1 January 00:00 standard time.',
      );
      return z.NEVER;
    }),
  listShape(numberShape(0, MOST_WATER), HOURS, 60 * HOURS),
);

/** Schema of the draw; what follows from other fields is filled in by `derived-draw.ts`. */
export const drawSchema = z
  .strictObject({
    profile: choice(PROFILES).optional(),
    dailyVolume: quantity('volume', 0, 20).optional(),
    people: shaped(
      z
        .custom<number>(() => true)
        .transform((value, context): number => {
          if (typeof value === 'number' && value >= 0 && value <= 200) return value;
          fault(context, quote(value), 'a number from 0 to 200', 'Give how many live in the house.');
          return z.NEVER;
        }),
      numberShape(0, 200),
    ).optional(),
    volumePerPerson: quantity('volume', 0, 1).optional(),
    tapTemperature: quantityOr(
      'temperature',
      25,
      60,
      45,
      'judgement: showers and sinks, below the scald limit of plumbing practice',
    ),
    flow: quantityOr(
      'flow',
      1e-6,
      1e-2,
      6 / 60_000,
      'judgement: one shower; the flow of most large draws of profile M',
    ),
    hourlyShares: sharesSchema.optional(),
    weekdayFactors: defaulted(
      numbers({ length: 7, minimum: 0, maximum: 100, unit: '-' }),
      [1, 1, 1, 1, 1, 1, 1],
      '-',
      'judgement: all days alike',
    ),
    firstWeekday: defaulted(choice(WEEKDAYS), 'monday', '', 'judgement: a typical year belongs to no calendar year'),
    holidays: defaulted(dayRanges, [], '', 'judgement: somebody is always at home'),
    summerTime: defaulted(dayRange.nullable(), null, '', 'clocks on standard time all year'),
    volumes: recordSchema.optional(),
    mixingValve: defaulted(flag, true, '', 'needed after any solar tank where people wash (local code)'),
    valveTemperature: quantity('temperature', 25, 65).optional(),
    valveAccuracy: quantityOr('temperatureDifference', 0, 10, 2, 'thermostatic mixing valve, EN 1111 (from memory)'),
    valveMinimumDifference: quantityOr(
      'temperatureDifference',
      0,
      30,
      10,
      'data sheets of thermostatic mixing valves, common practice, no source',
    ),
    ring: ringSchema.nullable().default(null),
    hotPipe: hotPipeSchema.nullable().default(null),
    mains: defaulted(mainsSchema, 'from-weather', '°C', 'Burch & Christensen 2007, from the weather file'),
  })
  .superRefine((draw, context) => {
    const { dailyVolume, hourlyShares, people, profile, volumePerPerson, volumes } = draw;
    const refuse = (field: string, expected: string, remedy: string) =>
      fault(context, `a value beside others that exclude it`, expected, remedy, [field]);
    if (volumes !== undefined) {
      const others = { dailyVolume, hourlyShares, people, profile };
      for (const [field, value] of Object.entries(others)) {
        if (value !== undefined) refuse(field, 'nothing beside volumes', 'Give a record or a day, not both.');
      }
      return;
    }
    if (profile !== undefined && hourlyShares !== undefined) {
      refuse('hourlyShares', 'a profile or shares, not both', 'Remove one of the two.');
    }
    if (people !== undefined && dailyVolume !== undefined) {
      refuse('people', 'people or a daily volume, not both', 'Remove one of the two.');
    }
    if (volumePerPerson !== undefined && people === undefined) {
      refuse('volumePerPerson', 'people beside it', 'Say how many people, or give dailyVolume.');
    }
    const ownHeat = profile !== undefined && Object.hasOwn(TAPPING_TABLE, profile);
    if (dailyVolume === undefined && people === undefined && !ownHeat) {
      const expected = 'a value from 0 to 20 m³, or people, or a tapping profile, or volumes';
      fault(context, 'nothing', expected, 'Give a number in m³ or a string with a unit, such as "80 gal".', [
        'dailyVolume',
      ]);
    }
  });
