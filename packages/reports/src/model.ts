/** Content of a report for people, put into words once; the formats lay it out. Text here is not escaped. */
import type { BalancePart, RunResult } from '@noonloop/sim-core';
import { formatHour, MONTH_NAMES } from './calendar.ts';
import { type CautionSeverity, cautions } from './cautions/index.ts';
import { type Comparison, type ComparisonRow, compareSummaries } from './compare.ts';
import { DEFINITIONS, NUMBER_KEYS, type NumberKey } from './definitions.ts';
import { designUnit } from './design-units.ts';
import { letterOf, plainText } from './escape.ts';
import { listRuns, type ReportOptions, type Runs } from './options.ts';
import { convertSentence, formatDesignValue } from './quantities.ts';
import { describeComparison } from './sentences.ts';
import { labelWithUnit, shownMonths } from './shown.ts';
import { type PeriodSummary, type Summary, summarize } from './summary.ts';
import {
  displayUnit,
  formatNumber,
  formatQuantity,
  formatValue,
  shownDifference,
  toDisplay,
  type Units,
} from './units.ts';

/** One cell of a number table. */
export interface NumberCell {
  /** The number, without its unit. */
  readonly text: string;
  /** Difference with its sign, such as `+352`; `=` for none; empty where there is nothing to compare. */
  readonly difference: string;
  /** The difference in percent with its sign, such as `+18 %`; empty where it means nothing. */
  readonly relative: string;
  /** Date of an extreme; empty otherwise. */
  readonly note: string;
}

/** One number of every design. */
export interface NumberRow {
  readonly key: NumberKey;
  readonly label: string;
  readonly unit: string;
  readonly cells: readonly NumberCell[];
}

/** Plain table: first column is text, the others numbers. */
export interface PlainTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One value that a run rests on. */
export interface AssumptionLine {
  readonly path: string;
  readonly value: string;
  readonly source: string;
  /** Letters of the designs for which it holds; empty when for all. */
  readonly designs: string;
}

/** What is shown of one design. */
export interface RunModel {
  /** A, B, C, … where there are several. */
  readonly letter: string;
  readonly name: string;
  readonly summary: Summary;
  readonly months: PlainTable;
  readonly balance: PlainTable;
}

/** A caution of one design or several, its advice said once. */
export interface CautionGroup {
  readonly severity: CautionSeverity;
  /** What was found, by design where there are several. */
  readonly findings: readonly string[];
  readonly advice: string;
  readonly source: string;
}

/** A report before it is laid out. */
export interface ReportModel {
  readonly title: string;
  readonly place: string;
  readonly units: Units;
  readonly runs: readonly RunModel[];
  readonly comparison: Comparison | null;
  readonly sentences: readonly string[];
  readonly numbers: readonly NumberRow[];
  readonly cautions: readonly CautionGroup[];
  readonly assumptions: readonly AssumptionLine[];
  /** The limits by which hours are counted. */
  readonly limits: readonly string[];
  readonly notes: readonly string[];
}

/** Columns of the monthly tables. */
export const MONTH_KEYS = [
  'irradiation',
  'deliveredEnergy',
  'heaterHeat',
  'solarFraction',
  'fuelSaved',
  'stagnationHours',
  'peakTankTemperature',
] as const satisfies readonly NumberKey[];

const HOURS_OF_EXTREMES = {
  peakTankTemperature: 'peakTankHour',
  hottestAbsorber: 'hottestAbsorberHour',
  coldestAbsorber: 'coldestAbsorberHour',
} as const satisfies Partial<Record<NumberKey, keyof PeriodSummary>>;

const COUNTS = ['', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'];

const PART_NAMES: Record<BalancePart, string> = {
  collector: 'Collectors',
  pipes: 'Pipes',
  tank: 'Solar tank',
  heater: 'Backup heater',
  baseline: 'Heater without solar',
  whole: 'Whole system',
};

function monthTable(summary: Summary, units: Units): PlainTable {
  const columns = MONTH_KEYS.map((key) => shownMonths(summary, key, units));
  return {
    header: ['Month', ...MONTH_KEYS.map((key) => labelWithUnit(key, units))],
    rows: [...MONTH_NAMES, 'Year'].map((name, row) => [name, ...columns.map((column) => column[row]!)]),
  };
}

function balanceTable(result: RunResult, units: Units): PlainTable {
  const { symbol } = displayUnit('energy', units);
  const energy = (value: number): string => formatValue(value, 'energy', units);
  return {
    header: [
      'Part',
      `In [${symbol}]`,
      `Out [${symbol}]`,
      `Stored [${symbol}]`,
      `Residual [${symbol}]`,
      'Worst hour [-]',
      'When',
    ],
    rows: (Object.keys(PART_NAMES) as BalancePart[]).map((part) => {
      const balance = result.balance[part];
      return [
        PART_NAMES[part],
        energy(balance.in),
        energy(balance.out),
        energy(balance.stored),
        formatValue(toDisplay(balance.residual, 'energy', units), 'residual', units),
        formatValue(balance.worstRelative, 'residual', units),
        formatHour(balance.worstHour),
      ];
    }),
  };
}

const signed = (value: number, digits: number): string => (value > 0 ? '+' : '') + formatNumber(value, digits);

function numberRow(
  key: NumberKey,
  summaries: readonly Summary[],
  row: ComparisonRow | null,
  against: string,
  units: Units,
): NumberRow {
  const { label, kind } = DEFINITIONS[key];
  const { symbol, digits } = displayUnit(kind, units);
  const cells = summaries.map((summary, index): NumberCell => {
    const value = summary.year[key];
    const hourKey = key in HOURS_OF_EXTREMES ? HOURS_OF_EXTREMES[key as keyof typeof HOURS_OF_EXTREMES] : null;
    const note = hourKey === null ? '' : formatHour(summary.year[hourKey]);
    const reference = index === 0 ? null : summaries[against === 'previous' ? index - 1 : 0]!.year[key];
    let difference = '';
    let relative = '';
    if (row !== null && value !== null && reference !== null) {
      const shown = shownDifference(value, reference, kind, units);
      const share = kind === 'fraction' ? null : row.relativeDifferences[index]!;
      difference = shown === 0 ? '=' : signed(shown, digits);
      if (shown !== 0 && share !== null && Math.abs(share) >= 0.005) relative = `${signed(100 * share, 0)} %`;
    }
    return { text: formatValue(value, kind, units), difference, relative, note };
  });
  return { key, label, unit: symbol, cells };
}

function assumptionLines(results: readonly RunResult[], letters: readonly string[], units: Units): AssumptionLine[] {
  const lines = new Map<string, { line: AssumptionLine; holders: string[] }>();
  results.forEach(({ design }, index) => {
    for (const { path, value, unit, source } of design.assumptions) {
      const shown = formatDesignValue(value, unit === '' ? designUnit(path) : unit, path, units);
      const key = JSON.stringify([path, shown, source]);
      const known = lines.get(key);
      if (known !== undefined) known.holders.push(letters[index]!);
      else lines.set(key, { line: { path, value: shown, source, designs: '' }, holders: [letters[index]!] });
    }
  });
  return [...lines.values()].map(({ line, holders }) => ({
    path: plainText(line.path),
    value: plainText(line.value),
    source: convertSentence(plainText(line.source), units),
    designs: holders.length === results.length ? '' : holders.join(', '),
  }));
}

/** Gravest first, as in the design in which they are gravest. */
function groupCautions(results: readonly RunResult[], letters: readonly string[], units: Units): CautionGroup[] {
  const groups = new Map<string, { severity: CautionSeverity; advice: string; source: string; findings: string[][] }>();
  results.forEach((result, index) => {
    for (const { code, severity, finding, advice, source } of cautions(result, units)) {
      const key = JSON.stringify([code, severity, advice]);
      const group = groups.get(key) ?? { severity, advice, source, findings: letters.map(() => []) };
      groups.set(key, group);
      group.findings[index] = finding === '' ? [] : [finding];
    }
  });
  const order: readonly CautionSeverity[] = ['danger', 'warning', 'note'];
  const merged = [...groups.values()].map((group) => ({ ...group, findings: byDesign(group.findings, letters) }));
  const own = merged.filter(({ findings }) => findings.length > 0);
  const general = merged.filter(({ findings }) => findings.length === 0);
  return [...own.sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity)), ...general];
}

function place(summary: Summary, units: Units): string {
  const { site, weatherSource } = summary;
  const side = (value: number, plus: string, minus: string): string =>
    `${Math.abs(value).toFixed(2)}° ${value < 0 ? minus : plus}`;
  const offset = `UTC${site.utcOffset < 0 ? '−' : '+'}${Math.abs(site.utcOffset)}`;
  return plainText(
    `${site.name}, ${side(site.latitude, 'N', 'S')} ${side(site.longitude, 'E', 'W')}, ${formatQuantity(site.elevation, 'length', units)} above the sea, times in ${offset}; weather: ${weatherSource}`,
  );
}

/** Lines of all designs, each once; those that do not hold for all carry the letters of theirs. */
function byDesign(linesOfRuns: readonly (readonly string[])[], letters: readonly string[]): string[] {
  const holders = new Map<string, string[]>();
  linesOfRuns.forEach((lines, index) => {
    for (const line of lines) holders.set(line, [...(holders.get(line) ?? []), letters[index]!]);
  });
  return [...holders].map(([line, of]) => (of.length === letters.length ? line : `${of.join(', ')}: ${line}`));
}

/** The limits by which hours are counted. */
function limits(results: readonly RunResult[], letters: readonly string[], units: Units): string[] {
  return byDesign(
    results.map(({ stagnationLimit, sunThreshold }) => [
      `Stagnation counts from an absorber above ${formatQuantity(stagnationLimit, 'temperature', units)}, sun from ${formatQuantity(sunThreshold, 'irradiance', units)} on the collectors.`,
    ]),
    letters,
  );
}

function notes(results: readonly RunResult[], letters: readonly string[], units: Units): string[] {
  return byDesign(
    results.map(({ weatherAssumptions, notices }) => [
      ...weatherAssumptions.map((text) => convertSentence(plainText(text), units)),
      ...notices.map(({ text, hours }) => `${convertSentence(plainText(text), units)} (${hours} h)`),
    ]),
    letters,
  );
}

/** Everything that a report says, in words. */
export function buildModel(runs: Runs, options: ReportOptions = {}): ReportModel {
  const { units = 'metric', against = 'first' } = options;
  const results = listRuns(runs);
  const summaries = results.map(summarize);
  const comparison = summaries.length > 1 ? compareSummaries(summaries, against) : null;
  const letters = results.map((_, index) => letterOf(index));
  const names = results.map(({ design }) => plainText(design.name));
  return {
    title: comparison === null ? names[0]! : `${COUNTS[names.length] ?? names.length} designs compared`,
    place: [...new Set(summaries.map((summary) => place(summary, units)))].join(' · '),
    units,
    runs: results.map((result, index) => ({
      letter: letters[index]!,
      name: names[index]!,
      summary: summaries[index]!,
      months: monthTable(summaries[index]!, units),
      balance: balanceTable(result, units),
    })),
    comparison,
    sentences: comparison === null ? [] : describeComparison(comparison, units),
    numbers: NUMBER_KEYS.map((key, index) =>
      numberRow(key, summaries, comparison?.rows[index] ?? null, against, units),
    ),
    cautions: groupCautions(results, letters, units),
    assumptions: assumptionLines(results, letters, units),
    limits: limits(results, letters, units),
    notes: notes(results, letters, units),
  };
}
