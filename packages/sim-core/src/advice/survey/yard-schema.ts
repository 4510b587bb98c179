import type { LoopFluid } from '../../design/design.ts';
import { quote } from '../../input/errors.ts';
import { choice, defaulted, fault, label, quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import * as z from '../../input/zod.ts';
import { MAXIMUM_MASS_FRACTION } from '../../physics/fluid/melinder.ts';
import { type Measured, measured } from './schema.ts';

const tool = 'judgement: ';

/** How far the tools may be off; each may be given. */
const toolsSchema = z.strictObject({
  thermometer: quantityOr('temperatureDifference', 0.01, 10, 0.3, `${tool}two probes of one kind, read twice`),
  thermometerPair: quantityOr('temperatureDifference', 0, 5, 0.2, `${tool}after both were held in one bucket`),
  air: quantityOr('temperatureDifference', 0.01, 10, 1, `${tool}a shaded thermometer in the wind`),
  flowReading: quantityOr('fraction', 0.001, 0.5, 0.03, `${tool}a bucket and a watch`),
  flowScale: quantityOr('fraction', 0, 0.5, 0.02, `${tool}marks of the bucket`),
  sunReading: quantityOr('fraction', 0.001, 0.5, 0.02, `${tool}steady sun`),
  sunScale: quantityOr('fraction', 0, 0.5, 0.07, `${tool}a pocket meter, or a small module’s short-circuit current`),
});

const pointSchema = z
  .strictObject({
    inlet: quantity('temperature', -20, 120),
    outlet: quantity('temperature', -20, 130),
    flow: quantity('flow', 1e-6, 1e-3),
    irradiance: quantity('irradiance', 0, 1500),
    air: quantity('temperature', -30, 50),
    incidence: quantityOr('angle', 0, 89, 0, `${tool}the panel was turned to the sun`),
    diffuseShare: quantityOr('fraction', 0, 1, 0.15, `${tool}a clear sky`),
    warming: quantity('temperatureDifference', -60, 60).optional(),
  })
  .superRefine((point, context) => {
    if (point.irradiance > 0 && point.irradiance < LEAST_SUN) {
      fault(
        context,
        `${point.irradiance} W/m²`,
        `0 with the panel covered, or at least ${LEAST_SUN} W/m²`,
        'Thin sun tells neither light nor loss: wait for more, or cover the panel.',
        ['irradiance'],
      );
    }
    if (point.irradiance > 0 && point.incidence > WIDEST) {
      fault(context, `${point.incidence}°`, `at most ${WIDEST}°`, 'Turn the panel to the sun.', ['incidence']);
    }
  });

/** Less sun than this tells nothing about eta0; judgement. [W/m²] */
const LEAST_SUN = 300;
/** Steeper light is more the modifier's test than the panel's; judgement. [°] */
const WIDEST = 50;

/** Schema of a yard test. */
export const yardSchema = z
  .strictObject({
    name: label.optional(),
    area: quantity('area', 0.1, 20),
    fluid: defaulted(choice(['water', 'propylene-glycol', 'ethylene-glycol']), 'water', '', 'judgement: a garden hose'),
    glycolMassFraction: quantityOr('fraction', 0, MAXIMUM_MASS_FRACTION, 0, 'judgement: a garden hose'),
    b0: quantityOr('fraction', 0, 1, 0.1, 'single glazing, Duffie & Beckman §6.17 (from memory)'),
    heatCapacity: quantityOr('heatCapacityPerArea', 0, 60_000, 8000, 'judgement: as of a panel with 0.7 L/m²'),
    tools: toolsSchema.prefault({}),
    points: z.array(pointSchema),
    known: z
      .strictObject({
        eta0: measured('fraction', 0.05, 1),
        a1: measured('heatTransfer', 0.2, 40),
        a2: measured('heatTransferPerKelvin', 0, 0.2),
      })
      .prefault({}),
  })
  .superRefine((test, context) => {
    if (test.points.length === 0) {
      fault(context, 'no points', 'one point at least', 'Give what was read.', ['points']);
    }
    if (test.points.length > 500) {
      fault(context, `${test.points.length} points`, 'at most 500', 'Give means over ten minutes.', ['points']);
    }
    if (test.fluid === 'water' && test.glycolMassFraction > 0) {
      fault(context, quote(test.glycolMassFraction), '0 with fluid "water"', 'Name the glycol.', [
        'glycolMassFraction',
      ]);
    }
    test.points.forEach((point, row) => {
      const middle = (point.inlet + point.outlet) / 2;
      if (Math.abs(point.outlet - point.inlet) > 60) {
        fault(context, `${point.outlet} °C`, 'at most 60 K from the inlet', 'Check the two, or raise the flow.', [
          'points',
          String(row),
          'outlet',
        ]);
      }
      if (point.irradiance === 0 && middle - point.air < 10) {
        fault(
          context,
          `${(middle - point.air).toFixed(1)} K above the air`,
          'at least 10 K with the panel covered',
          'Without sun only a warm inlet tells the loss.',
          ['points', String(row), 'inlet'],
        );
      }
    });
  });

/** One reading: means over some ten minutes of steady sun and flow. */
export interface YardReading {
  /** Fluid into the panel, −20 to 120. [°C] */
  readonly inlet: Quantity;
  /** Fluid out of it, −20 to 130. [°C] */
  readonly outlet: Quantity;
  /** Through the panel, 1e-6 to 1e-3. [m³/s] */
  readonly flow: Quantity;
  /** In the panel's plane, 300 to 1500; 0 with the panel covered. [W/m²] */
  readonly irradiance: Quantity;
  /** Outdoor air in the shade, −30 to 50. [°C] */
  readonly air: Quantity;
  /** Of the sun on the panel, 0 to 50. Default 0: turned to the sun. [°] */
  readonly incidence?: Quantity;
  /** Share of diffuse light. Default 0.15, a clear sky; judgement. [-] */
  readonly diffuseShare?: Quantity;
  /** How fast the mean of inlet and outlet rises, in an hour, −60 to 60. Default 0: steady. [K] */
  readonly warming?: Quantity;
}

/** What the tools may be off; standard deviations, two readings in three lie within. Defaults are judgement. */
export interface YardTools {
  /** One thermometer, from reading to reading. Default 0.3. [K] */
  readonly thermometer?: Quantity;
  /** One thermometer against the other, the same in all readings. Default 0.2. [K] */
  readonly thermometerPair?: Quantity;
  /** Air. Default 1. [K] */
  readonly air?: Quantity;
  /** Flow, from reading to reading. Default 0.03. [-] */
  readonly flowReading?: Quantity;
  /** Flow, the same in all readings. Default 0.02. [-] */
  readonly flowScale?: Quantity;
  /** Light, from reading to reading. Default 0.02. [-] */
  readonly sunReading?: Quantity;
  /** Light, the same in all readings. Default 0.07: a pocket meter, or a small module's short-circuit current. [-] */
  readonly sunScale?: Quantity;
}

/** Readings of a yard test; `area` and `points` are needed. */
export interface YardTestInput {
  /** Name for reports. */
  readonly name?: string;
  /** Aperture, 0.1 to 20; eta0, a1 and a2 refer to it. [m²] */
  readonly area: Quantity;
  /** Default `'water'`. */
  readonly fluid?: LoopFluid;
  /** Glycol by mass, 0 to 0.6. Default 0. [-] */
  readonly glycolMassFraction?: Quantity;
  /** Incidence modifier, 0 to 1. Default 0.1, single glazing, Duffie & Beckman §6.17 (from memory). [-] */
  readonly b0?: Quantity;
  /** Of the panel with its fluid, 0 to 60,000. Default 8000, judgement. [J/(m²·K)] */
  readonly heatCapacity?: Quantity;
  /** What the tools may be off. */
  readonly tools?: YardTools;
  /** 1 to 500. */
  readonly points: readonly YardReading[];
  /** What is known from elsewhere, such as the bands of a survey; a bare number is taken as good to 10 %. */
  readonly known?: {
    /** [-] */
    readonly eta0?: Measured;
    /** [W/(m²·K)] */
    readonly a1?: Measured;
    /** [W/(m²·K²)] */
    readonly a2?: Measured;
  };
}

/** @internal */
export type YardTest = z.output<typeof yardSchema>;
