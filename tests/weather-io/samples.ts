// Small years of invented weather in each format, as lines, so that a test can spoil one. Irradiance is diffuse only: the
// closure holds at any instant.

import { parseWeather, type WeatherFormat, type WeatherYear } from '@noonloop/weather-io';

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Month, day and hour (0 to 23) of each hour of a year. */
export function calendar(leap = false): { month: number; day: number; hour: number }[] {
  const list: { month: number; day: number; hour: number }[] = [];
  for (let month = 1; month <= 12; month++) {
    const days = DAYS[month - 1]! + (leap && month === 2 ? 1 : 0);
    for (let day = 1; day <= days; day++) for (let hour = 0; hour < 24; hour++) list.push({ month, day, hour });
  }
  return list;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** Invented, distinct by row: dry bulb 0.00 to 8.75 °C tells which row of the file a value came from. */
export const temperatureOfRow = (row: number): string => (row / 1000).toFixed(3);

/** Invented light: 100 W/m² of diffuse from 8 to 16. */
export const lightOfHour = (hour: number): number => (hour >= 8 && hour < 16 ? 100 : 0);

/** Line 1 the place, line 2 the header, line 3 the hour that ends at 01:00 on 1 January. */
export function tmy3Lines(): string[] {
  return [
    '999999,"INVENTED PLACE",XX,-5.0,40.000,-75.000,100',
    'Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Dew-point (C),Wspd (m/s),Alb (unitless)',
    ...calendar().map(({ month, day, hour }, row) => {
      const light = lightOfHour(hour);
      const year = month < 7 ? 1991 : 1988;
      return `${two(month)}/${two(day)}/${year},${two(hour + 1)}:00,${light},0,${light},${temperatureOfRow(row)},-1.0,2.5,0.00`;
    }),
  ];
}

/** Eight header lines, then the hours. */
export function epwLines(): string[] {
  return [
    'LOCATION,Invented,-,Nowhere,none,000000,40.0,-75.0,-5.0,100.0',
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,invented',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
    ...calendar().map(({ month, day, hour }, row) => {
      const light = lightOfHour(hour);
      const weather = `${temperatureOfRow(row)},99.9,50,999999,9999,9999,9999,${light},0,${light}`;
      return `2001,${month},${day},${hour + 1},60,?,${weather},0,0,0,0,180,2.5,5,5,99,99,9,0,0,0,5,0,999,0,0`;
    }),
  ];
}

/** Seventeen header lines, then the hours, then an empty line and a legend. */
export function pvgisLines({
  longitude = 8,
  offset = '0.1761',
  year = (_month: number): number => 2007,
} = {}): string[] {
  const months = Array.from({ length: 12 }, (_, index) => `${index + 1},${year(index + 1)}`);
  return [
    'Latitude (decimal degrees): 45.000',
    `Longitude (decimal degrees): ${longitude.toFixed(3)}`,
    'Elevation (m): 250.0',
    `Irradiance Time Offset (h): ${offset}`,
    'month,year',
    ...months,
    'time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP',
    ...calendar().map(({ month, day, hour }, row) => {
      const light = lightOfHour(hour).toFixed(1);
      const stamp = `${year(month)}${two(month)}${two(day)}:${two(hour)}00`;
      return `${stamp},${temperatureOfRow(row)},50.0,${light},-0.0,${light},300.0,1.0,90.0,99000.0`;
    }),
    '',
    'T2m: 2-m air temperature (degree Celsius)',
  ];
}

/** Three header lines, then rows at the given minutes of each hour. */
export function nsrdbLines({ minutes = [30], leap = false, zone = -7, localZone = -7 } = {}): string[] {
  const year = leap ? 2016 : 2017;
  let row = 0;
  return [
    'Source,Location ID,Latitude,Longitude,Time Zone,Elevation,Local Time Zone,GHI Units,Temperature Units,Pressure Units',
    `NSRDB,1,40.0,-105.0,${zone},1600,${localZone},w/m2,c,mbar`,
    'Year,Month,Day,Hour,Minute,GHI,DNI,DHI,Temperature,Pressure,,',
    ...calendar(leap).flatMap(({ month, day, hour }) =>
      minutes.map((minute) => {
        const light = lightOfHour(hour) + minute;
        return `${year},${month},${day},${hour},${minute},${light},0,${light},${temperatureOfRow(row++)},840,,`;
      }),
    ),
  ];
}

/** Our own layout: eight comment lines, the header, the hours. */
export function plainLines(): string[] {
  return [
    '# noonloop plain weather 1',
    '# name: Invented',
    '# latitude_deg: 40',
    '# longitude_deg: -75',
    '# elevation_m: 100',
    '# utcOffset_h: -5',
    '# irradianceMidpoint_h: 0.5',
    '# note: invented',
    'year,month,day,hour,ghi_W_per_m2,dni_W_per_m2,dhi_W_per_m2,dry_bulb_degC',
    ...calendar().map(({ month, day, hour }, row) => {
      const light = lightOfHour(hour);
      return `2023,${month},${day},${hour},${light},0,${light},${temperatureOfRow(row)}`;
    }),
  ];
}

/** Replaces one cell of one line (both from 1, as an editor counts lines and a reader cells). */
export function spoil(lines: readonly string[], line: number, cell: number, text: string): string {
  const cells = lines[line - 1]!.split(',');
  cells[cell - 1] = text;
  return lines.with(line - 1, cells.join(',')).join('\n');
}

type NsrdbOptions = Parameters<typeof nsrdbLines>[0];
const SAMPLES: Readonly<Record<WeatherFormat, (options?: NsrdbOptions) => string[]>> = {
  tmy3: tmy3Lines,
  epw: epwLines,
  pvgis: () => pvgisLines(),
  nsrdb: nsrdbLines,
  plain: plainLines,
};
const years = new Map<string, WeatherYear>();

/** A sample as it stands, read once for all tests; none changes it. @param options - Of {@link nsrdbLines}. */
export function sampleYear(name: WeatherFormat, options?: NsrdbOptions): WeatherYear {
  const key = `${name} ${JSON.stringify(options ?? {})}`;
  const year = years.get(key) ?? parseWeather(SAMPLES[name](options).join('\n'));
  years.set(key, year);
  return year;
}
