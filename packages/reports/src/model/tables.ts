/** Tables of a report: months, energy balance, numbers side by side. */
import type { BalancePart, Bands, Measure, PartBalance, RunResult } from '@noonloop/sim-core';
import { formatHour, MONTH_NAMES } from '../calendar.ts';
import { type Comparison, type ComparisonReference, type ComparisonRow, referenceIndex } from '../compare.ts';
import { DEFINITIONS, MONTH_KEYS, NUMBER_KEYS, type NumberKey, WHERE_USED } from '../definitions.ts';
import { bandRange } from '../ranges.ts';
import { labelWithUnit, shownMonths } from '../shown.ts';
import type { Summary } from '../summary.ts';
import { displayUnit, formatNumber, formatValue, shownDifference, toDisplay, type Units } from '../units.ts';
import type { NumberCell, NumberRow, PlainTable } from './types.ts';

const HOURS_OF_EXTREMES: Partial<Record<NumberKey, 'peakTankHour' | 'hottestAbsorberHour' | 'coldestAbsorberHour'>> = {
  peakTankTemperature: 'peakTankHour',
  hottestAbsorber: 'hottestAbsorberHour',
  coldestAbsorber: 'coldestAbsorberHour',
};

const PART_NAMES: Record<BalancePart, string> = {
  collector: 'Collectors',
  pipes: 'Pipes',
  tank: 'Solar tank',
  heater: 'Backup heater',
  baseline: 'Heater without solar',
  whole: 'Whole system',
};

/** Months and year of one design. */
export function monthTable(summary: Summary, units: Units): PlainTable {
  const columns = MONTH_KEYS.map((key) => shownMonths(summary, key, units));
  return {
    header: ['Month', ...MONTH_KEYS.map((key) => labelWithUnit(key, units))],
    rows: [...MONTH_NAMES, 'Year'].map((name, row) => [name, ...columns.map((column) => column[row]!)]),
  };
}

/** Parts by name; a second tank's own below that of both. */
function balances({ balance, secondTank }: RunResult): [string, PartBalance][] {
  return (Object.keys(PART_NAMES) as BalancePart[]).flatMap((part): [string, PartBalance][] =>
    part === 'tank' && secondTank !== undefined
      ? [
          ['Both solar tanks', balance.tank],
          ['Second solar tank', secondTank.balance],
        ]
      : [[PART_NAMES[part], balance[part]]],
  );
}

/** Energy balance of one design by part. */
export function balanceTable(result: RunResult, units: Units): PlainTable {
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
    rows: balances(result).map(([name, balance]) => {
      return [
        name,
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

/** How numbers are shown. */
interface NumbersIn {
  readonly units: Units;
  /** Of each design; `null` where there are none. */
  readonly bands: readonly (Bands | null)[];
}

/** One number of every design, with its difference from the reference design where designs are compared. */
function numberRow(
  key: NumberKey,
  summaries: readonly Summary[],
  row: ComparisonRow | null,
  against: ComparisonReference,
  { units, bands }: NumbersIn,
): NumberRow {
  const { label, kind } = DEFINITIONS[key];
  const { symbol, digits } = displayUnit(kind, units);
  const cells = summaries.map(({ year }, index): NumberCell => {
    const value = year[key];
    const hourKey = HOURS_OF_EXTREMES[key];
    const note = hourKey === undefined ? '' : formatHour(year[hourKey]);
    const text = formatValue(value, kind, units);
    const reference = index === 0 ? null : (summaries[referenceIndex(index, against)]?.year[key] ?? null);
    const band = bands[index]?.[key as Measure];
    const range = band === undefined ? '' : bandRange(key, band, units);
    if (row === null || value === null || reference === null)
      return { text, range, difference: '', relative: '', note };
    const shown = shownDifference(value, reference, kind, units);
    const share = kind === 'fraction' ? null : row.relativeDifferences[index]!;
    const relative = shown !== 0 && share !== null && Math.abs(share) >= 0.005 ? `${signed(100 * share, 0)} %` : '';
    return { text, range, difference: shown === 0 ? '=' : signed(shown, digits), relative, note };
  });
  return { key, label, unit: symbol, cells };
}

/** Every number of every design. */
export const numberRows = (
  summaries: readonly Summary[],
  comparison: Comparison | null,
  shown: NumbersIn,
): NumberRow[] =>
  NUMBER_KEYS.flatMap((key, index) =>
    WHERE_USED.includes(key) && summaries.every(({ year }) => year[key] === 0)
      ? []
      : [numberRow(key, summaries, comparison?.rows[index] ?? null, comparison?.against ?? 'first', shown)],
  );
