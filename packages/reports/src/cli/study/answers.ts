// What each kind of study found, as an answer.

import type { BestOf, Measure, Spread, StudyRow, Uncertainty } from '@noonloop/sim-core';
import { capital } from '../../answer/words.ts';
import { withUnit } from '../../shown-units.ts';
import type { Answer, Block } from '../sheet/model.ts';
import { sentences, table } from '../sheet/model.ts';
import type { BuiltStudy } from './build.ts';
import { difference, influenceOf } from './influence.ts';
import { rowsTable, unitOf, wordsOf } from './measures.ts';
import * as pictures from './pictures.ts';
import { frontierBlocks, priceOf } from './price.ts';
import { sweepPicture } from './sweep-picture.ts';
import { type WrittenAs, writtenAs } from './written.ts';

/** What an answer is made with. */
interface AnswerInput {
  readonly built: BuiltStudy;
  readonly outcome: unknown;
  /** Rows, where they were kept in hand. */
  readonly rows: readonly StudyRow[];
  /** Key figure that the picture and the first sentence are about. */
  readonly number: Measure;
  readonly units: 'metric' | 'us';
  readonly wantsPicture: boolean;
}

type Found = Pick<Answer, 'sheet' | 'data'> & { readonly picture: string | null };

/** The answer of a study. */
export async function answerOf(input: AnswerInput): Promise<Found> {
  const { kind } = input.built.study;
  if (kind === 'best-of') return bestOfAnswer(input);
  if (kind === 'uncertainty') return uncertaintyAnswer(input);
  return kind === 'sweep' ? sweepAnswer(input) : sensitivityAnswer(input);
}

const titled = ({ built }: AnswerInput, blocks: readonly Block[]) => ({
  title: `${capital(built.said.study)} of ${built.name}`,
  blocks,
});

const tableOf = ({ built, rows }: AnswerInput): Block =>
  rowsTable(rows, Object.keys(built.said.vary), built.study.request.measures, writtenAs(built.said.vary, rows));

/** Two shares that look like one. */
const TWO_SHARES =
  'Hot water by the sun is its share of the heat asked for at the taps. The solar fraction sets the sun beside all heat of the heater, with what keeps the heater itself warm.';

async function sweepAnswer(input: AnswerInput): Promise<Found> {
  const { built, rows, number, units, wantsPicture } = input;
  const written = writtenAs(built.said.vary, rows);
  const valid = rows.filter(({ error, measures }) => error === undefined && measures[number] != null);
  const value = (row: StudyRow) => row.measures[number]!;
  const best = valid.reduce<StudyRow | null>((a, b) => (a === null || value(b) > value(a) ? b : a), null);
  const failed = rows.filter(({ error }) => error !== undefined).length;
  const priced = built.said.price === undefined ? null : await frontierBlocks(built, rows, number, written);
  const said =
    best === null
      ? 'No design gave this number.'
      : `${wordsOf(number)} is highest, ${withUnit(value(best), unitOf(number), units)}, with ${inputsOf(best, written)}.`;
  return {
    sheet: titled(input, [
      sentences(`${said}${failed === 0 ? '' : ` ${failed} of ${rows.length} designs failed; their rows say why.`}`),
      ...(priced?.blocks ?? []),
      sentences(TWO_SHARES),
      tableOf(input),
    ]),
    data: priced === null ? { rows } : { rows, frontier: priced.points },
    picture: !wantsPicture
      ? null
      : priced === null
        ? await sweepPicture(Object.keys(built.said.vary), valid, number, { units, written })
        : await pictures.frontierPicture(
            valid.map((row) => ({ cost: priceOf(built, row, written) ?? Number.NaN, value: value(row) })),
            priced.points.map(({ cost, saving }) => ({ cost, value: saving })),
            number,
            units,
          ),
  };
}

const inputsOf = ({ inputs }: StudyRow, written: WrittenAs): string =>
  Object.entries(inputs)
    .map(([place, value]) => [place, written(place, value) ?? null] as const)
    .map(
      ([place, chosen]) =>
        `${place} ${typeof chosen === 'number' ? Number(chosen.toPrecision(4)) : JSON.stringify(chosen).replaceAll('"', '')}`,
    )
    .join(', ');

async function bestOfAnswer(input: AnswerInput): Promise<Found> {
  const { built, rows, number, units, wantsPicture } = input;
  const { best, value, evaluated, ended } = input.outcome as BestOf;
  const written = writtenAs(built.said.vary, rows);
  const keeps = ({ measures }: StudyRow) =>
    Object.entries(built.said.limits ?? {}).every(([name, { atLeast = -Infinity, atMost = Infinity }]) => {
      const found = measures[name as Measure] ?? null;
      return found !== null && found >= atLeast && found <= atMost;
    });
  const why = ended === 'exhausted' ? 'nothing new was left to look at' : 'all evaluations were spent';
  return {
    sheet: titled(input, [
      sentences(
        best === null || value === null
          ? `None of ${evaluated} designs keeps all limits.`
          : `${wordsOf(number)} is best, ${withUnit(value, unitOf(number), units)}, with ${inputsOf(best, written)}. ${evaluated} designs were looked at; ${why}.`,
      ),
      sentences(TWO_SHARES),
      tableOf(input),
    ]),
    data: { ...(input.outcome as BestOf), rows },
    picture: wantsPicture
      ? await pictures.searchPicture(rows, number, units, { isLowest: 'lowest' in (built.said.goal ?? {}), keeps })
      : null,
  };
}

async function uncertaintyAnswer(input: AnswerInput): Promise<Found> {
  const { number, units, wantsPicture } = input;
  const outcome = input.outcome as Uncertainty;
  const spreads = Object.entries(outcome.spreads) as [Measure, Spread][];
  const one = outcome.spreads[number];
  const show = (value: number) => withUnit(value, unitOf(number), units);
  const percentiles = ['p5', 'p10', 'p25', 'p50', 'p75', 'p90', 'p95'] as const;
  return {
    sheet: titled(input, [
      sentences(
        one === undefined
          ? 'No design gave this number.'
          : `${wordsOf(number)}: ${show(one.p50)} in the middle; nine of ten designs lie between ${show(one.p5)} and ${show(one.p95)}.`,
      ),
      ...(outcome.failed === 0 ? [] : [sentences(`${outcome.failed} designs failed.`)]),
      table(
        'spreads',
        [{ label: 'number' }, { label: 'unit' }, ...percentiles.map((label) => ({ label })), { label: 'mean' }],
        spreads.map(([measure, spread]) => {
          const unit = unitOf(measure);
          const cells = [...percentiles.map((share) => spread[share]), spread.mean];
          return [wordsOf(measure), symbolOf(unit, units), ...cells.map((value) => inUnit(value, unit, units))];
        }),
      ),
    ]),
    data: outcome,
    picture: wantsPicture ? await pictures.bandPicture(spreads, units) : null,
  };
}

async function sensitivityAnswer(input: AnswerInput): Promise<Found> {
  const { built, number, units, wantsPicture } = input;
  const { columns, rows, bars, isShare } = influenceOf(built.study.kind, input.outcome, number);
  const first = bars[0];
  const unit = isShare ? '%' : unitOf(number);
  return {
    sheet: titled(input, [
      sentences(
        first === undefined
          ? 'No input moves this number.'
          : `${first.name} moves ${wordsOf(number).toLowerCase()} most: ${withUnit(Math.abs(first.to - first.from), difference(unit), units)}.`,
      ),
      table('influence', columns, rows),
    ]),
    data: input.outcome,
    picture: wantsPicture
      ? await pictures.influencePicture(
          bars,
          `${wordsOf(number)}${isShare ? ', share of its variance' : ', change'}`,
          unit,
          units,
        )
      : null,
  };
}

function symbolOf(unit: string, units: 'metric' | 'us'): string {
  return withUnit(0, unit, units).replace(/^[\d.,−-]+ ?/, '');
}

function inUnit(value: number, unit: string, units: 'metric' | 'us'): string {
  return withUnit(value, unit, units).split(' ')[0]!;
}
