import type { WeatherYear } from '@noonloop/weather-io';
import { defineSystem } from '../define/define.ts';
import type { SystemInput } from '../define/system-input.ts';
import type { DesignIssue } from '../input/errors.ts';
import type { StepOptions } from '../year/stepping.ts';
import { analyseBands, bends, COARSE } from './band-analysis.ts';
import { housesOf } from './band-houses.ts';
import { houseAt, type KnownBy, movers, waterOf } from './band-parts.ts';
import type { Bands } from './band-types.ts';
import type { FieldSet } from './fields.ts';
import type { Measure } from './measures.ts';
import { setFields } from './paths.ts';
import { issue, refuse, rowRequest, unknownOptions } from './request.ts';
import { collectRows, makeStudy, type Study } from './study.ts';
import type { StudyValue } from './types.ts';
import { weatherList } from './weathers.ts';

/** Options of {@link bands}. */
export interface BandOptions {
  /** Key figures that get a band. Default: those that lead a report, of heat, fuel, stagnation and highest temperatures. */
  readonly measures?: readonly Measure[];
  /** How well the collector's coefficients are known: a certificate, or a survey of a panel without papers. Default `certificate`. */
  readonly collector?: KnownBy['collector'];
  /**
   * How well the water use is known: in litres (`meter`), by who lives there (`people`), or not at all. Default as the design says it: litres or
   * a record `meter`, people `people`, a tapping profile alone `unknown`.
   */
  readonly water?: KnownBy['water'];
  /** Whether the band is for one year to come, with its weather, and not for the mean of many. Default true. */
  readonly oneYear?: boolean;
  /** Share of cases that the band holds, 0.5 to 0.99. Default 0.9. [-] */
  readonly share?: number;
}

const LEADING = [
  'fuelSaved',
  'fuelSaving',
  'sunShare',
  'deliveredEnergy',
  'stagnationHours',
  'highLimitHours',
  'peakTankTemperature',
  'hottestAbsorber',
] as const satisfies readonly Measure[];

/**
 * How sure the leading numbers are: each cause (light, optics, losses, coil, tank, cold water, use, burner) is moved alone, a year each, light and
 * use to either side; curves through these years are then drawn from at random, all causes together. Temperatures and hours, which a limit bends,
 * are read off 20 houses with all causes off at once. Some 30 years, all but one in steps of an hour; 12 where only heat and fuel are asked for.
 *
 * What moves together between causes beyond that is left out, and so is the error of what nobody has measured; docs/theory/studies.md has the
 * spreads with their sources. A comparison of two designs is surer than either: most causes are the same in both.
 *
 * @param base - The design as written.
 * @param weather - The year that it is simulated in.
 * @param options - What is known.
 * @throws {@link DesignError} listing all faults of base and options at once.
 * @example
 * const found = await bands(design, weather).outcome();
 * renderText(simulate(defineSystem(design), weather), { bands: found });
 */
export function bands(base: SystemInput, weather: WeatherYear, options: BandOptions = {}): Study<Bands> {
  const issues: DesignIssue[] = unknownOptions(options, ['measures', 'collector', 'water', 'oneYear', 'share']);
  const [year] = weatherList(issues, weather);
  const { measures = LEADING, collector = 'certificate', oneYear = true, share = 0.9 } = options;
  if (!['certificate', 'survey'].includes(collector))
    issues.push(issue('options.collector', collector, '"certificate" or "survey"', 'Say how it is known.'));
  if (!['meter', 'people', 'unknown', undefined].includes(options.water))
    issues.push(issue('options.water', options.water, '"meter", "people" or "unknown"', 'Say how it is known.'));
  if (!(share >= 0.5 && share <= 0.99))
    issues.push(issue('options.share', share, 'from 0.5 to 0.99', 'Give the share of cases that the band shall hold.'));
  refuse(issues);
  const design = defineSystem(base);
  const { water = waterOf(base) } = options;
  const known: KnownBy = { collector, water, oneYear };
  const list = movers(design, year!, known);
  const asked = [...new Set<Measure>(measures)];
  const houses = asked.some(bends) ? housesOf(list) : [];
  const cases: { inputs: FieldSet; design: SystemInput; weather: WeatherYear; steps?: StepOptions }[] = [
    { inputs: {}, design: base, weather: year! },
    { inputs: {}, design: base, weather: year!, steps: COARSE },
    ...list.flatMap(({ at, fields, name, weathers }) =>
      at.map((place, side) => ({
        inputs: { [name]: place },
        design: setFields(base, fields?.(place) ?? {}),
        weather: weathers?.[side] ?? year!,
        steps: COARSE,
      })),
    ),
    ...houses.map((at, house) => ({ inputs: { house }, ...houseAt(base, year!, list, at), steps: COARSE })),
  ];
  const weathers = [...new Set(cases.map(({ weather }) => weather))];
  return makeStudy({
    kind: 'bands',
    description: { base, measures: asked, collector, water, oneYear, share } as unknown as StudyValue,
    weathers,
    request: rowRequest({ measures }),
    total: cases.length,
    caseAt: (index) => ({ ...cases[index]!, index, weather: weathers.indexOf(cases[index]!.weather) }),
    analyse: async (rows) =>
      analyseBands(await collectRows(rows), { list, houses: houses.length, known, measures: asked, share }),
  });
}
