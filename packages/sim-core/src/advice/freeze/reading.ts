import { checkInput } from '../../input/check.ts';
import { DesignError, quote } from '../../input/errors.ts';
import { choice, defaulted, fault, quantity, quantityOr } from '../../input/field.ts';
import { type Quantity, toSi } from '../../input/quantity.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { burstProtection } from '../../physics/fluid/burst.ts';
import { compileFluid, fluidDensity } from '../../physics/fluid/compile.ts';
import { GLYCOLS, type Glycol, MAXIMUM_MASS_FRACTION } from '../../physics/fluid/melinder.ts';
import { glycolVolumeFromMass } from '../../physics/fluid/mixture.ts';
import { waterDensity } from '../../physics/fluid/water.ts';
import { risingRoot } from '../../physics/root.ts';

const SCALES: readonly GlycolScale[] = ['freezing-point', 'refractive-index', 'brix', 'density'];

/** What an instrument shows. */
export type GlycolScale = 'freezing-point' | 'refractive-index' | 'brix' | 'density';

/** Anything that some scale could show; which one is checked with the scale. */
const shownValue = z
  .custom<number | string>(() => true)
  .transform((value, context): number | string => {
    if (toSi(value, 'temperature') !== null) return value;
    fault(context, quote(value), 'what the scale shows: a number, or a temperature with its unit', 'Read it again.');
    return z.NEVER;
  });

const readingSchema = z
  .strictObject({
    glycol: defaulted(
      choice(['propylene-glycol', 'ethylene-glycol']),
      'propylene-glycol',
      '',
      'food-grade glycol, common practice',
    ),
    scale: choice(SCALES),
    value: shownValue,
    temperature: quantityOr('temperature', 5, 40, 20, 'most hand refractometers correct to 20 °C'),
    give: quantity('fraction', 0, 100).optional(),
  })
  .superRefine(({ scale, value }, context) => {
    if (valueOn(scale, value) !== null) return;
    const [low, high] = RANGES[scale];
    fault(
      context,
      quote(value),
      `a value from ${low} to ${high}${SCALE_UNITS[scale] === '1' ? '' : ` ${SCALE_UNITS[scale]}`}`,
      'Read the scale again; most hand refractometers have one scale for each glycol.',
      ['value'],
    );
  });

/** A reading; `scale` and `value` are needed. */
export interface GlycolReading {
  /** Kind of glycol. Default `'propylene-glycol'`. */
  readonly glycol?: Glycol;
  /** What the instrument shows. */
  readonly scale: GlycolScale;
  /** The reading: [°C] or a temperature with its unit, index [-], [°Bx] or [kg/m³]. */
  readonly value: number | string;
  /** Of the sample, 5 to 40; not used by `'freezing-point'` and `'brix'`. Default 20. [°C] */
  readonly temperature?: Quantity;
  /** What instrument and eye may be off, in the scale's unit. Default 1.5 K, 0.001, 0.6 °Bx, 1 kg/m³; judgement. */
  readonly give?: number;
}

/** What a reading says of the fluid. */
export interface GlycolStrength {
  /** Glycol by mass. [-] */
  readonly massFraction: number;
  /** What the instrument's reading error makes of it, either side. [-] */
  readonly error: number;
  /** Volumes before mixing, as dealers speak. [-] */
  readonly volumeFraction: number;
  /** First ice. [°C] */
  readonly freezingPoint: number;
  /** Freezing point if the reading is off to the weaker side. [°C] */
  readonly worstFreezingPoint: number;
  /** Down to which it bursts no pipe. [°C] */
  readonly burstPoint: number;
  /** The working. */
  readonly steps: readonly WorkingStep[];
}

const SCALE_UNITS: Readonly<Record<GlycolScale, string>> = {
  'freezing-point': '°C',
  'refractive-index': '1',
  brix: '°Bx',
  density: 'kg/m³',
};
const RANGES: Readonly<Record<GlycolScale, readonly [number, number]>> = {
  'freezing-point': [-60, 0],
  'refractive-index': [1.325, 1.4],
  brix: [0, 50],
  density: [980, 1100],
};
/** What hand instruments are off, scale and eye, with what the rule of Lorentz and Lorenz may be off; judgement. */
const GIVES: Readonly<Record<GlycolScale, number>> = {
  'freezing-point': 1.5,
  'refractive-index': 0.001,
  brix: 0.6,
  density: 1,
};

/** Index of the sodium line at 20 °C: water (IAPWS), pure glycols (handbook), all from memory. */
const WATER_INDEX = 1.33299;
const INDICES: Readonly<Record<Glycol, number>> = { 'propylene-glycol': 1.4324, 'ethylene-glycol': 1.4318 };

/** Index of sucrose solutions at 20 °C each 5 °Bx (ICUMSA, from memory). */
const BRIX = [
  1.33299, 1.34026, 1.34782, 1.35568, 1.36384, 1.37233, 1.38115, 1.39032, 1.39986, 1.40987, 1.42009,
] as const;

function valueOn(scale: GlycolScale, value: unknown): number | null {
  const [low, high] = RANGES[scale] ?? [0, 0];
  const si = scale === 'freezing-point' ? toSi(value, 'temperature') : typeof value === 'number' ? value : null;
  return si !== null && si >= low && si <= high ? si : null;
}

/** (n² − 1)/(n² + 2). */
const refraction = (n: number): number => (n * n - 1) / (n * n + 2);

/**
 * Refractive index of a glycol mixture at the sodium line, by the rule of Lorentz and Lorenz with the mixture's own density.
 *
 *     (n² − 1)/(n² + 2) = ρ(x, t) [x r_g + (1 − x) r_w],   r = (n² − 1)/((n² + 2) ρ) of each at 20 °C
 *
 * @param glycol - Kind.
 * @param massFraction - 0 to 0.6; not checked. [-]
 * @param temperature - Of the sample. [°C]
 * @internal
 */
function mixtureIndex(glycol: Glycol, massFraction: number, temperature: number): number {
  const ofGlycol = refraction(INDICES[glycol]) / GLYCOLS[glycol].pureDensity;
  const ofWater = refraction(WATER_INDEX) / waterDensity(20);
  const rho = fluidDensity(compileFluid(glycol, massFraction), temperature);
  const whole = rho * (massFraction * ofGlycol + (1 - massFraction) * ofWater);
  return Math.sqrt((1 + 2 * whole) / (1 - whole));
}

/** Index of a Brix value, linear between the table's rows; within 0.0002. */
function indexOfBrix(brix: number): number {
  const row = Math.min(Math.trunc(brix / 5), BRIX.length - 2);
  return BRIX[row]! + ((BRIX[row + 1]! - BRIX[row]!) * (brix - 5 * row)) / 5;
}

/**
 * Strength of a loop's glycol from a refractometer, a hydrometer or a freezing point.
 *
 * - `'freezing-point'` [°C], as most refractometers for this use are marked, or tried in a freezer: Melinder's curve, inverted.
 * - `'refractive-index'` at the sodium line, at `temperature`; `'brix'`, the sugar scale, corrected to 20 °C: the rule of
 *   Lorentz and Lorenz with Melinder's density (indices of the pure liquids from memory), inverted.
 * - `'density'` [kg/m³] at `temperature`: Melinder's density, inverted. Propylene glycol is hardly denser than water: its
 *   band is wide.
 *
 * Inhibitors shift index and density a little, and a mixture of two glycols reads as either; a fluid that is dark or smells
 * is spent whatever it reads.
 *
 * @param reading - See {@link GlycolReading}; `give` is what the instrument may be off, in the scale's unit.
 * @throws {@link DesignError} listing all faults at once, and where no mixture of 0 to 0.6 reads so.
 * @see Melinder (2010); Lorentz & Lorenz; ICUMSA for Brix (from memory).
 */
export function glycolFromReading(reading: GlycolReading): GlycolStrength {
  const { glycol, scale, value, temperature, give = GIVES[scale as GlycolScale] } = checkInput(readingSchema, reading);
  const shown = valueOn(scale, value)!;
  const at = scale === 'brix' ? 20 : temperature;
  const expected = (x: number): number => {
    if (scale === 'freezing-point') return -compileFluid(glycol, x).freezingPoint;
    return scale === 'density' ? fluidDensity(compileFluid(glycol, x), at) : mixtureIndex(glycol, x, at);
  };
  const wanted = (shown: number): number =>
    scale === 'freezing-point' ? -shown : scale === 'brix' ? indexOfBrix(Math.min(Math.max(shown, 0), 50)) : shown;
  const target = wanted(shown);
  const off = Math.abs(wanted(shown + give) - target);
  if (target > expected(MAXIMUM_MASS_FRACTION) + off || target < expected(0) - off) {
    throw new DesignError([
      {
        path: 'value',
        found: String(value),
        expected: `what ${glycol} of 0 to 60 % by mass reads`,
        remedy: 'Check the scale, the kind of glycol and the sample’s temperature.',
      },
    ]);
  }
  const massFraction = invert(expected, target);
  const weak = invert(expected, target - off);
  const strong = invert(expected, target + off);
  const error = Math.max(massFraction - weak, strong - massFraction);
  const ofWeak = compileFluid(glycol, weak).freezingPoint;
  const { freezingPoint } = compileFluid(glycol, massFraction);
  const isCorrected = scale === 'freezing-point' || scale === 'brix';
  const steps = [
    line(`glycol-by-${scale}`, [massFraction, '-'], {
      shown: [shown, SCALE_UNITS[scale]],
      give: [give, scale === 'freezing-point' ? 'K' : SCALE_UNITS[scale]],
      ...(isCorrected ? {} : { sample: [at, '°C'] as const }),
    }),
    line('glycol-freezing-point', [freezingPoint, '°C'], {
      share: [massFraction, '1'],
      weakest: [weak, '1'],
      ofWeakest: [ofWeak, '°C'],
    }),
  ];
  return {
    massFraction,
    error,
    volumeFraction: glycolVolumeFromMass(glycol, massFraction),
    freezingPoint,
    worstFreezingPoint: ofWeak,
    burstPoint: burstProtection(glycol, massFraction),
    steps,
  };
}

/** Share at which a rising function has a value, held within 0 to 0.6. */
const invert = (f: (x: number) => number, wanted: number): number =>
  risingRoot((x) => f(x) - wanted, 0, MAXIMUM_MASS_FRACTION, 1e-12);
