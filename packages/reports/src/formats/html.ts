import { ReportError } from '../errors.ts';
import { buildModel } from '../model/build.ts';
import { checkOptions, listOwnSections, listRuns, REPORT_OPTIONS, type ReportOptions, type Runs } from '../options.ts';
import { htmlPage } from './html-page.ts';
import { plainTable, sentence } from './html-parts.ts';
import { reportSections, SECTION_NAMES, type SectionName } from './html-sections.ts';
import { alarmLine, comparisonTable, factLines, figureBlocks, monthCells } from './html-sheet.ts';
import { sheetOf } from './sheet.ts';
import { systemDrawing } from './system-drawing.ts';

/** Options of {@link renderHtml}. */
export interface HtmlOptions extends ReportOptions {
  /** Which sections stand behind the first sheet; default all that the runs and prices have data for. */
  readonly sections?: readonly SectionName[];
  /** Whether losses hang below the months of `monthly-energy`. Default false. */
  readonly losses?: boolean;
}

function checkSections(sections: readonly SectionName[]): void {
  const unknown = sections.find((name) => !SECTION_NAMES.includes(name));
  if (unknown !== undefined)
    throw new ReportError(
      'sections',
      JSON.stringify(unknown),
      `some of ${SECTION_NAMES.join(', ')}`,
      'Choose of these.',
    );
}

/**
 * The report as one HTML file that needs nothing else: no network, no script. One sheet that answers, then the depth; charts as
 * inline SVG with their numbers in tables; for light and dark screens, telephones and paper.
 *
 * @param runs - one run, or several to compare
 * @param options - units, what to compare with, what stands over it, and which sections
 * @throws {@link ReportError} when there is no run, a column is not a whole year of finite numbers, or a section is not known.
 */
export async function renderHtml(runs: Runs, options: HtmlOptions = {}): Promise<string> {
  checkOptions(options, [...REPORT_OPTIONS, 'sections', 'losses']);
  const { sections, client, date, note } = options;
  if (sections !== undefined) checkSections(sections);
  const results = listRuns(runs);
  const model = buildModel(runs, options);
  const own = listOwnSections(options).map(({ title, paragraphs = [], table }) => ({
    title,
    blocks: [...paragraphs.map((text) => `<p>${sentence(text)}</p>`), ...(table ? [plainTable(title, table)] : [])],
  }));
  const { rows, facts } = sheetOf(results, model, options);
  return htmlPage({
    head: {
      title: model.title,
      ...(client === undefined ? {} : { client }),
      ...(date === undefined ? {} : { date }),
      ...(note === undefined ? {} : { note }),
    },
    answer: [model.answer.does, model.answer.decides],
    sheet: [
      alarmLine(model),
      monthCells(model),
      model.runs.length === 1 ? figureBlocks(rows) : comparisonTable(model, rows),
      factLines(facts),
    ],
    aside: systemDrawing(results[model.answer.winner ?? 0]!.design, model.units),
    alone: true,
    sections: [...(await reportSections({ results, model, options }, sections)), ...own],
  });
}
