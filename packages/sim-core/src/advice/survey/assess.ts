/** One panel worked through: from the survey's numbers to all that is wanted of it. */
import { type CollectorBuild, type RatedLine, type RatingConditions, ratedLine, stagnationOfBuild } from './build.ts';
import { modifierOfCovers, throughCovers } from './covers.ts';
import { HEADER_WALL, type Tubes, tubeContent, tubeDrop, tubeFilm, tubeLength } from './harp.ts';
import type { ParameterName } from './parameter.ts';
import type { Survey } from './schema.ts';
import { COVERS, INSULATIONS, METALS } from './words.ts';

/** Value of each parameter. */
export type Values = Readonly<Record<ParameterName, number>>;

/** Numbers of a panel, per aperture unless said. */
export interface SurveyNumbers {
  /** [-] */
  readonly eta0: number;
  /** [W/(m²·K)] */
  readonly a1: number;
  /** [W/(m²·K²)] */
  readonly a2: number;
  /** [-] */
  readonly b0: number;
  /** Efficiency at work, 30 K above the air in 800 W/m². [-] */
  readonly efficiencyAtWork: number;
  /** [J/(m²·K)] */
  readonly heatCapacity: number;
  /** Of the panel with water at 20 °C at its rated flow. [Pa] */
  readonly pressureDrop: number;
  /** [m³] */
  readonly fluidContent: number;
  /** [m²] */
  readonly apertureArea: number;
  /** [kg] */
  readonly weightEmpty: number;
  /** Full of water, per gross area: what the roof carries. [kg/m²] */
  readonly weightFull: number;
  /** Plate with no flow, 1000 W/m², 30 °C, still air. [°C] */
  readonly stagnationTemperature: number;
}

/** How the line is drawn: the points of the test, at a common test flow. */
export const STANDARD = {
  irradiance: 800,
  ambientTemperature: 20,
  slope: 45,
  inletTemperatures: [20, 35, 50, 65, 80],
} as const;
/** Stagnation, ISO 9806 (from memory). */
export const STAGNATION = { irradiance: 1000, ambientTemperature: 30 } as const;
/**
 * Stagnation is measured in still air: film of 5 W/(m²·K) against 10 (Duffie & Beckman §3.15, least value, from memory). [-]
 */
const CALM = 0.5;
/** Mean of the fluid over the air, and light, of the efficiency at work: a tank near 50 °C on a mild sunny day; judgement. */
export const WORK = { difference: 30, irradiance: 800 } as const;

/** Flow of the test: 0.02 kg/s for each m² (ISO 9806, from memory). [kg/(s·m²)] */
export const TEST_FLOW = 0.02;

/** Long-wave emittance of glass and of thick plastics. [-] */
const COVER_EMITTANCE = 0.88;
const INSULATION_HEAT = 840;
const COVER_HEAT = 750;
/** Water at 20 °C. [kg/m³], [J/(kg·K)] */
export const WATER_20 = { density: 998.2, specificHeat: 4184 };

/** Everything worked out, with what is worth showing of the way. */
export interface Assessed {
  readonly outputs: SurveyNumbers;
  readonly build: CollectorBuild;
  readonly conditions: RatingConditions;
  readonly line: RatedLine;
  readonly grossArea: number;
  readonly tubes: Tubes;
  /** Test flow of the panel. [m³/s] */
  readonly flow: number;
  /** (τα) of clean covers and new plate. [-] */
  readonly transmittanceAbsorptance: number;
  readonly masses: Readonly<Record<'plate' | 'tubes' | 'covers' | 'insulation' | 'box' | 'liquid', number>>;
}

/** Works a panel through. @param flow - Test flow of the panel; the same for all values of one survey. [m³/s] */
export function assess(survey: Survey, v: Values, flow: number): Assessed {
  const { covers, coverKind = 'unknown', plateMetal = 'unknown', layout = 'harp' } = survey;
  const cover = COVERS[coverKind];
  const plate = METALS[plateMetal];
  const pipe =
    METALS[survey.tubeMetal ?? (plateMetal === 'unknown' || plateMetal === 'aluminium' ? 'copper' : plateMetal)];
  // Limits of a narrow panel's rim must not eat the panel.
  const within = (outside: number) => Math.max(outside - 2 * v.frame, 0.3 * outside);
  const inner = { length: within(v.length), width: within(v.width) };
  const area = inner.length * inner.width;
  const grossArea = v.length * v.width;
  const bore = Math.max(v.tubeDiameter - 2 * v.tubeWall, 0.3 * v.tubeDiameter);
  const headerBore = Math.max(v.headerDiameter - 2 * HEADER_WALL, bore);
  const tubes: Tubes = { layout, ...inner, spacing: v.tubeSpacing, bore, headerBore };
  const optics = {
    covers,
    refractiveIndex: cover.refractiveIndex,
    opticalThickness: v.coverExtinction * v.coverThickness,
    absorptance: v.absorptance,
  };
  const transmittanceAbsorptance = throughCovers(optics, 0);
  const build: CollectorBuild = {
    area,
    edgeArea: 2 * (v.length + v.width) * v.depth,
    covers,
    coverEmittance: COVER_EMITTANCE,
    plateEmittance: v.emittance,
    transmittanceAbsorptance: transmittanceAbsorptance * v.light,
    plateConductivity: v.plateConductivity,
    plateThickness: v.plateThickness,
    tubeSpacing: v.tubeSpacing,
    tubeDiameter: Math.min(v.tubeDiameter, v.tubeSpacing),
    innerDiameter: bore,
    bondResistance: v.bondResistance,
    filmCoefficient: tubeFilm(tubes, flow) * v.film,
    insulationConductivity: v.insulationConductivity * v.insulationAgeing,
    backThickness: v.backInsulation,
    edgeThickness: v.edgeInsulation,
    extraTopLoss: v.topLoss,
  };
  const conditions: RatingConditions = {
    ...STANDARD,
    windCoefficient: v.wind,
    capacityRate: flow * WATER_20.density * WATER_20.specificHeat,
  };
  const line = ratedLine(build, conditions);
  const masses = panelMasses(survey, v, { area, grossArea, tubes, pipeDensity: pipe.density });
  const { difference, irradiance } = WORK;
  const efficiencyAtWork = line.eta0 - ((line.a1 + line.a2 * difference) * difference) / irradiance;
  const dry = masses.plate + masses.tubes + masses.covers + masses.insulation + masses.box;
  // The weights of EN ISO 9806's calculation: plate and liquid whole, insulation half, cover 0.01 m²K/W × a1 (from memory).
  const heat =
    masses.plate * plate.specificHeat +
    masses.tubes * pipe.specificHeat +
    masses.liquid * WATER_20.specificHeat +
    0.5 * masses.insulation * INSULATION_HEAT +
    Math.min(0.01 * line.a1, 1) * masses.covers * COVER_HEAT;
  return {
    outputs: {
      eta0: line.eta0,
      a1: line.a1,
      a2: line.a2,
      b0: modifierOfCovers(optics),
      efficiencyAtWork,
      heatCapacity: heat / area,
      pressureDrop: tubeDrop(tubes, flow),
      fluidContent: tubeContent(tubes),
      apertureArea: area,
      weightEmpty: dry,
      weightFull: (dry + masses.liquid) / grossArea,
      stagnationTemperature: stagnationOfBuild(build, {
        ...conditions,
        ...STAGNATION,
        windCoefficient: CALM * v.wind,
      }),
    },
    build,
    conditions,
    line,
    grossArea,
    tubes,
    flow,
    transmittanceAbsorptance,
    masses,
  };
}

function panelMasses(
  survey: Survey,
  v: Values,
  panel: { area: number; grossArea: number; tubes: Tubes; pipeDensity: number },
): Assessed['masses'] {
  const { covers, coverKind = 'unknown', plateMetal = 'unknown', insulation = 'unknown', layout = 'harp' } = survey;
  const { area, grossArea, tubes, pipeDensity } = panel;
  const shell = (outer: number, inner: number) => (Math.PI / 4) * (outer * outer - inner * inner) * pipeDensity;
  const headers = layout === 'harp' ? 2 * tubes.width * shell(v.headerDiameter, tubes.headerBore) : 0;
  const plate = area * v.plateThickness * METALS[plateMetal].density;
  const tubeMass = tubeLength(tubes) * shell(v.tubeDiameter, tubes.bore) + headers;
  const glass = covers * area * v.coverThickness * COVERS[coverKind].density;
  const wool = INSULATIONS[insulation].density;
  const soft = wool * (area * v.backInsulation + 2 * (v.length + v.width) * v.depth * v.edgeInsulation);
  // Weighed, boxMass is the whole panel's, and the box is what the other parts leave of it.
  const box =
    survey.weightEmpty === undefined ? v.boxMass * grossArea : Math.max(v.boxMass - plate - tubeMass - glass - soft, 0);
  const liquid = tubeContent(tubes) * WATER_20.density;
  return { plate, tubes: tubeMass, covers: glass, insulation: soft, box, liquid };
}
