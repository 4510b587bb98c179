/**
 * A loop that empties when its pump stops: collectors and pipes above the vessel hold air then. What the metal keeps outside is lost, what the water
 * brings down is kept; the pump must lift the water again at every start.
 */
import { requireNumber } from '../../input/errors.ts';
import { excessAfter, type FlowingCollector } from '../collector/along-flow.ts';
import { GRAVITY } from './pump.ts';

/** Boiling water at the pressure of the air [°C], and what its steam takes along [J/kg]. IAPWS, 1 atm. */
const BOILING = 100;
const STEAM = 2.2565e6;

/** Collectors that drain. */
export interface Draining {
  /** Of all metal that stays outside. [J/K] */
  readonly dryCapacity: number;
  /** Water in them. [kg] */
  readonly content: number;
  /** Share of the water that hangs on in low spots. [-] */
  readonly shareStaying: number;
  /** [J/(kg·K)] */
  readonly specificHeat: number;
  /** Of collectors and water when the pump stops. [°C] */
  readonly temperature: number;
  /** Outdoor air. [°C] */
  readonly ambient: number;
  /** Water in the vessel before. [kg] */
  readonly vesselContent: number;
  /** [°C] */
  readonly vesselTemperature: number;
}

/** What {@link drained} answers. */
export interface Drained {
  /** Above the air, left outside in metal and low spots: lost. [J] */
  readonly heatLeft: number;
  /** Above the vessel's temperature, brought down with the water. [J] */
  readonly heatBroughtBack: number;
  /** After mixing. [°C] */
  readonly vesselTemperature: number;
}

/**
 * Heat that stays outside and heat that comes back when collectors drain into their vessel.
 *
 * @throws {@link DesignError} for a number out of its range.
 * @see Heat balance.
 */
export function drained(at: Draining): Drained {
  requireNumber('dryCapacity', at.dryCapacity, 0, 1e9, 'J/K');
  requireNumber('content', at.content, 0, 1e6, 'kg');
  requireNumber('shareStaying', at.shareStaying, 0, 1, '');
  requireNumber('specificHeat', at.specificHeat, 100, 20_000, 'J/(kg·K)');
  requireNumber('vesselContent', at.vesselContent, 1e-6, 1e7, 'kg');
  for (const name of ['temperature', 'ambient', 'vesselTemperature'] as const)
    requireNumber(name, at[name], -100, 400, '°C');
  const { ambient, content, shareStaying, specificHeat, temperature, vesselContent, vesselTemperature } = at;
  const back = (1 - shareStaying) * content * specificHeat;
  const heatBroughtBack = back * (temperature - vesselTemperature);
  return {
    heatLeft: (at.dryCapacity + shareStaying * content * specificHeat) * (temperature - ambient),
    heatBroughtBack,
    vesselTemperature: vesselTemperature + heatBroughtBack / (back + vesselContent * specificHeat),
  };
}

/**
 * Temperature of a dry collector that stands in the sun: C_dry dT/dt = A (S − a1 x − a2 x |x|), closed form. The rated losses are taken to hold for
 * the dry collector.
 *
 * @param collector - Area and coefficients.
 * @param dryCapacity - C_dry. [J/K]
 * @param at - Where it starts, the air, and how long it stands. [°C], [s]
 * @returns [°C]
 * @throws {@link DesignError} for a number out of its range.
 */
export function dryStanding(
  collector: FlowingCollector,
  dryCapacity: number,
  at: { readonly start: number; readonly ambient: number; readonly duration: number },
): number {
  requireNumber('dryCapacity', dryCapacity, 1e-3, 1e9, 'J/K');
  requireNumber('duration', at.duration, 0, 1e9, 's');
  return at.ambient + excessAfter(collector, at.start - at.ambient, (collector.area * at.duration) / dryCapacity);
}

/** What {@link refilled} answers. */
export interface Refilled {
  /** Of metal and water together. [°C] */
  readonly temperature: number;
  /** Of the water that flashed. [kg] */
  readonly steam: number;
}

/**
 * Hot dry metal meets the water that fills it: one temperature, and above 100 °C steam at the pressure of the air.
 *
 * @param dryCapacity - Of the metal. [J/K]
 * @param dry - Its temperature. [°C]
 * @param water - Heat capacity of the water [J/K] and its temperature. [°C]
 * @throws {@link DesignError} for a number out of its range.
 */
export function refilled(
  dryCapacity: number,
  dry: number,
  water: { readonly capacity: number; readonly temperature: number },
): Refilled {
  requireNumber('dryCapacity', dryCapacity, 0, 1e9, 'J/K');
  requireNumber('dry', dry, -100, 500, '°C');
  requireNumber('capacity', water.capacity, 1e-6, 1e12, 'J/K');
  requireNumber('temperature', water.temperature, -50, 100, '°C');
  const mixed = (dryCapacity * dry + water.capacity * water.temperature) / (dryCapacity + water.capacity);
  if (mixed <= BOILING) return { temperature: mixed, steam: 0 };
  return { temperature: BOILING, steam: ((dryCapacity + water.capacity) * (mixed - BOILING)) / STEAM };
}

/** A pump that fills collectors from a vessel open to their air. */
export interface Filling {
  /** Pump's head without flow. [m] */
  readonly shutOffHead: number;
  /** Its fall with the flow: H = H0 − c Q². [m/(m³/s)²] */
  readonly pumpFall: number;
  /** Friction of the pipes: b Q². [m/(m³/s)²] */
  readonly friction: number;
  /** Water in a metre of the rising pipe. [m²] */
  readonly bore: number;
  /** Top of the collectors over the vessel's level when all has drained. [m] */
  readonly rise: number;
  /** Water in the collectors. [m³] */
  readonly content: number;
  /** Level surface of the vessel. [m²] */
  readonly vesselArea: number;
}

/** What {@link fillTime} answers. */
export interface Filled {
  /** Lift with pipe and collectors full and the return open: the pump must have more head than this. [m] */
  readonly lift: number;
  /** Whether it does. */
  readonly fills: boolean;
  /** Time from start to full collectors; infinite where it does not fill. [s] */
  readonly time: number;
  /** Flow when they are just full and the return is still open. [m³/s] */
  readonly openFlow: number;
  /** Flow with a full return, whose weight takes the lift away. [m³/s] */
  readonly siphonFlow: number;
  /** Work on the water that was lifted. [J] */
  readonly work: number;
}

/**
 * How a drain-back loop fills. The lift grows with the water in the rising pipe, v/w, then stays; the vessel's level falls by v/A all the while.
 *
 *     t = ∫ √((b + c)/(H0 − lift(v))) dv
 *
 * in closed form: the lift is straight in v in both parts.
 *
 * @throws {@link DesignError} for a number out of its range.
 */
export function fillTime(of: Filling): Filled {
  requireNumber('shutOffHead', of.shutOffHead, 0.01, 1000, 'm');
  requireNumber('pumpFall', of.pumpFall, 0, 1e15, 'm/(m³/s)²');
  requireNumber('friction', of.friction, 0, 1e15, 'm/(m³/s)²');
  requireNumber('bore', of.bore, 1e-7, 1, 'm²');
  requireNumber('rise', of.rise, 0, 1000, 'm');
  requireNumber('content', of.content, 0, 100, 'm³');
  requireNumber('vesselArea', of.vesselArea, 1e-4, 1000, 'm²');
  const { bore, content, rise, shutOffHead, vesselArea } = of;
  const resistance = of.pumpFall + of.friction;
  // The pipe is full to the collectors' top when v/w has made up for the rise; the level has fallen meanwhile.
  const inPipe = rise * bore;
  const toTop = rise + inPipe / vesselArea;
  const lift = toTop + content / vesselArea;
  const fills = shutOffHead > lift;
  // ∫ dv/√(H0 − lift) over a straight piece of the lift.
  const piece = (volume: number, from: number, to: number): number =>
    (2 * volume) / (Math.sqrt(shutOffHead - from) + Math.sqrt(shutOffHead - to));
  const time = fills
    ? Math.sqrt(resistance) * (piece(inPipe, 0, toTop) + piece(content, toTop, lift))
    : Number.POSITIVE_INFINITY;
  return {
    lift,
    fills,
    time,
    openFlow: fills ? Math.sqrt((shutOffHead - lift) / resistance) : 0,
    siphonFlow: Math.sqrt(shutOffHead / resistance),
    work: 1000 * GRAVITY * ((inPipe * toTop) / 2 + (content * (toTop + lift)) / 2),
  };
}
