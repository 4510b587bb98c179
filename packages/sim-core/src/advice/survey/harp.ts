/** Tubes of a panel: content, flow resistance and film inside. */
import {
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidSpecificHeat,
  fluidViscosity,
} from '../../physics/fluid/compile.ts';
import { straightTubeNusselt } from '../../physics/loop/film.ts';
import { pipePressureDrop, pipeReynolds } from '../../physics/loop/friction.ts';
import type { TubeLayout } from './words.ts';

/** Nusselt number of developed laminar flow with the same heat on each metre. [-] */
const LAMINAR_NUSSELT = 4.364;

/** Where a riser leaves one header and enters the other, together; from memory, any handbook of fittings. [-] */
const ENTRY_AND_EXIT = 1.5;
/** A bend of a serpentine; judgement. [-] */
const BEND = 0.4;
/** A header gives its flow away along its way: a third of the drop of the full flow. [-] */
const HEADER_SHARE = 1 / 3;
/** Wall of the headers; judgement. [m] */
export const HEADER_WALL = 0.0009;

const water = () => compileFluid('water', 0);

/** Tubes of a panel. */
export interface Tubes {
  readonly layout: TubeLayout;
  /** Of the plate, along the tubes of a harp. [m] */
  readonly length: number;
  /** Of the plate, across them. [m] */
  readonly width: number;
  readonly spacing: number;
  /** Bore. [m] */
  readonly bore: number;
  /** Bore of the headers. [m] */
  readonly headerBore: number;
}

/** Parallel tubes, or passes of the one tube; not rounded, so that small changes of the spacing are seen. */
const tubeCount = ({ width, spacing }: Tubes): number => Math.max(2, width / spacing);

/** Length of all tubes under the plate. [m] */
export const tubeLength = (tubes: Tubes): number => tubeCount(tubes) * tubes.length;

/** Liquid in tubes and headers. [m³] */
export function tubeContent(tubes: Tubes): number {
  const headers = tubes.layout === 'harp' ? 2 * tubes.width * tubes.headerBore ** 2 : 0;
  return (Math.PI / 4) * (tubeLength(tubes) * tubes.bore ** 2 + headers);
}

/** Flow in one tube of a panel's flow. [m³/s] */
const tubeFlow = (tubes: Tubes, flow: number): number => (tubes.layout === 'harp' ? flow / tubeCount(tubes) : flow);

/** Pressure drop of the panel with water at 20 °C. [Pa] */
export function tubeDrop(tubes: Tubes, flow: number): number {
  const state = { density: fluidDensity(water(), 20), dynamicViscosity: fluidViscosity(water(), 20) };
  const harp = tubes.layout === 'harp';
  const risers = pipePressureDrop({
    ...state,
    flow: tubeFlow(tubes, flow),
    length: harp ? tubes.length : tubeLength(tubes),
    innerDiameter: tubes.bore,
    fittingLoss: harp ? ENTRY_AND_EXIT : BEND * 2 * tubeCount(tubes),
  });
  if (!harp) return risers;
  const header = pipePressureDrop({ ...state, flow, length: 2 * tubes.width, innerDiameter: tubes.headerBore });
  return risers + HEADER_SHARE * header;
}

/** Temperature at which the film is taken: the middle of the line's points. [°C] */
const FILM_TEMPERATURE = 50;

/** Film inside the tubes with water: 4.364 k/d while laminar, as in a straight tube when turbulent. [W/(m²·K)] */
export function tubeFilm(tubes: Tubes, flow: number): number {
  const viscosity = fluidViscosity(water(), FILM_TEMPERATURE);
  const conductivity = fluidConductivity(water(), FILM_TEMPERATURE);
  const reynolds = pipeReynolds(tubeFlow(tubes, flow), tubes.bore, fluidDensity(water(), FILM_TEMPERATURE), viscosity);
  const prandtl = (viscosity * fluidSpecificHeat(water(), FILM_TEMPERATURE)) / conductivity;
  return (Math.max(LAMINAR_NUSSELT, straightTubeNusselt(reynolds, prandtl)) * conductivity) / tubes.bore;
}
