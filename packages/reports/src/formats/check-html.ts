/** A checked log as a page for the owner, and for whom they call. */
import type { LogCheck } from '@noonloop/sim-core';
import { formatHour } from '../calendar.ts';
import { type CheckChartOptions, checkChart } from '../charts/check-log.ts';
import { formatReading, gaugeUnit, gaugeWord } from '../charts/check-words.ts';
import { plainText } from '../escape.ts';
import { checkInWords } from '../words/check.ts';
import { htmlPage } from './html-page.ts';
import { bullets, type CautionText, cautionList, figureHtml, plainTable, sentence } from './html-parts.ts';

/** Options of {@link renderCheckHtml}. */
export type CheckHtmlOptions = Pick<CheckChartOptions, 'units' | 'title'>;

/**
 * What a notebook of gauge readings says, as one HTML file that needs nothing else: verdict, cautions, picture, causes with their
 * evidence, the next test, every reading beside its band, and what was assumed. For light and dark screens, telephones and paper.
 *
 * @param check - from `checkLog`
 * @param options - units, and a title such as the system's name; default `Gauge readings, checked`
 * @returns the whole document; the same input gives the same text
 * @throws {@link ReportError} as {@link checkChart} does.
 */
export async function renderCheckHtml(check: LogCheck, options: CheckHtmlOptions = {}): Promise<string> {
  const { units = 'metric' } = options;
  const title = plainText(options.title ?? '') || 'Gauge readings, checked';
  const words = checkInWords(check, units);
  const caution = (text: string): CautionText => ({ severity: 'warning', findings: [], advice: text, source: '' });
  // Headline and cautions stand in the page.
  const [wide, narrow] = await Promise.all(
    [720, 342].map((width) => checkChart(check, { units, width, theme: 'page', wordsApart: true })),
  );
  const causes = words.causes.map(
    ({ weight, name, detail, evidence }) =>
      `<div class="block"><h3>${sentence(`${weight}: ${name}`)}</h3><p>${sentence(detail)}</p>${bullets(evidence)}</div>`,
  );
  const { next } = words;
  const test =
    next === null
      ? ['<p>There is nothing to tell apart by a test.</p>']
      : [
          `<p>For ${sentence(`${next.who}: ${next.what}`)}</p>${bullets(
            next.outcomes.map(
              ({ seen, causes: left }) => `${seen}: ${left.length === 0 ? 'none of these causes' : left.join('; ')}`,
            ),
          )}`,
          next.caution === '' ? '' : cautionList([caution(next.caution)]),
        ];
  const readings = plainTable('Readings and bands', {
    header: ['When', 'Line', 'Gauge', 'Read', 'A healthy system: from', 'to', 'Remark'],
    rows: check.numbers.map(({ hour, line, gauge, found, low, high, outside, slip }) => [
      formatHour(Math.floor(hour)),
      line === null ? '–' : String(line),
      `${gaugeWord(gauge)} [${gaugeUnit(gauge, units)}]`,
      ...[found, low, high].map((value) => formatReading(value, gauge, units)),
      [outside ? 'outside' : '', slip ? 'taken for a slip' : ''].filter((word) => word !== '').join(', '),
    ]),
  });
  return htmlPage({
    head: { title },
    answer: [words.headline],
    sheet: [],
    sections: [
      { title: 'Cautions', blocks: [cautionList(words.cautions.map(caution))] },
      {
        title: 'Readings and causes',
        blocks: [
          figureHtml({
            title: 'Each reading beside what a healthy system would show',
            wide: wide!,
            narrow: narrow!,
            caption:
              'The weight of a cause is its share of belief after the readings, among the causes that are known to the program: a hint where to look.',
          }),
          `<details><summary>Every reading</summary>${readings}</details>`,
        ],
      },
      { title: 'What speaks for each', blocks: causes },
      { title: 'The next test', blocks: test },
      { title: 'What was assumed', blocks: [bullets(words.notes)] },
    ],
  });
}
