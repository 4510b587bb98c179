/** What the sizing of coil, pipe and pump answers. */
import type { Saying } from '../../input/saying.ts';
import type { WorkingStep } from '../../input/working.ts';
import type { PumpInLight } from '../../physics/loop/pump-in-light.ts';
import type { AdviceCode } from '../advice-codes.ts';
import type { BestPumpStart } from './pump-start.ts';

/** How much coil, and why. */
export interface CoilSizing {
  /** Length of the design's tube. [m] */
  readonly length: number;
  /** Outside surface. [m²] */
  readonly surface: number;
  /** Outside surface for each m² of collector. [-] */
  readonly surfacePerArea: number;
  /** UA at work. [W/K] */
  readonly conductance: number;
  /** Effectiveness in a tank of one temperature. [-] */
  readonly effectiveness: number;
  /** What the coil leaves of the collectors' heat, against an endless one. [-] */
  readonly collectorShare: number;
  /** Mean of the fluid over the tank with the design's own length. [K] */
  readonly differenceAsDesigned: number;
  /** The working. */
  readonly steps: readonly WorkingStep[];
}

/** A tube with the loop's flow in it. */
export interface PipeChoice {
  /** Outside. [m] */
  readonly outerDiameter: number;
  /** Bore. [m] */
  readonly innerDiameter: number;
  /** [m/s] */
  readonly velocity: number;
  /** Re of the warm fluid. [-] */
  readonly reynolds: number;
  /** Of the warm fluid, both ways, fittings included. [m] */
  readonly head: number;
  /** Of the cold fluid at the same flow. [m] */
  readonly coldHead: number;
  /** Both ways. [m³] */
  readonly content: number;
  /** Whether velocity and head keep their limits. */
  readonly fits: boolean;
}

/** A thickness of insulation. */
export interface InsulationChoice {
  /** [m] */
  readonly thickness: number;
  /** U' with its heat bridges. [W/(m·K)] */
  readonly lossPerMetre: number;
  /** Both ways, warm fluid. [W] */
  readonly loss: number;
  /** Loss over full-sun heat. [-] */
  readonly share: number;
  /** R of the shell on its outer surface, (D_i/2) ln(D_i/D)/k. [m²·K/W] */
  readonly resistance: number;
  /** Thickness over the tube's outside. [-] */
  readonly overTube: number;
  /** Whether it keeps what codes ask indoors: R-3, and the tube's own outside. */
  readonly meetsCode: boolean;
  /** Whether it keeps what codes ask out of doors: R-3, and twice the tube's outside. */
  readonly meetsCodeOutdoors: boolean;
}

/** Which tube and how much insulation, and why. */
export interface PipeSizing {
  /** Smallest tube that keeps velocity and head; the widest where none does. */
  readonly pipe: PipeChoice;
  /** All tubes looked at. */
  readonly pipes: readonly PipeChoice[];
  /** Thinnest that keeps the loss and what codes ask indoors; the thickest where none does. */
  readonly insulation: InsulationChoice;
  /** The same, by what codes ask out of doors. */
  readonly outdoorInsulation: InsulationChoice;
  /** All thicknesses looked at, on that tube. */
  readonly insulations: readonly InsulationChoice[];
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What to look at. */
  readonly notes: readonly Saying<AdviceCode>[];
}

/** What a pump does on its module. */
export interface PumpSizing {
  /** Light at which a standing pump starts; `null`: not up to 1200 W/m²; 0 with the mains. [W/m²] */
  readonly startIrradiance: number | null;
  /**
   * Light at which a turning pump stops: the booster offers less than the stop power, or a direct drive's module no longer carries the
   * rotor's friction. [W/m²]
   */
  readonly stopIrradiance: number | null;
  /** In 1000 W/m², fluid warm. */
  readonly fullSun: PumpInLight;
  /** In the light of a dull morning, fluid cold. */
  readonly dullMorning: PumpInLight;
  /** Warm fluid, 100 to 1000 W/m². */
  readonly rows: readonly PumpInLight[];
  /** Flow in full sun for each m² of collector. [m³/(s·m²)] */
  readonly flowPerArea: number;
  /** Warming of the fluid through the array in full sun, cold tank. [K] */
  readonly riseInFullSun: number;
  /**
   * Rated power of module (1000 W/m², 25 °C) that starts the pump in the light wanted; `null` on a direct drive or the mains.
   * [W]
   */
  readonly modulePowerForStart: number | null;
  /** Start that delivers most in the year given; `null` without weather, with the mains, or where another rules the pump. */
  readonly bestStart: BestPumpStart | null;
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What to look at. */
  readonly notes: readonly Saying<AdviceCode>[];
}
