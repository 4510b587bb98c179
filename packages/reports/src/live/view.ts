/** What the page shows of a year, in words and figures: the same words, made by the same code, as in every report. */
import { systemParts } from '../answer/system.ts';
import { chooseWeek } from '../charts/choose-week.ts';
import { heatStep, heatTicks } from '../charts/colour-steps.ts';
import { decisiveTemperatures } from '../charts/decisive.ts';
import { designChanges } from '../design-changes.ts';
import { designUnit } from '../design-units.ts';
import { letterOf, plainText } from '../escape.ts';
import { fieldWords } from '../formats/given.ts';
import { alarmWords, sheetOf } from '../formats/sheet.ts';
import { buildModel } from '../model/build.ts';
import type { ReportModel } from '../model/types.ts';
import { FUELS } from '../money/fuels.ts';
import type { MoneyOptions, MoneySettings } from '../money/index.ts';
import type { ReportOptions } from '../options.ts';
import { formatDesignValue } from '../quantities.ts';
import type { Summary } from '../summary.ts';
import type { Units } from '../units.ts';
import type { Trial } from './trial.ts';
import { pricedByPanel } from './turned.ts';
import type { LiveChange, LiveComparison, Turned, TurnReply, TurnRequest } from './types.ts';

/** Fields that a sentence about what was turned names. */
const NAMED = 3;

/** Report options of one trial. */
export const optionsOf = ({ money }: Trial, units: Units): ReportOptions => ({
  units,
  ...(money === null ? {} : { money }),
});

/** Prices of several designs; those of one cost that holds for none in particular do not rank them. */
export function moneyOfAll(trials: readonly Trial[], turned: readonly Turned[]): ReportOptions['money'] {
  const all = trials.map(({ money }) => money);
  if (all.some((one) => one === null)) return undefined;
  const list = all as readonly MoneyOptions[];
  if (list.some(({ currency }) => currency !== list[0]!.currency)) return undefined;
  const costs = new Set(list.map(({ investment }) => JSON.stringify(investment ?? null)));
  if (costs.size > 1 || turned.every(pricedByPanel)) return list;
  return list.every((one) => JSON.stringify(one) === JSON.stringify(list[0])) ? (list[0] as MoneySettings) : list;
}

const shownField = (value: unknown, path: string, units: Units): string =>
  plainText(formatDesignValue(value, designUnit(path), path, units));

/** Parts of which several figures change at one turn, and what they are called together. */
const TOGETHER: readonly (readonly [RegExp, string])[] = [
  [/^array\.collector\./, 'the panel'],
  [/^pv\.module\./, 'the module of the pump'],
  [/^(?:heater|baseline)\./, 'the heater'],
];

/** `tilt 30° → 45°`. */
function turnedWords(from: Trial, to: Trial, units: Units): string {
  const changes = designChanges(from.result.design, to.result.design);
  const together = TOGETHER.filter(([part]) => changes.filter(({ path }) => part.test(path)).length > 1);
  const single = changes
    .filter(({ path }) => !together.some(([part]) => part.test(path)))
    .map(
      ({ path, from: a, to: b }) =>
        `${fieldWords(path).replace(/^array(?:, collector)?: /, '')} ${shownField(a, path, units)} → ${shownField(b, path, units)}`,
    );
  const all = [...together.map(([, words]) => words), ...single];
  if (all.length > 0)
    return all.slice(0, NAMED).join(', ') + (all.length > NAMED ? ` and ${all.length - NAMED} more` : '');
  return JSON.stringify(from.money) === JSON.stringify(to.money) ? '' : 'prices';
}

/** A difference with the unit of its number. */
function withUnit(difference: string, cell: string): string {
  if (/[\p{L}$€£°%]/u.test(difference)) return difference;
  const unit = /[\d,.]+\s*(\D+)$/.exec(cell)?.[1] ?? '';
  return unit === '' ? difference : `${difference} ${unit.replace(/ (?:from|too) .*/, '')}`;
}

/** A model of two runs as far as a sheet of figures needs it. */
const pairOf = (model: ReportModel, before: Summary): ReportModel => ({
  ...model,
  runs: [{ ...model.runs[0]!, summary: before }, model.runs[0]!],
});

/** The same with the other's prices where its bill counts another fuel or unit: amounts of two units have no difference. */
function inFuelOf(from: Trial, to: Trial): Trial {
  const [a, b] = [from.money, to.money];
  if (a === null || b === null || (a.fuel.carrier === b.fuel.carrier && a.fuel.per === b.fuel.per)) return from;
  const { investment: _, ...prices } = b;
  return { ...from, money: a.investment === undefined ? prices : { ...prices, investment: a.investment } };
}

function changesSince(from: Trial, to: Trial, model: ReportModel, before: ReportModel, units: Units): LiveChange[] {
  const money = moneyOfAll([inFuelOf(from, to), to], []);
  const { rows } = sheetOf([from.result, to.result], pairOf(model, before.runs[0]!.summary), {
    units,
    ...(money === undefined ? {} : { money }),
  });
  const figures = rows.flatMap(({ label, cells, differences }): LiveChange[] => {
    const difference = differences[1]!;
    if (difference !== '' && difference !== '=') return [{ label, difference: withUnit(difference, cells[1]!) }];
    // From or to what is no number: paid back or not, froze or not.
    return difference === '' && cells[0] !== cells[1] ? [{ label, difference: `${cells[0]} → ${cells[1]}` }] : [];
  });
  const dangers = (of: ReportModel) => of.cautions.filter(({ severity }) => severity === 'danger');
  const came = dangers(model).filter(({ code }) => !dangers(before).some((one) => one.code === code));
  const gone = dangers(before).filter(({ code }) => !dangers(model).some((one) => one.code === code));
  return [
    ...came.map(({ short }) => ({ label: 'New danger', difference: short[0] ?? '' })),
    ...gone.map(({ short }) => ({ label: 'No longer', difference: short[0] ?? '' })),
    ...figures,
  ];
}

/** The pinned designs and the turned one, as the sheet of a report sets them side by side. */
function comparisonOf(trials: readonly Trial[], turned: readonly Turned[], units: Units): LiveComparison {
  const results = trials.map(({ result }) => result);
  const money = moneyOfAll(trials, turned);
  const options: ReportOptions = { units, ...(money === undefined ? {} : { money }) };
  const model = buildModel(results, options);
  const { rows } = sheetOf(results, model, options);
  return {
    letters: results.map((_, index) => letterOf(index)),
    answer: model.answer,
    rows: rows.map(({ label, cells, differences }) => ({ label, cells, notes: differences })),
    differs: model.differs,
  };
}

const models = new WeakMap<Trial['result'], Map<string, ReportModel>>();

/** Model of one run; those of the last turns are at hand. */
function modelOf(trial: Trial, units: Units): ReportModel {
  const key = JSON.stringify([units, trial.money]);
  const known = models.get(trial.result) ?? new Map<string, ReportModel>();
  models.set(trial.result, known);
  const model = known.get(key) ?? buildModel(trial.result, optionsOf(trial, units));
  known.set(key, model);
  return model;
}

/** Everything that the page shows of a turn. */
export function turnReply(
  { id, units, now: turned, pins: pinned }: TurnRequest,
  now: Trial,
  against: Trial | null,
  pins: readonly Trial[],
): TurnReply {
  const model = modelOf(now, units);
  const before = against === null ? null : modelOf(against, units);
  const { result, money, faults } = now;
  const { summary } = model.runs[0]!;
  const { rows } = sheetOf([result], model, optionsOf(now, units));
  const step = heatStep(units);
  return {
    kind: 'turn',
    id,
    design: result.design,
    money,
    answer: model.answer,
    season: model.season,
    alarm: alarmWords(model),
    cautions: model.cautions,
    parts: systemParts(result.design, units, money === null ? undefined : FUELS[money.fuel.carrier].word).filter(
      ({ words }) => words !== '',
    ),
    months: summary.months.map(({ sunShare }) => sunShare),
    monthsBefore: before === null ? null : before.runs[0]!.summary.months.map(({ sunShare }) => sunShare),
    rows: rows.map(({ group, label, cells, notes }) => ({ group, label, cell: cells[0]!, note: notes[0]! })),
    turned: against === null ? '' : turnedWords(against, now, units),
    changes: against === null ? [] : changesSince(against, now, model, before!, units),
    comparison: pins.length === 0 ? null : comparisonOf([...pins, now], [...pinned, turned], units),
    map: Uint8Array.from(result.columns.tankMaximumTemperature, step),
    key: { ...heatTicks(units), marks: decisiveTemperatures([result.design], units).map(({ word }) => word) },
    weeks: { hottest: chooseWeek(result, 'hottest'), coldest: chooseWeek(result, 'coldest') },
    numbers: summary.year,
    faults,
  };
}
