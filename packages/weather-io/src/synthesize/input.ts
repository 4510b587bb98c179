// What a person types from a handbook, and whether it can be.
import { Faults, quote } from '../errors.ts';
import type { Site } from '../year.ts';

/** Twelve numbers, January first. */
export type TwelveMonths = readonly number[];

/** Where the roof is; only the latitude is needed. */
export interface SyntheticSite {
  /** Name for reports; default "synthetic". */
  readonly name?: string;
  /** North positive, −90 to 90. [°] */
  readonly latitude: number;
  /** East positive, −180 to 180; default the middle of the time zone, so that the sun is highest near 12:00. [°] */
  readonly longitude?: number;
  /** Above sea level; default 0. [m] */
  readonly elevation?: number;
  /** Local standard time minus UTC; default the whole hours nearest to the longitude, or 0. [h] */
  readonly utcOffset?: number;
}

/** Light of each month: exactly one of these four. */
export type MonthlyLight =
  | {
      /** Global horizontal irradiation, mean of the days. [kWh/(m² d)] */
      readonly dailyGhi_kWh_per_m2: TwelveMonths;
    }
  | {
      /** Global horizontal irradiation, mean of the days. [MJ/(m² d)] */
      readonly dailyGhi_MJ_per_m2: TwelveMonths;
    }
  | {
      /** Global irradiation over that at the top of the air, both on the horizontal, 0.05 to 0.85. [-] */
      readonly clearness: TwelveMonths;
    }
  | {
      /** Hours of bright sunshine over those from sunrise to sunset, 0 to 1; turned into light by Ångström's rule. [-] */
      readonly sunshineFraction: TwelveMonths;
    };

/** Dry bulb of each month: exactly one of these two. */
export type MonthlyAir =
  | {
      /** Mean of the month. [°C] */
      readonly dryBulb: TwelveMonths;
    }
  | {
      /** Mean of the month. [°F] */
      readonly dryBulb_degF: TwelveMonths;
    };

/** Further means, each of which may be left out. */
export interface MonthlyExtras {
  /** Mean of the days' highest less lowest temperature; default by clearness. [K] */
  readonly dailyRange?: TwelveMonths;
  /** The same in degrees Fahrenheit. [°F] */
  readonly dailyRange_degF?: TwelveMonths;
  /** Mean relative humidity, 0 to 1; left out, the year has none. [-] */
  readonly relativeHumidity?: TwelveMonths;
  /** Mean wind speed; left out, the year has none. [m/s] */
  readonly windSpeed?: TwelveMonths;
}

/** What {@link synthesizeYear} makes a year from. */
export interface SyntheticInput {
  /** Place. */
  readonly site: SyntheticSite;
  /** Means of the months. */
  readonly monthly: MonthlyLight & MonthlyAir & MonthlyExtras;
  /** Which of the many years with these means; a whole number from 0 to 4294967295. Default 1. */
  readonly seed?: number;
}

/** Names under which a quantity may be given, with bounds and the way to the unit used here: value = given × scale + offset. */
const FORMS = {
  dailyGhi_kWh_per_m2: { scale: 1, offset: 0, from: 0, to: 13, unit: 'kWh/(m² d)' },
  dailyGhi_MJ_per_m2: { scale: 1 / 3.6, offset: 0, from: 0, to: 46, unit: 'MJ/(m² d)' },
  clearness: { scale: 1, offset: 0, from: 0.05, to: 0.85, unit: '' },
  sunshineFraction: { scale: 1, offset: 0, from: 0, to: 1, unit: '(a fraction: 65 % is 0.65)' },
  dryBulb: { scale: 1, offset: 0, from: -70, to: 45, unit: '°C' },
  dryBulb_degF: { scale: 5 / 9, offset: -160 / 9, from: -94, to: 113, unit: '°F' },
  dailyRange: { scale: 1, offset: 0, from: 0, to: 35, unit: 'K' },
  dailyRange_degF: { scale: 5 / 9, offset: 0, from: 0, to: 63, unit: '°F' },
  relativeHumidity: { scale: 1, offset: 0, from: 0.02, to: 1, unit: '(a fraction: 65 % is 0.65)' },
  windSpeed: { scale: 1, offset: 0, from: 0, to: 30, unit: 'm/s' },
} as const;

type Form = keyof typeof FORMS;

/** Twelve numbers and the name under which they were given. */
interface Given<Name extends Form> {
  readonly form: Name;
  readonly values: Float64Array;
}

/** The input, checked and in the units used here. */
export interface CheckedInput {
  readonly site: Site;
  readonly seed: number;
  readonly light: Given<'dailyGhi_kWh_per_m2' | 'dailyGhi_MJ_per_m2' | 'clearness' | 'sunshineFraction'>;
  readonly dryBulb: Float64Array;
  readonly dailyRange: Float64Array | null;
  readonly relativeHumidity: Float64Array | null;
  readonly windSpeed: Float64Array | null;
}

/** Checks what was typed. @throws WeatherError with every fault. */
export function checkInput({ site, monthly, seed = 1 }: SyntheticInput): CheckedInput {
  const faults = new Faults('synthesizeYear');
  const bad = (column: string, value: unknown, expected: string) =>
    faults.add({ code: 'bad-option', column, value: quote(value), expected, remedy: 'Correct what was given.' });
  const number = (name: string, value: number, from: number, to: number, unit: string): number => {
    if (!(typeof value === 'number' && value >= from && value <= to))
      bad(name, value, `a number from ${from} to ${to} ${unit}`);
    return value;
  };
  const given = monthly as Readonly<Partial<Record<Form, TwelveMonths>>>;
  for (const name of Object.keys(given)) {
    if (!Object.hasOwn(FORMS, name)) bad(`monthly.${name}`, 'this name', `one of ${Object.keys(FORMS).join(', ')}`);
  }
  const twelve = <Name extends Form>(form: Name, values: TwelveMonths): Given<Name> => {
    const { scale, offset, from, to, unit } = FORMS[form];
    const list: unknown = values;
    if (!(Array.isArray(list) || ArrayBuffer.isView(list)) || values.length !== 12) {
      bad(`monthly.${form}`, values, 'a list of twelve numbers, January first');
      return { form, values: new Float64Array(12) };
    }
    const read = (value: number, month: number) =>
      number(`monthly.${form}[${month}]`, value, from, to, unit) * scale + offset;
    return { form, values: Float64Array.from(values, read) };
  };
  const oneOf = <Name extends Form>(what: string, names: readonly Name[], needed: boolean): Given<Name> | null => {
    const found = names.filter((name) => given[name] !== undefined);
    if (found.length > 1 || (needed && found.length === 0)) {
      bad('monthly', found.join(', ') || 'none of them', `${what} as one of ${names.join(', ')}`);
    }
    return found.length === 0 ? null : twelve(found[0]!, given[found[0]!]!);
  };
  const light = oneOf('light', ['dailyGhi_kWh_per_m2', 'dailyGhi_MJ_per_m2', 'clearness', 'sunshineFraction'], true);
  const dryBulb = oneOf('temperature', ['dryBulb', 'dryBulb_degF'], true);
  const dailyRange = oneOf('daily range', ['dailyRange', 'dailyRange_degF'], false);
  const relativeHumidity = oneOf('humidity', ['relativeHumidity'], false);
  const windSpeed = oneOf('wind', ['windSpeed'], false);
  const offset = site.utcOffset ?? Math.round((site.longitude ?? 0) / 15);
  const place: Site = {
    name: site.name ?? 'synthetic',
    latitude: number('site.latitude', site.latitude, -90, 90, '° north'),
    longitude: number(
      'site.longitude',
      site.longitude ?? Math.max(-180, Math.min(180, offset * 15)),
      -180,
      180,
      '° east',
    ),
    elevation: number('site.elevation', site.elevation ?? 0, -450, 9000, 'm'),
    utcOffset: number('site.utcOffset', offset, -12, 14, 'h'),
  };
  if (!Number.isInteger(seed) || seed < 0 || seed > 4294967295)
    bad('seed', seed, 'a whole number from 0 to 4294967295');
  faults.throwIfAny();
  return {
    site: place,
    seed,
    light: light!,
    dryBulb: dryBulb!.values,
    dailyRange: dailyRange?.values ?? null,
    relativeHumidity: relativeHumidity?.values ?? null,
    windSpeed: windSpeed?.values ?? null,
  };
}
