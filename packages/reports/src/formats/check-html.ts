/** A checked log as a page for the owner, and for whom they call. */
import type { LogCheck } from '@noonloop/sim-core';
import { formatHour } from '../calendar.ts';
import { type CheckChartOptions, checkChart } from '../charts/check-log.ts';
import { formatReading, gaugeUnit, gaugeWord } from '../charts/check-words.ts';
import { escapeHtml, plainText } from '../escape.ts';
import { convertSentence } from '../quantities.ts';
import { formatNumber } from '../units.ts';
import { htmlPage } from './html-page.ts';
import { plainTable, sentence } from './html-parts.ts';

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
  const say = (text: string): string => sentence(convertSentence(text, units));
  const paragraphs = (texts: readonly string[]): string => texts.map((text) => `<li>${say(text)}</li>`).join('');
  const caution = (text: string): string => `<li class="warning"><strong>caution</strong><p>${say(text)}</p></li>`;
  // Headline and cautions stand in the page.
  const pictured = { ...check, headline: '', cautions: [] };
  const [wide, narrow] = await Promise.all(
    [960, 360].map((width) => checkChart(pictured, { units, width, theme: 'page' })),
  );
  const causes = check.causes.map(
    ({ weight, name, detail, evidence }) =>
      `<h3>${formatNumber(100 * weight, 0)} %: ${escapeHtml(name)}</h3><p>${say(detail)}</p><ul>${paragraphs(evidence)}</ul>`,
  );
  const names = new Map(check.causes.map(({ cause, name }) => [cause, name]));
  const { next } = check;
  const test =
    next === null
      ? '<p>Nothing is left to tell apart.</p>'
      : `<p>${say(next.what)}</p><ul>${paragraphs(
          next.outcomes.map(
            ({ seen, causes: left }) => `${seen}: ${left.map((one) => names.get(one) ?? one).join('; ')}`,
          ),
        )}</ul>${next.caution === null ? '' : `<ul class="cautions">${caution(next.caution)}</ul>`}`;
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
  return htmlPage(title, [
    `<header><h1>${escapeHtml(title)}</h1><p>${say(check.headline)}</p></header>`,
    `<section><h2>Cautions</h2><ul class="cautions">${check.cautions.map(caution).join('')}</ul></section>`,
    `<section><h2>Readings and causes</h2><figure><div class="wide">${wide}</div><div class="narrow">${narrow}</div><figcaption>The weight of a cause is its share of belief after the readings, among the causes that are known to the program: a hint where to look.</figcaption></figure><details><summary>Every reading</summary>${readings}</details></section>`,
    `<section><h2>What speaks for each</h2>${causes.join('')}</section>`,
    `<section><h2>The next test</h2>${test}</section>`,
    `<section><h2>What was assumed</h2><ul>${paragraphs(check.notes)}</ul></section>`,
  ]);
}
