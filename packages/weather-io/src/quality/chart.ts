// The year as a picture: days from left to right, hours from bottom to top, light as brightness, the sun's own rising and setting over it.
import { MONTH_DAYS } from '../time/calendar.ts';
import type { QualityReport } from './report.ts';

const DAY_WIDTH = 2;
const HOUR_HEIGHT = 10;
const LEFT = 46;
const TOP = 46;
const WIDTH = 365 * DAY_WIDTH;
const HEIGHT = 24 * HOUR_HEIGHT;

/** Light in eleven steps of 100 W/m², from dusk to glare; readable without colour, for brightness rises all the way. */
const COLOURS = [
  '#1d1f3d',
  '#33275c',
  '#57287a',
  '#7d2a80',
  '#a3307a',
  '#c73e6c',
  '#e25558',
  '#f37745',
  '#fa9d3b',
  '#fdc64c',
  '#fdf0a3',
];
const STEP = 100;

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * Draws a report: global irradiance by day and hour, computed sunrise and sunset as lines over it, hours with faults ringed. Light
 * outside the lines, or a dark band inside them along one side, is a clock or a place that is wrong.
 *
 * @param report - From `checkWeather`.
 * @returns A self-contained SVG document, about 100 kB; the same report gives the same text.
 */
export function qualityChart(report: QualityReport): string {
  const title = `Light of the year: ${report.source}`;
  const found = report.findings.map(({ text }) => text).join(' ') || 'Nothing was found.';
  const height = TOP + HEIGHT + 62;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${LEFT + WIDTH + 16} ${height}" width="${LEFT + WIDTH + 16}" height="${height}" role="img" aria-labelledby="t d" font-family="system-ui, sans-serif" font-size="11" fill="#222">`,
    `<title id="t">${escaped(title)}</title><desc id="d">${escaped(found)}</desc>`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    `<text x="${LEFT}" y="18" font-size="14" font-weight="600">${escaped(cut(title, 100))}</text>`,
    `<text x="${LEFT}" y="35">${escaped(subtitle(report))}</text>`,
    `<rect x="${LEFT}" y="${TOP}" width="${WIDTH}" height="${HEIGHT}" fill="#0b0b16"/>`,
    ...cells(report.ghi),
    marks(report.marks),
    line(report.sunriseSunset, 0),
    line(report.sunriseSunset, 1),
    ...axes(),
    ...legend(),
    '</svg>',
  ].join('\n');
}

function subtitle({ findings, clock }: QualityReport): string {
  const count = (wanted: string) => findings.filter(({ weight }) => weight === wanted).length;
  const late =
    clock.late === null
      ? 'clock not tested'
      : `light ${Math.abs(clock.late).toFixed(2)} h ${clock.late < 0 ? 'before' : 'after'} the sun (± ${clock.uncertainty.toFixed(2)} h)`;
  return `findings: ${count('fault')} of fault, ${count('doubt')} of doubt, ${count('note')} of note; ${late}`;
}

const x = (day: number): number => LEFT + day * DAY_WIDTH;
const y = (hour: number): number => TOP + HEIGHT - hour * HOUR_HEIGHT;

/** One path a colour; days of the same colour in a row are one stroke, which keeps the text small. */
function cells(ghi: Float64Array): string[] {
  const paths = COLOURS.map(() => '');
  for (let hour = 0; hour < 24; hour++) {
    for (let day = 0; day < 365; ) {
      const level = levelOf(ghi[day * 24 + hour]!);
      let end = day + 1;
      while (end < 365 && levelOf(ghi[end * 24 + hour]!) === level) end++;
      if (level >= 0) paths[level] += `M${x(day)} ${y(hour + 0.5)}h${(end - day) * DAY_WIDTH}`;
      day = end;
    }
  }
  return paths.map((d, level) =>
    d === '' ? '' : `<path d="${d}" stroke="${COLOURS[level]}" stroke-width="${HOUR_HEIGHT}"/>`,
  );
}

const levelOf = (value: number): number => (value > 0 ? Math.min(Math.floor(value / STEP), COLOURS.length - 1) : -1);

function marks(list: Uint8Array): string {
  let d = '';
  list.forEach((mark, hour) => {
    if (mark === 2) d += `M${x(Math.floor(hour / 24))} ${y((hour % 24) + 0.5)}h${DAY_WIDTH}`;
  });
  return d === '' ? '' : `<path d="${d}" stroke="#19d3f3" stroke-width="4"/>`;
}

/** Sunrise (0) or sunset (1), broken where there is none or where it passes midnight. */
function line(times: Float64Array, which: 0 | 1): string {
  let d = '';
  let before = Number.NaN;
  for (let day = 0; day < 365; day++) {
    const time = times[2 * day + which]!;
    if (!Number.isNaN(time)) {
      d += `${Math.abs(time - before) < 2 ? 'L' : 'M'}${x(day + 0.5)} ${y(time).toFixed(1)}`;
    }
    before = time;
  }
  if (d === '') return '';
  return `<path d="${d}" fill="none" stroke="#000" stroke-width="3"/><path d="${d}" fill="none" stroke="#fff" stroke-width="1.4"/>`;
}

function axes(): string[] {
  const hours = [0, 6, 12, 18, 24].map(
    (hour) =>
      `<text x="${LEFT - 6}" y="${y(hour) + 4}" text-anchor="end">${String(hour).padStart(2, '0')}:00</text><path d="M${LEFT - 4} ${y(hour)}h4" stroke="#222"/>`,
  );
  const months = MONTHS.map(
    (name, month) =>
      `<text x="${(x(MONTH_DAYS[month]!) + x(MONTH_DAYS[month + 1]!)) / 2}" y="${TOP + HEIGHT + 15}" text-anchor="middle">${name}</text><path d="M${x(MONTH_DAYS[month]!)} ${TOP + HEIGHT}v4" stroke="#222"/>`,
  );
  return [...hours, ...months];
}

function legend(): string[] {
  const top = TOP + HEIGHT + 28;
  const boxes = COLOURS.map(
    (colour, level) => `<rect x="${LEFT + level * 22}" y="${top}" width="22" height="10" fill="${colour}"/>`,
  );
  const right = LEFT + COLOURS.length * 22;
  return [
    ...boxes,
    `<text x="${LEFT}" y="${top + 23}">0</text><text x="${right}" y="${top + 23}" text-anchor="end">over ${STEP * (COLOURS.length - 1)} W/m², global horizontal</text>`,
    `<path d="M${right + 24} ${top + 5}h24" stroke="#000" stroke-width="3"/><path d="M${right + 24} ${top + 5}h24" stroke="#fff" stroke-width="1.4"/><text x="${right + 54}" y="${top + 9}">sunrise and sunset, computed (local standard time)</text>`,
    `<path d="M${right + 24} ${top + 20}h24" stroke="#19d3f3" stroke-width="4"/><text x="${right + 54}" y="${top + 24}">hours that no weather has</text>`,
  ];
}

const cut = (text: string, length: number): string => (text.length > length ? `${text.slice(0, length - 1)}…` : text);

/** Text from a file in XML: escaped, and without the control characters that XML forbids. */
const escaped = (text: string): string =>
  Array.from(text, (letter) => (letter < ' ' ? ' ' : letter))
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
