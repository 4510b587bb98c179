import type { WeatherYear } from '@noonloop/weather-io';
import { defineSystem } from '../../define/define.ts';
import type { CollectorInput, SystemInput } from '../../define/system-input.ts';
import { checkInput } from '../../input/check.ts';
import { quote } from '../../input/errors.ts';
import { choice, count, defaulted, fault, label, quantity } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { fact, type Saying, say } from '../../input/saying.ts';
import * as z from '../../input/zod.ts';
import { dryTemperature } from '../../physics/collector/efficiency.ts';
import { highest, total } from '../../physics/column.ts';
import type { RunResult } from '../../year/result.ts';
import { simulate } from '../../year/simulate.ts';
import type { AdviceCode } from '../advice-codes.ts';
import { glycolAgeing } from '../freeze/ageing.ts';
import { requireOneGroup } from './one-group.ts';

const money = z
  .custom<number>(() => true)
  .transform((value, context): number => {
    if (typeof value === 'number' && value >= 0 && value <= 1e9) return value;
    fault(context, quote(value), 'an amount of money from 0 to 1e9', 'Give a plain number, all panels together.');
    return z.NEVER;
  });

const candidateSchema = z.strictObject({
  name: label,
  collector: z.custom<CollectorInput>(() => true),
  panels: count(1, 100),
  grossArea: quantity('area', 0.1, 20),
  weightFull: quantity('mass', 1, 500),
  price: money,
  snow: defaulted(choice(['ignored', 'plate', 'tubes']), 'ignored', '', 'judgement: panels clear themselves'),
});

const comparisonSchema = z.strictObject({
  candidates: z.array(candidateSchema).superRefine((list, context) => {
    if (list.length === 0 || list.length > 50)
      fault(context, `${list.length} candidates`, '1 to 50', 'Give the collectors to compare.');
    const names = list.map(({ name }) => name);
    if (new Set(names).size < names.length) fault(context, 'a name twice', 'a name each', 'Name them apart.');
  }),
  years: defaulted(count(1, 50), 20, '', 'judgement: years that the panels are to serve'),
});

/** One of the collectors to compare. */
export interface CollectorCandidate {
  /** Name, 1 to 120 characters, each its own. */
  readonly name: string;
  /** Its coefficients, as `array.collector` of `defineSystem` takes them. */
  readonly collector: CollectorInput;
  /** Panels, 1 to 100. */
  readonly panels: number;
  /** Outside size of one panel, 0.1 to 20. [m²] */
  readonly grossArea: Quantity;
  /** One panel with its liquid, 1 to 500. [kg] */
  readonly weightFull: Quantity;
  /** All panels together, 0 to 1e9, in one currency for all candidates. [money] */
  readonly price: number;
  /** Whether snow stays on it as on a plate or on tubes, see `array.snowOnPanels`. Default `'ignored'`. */
  readonly snow?: 'ignored' | 'plate' | 'tubes';
}

/** Collectors to compare on one house. */
export interface CollectorComparisonInput {
  /** 1 to 50. */
  readonly candidates: readonly CollectorCandidate[];
  /** Years that the panels are to serve, 1 to 50. Default 20, judgement. */
  readonly years?: number;
}

/** One collector on the house. */
export interface CollectorOnRoof {
  /** As given. */
  readonly name: string;
  /** As given. */
  readonly panels: number;
  /** As given, all panels. [money] */
  readonly price: number;
  /** Gross area of all panels. [m²] */
  readonly roofArea: number;
  /** Full, all panels. [kg] */
  readonly weight: number;
  /** [kg/m²] */
  readonly weightPerRoof: number;
  /** Heat out of the solar tank in the year. [J] */
  readonly heat: number;
  /** [J/m²] */
  readonly heatPerRoof: number;
  /** Heat of a year for each unit of money; `null` for a gift. [J/money] */
  readonly heatPerMoney: number | null;
  /** Price over the heat of all years, no interest, no upkeep. [money/J] */
  readonly moneyPerHeat: number;
  /** As its sheet states, else of the line and 30 K more; see `dryTemperature`. [°C] */
  readonly stagnationTemperature: number;
  /** Hottest absorber of the year. [°C] */
  readonly hottestAbsorber: number;
  /** Hours of stagnation in the year. [h] */
  readonly stagnationHours: number;
  /** See `glycolAgeing`. [h] */
  readonly glycolHours: number;
  /** Hottest part of the tank in the year. [°C] */
  readonly hottestTank: number;
  /** The year itself, for charts and reports. */
  readonly run: RunResult;
}

/** Used flat plates against new tubes, or any others. */
export interface CollectorComparison {
  /** In the order given. */
  readonly rows: readonly CollectorOnRoof[];
  /** Names, best first. */
  readonly ranking: {
    /** Most heat of a year. */
    readonly heat: readonly string[];
    /** Most heat for each m² of roof. */
    readonly heatPerRoof: readonly string[];
    /** Least money for the heat of all years. */
    readonly moneyPerHeat: readonly string[];
    /** Least weight. */
    readonly weight: readonly string[];
    /** Lowest stagnation temperature. */
    readonly stagnationTemperature: readonly string[];
  };
  /** What can hurt someone, or the choice. */
  readonly notes: readonly Saying<AdviceCode>[];
}

/** Stagnation above which plastics, solder and ordinary glycol are no longer at ease; judgement. [°C] */
const HOT = 200;

/**
 * Sets collectors against each other on one house: a simulated year each, with price, weight on the roof, stagnation, heat
 * per money and roof.
 *
 * @param house - The system without its panels' choice: `array.panels` and `array.collector` are replaced by each candidate's.
 * @param weather - One year.
 * @param input - The candidates, gross area and full weight of one panel each, price of all.
 * @throws {@link DesignError} listing all faults at once; those of a candidate's collector as `array.collector`, by its own
 *   design; for a house of several groups.
 * @example
 * compareCollectors(house, weather, {
 *   candidates: [
 *     { name: 'used plates', collector: rateFromSurvey(survey).collector, panels: 3, grossArea: '2 m2', weightFull: '44 kg', price: 450 },
 *     { name: 'new tubes', collector: tubes, panels: 1, grossArea: '3.3 m2', weightFull: '72 kg', price: 1600, snow: 'tubes' },
 *   ],
 * });
 */
export function compareCollectors(
  house: SystemInput,
  weather: WeatherYear,
  input: CollectorComparisonInput,
): CollectorComparison {
  const { candidates, years } = checkInput(comparisonSchema, input);
  requireOneGroup(house.array.groups ?? [], 'compareCollectors');
  // All designs are made before any is run: a fault in the last costs no year.
  const designs = candidates.map(({ name, collector, panels, snow }) =>
    defineSystem({ ...house, name, array: { ...house.array, panels, inSeries: 1, collector, snowOnPanels: snow } }),
  );
  const rows = designs.map((design, at): CollectorOnRoof => {
    const { name, panels, price, grossArea, weightFull } = candidates[at]!;
    const run = simulate(design, weather);
    const { columns } = run;
    const heat = total(columns.solarHeat);
    const roofArea = panels * grossArea;
    const weight = panels * weightFull;
    return {
      name,
      panels,
      price,
      roofArea,
      weight,
      weightPerRoof: weight / roofArea,
      heat,
      heatPerRoof: heat / roofArea,
      heatPerMoney: price > 0 ? heat / price : null,
      moneyPerHeat: price / Math.max(heat * years, 1),
      stagnationTemperature: dryTemperature(run.design.array.collector),
      hottestAbsorber: highest(columns.absorberTemperature),
      stagnationHours: total(columns.stagnation),
      glycolHours: glycolAgeing(run).equivalentHours,
      hottestTank: highest(columns.tankMaximumTemperature),
      run,
    };
  });
  const order = (by: (row: CollectorOnRoof) => number): string[] =>
    [...rows].sort((a, b) => by(a) - by(b)).map(({ name }) => name);
  return {
    rows,
    ranking: {
      heat: order(({ heat }) => -heat),
      heatPerRoof: order(({ heatPerRoof }) => -heatPerRoof),
      moneyPerHeat: order(({ moneyPerHeat }) => moneyPerHeat),
      weight: order(({ weight }) => weight),
      stagnationTemperature: order((row) => row.stagnationTemperature),
    },
    notes: notes(rows),
  };
}

const notes = (rows: readonly CollectorOnRoof[]): Saying<AdviceCode>[] => [
  ...rows
    .filter((row) => row.stagnationTemperature > HOT)
    .map(({ name, stagnationTemperature: dry }) =>
      say('hot-when-dry' as const, { name, temperature: fact(dry, '°C') }),
    ),
  say('tubes-and-snow'),
  say('roof-bears-weight-and-wind'),
  say('used-without-warranty'),
];
