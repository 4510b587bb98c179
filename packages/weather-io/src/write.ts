// A weather year as text in our own plain layout.
import { LAYOUT_COLUMNS, LAYOUT_KEYS, LAYOUT_MARK, LAYOUT_TIME } from './formats/plain-layout.ts';
import { COLUMN_KEYS } from './limits.ts';
import { monthAndDay } from './time/calendar.ts';
import { HOURS_OF_YEAR, type WeatherYear } from './year.ts';

/**
 * Writes a year in noonloop's plain layout: comment lines with place, zone, instant of the irradiance and all assumptions, a line of
 * headers that carry their units, and a line an hour. Columns that the year has not are left out.
 *
 * `parseWeather` reads the same bits back: each number is the shortest decimal that stands for its double, and place, calendar
 * years, midpoint and assumptions are all there. What changes is `format`, which becomes `plain`, and `source`, which is then the
 * new file; the old ones stand in a comment. Line breaks in names and assumptions become blanks.
 *
 * @param year - A whole year.
 * @returns Text with `\n` at the line ends.
 * @throws RangeError if a column holds something else than 8760 finite numbers.
 * @example
 * await writeFile('roof.csv', writeWeather(synthesizeYear(handbook)));
 */
export function writeWeather(year: WeatherYear): string {
  const { site, columns, calendarYears } = year;
  const keys = COLUMN_KEYS.filter((key) => columns[key] !== null);
  const lines = [
    LAYOUT_MARK,
    comment(LAYOUT_KEYS.name, site.name),
    comment(LAYOUT_KEYS.latitude, site.latitude),
    comment(LAYOUT_KEYS.longitude, site.longitude),
    comment(LAYOUT_KEYS.elevation, site.elevation),
    comment(LAYOUT_KEYS.utcOffset, site.utcOffset),
    ...(site.windHeight === undefined ? [] : [comment(LAYOUT_KEYS.windHeight, site.windHeight)]),
    comment(LAYOUT_KEYS.irradianceMidpoint, year.irradianceMidpoint),
    comment('written_from', `${year.source} (${year.format})`),
    ...year.assumptions.map(({ code, text }) =>
      code === 'note' ? comment(LAYOUT_KEYS.note, text) : comment(LAYOUT_KEYS.assumption, `${code} | ${text}`),
    ),
    [...Object.values(LAYOUT_TIME), ...keys.map((key) => LAYOUT_COLUMNS[key].column)].join(','),
  ];
  const values = keys.map((key) => {
    const column = columns[key]!;
    const bad = column.findIndex((value) => !Number.isFinite(value));
    if (column.length !== HOURS_OF_YEAR || bad >= 0) {
      const found = bad < 0 ? `${column.length} values` : `${column[bad]} in hour ${bad}`;
      throw new RangeError(`writeWeather: column ${key} has ${found}, expected ${HOURS_OF_YEAR} finite numbers.`);
    }
    return column;
  });
  for (let hour = 0; hour < HOURS_OF_YEAR; hour++) {
    const { month, day } = monthAndDay(Math.floor(hour / 24));
    let line = `${calendarYears[hour]},${month},${day},${hour % 24}`;
    for (const column of values) line += `,${column[hour]}`;
    lines.push(line);
  }
  return `${lines.join('\n')}\n`;
}

/** A comment line; whatever would end it becomes a blank. */
const comment = (key: string, value: string | number): string =>
  `# ${key}: ${Array.from(String(value), (letter) => (letter < ' ' ? ' ' : letter)).join('')}`;
