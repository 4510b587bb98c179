// The parts of a system in the order in which each needs the one before, and what each writes into the design.
import type { AdviceCode, Saying, SystemDesign, WorkingStep } from '@noonloop/sim-core';
import * as core from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { withUnit } from '../shown-units.ts';
import type { FieldChange } from './design-text.ts';

/** A part that was sized. */
export interface SizedPart {
  /** What to buy, in a sentence. */
  readonly words: string;
  /** Rows of the list of parts: name, value in SI, unit. */
  readonly sizes: readonly (readonly [name: string, value: number | null, unit: string])[];
  readonly steps: readonly WorkingStep[];
  readonly notes: readonly Saying<AdviceCode>[];
  readonly cautions: readonly Saying<AdviceCode>[];
  readonly changes: readonly FieldChange[];
  /** The library's own result. */
  readonly data: unknown;
}

/** What sizing a part takes. */
interface PartInput {
  readonly design: SystemDesign;
  readonly weather: WeatherYear;
  /** Limits of this part, from the file of limits. */
  readonly limits: Record<string, unknown>;
  /** Gain of the best day, where the panels were sized before. [J/m²] */
  readonly bestDay: number | null;
  readonly units: 'metric' | 'us';
}

/** Parts in order. */
export const PARTS = ['panels', 'tank', 'glycol', 'pipe', 'coil', 'pump', 'vessel'] as const;

/** One of {@link PARTS}. */
export type Part = (typeof PARTS)[number];

/** Parts that a design has: with water no glycol, with a plate no coil, with groups no count of panels. */
export const partsOf = ({ array, loop }: SystemDesign): readonly Part[] =>
  PARTS.filter(
    (part) =>
      !(part === 'glycol' && loop.fluid === 'water') &&
      !(part === 'coil' && loop.exchanger === 'plate') &&
      !(part === 'panels' && array.groups.length > 0),
  );

const empty = { notes: [], cautions: [] };

/** Sizes a part. */
export const SIZE: Readonly<Record<Part, (input: PartInput) => SizedPart>> = {
  panels: ({ design, weather, limits, units }) => {
    const data = core.sizeArray(design, weather, limits);
    const year =
      data.panelsForYear === null
        ? 'no number reaches the share of the year'
        : `${data.panelsForYear} for the share of the year`;
    return {
      ...empty,
      data,
      words: `${data.panels} panel${data.panels === 1 ? '' : 's'}, ${withUnit(data.area, 'm²', units)}: ${data.panelsForSummer} for the sunniest month, ${year}`,
      sizes: [
        ['panels', data.panels, '-'],
        ['collector area', data.area, 'm²'],
      ],
      steps: data.steps,
      changes: [{ path: 'array.panels', value: data.panels }],
    };
  },
  tank: ({ design, limits, bestDay, units }) => {
    const data = core.sizeTank(design, { ...(bestDay === null ? {} : { dailyGain: bestDay }), ...limits });
    const shown = withUnit(data.stockVolume, 'm³', units);
    return {
      ...empty,
      data,
      words: `tank of ${shown}`,
      sizes: [['tank', data.stockVolume, 'm³']],
      steps: data.steps,
      changes: [{ path: 'tank.volume', value: data.stockVolume, shown }],
    };
  },
  glycol: ({ design, weather, limits, units }) => {
    const data = core.glycolForSite(design, weather, limits);
    return {
      ...empty,
      data,
      words: `glycol, ${(100 * data.volumeFraction).toFixed(0)} % by volume: ${withUnit(data.glycolVolume, 'm³', units)} in ${withUnit(data.loopVolume, 'm³', units)}`,
      sizes: [
        ['glycol by volume', data.volumeFraction, '%'],
        ['glycol to pour in', data.glycolVolume, 'm³'],
      ],
      steps: data.steps,
      notes: data.notes,
      changes: [{ path: 'loop.glycolMassFraction', value: data.massFraction, shown: 'by mass' }],
    };
  },
  pipe: ({ design, limits, units }) => {
    const data = core.sizePipe(design, limits);
    const { pipe, insulation } = data;
    const mm = (value: number) => withUnit(value, 'mm', units);
    return {
      ...empty,
      data,
      words: `tube of ${mm(pipe.outerDiameter)} outside, insulation of ${mm(insulation.thickness)}`,
      sizes: [
        ['tube, outside', pipe.outerDiameter, 'mm'],
        ['tube, bore', pipe.innerDiameter, 'mm'],
        ['insulation', insulation.thickness, 'mm'],
      ],
      steps: data.steps,
      notes: data.notes,
      changes: [
        { path: 'loop.pipeOuterDiameter', value: pipe.outerDiameter, shown: mm(pipe.outerDiameter) },
        { path: 'loop.pipeInnerDiameter', value: pipe.innerDiameter, shown: mm(pipe.innerDiameter) },
        { path: 'loop.insulationThickness', value: insulation.thickness, shown: mm(insulation.thickness) },
      ],
    };
  },
  coil: ({ design, limits, units }) => {
    const data = core.sizeCoil(design, limits);
    const shown = withUnit(data.length, 'm', units);
    return {
      ...empty,
      data,
      words: `coil of ${shown}, ${withUnit(data.surface, 'm²', units)}`,
      sizes: [
        ['coil, length', data.length, 'm'],
        ['coil, surface', data.surface, 'm²'],
      ],
      steps: data.steps,
      changes: [{ path: 'coil.length', value: data.length, shown }],
    };
  },
  pump: ({ design, limits, units }) => {
    const data = core.sizePumpDrive(design, limits);
    const start = data.startIrradiance;
    return {
      ...empty,
      data,
      words:
        start === null
          ? 'the pump does not start on its module'
          : `pump that starts in ${withUnit(start, 'W/m²', units)} and gives ${withUnit(data.fullSun.flow, 'm³/s', units)} in full sun`,
      sizes: [
        ['light in which the pump starts', start, 'W/m²'],
        ['flow in full sun', data.fullSun.flow, 'm³/s'],
        ['module for the start wanted', data.modulePowerForStart, 'W'],
      ],
      steps: data.steps,
      notes: data.notes,
      changes: [],
    };
  },
  vessel: ({ design, limits, units }) => {
    const data = core.sizeLoopPressure(design, limits);
    const { reliefPressure, prechargePressure, vesselVolume, fillPressure } = data;
    const bar = (value: number) => withUnit(value, 'Pa', units);
    return {
      ...empty,
      data,
      words: `vessel of ${withUnit(vesselVolume, 'm³', units)}, pre-charge ${bar(prechargePressure)}, fill to ${bar(fillPressure)} cold, relief at ${bar(reliefPressure)}`,
      sizes: [
        ['vessel', vesselVolume, 'm³'],
        ['pre-charge', prechargePressure, 'Pa'],
        ['fill pressure, cold', fillPressure, 'Pa'],
        ['relief valve', reliefPressure, 'Pa'],
      ],
      steps: data.steps,
      cautions: data.cautions,
      changes: [
        { path: 'loop.pressure', value: undefined },
        { path: 'loop.reliefPressure', value: reliefPressure, shown: bar(reliefPressure) },
        { path: 'loop.fillPressure', value: fillPressure, shown: bar(fillPressure) },
        { path: 'loop.vesselPrecharge', value: prechargePressure, shown: bar(prechargePressure) },
        { path: 'loop.vesselVolume', value: vesselVolume, shown: withUnit(vesselVolume, 'm³', units) },
      ],
    };
  },
};
