import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemInput } from '../define/system-input.ts';
import type { SystemDesign } from '../design/design.ts';
import type { DesignIssue } from '../input/errors.ts';
import type { Measure } from './measures.ts';
import { issue, ROW_OPTIONS, refuse, rowRequest, unknownOptions } from './request.ts';
import { collectRows, makeStudy, type Study } from './study.ts';
import type { RowWith, StudyOptions, StudyValue } from './types.ts';
import { weatherList } from './weathers.ts';

/**
 * Simulates designs side by side, in every weather year given: all designs in the first, then all in the second.
 *
 * @param designs - As written or from `defineSystem`. One that cannot be simulated becomes a row with its error.
 * @param weather - One year, or several.
 * @param options - What is kept of each.
 * @returns A study whose rows name each design in `inputs.design`; its outcome is the rows.
 * @throws {@link DesignError} when there is no design or no weather, or an option is unknown.
 * @example
 * for await (const row of compare([twoPanels, threePanels], weather)) console.log(row.inputs.design, row.measures.fuelSaved);
 */
export function compare<Asked extends Measure = never>(
  designs: readonly (SystemInput | SystemDesign)[],
  weather: WeatherYear | readonly WeatherYear[],
  options: StudyOptions<Asked> = {},
): Study<readonly RowWith<Asked>[], RowWith<Asked>> {
  const issues: DesignIssue[] = unknownOptions(options, ROW_OPTIONS);
  const weathers = weatherList(issues, weather);
  const isList = Array.isArray(designs) && designs.length > 0;
  if (!isList) issues.push(issue('designs', designs, 'a list of at least one design', 'Give the designs in a list.'));
  refuse(issues);
  const nameOf = (index: number): StudyValue => designs[index]?.name ?? `design ${index + 1}`;
  return makeStudy({
    kind: 'compare',
    description: { designs: designs as unknown as StudyValue },
    weathers,
    request: rowRequest(options),
    total: designs.length * weathers.length,
    caseAt: (index) => {
      const place = index % designs.length;
      const design = designs[place]!;
      return { index, inputs: { design: nameOf(place) }, design, weather: Math.trunc(index / designs.length) };
    },
    analyse: collectRows,
  }) as Study<readonly RowWith<Asked>[], RowWith<Asked>>;
}
