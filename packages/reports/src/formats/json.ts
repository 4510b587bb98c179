import type { Bands, PartBalance, RunResult } from '@noonloop/sim-core';
import { cautions } from '../cautions/index.ts';
import { COLUMN_KINDS, COLUMN_NAMES, SECOND_TANK_COLUMNS, siKey } from '../columns.ts';
import { type Comparison, type ComparisonReference, compareSummaries } from '../compare.ts';
import { DEFINITIONS, NUMBER_KEYS, type NumberKey } from '../definitions.ts';
import { moneyOf } from '../money/rows.ts';
import type { Money, MoneyGiven } from '../money/types.ts';
import { checkOptions, listRuns, type ReportOptions, type Runs } from '../options.ts';
import { bandsAt, bandWords } from '../ranges.ts';
import { type Ranking, type RankKey, rankSummaries } from '../rank.ts';
import { type PeriodSummary, type Summary, summarize } from '../summary.ts';
import type { UnitKind } from '../units.ts';
import { noticeWords } from '../words/notices.ts';
import { weatherNotes } from '../words/weather.ts';

/** Version of the layout of {@link renderJson}; rises when a key changes its name or meaning. */
export const JSON_SCHEMA_VERSION = 1;

/** Options of {@link renderJson}. */
export interface JsonOptions {
  /** Whether the hourly columns are in it, about 2 MB a design. Default false. */
  readonly hours?: boolean;
  /** With two or more designs: what differences are taken against. Default `first`. */
  readonly against?: ComparisonReference;
  /** Prices: one set for all designs, or one for each. Left out: `money` is null. */
  readonly money?: MoneyGiven;
  /** With two or more designs: number by which they are ranked. Left out: `comparison.ranking` is null. */
  readonly rankBy?: RankKey;
  /** Bands of the leading numbers, of the first design or of each. Left out: `bands` is null. */
  readonly bands?: ReportOptions['bands'];
  /** Spaces of indentation; 0 for one line. Default 2. */
  readonly indent?: number;
}

/** @internal */
export const keyOf = (key: NumberKey): string => siKey(key, DEFINITIONS[key].kind);

const periodJson = (period: PeriodSummary): Record<string, number | null> => ({
  ...Object.fromEntries(NUMBER_KEYS.map((key) => [keyOf(key), period[key]])),
  peakTankHour: period.peakTankHour,
  hottestAbsorberHour: period.hottestAbsorberHour,
  coldestAbsorberHour: period.coldestAbsorberHour,
});

const loopJson = ({ loop }: RunResult): Record<string, unknown> => ({
  lowestPressure_Pa: loop.lowestPressure,
  highestPressure_Pa: loop.highestPressure,
  lost_m3: loop.lost,
  relieved_m3: loop.relieved,
  madeUp_m3: loop.madeUp,
  circulationFailsHour: loop.circulationFails,
  protectionEndsHour: loop.protectionEnds,
  coldestAbsorber_degC: loop.coldestAbsorber,
  coldestPipe_degC: loop.coldestPipe,
  absorberFreezing_h: loop.absorberFreezingHours,
  pipeFreezing_h: loop.pipeFreezingHours,
  deepestFreezing_K: loop.deepestFreezing,
  burstPoint_degC: loop.burstPoint,
  belowBurstPoint_h: loop.burstHours,
  drain: loop.drain === undefined ? null : drainJson(loop.drain),
});

const balanceJson = (one: PartBalance): Record<string, number> => ({
  in_J: one.in,
  out_J: one.out,
  stored_J: one.stored,
  residual_J: one.residual,
  worst_relative: one.worstRelative,
  worstHour: one.worstHour,
});

const drainJson = (drain: NonNullable<RunResult['loop']['drain']>): Record<string, number> => ({
  times: drain.times,
  flashes: drain.flashes,
  content_m3: drain.content,
  heatLeft_J: drain.heatLeft,
  heatBack_J: drain.heatBack,
  filling_s: drain.fillingTime,
  liftedInVain_s: drain.liftedInVain,
});

/** Groups along the flow; none where the array is one. */
const groupsJson = ({ groups = [] }: RunResult): Record<string, unknown>[] =>
  groups.map(({ name, area, irradiation, heat }) => ({
    name,
    area_m2: area,
    irradiation_J: irradiation,
    heat_J: heat,
  }));

function runJson(result: RunResult, summary: Summary, hours: boolean): Record<string, unknown> {
  const { design, site, columns, secondTank } = result;
  return {
    name: design.name,
    design,
    site: {
      name: site.name,
      latitude_deg: site.latitude,
      longitude_deg: site.longitude,
      elevation_m: site.elevation,
      utcOffset_h: site.utcOffset,
    },
    weatherSource: result.weatherSource,
    weatherAssumptions: weatherNotes(result, 'metric'),
    notices: result.notices.map((notice) => ({ ...notice, text: noticeWords(notice) })),
    stepsPerHour: result.stepsPerHour,
    stagnationLimit_degC: result.stagnationLimit,
    freezingPoint_degC: result.freezingPoint,
    loop: loopJson(result),
    groups: groupsJson(result),
    sunAloneMonths: summary.sunAloneMonths.map((month) => month + 1),
    year: periodJson(summary.year),
    months: summary.months.map(periodJson),
    balance: Object.fromEntries(Object.entries(result.balance).map(([part, one]) => [part, balanceJson(one)])),
    ...(secondTank === undefined
      ? {}
      : {
          secondTank: {
            peak_degC: secondTank.peak,
            peakOfFirst_degC: secondTank.peakOfFirst,
            balance: balanceJson(secondTank.balance),
          },
        }),
    cautions: cautions(result),
    ...(hours
      ? {
          hours: Object.fromEntries([
            ...COLUMN_NAMES.map((name) => [siKey(name, COLUMN_KINDS[name]), Array.from(columns[name])]),
            ...SECOND_TANK_COLUMNS.flatMap(({ name, kind, of }) => {
              const values = of(result);
              return values === undefined ? [] : [[siKey(name, kind), Array.from(values)]];
            }),
          ]),
        }
      : {}),
  };
}

/** Band by number, with its range in words; numbers that no report defines are left out. */
const bandsJson = (bands: Bands): Record<string, unknown> =>
  Object.fromEntries(
    NUMBER_KEYS.flatMap((key) => {
      const band = (bands as Partial<Record<NumberKey, NonNullable<Bands[keyof Bands]>>>)[key];
      return band === undefined ? [] : [[keyOf(key), { ...band, text: bandWords(key, band, 'metric') }]];
    }),
  );

/** Energy in kWh here, as bills have it. */
const moneyJson = ({
  cases,
  years,
  co2With,
  co2Without,
  co2Saved,
  levelisedCostOfFuelHeat,
  ...money
}: Money): Record<string, unknown> => ({
  ...money,
  levelisedCostOfFuelHeat_per_kWh: levelisedCostOfFuelHeat === null ? null : levelisedCostOfFuelHeat * 3.6e6,
  co2Without_kg: co2Without,
  co2With_kg: co2With,
  co2Saved_kg: co2Saved,
  cases: cases.map(({ parts, investment, netPresentValue, ...one }) => ({
    parts,
    investment,
    netPresentValue,
    simplePayback_a: one.simplePayback,
    discountedPayback_a: one.discountedPayback,
    internalRateOfReturn_fraction: one.internalRateOfReturn,
    levelisedCostOfHeat_per_kWh: one.levelisedCostOfHeat === null ? null : one.levelisedCostOfHeat * 3.6e6,
  })),
  years,
});

const comparisonJson = ({ rows, against }: Comparison, ranking: Ranking | null): Record<string, unknown> => ({
  against,
  ranking: ranking === null ? null : { by: ranking.by, first: ranking.first, order: ranking.order },
  rows: rows.map(({ key, values, differences, relativeDifferences }) => ({
    number: key,
    [siKey('values', DEFINITIONS[key].kind)]: values,
    [siKey('differences', differenceKind(DEFINITIONS[key].kind))]: differences,
    relativeDifferences,
  })),
});

/** Kind of a difference of two numbers of a kind. @internal */
export const differenceKind = (kind: UnitKind): UnitKind => (kind === 'temperature' ? 'temperatureDifference' : kind);

/**
 * The report as data, always in SI with °C and the unit in each key (`deliveredEnergy_J`). The monthly sums, added in order,
 * are the year's to the last bit. The schema is published as `@noonloop/reports/schema/report-1.json`. `design` has the library's own plain field names and SI units.
 *
 * @param runs - one run, or several to compare
 * @param options - what to include
 * @throws {@link ReportError} when there is no run or a column is not a whole year of finite numbers.
 */
export function renderJson(runs: Runs, options: JsonOptions = {}): string {
  checkOptions(options, ['hours', 'against', 'money', 'rankBy', 'bands', 'indent']);
  const { hours = false, against = 'first', indent = 2, money, rankBy, bands } = options;
  const results = listRuns(runs);
  const summaries = results.map(summarize);
  const moneys = money === undefined ? null : moneyOf(results, money);
  const bandsOf = (index: number) => {
    const found = bandsAt(bands === undefined ? {} : { bands }, index, results.length);
    return found === null ? null : bandsJson(found);
  };
  return `${JSON.stringify(
    {
      schema: 'noonloop-report',
      schemaVersion: JSON_SCHEMA_VERSION,
      runs: results.map((result, index) => ({
        ...runJson(result, summaries[index]!, hours),
        money: moneys === null ? null : moneyJson(moneys[index]!),
        bands: bandsOf(index),
      })),
      comparison:
        summaries.length > 1
          ? comparisonJson(
              compareSummaries(summaries, against),
              rankBy === undefined ? null : rankSummaries(results, summaries, rankBy, money),
            )
          : null,
      definitions: Object.fromEntries(
        NUMBER_KEYS.map((key) => [
          keyOf(key),
          { label: DEFINITIONS[key].label, definition: DEFINITIONS[key].definition },
        ]),
      ),
    },
    null,
    indent,
  )}\n`;
}
