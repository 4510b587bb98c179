/** A checked log as a page for the owner, and for whom they call. */
import type { LogCheck } from '@noonloop/sim-core';
import { formatHour } from '../calendar.ts';
import { type CheckChartOptions, checkChart } from '../charts/check-log.ts';
import { formatReading, gaugeUnit, gaugeWord } from '../charts/check-words.ts';
import { plainText } from '../escape.ts';
import { convertSentence } from '../quantities.ts';
import { formatNumber } from '../units.ts';
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
  const say = (text: string): string => convertSentence(text, units);
  const caution = (text: string): CautionText => ({ severity: 'warning', findings: [], advice: say(text), source: '' });
  // Headline and cautions stand in the page.
  const pictured = { ...check, headline: '', cautions: [] };
  const [wide, narrow] = await Promise.all(
    [720, 342].map((width) => checkChart(pictured, { units, width, theme: 'page' })),
  );
  const causes = check.causes.map(
    ({ weight, name, detail, evidence }) =>
      `<div class="block"><h3>${sentence(`${formatNumber(100 * weight, 0)} %: ${name}`)}</h3><p>${sentence(say(detail))}</p>${bullets(evidence.map(say))}</div>`,
  );
  const names = new Map(check.causes.map(({ cause, name }) => [cause, name]));
  const { next } = check;
  const test =
    next === null
      ? ['<p>Nothing is left to tell apart.</p>']
      : [
          `<p>${sentence(say(next.what))}</p>${bullets(
            next.outcomes.map(({ seen, causes: left }) =>
              say(`${seen}: ${left.map((one) => names.get(one) ?? one).join('; ')}`),
            ),
          )}`,
          next.caution === null ? '' : cautionList([caution(next.caution)]),
        ];
  const readings = plainTable('Readings and bands', {
    header: ['When', 'Line', 'Gauge', 'Read', 'A sound system: from', 'to', 'Remark'],
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
    answer: [say(check.headline)],
    sheet: [],
    sections: [
      { title: 'Cautions', blocks: [cautionList(check.cautions.map(caution))] },
      {
        title: 'Readings and causes',
        blocks: [
          figureHtml({
            title: 'Each reading beside what a system in order would show',
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
      { title: 'What was assumed', blocks: [bullets(check.notes.map(say))] },
    ],
  });
}
