/** What is taken away from the page: files that the command runs or a spreadsheet opens, and a page to hand over. */
import type { RunResult } from '@noonloop/sim-core';
import { systemParts } from '../answer/system.ts';
import { escapeHtml, letterOf } from '../escape.ts';
import { renderCsv } from '../formats/csv.ts';
import { htmlPage } from '../formats/html-page.ts';
import { cautionList, plainTable } from '../formats/html-parts.ts';
import { alarmLine, comparisonTable, factLines, figureBlocks, monthCells } from '../formats/html-sheet.ts';
import { inputs, numbers } from '../formats/html-tables.ts';
import { sheetOf } from '../formats/sheet.ts';
import { systemDrawing } from '../formats/system-drawing.ts';
import { buildModel } from '../model/build.ts';
import type { ReportOptions } from '../options.ts';
import type { Units } from '../units.ts';
import type { Trial } from './trial.ts';
import type { Plain, TakeReply, TakeRequest } from './types.ts';
import { moneyOfAll } from './view.ts';
import { plainYaml } from './yaml.ts';

/** Words over a design file. */
const OF_DESIGN = ['A design as it was turned on the live page. It runs by: noonloop run design.yaml --weather FILE'];
const OF_PRICES = ['Prices as they stood on the live page, for --prices.'];

/** Makes the text. @param now - the turned design @param pins - those pinned beside it */
export function take(
  { id, what, units, now: turned, pins: pinned }: TakeRequest,
  now: Trial,
  pins: readonly Trial[],
): TakeReply {
  const file = (name: string, type: string, text: string): TakeReply => ({ kind: 'take', id, name, type, text });
  switch (what) {
    case 'design':
      return file('design.yaml', 'application/yaml', plainYaml(now.input as never, OF_DESIGN));
    case 'prices':
      return file(
        'prices.yaml',
        'application/yaml',
        plainYaml((now.money ?? {}) as unknown as Record<string, Plain>, OF_PRICES),
      );
    case 'months':
    case 'hours':
      return file(`${what}.csv`, 'text/csv', renderCsv(now.result, { units, table: what, byteOrderMark: true }));
    case 'report': {
      const all = [...pins, now];
      const money = moneyOfAll(all, [...pinned, turned]);
      return file('report.html', 'text/html', reportOf(all, { units, ...(money === undefined ? {} : { money }) }));
    }
  }
}

/** Results with names that tell them apart: turned designs have the name of the first, so what differs is their name. */
function named(trials: readonly Trial[], units: Units): RunResult[] {
  const parts = trials.map(({ result }) => systemParts(result.design, units).map(({ words }) => words));
  return trials.map(({ result }, index) => {
    const own = parts[index]!.filter((words, at) => words !== '' && parts.some((other) => other[at] !== words));
    return own.length === 0 ? result : { ...result, design: { ...result.design, name: own.join(', ') } };
  });
}

/** The sheet of a report with its cautions, numbers and inputs; charts of a report are drawn by a library that no page carries. */
function reportOf(trials: readonly Trial[], options: ReportOptions): string {
  const results = named(trials, options.units ?? 'metric');
  const model = buildModel(results, options);
  const { rows, facts } = sheetOf(results, model, options);
  const ground = { results, model, options };
  const own = model.cautions.filter(({ findings }) => findings.length > 0);
  const general = model.cautions.filter(({ findings }) => findings.length === 0);
  return htmlPage({
    head: { title: model.title },
    answer: [model.answer.does, model.answer.decides],
    sheet: [
      alarmLine(model),
      monthCells(model),
      results.length === 1 ? figureBlocks(rows) : comparisonTable(model, rows),
      factLines(facts),
    ],
    aside: systemDrawing(results[model.answer.winner ?? results.length - 1]!.design, model.units),
    alone: true,
    sections: [
      { title: 'Cautions', blocks: [cautionList(own), cautionList(general, 'notes')] },
      {
        title: 'Month by month',
        blocks: model.runs.map(
          ({ months, name }, index) =>
            `<div class="block"><h3>${results.length > 1 ? `${letterOf(index)} ` : ''}${escapeHtml(name)}</h3>${plainTable(`Months: ${name}`, months, { sum: true })}</div>`,
        ),
      },
      { title: 'Numbers of the year', blocks: numbers(ground, false) },
      { title: 'Inputs', blocks: inputs(ground) },
    ],
  });
}
