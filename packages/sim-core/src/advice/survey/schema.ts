import { quote } from '../../input/errors.ts';
import { choice, count, fault, label, quantity } from '../../input/field.ts';
import { DIMENSIONS, type Dimension, type Quantity, toSi } from '../../input/quantity.ts';
import { type InputShape, quantityShape, shaped } from '../../input/shape.ts';
import * as z from '../../input/zod.ts';
import type { Band } from './band.ts';
import type {
  CoverKind,
  PanelCondition,
  PanelInsulation,
  PanelMetal,
  PlateBond,
  PlateCoating,
  TubeLayout,
} from './words.ts';

/** A measured number: a quantity, one with what it may be off, or limits. */
export type Measured = Quantity | MeasuredValue | MeasuredLimits;

/** A value and what it may be off. */
export interface MeasuredValue {
  /** As measured. */
  readonly value: Quantity;
  /** Either side, in nine cases of ten; in the same unit or another of the kind. */
  readonly give: Quantity;
}

/** Limits that hold in nine cases of ten. */
export interface MeasuredLimits {
  /** Lower limit. */
  readonly low: Quantity;
  /** Best guess. Default half-way. */
  readonly likely?: Quantity;
  /** Upper limit. */
  readonly high: Quantity;
}

/** What a measured number became: its limits, or a value whose tolerance is that of the tool. */
export type Reading = Band | number;

/** A measured number within inclusive bounds; its limits are held within them. */
export function measured(dimension: Dimension, minimum: number, maximum: number) {
  const { unit, example } = DIMENSIONS[dimension];
  const schema = z
    .custom<Measured>(() => true)
    .transform((input, context): Reading => {
      const reading = readMeasured(input, dimension);
      const fits = (value: number) => value >= minimum && value <= maximum;
      if (typeof reading === 'number' && fits(reading)) return reading;
      if (reading !== null && typeof reading === 'object') {
        const { low, likely, high } = reading;
        if (fits(likely) && low <= likely && likely <= high)
          return { low: Math.max(low, minimum), likely, high: Math.min(high, maximum) };
      }
      fault(
        context,
        quote(input),
        `a value from ${minimum} to ${maximum}${unit === '-' ? '' : ` ${unit}`}, or { value, give }, or { low, likely, high } in rising order`,
        `Give a number in ${unit === '-' ? 'parts of one' : unit} or a string such as "${example}"; leave it out if you do not know.`,
      );
      return z.NEVER;
    });
  return shaped(schema, measuredShape(quantityShape(dimension, minimum, maximum))).optional();
}

/** The forms of a measured number, for the published schema. */
function measuredShape(one: InputShape): InputShape {
  const form = (properties: Record<string, InputShape>, required: readonly string[]) => ({
    type: 'object',
    properties,
    required,
    additionalProperties: false,
  });
  return {
    anyOf: [
      ...(one.anyOf as readonly InputShape[]),
      form({ value: one, give: one }, ['value', 'give']),
      form({ low: one, likely: one, high: one }, ['low', 'high']),
    ],
  };
}

function readMeasured(input: unknown, dimension: Dimension): Reading | null {
  if (typeof input !== 'object' || input === null) return toSi(input, dimension);
  const read = (key: string) => {
    const value: unknown = Object.hasOwn(input, key) ? (input as Record<string, unknown>)[key] : undefined;
    return value === undefined ? undefined : toSi(value, dimension);
  };
  const keys = Object.keys(input);
  if (keys.every((key) => key === 'value' || key === 'give')) {
    const value = read('value');
    const give = read('give');
    if (value == null || give == null || give < 0) return null;
    return { low: value - give, likely: value, high: value + give };
  }
  if (!keys.every((key) => key === 'low' || key === 'likely' || key === 'high')) return null;
  const low = read('low');
  const high = read('high');
  const likely = keys.includes('likely') ? read('likely') : low == null || high == null ? null : (low + high) / 2;
  return low == null || high == null || likely == null ? null : { low, likely, high };
}

/** Schema of a survey. */
export const surveySchema = z
  .strictObject({
    name: label.optional(),
    length: quantity('length', 0.3, 6),
    width: quantity('length', 0.2, 3),
    covers: count(1, 3),
    depth: measured('length', 0.02, 0.3),
    frame: measured('length', 0, 0.15),
    coverKind: choice(['low-iron-glass', 'window-glass', 'glass-fibre', 'polycarbonate', 'unknown']).optional(),
    coverThickness: measured('length', 0.0003, 0.012),
    plateMetal: choice(['copper', 'aluminium', 'steel', 'stainless-steel', 'unknown']).optional(),
    plateThickness: measured('length', 5e-5, 0.005),
    tubeMetal: choice(['copper', 'aluminium', 'steel', 'stainless-steel', 'unknown']).optional(),
    tubeSpacing: measured('length', 0.015, 0.4),
    tubeDiameter: measured('length', 0.004, 0.05),
    tubeWall: measured('length', 0.0002, 0.004),
    headerDiameter: measured('length', 0.006, 0.08),
    layout: choice(['harp', 'serpentine']).optional(),
    bond: choice(['one-piece', 'soldered', 'welded', 'clamped', 'unknown']).optional(),
    coating: choice(['black-paint', 'selective', 'selective-paint', 'unknown']).optional(),
    insulation: choice(['mineral-wool', 'foam', 'unknown']).optional(),
    backInsulation: measured('length', 0.003, 0.2),
    edgeInsulation: measured('length', 0.003, 0.1),
    condition: choice(['good', 'worn', 'poor', 'unknown']).optional(),
    weightEmpty: measured('mass', 3, 300),
    testFlow: quantity('flow', 1e-6, 1e-3).optional(),
  })
  .superRefine((survey, context) => {
    const middle = (reading: Reading | undefined, fallback: number) =>
      reading === undefined ? fallback : typeof reading === 'number' ? reading : reading.likely;
    const spacing = middle(survey.tubeSpacing, 0.11);
    const diameter = middle(survey.tubeDiameter, Math.min(0.01, spacing));
    if (diameter > spacing) {
      fault(context, `${diameter} m`, `at most the spacing, ${spacing} m`, 'Spacing is from middle to middle.', [
        'tubeDiameter',
      ]);
    }
    if (2 * middle(survey.tubeWall, 0) >= diameter) {
      fault(
        context,
        `${middle(survey.tubeWall, 0)} m`,
        `less than half the diameter, ${diameter / 2} m`,
        'Check both.',
        ['tubeWall'],
      );
    }
    if (2 * middle(survey.frame, 0) >= 0.5 * Math.min(survey.length, survey.width)) {
      fault(
        context,
        `${middle(survey.frame, 0)} m`,
        'a frame on each side that leaves half of the width for light',
        'Give the width of the rim on one side.',
        ['frame'],
      );
    }
    if (survey.width > survey.length * 4 || survey.length > survey.width * 12) {
      fault(context, `${survey.length} m by ${survey.width} m`, 'sides of a panel', 'Check length and width.', [
        'width',
      ]);
    }
    if (spacing > 0.5 * Math.min(survey.length, survey.width)) {
      fault(context, `${spacing} m`, 'a spacing that lays two tubes or more on the plate', 'Check it.', [
        'tubeSpacing',
      ]);
    }
  });

/**
 * What a tape measure and an eye find on a used panel; only `length`, `width` and `covers` are needed. What is left out, or
 * `'unknown'`, is as common panels have it, with wide limits. A bare number is as good as its tool, see docs/guides/buying.md.
 */
export interface SurveyInput {
  /** Name for reports. */
  readonly name?: string;
  /** Outside of the box along the tubes of a harp, 0.3 to 6; tape ± 5 mm. [m] */
  readonly length: Quantity;
  /** Outside of the box across them, 0.2 to 3; tape ± 5 mm. [m] */
  readonly width: Quantity;
  /** Covers, 1 to 3. */
  readonly covers: number;
  /** Height of the box, 0.02 to 0.3; unknown 0.07 to 0.12. [m] */
  readonly depth?: Measured;
  /** Rim on one side that takes no light, 0 to 0.15; unknown 0.01 to 0.035. [m] */
  readonly frame?: Measured;
  /** What the covers are of. */
  readonly coverKind?: CoverKind;
  /** One cover, 0.0003 to 0.012; unknown as its kind commonly is. [m] */
  readonly coverThickness?: Measured;
  /** Plate under the covers. */
  readonly plateMetal?: PanelMetal;
  /** 5e-5 to 0.005; unknown 0.00018 to 0.0006. [m] */
  readonly plateThickness?: Measured;
  /** Tubes; default that of a copper or steel plate, else copper. */
  readonly tubeMetal?: PanelMetal;
  /** Middle to middle, 0.015 to 0.4; unknown 0.09 to 0.15. [m] */
  readonly tubeSpacing?: Measured;
  /** Outside, 0.004 to 0.05; unknown 0.008 to 0.0127. [m] */
  readonly tubeDiameter?: Measured;
  /** 0.0002 to 0.004; unknown 0.0004 to 0.001. [m] */
  readonly tubeWall?: Measured;
  /** Outside of the headers of a harp, 0.006 to 0.08; unknown 0.018 to 0.0286. [m] */
  readonly headerDiameter?: Measured;
  /** How the tubes run. Default `'harp'`. */
  readonly layout?: TubeLayout;
  /** How the tubes are held on the plate. */
  readonly bond?: PlateBond;
  /** Surface of the plate. */
  readonly coating?: PlateCoating;
  /** What lies behind the plate. */
  readonly insulation?: PanelInsulation;
  /** Behind the plate, 0.003 to 0.2; unknown 0.025 to 0.065. [m] */
  readonly backInsulation?: Measured;
  /** Along the rim, 0.003 to 0.1; unknown 0.008 to 0.03. [m] */
  readonly edgeInsulation?: Measured;
  /** State as the eye sees it. */
  readonly condition?: PanelCondition;
  /** Empty and dry on a scale, 3 to 300; ± 1 kg. [kg] */
  readonly weightEmpty?: Measured;
  /**
   * Through the panel, for which the line is drawn, 1e-6 to 1e-3. Default 0.02 kg/s for each m², ISO 9806 (from memory). [m³/s]
   */
  readonly testFlow?: Quantity;
}

/** A survey as the schema leaves it. */
export type Survey = z.output<typeof surveySchema>;
