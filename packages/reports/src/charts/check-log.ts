/** A checked notebook of gauge readings in one picture. */
import type { LogCheck } from '@noonloop/sim-core';
import { ReportError } from '../errors.ts';
import { escapeHtml, plainText } from '../escape.ts';
import { wrap } from '../formats/table.ts';
import { displayUnit, type Units } from '../units.ts';
import { type CheckInWords, checkInWords, weightWords } from '../words/check.ts';
import { gaugePanels } from './check-gauges.ts';
import { GAUGE_KEYS, gaugeWord } from './check-words.ts';
import { charactersIn, TEXT } from './context.ts';
import { type ChartTheme, type Drawing, draw, paletteOf } from './frame.ts';
import type { Palette } from './palette.ts';

/** Options of {@link checkChart}. */
export interface CheckChartOptions {
  /** Units of axes and words. Default `metric`. */
  readonly units?: Units;
  /** Width of the picture, at least 300; under 600 it is laid out for a telephone. Default 760. [px] */
  readonly width?: number;
  /** Colours for light or dark ground, or `page` for the CSS variables of the HTML report. Default `light`. */
  readonly theme?: ChartTheme;
  /** What stands on top, such as the system's name. Default nothing. */
  readonly title?: string;
  /** Whether headline and cautions stand elsewhere on the page, and not in the picture. Default false. */
  readonly wordsApart?: boolean;
}

const BAR = 12; // [px]
const EDGE = 4; // [px]
const PERCENT = 76; // [px] after a bar

/**
 * What a notebook of gauge readings says about a system, as SVG text: the verdict; a panel for each gauge, each reading a mark beside
 * the upright bar in which 95 % of the readings of healthy systems fall; the ranked causes with their weights; the cautions of the
 * check. Readings outside differ in shape and colour from those within; hollow marks are taken for slips of the pen.
 *
 * @param check - from `checkLog`
 * @param options - units, width, colours and title
 * @returns an `<svg>` element; the same input gives the same text
 * @throws {@link ReportError} for a check without causes, a number that is not finite, an unknown gauge, or a weight outside 0 to 1.
 */
export async function checkChart(check: LogCheck, options: CheckChartOptions = {}): Promise<string> {
  const { units = 'metric', width: wanted = 760, theme = 'light', title = '', wordsApart = false } = options;
  if (!Number.isFinite(wanted))
    throw new ReportError('width', String(wanted), 'a number of pixels, 300 or more', 'Give a width.');
  displayUnit('temperature', units); // says which units there are
  checkNumbers(check);
  const width = Math.max(300, Math.round(wanted));
  const words = checkInWords(check, units);
  const shown = wordsApart ? { ...words, headline: '', cautions: [] } : words;
  const of = { check, words: shown, name: plainText(title), units, width, palette: paletteOf(theme) };
  return draw(drawing(of), `nl-check-${width}`, width, theme);
}

function checkNumbers({ causes, numbers }: LogCheck): void {
  if (causes.length === 0)
    throw new ReportError('check.causes', 'none', 'one cause or more', 'Give what checkLog returned.');
  numbers.forEach((number, at) => {
    const { gauge } = number;
    if (!GAUGE_KEYS.includes(gauge))
      throw new ReportError(`check.numbers[${at}].gauge`, JSON.stringify(gauge), GAUGE_KEYS.join(', '), 'Give one.');
    for (const name of ['hour', 'found', 'expected', 'low', 'high', 'deviation'] as const)
      if (!Number.isFinite(number[name]))
        throw new ReportError(`check.numbers[${at}].${name}`, String(number[name]), 'a finite number', 'Correct it.');
  });
  causes.forEach(({ weight }, at) => {
    if (!(weight >= 0 && weight <= 1))
      throw new ReportError(`check.causes[${at}].weight`, String(weight), 'a number from 0 to 1', 'Correct it.');
  });
}

interface Pictured {
  readonly check: LogCheck;
  readonly words: CheckInWords;
  readonly name: string;
  readonly units: Units;
  /** [px] */
  readonly width: number;
  readonly palette: Palette;
}

function drawing({ check, words, name, units, width, palette }: Pictured): Drawing {
  const named = check.verdict === 'cannot-tell' || check.verdict === 'healthy' ? null : check.causes[0]!;
  let y = 0;
  let front = '';
  const say = (text: string, size: number, colour: string, bold = false): void => {
    const characters = charactersIn(width - 2 * EDGE, size);
    for (const line of wrap(plainText(text), characters)) {
      y += size + 6;
      front += `<text x="${EDGE}" y="${y - 3}" font-size="${size}"${bold ? ' font-weight="600"' : ''} fill="${colour}">${escapeHtml(line)}</text>`;
    }
  };
  if (name !== '') say(name, 15, palette.ink, true);
  say(words.headline, 13, palette.ink, name === '');
  y += 10;
  const panels = gaugePanels({
    numbers: check.numbers,
    since: named?.since ?? null,
    units,
    width,
    palette,
    top: y,
  });
  y += panels.height + (panels.height > 0 ? 14 : 0);
  say('Weight of each cause after these readings', TEXT + 1, palette.ink, true);
  const tops = words.causes.map((cause) => {
    say(cause.name, TEXT, palette.ink);
    say(cause.detail, TEXT - 1, palette.muted);
    const top = y + 3;
    front += `<text x="${width - PERCENT + 6}" y="${top + BAR - 2}" font-size="${TEXT}" fill="${palette.ink}">${escapeHtml(cause.weight)}</text>`;
    y = top + BAR + 8;
    return top;
  });
  for (const caution of words.cautions) say(`Caution: ${caution}`, TEXT - 1, palette.muted);
  const bars = causeBars(check, tops, panels.grid.length, width, palette);
  return {
    height: Math.ceil(y) + 6,
    front: panels.front + front,
    label: labelOf(check, words, name),
    option: {
      title: panels.title,
      grid: [...panels.grid, ...bars.grid],
      xAxis: [...panels.xAxis, ...bars.xAxis],
      yAxis: [...panels.yAxis, ...bars.yAxis],
      series: [...panels.series, ...bars.series],
    },
  };
}

/** A bar under the words of each cause; the whole track is the whole weight. @param tops - of the bars [px] */
function causeBars({ causes }: LogCheck, tops: readonly number[], first: number, width: number, palette: Palette) {
  const none = { axisLabel: { show: false }, axisTick: { show: false }, axisLine: { show: false } };
  return {
    grid: tops.map((top) => ({ left: EDGE, top, width: width - EDGE - PERCENT, height: BAR, outerBoundsMode: 'none' })),
    xAxis: tops.map((_, at) => ({
      ...none,
      gridIndex: first + at,
      type: 'value',
      min: 0,
      max: 1,
      splitLine: { show: false },
    })),
    yAxis: tops.map((_, at) => ({ ...none, gridIndex: first + at, type: 'category', data: [''] })),
    series: causes.map(({ weight }, at) => ({
      type: 'bar',
      xAxisIndex: first + at,
      yAxisIndex: first + at,
      barWidth: BAR,
      showBackground: true,
      backgroundStyle: { color: palette.grid },
      itemStyle: { color: palette.ink },
      data: [weight],
    })),
  };
}

/** Gauges with how many readings are off, and causes, for those who do not see the picture. */
function labelOf({ causes, numbers }: LogCheck, { headline, causes: named }: CheckInWords, title: string): string {
  const gauges = GAUGE_KEYS.flatMap((key) => {
    const read = numbers.filter(({ gauge }) => gauge === key);
    const outside = read.filter((number) => number.outside).length;
    return read.length === 0 ? [] : [`${gaugeWord(key)}: ${outside} of ${read.length} outside`];
  });
  const ranked = causes.map(({ weight }, at) => `${weightWords(weight)} ${named[at]!.name}`);
  return [
    ...[title, headline.replace(/\.$/, '')].filter((words) => words !== ''),
    ...(gauges.length === 0
      ? ['No gauge with a number was read']
      : [`Readings outside the band of a healthy system: ${gauges.join(', ')}`]),
    `Causes by weight: ${ranked.join('; ')}`,
  ].join('. ');
}
