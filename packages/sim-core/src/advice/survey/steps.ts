/** The working of a survey, line by line. */
import { line as step, type WorkingStep } from '../../input/working.ts';
import { type Assessed, STAGNATION, STANDARD, WORK } from './assess.ts';
import { fins } from './fin.ts';

/** The working of a panel, for the middle point of the line. @internal */
export const surveySteps = (a: Assessed): WorkingStep[] => [...plateSteps(a), ...lineSteps(a)];

const U = 'W/(m²·K)';

/** From the aperture to the collector efficiency factor. */
function plateSteps(a: Assessed): WorkingStep[] {
  const { build: b, tubes, line, flow } = a;
  const point = line.points[2]!;
  const back = b.insulationConductivity / b.backThickness;
  const edge = (b.insulationConductivity / b.edgeThickness) * (b.edgeArea / b.area);
  const conductivity = [b.insulationConductivity, 'W/(m·K)'] as const;
  const area = [b.area, 'm²'] as const;
  const plate = [point.plateTemperature, '°C'] as const;
  return [
    step('panel-aperture', area, { length: [tubes.length, 'm'], width: [tubes.width, 'm'] }),
    step('panel-light', [b.transmittanceAbsorptance, '-'], {
      clean: [a.transmittanceAbsorptance, '1'],
      left: [b.transmittanceAbsorptance / a.transmittanceAbsorptance, '1'],
    }),
    step('panel-plate', plate, {
      inlet: [point.inletTemperature, '°C'],
      light: [STANDARD.irradiance, 'W/m²'],
      air: [STANDARD.ambientTemperature, '°C'],
    }),
    step('panel-top-loss', [point.topLoss, U], {
      plate,
      covers: [b.covers, '1'],
      plateEmittance: [b.plateEmittance, '1'],
      coverEmittance: [b.coverEmittance, '1'],
      wind: [a.conditions.windCoefficient, U],
      slope: [STANDARD.slope, '°'],
    }),
    step('panel-back-loss', [back, U], { conductivity, thickness: [b.backThickness, 'mm'] }),
    step('panel-edge-loss', [edge, U], {
      conductivity,
      thickness: [b.edgeThickness, 'mm'],
      edge: [b.edgeArea, 'm²'],
      area,
    }),
    step('panel-loss', [point.loss, U], { top: [point.topLoss, U], back: [back, U], edge: [edge, U] }),
    step('panel-fin', [fins({ ...b, loss: point.loss }), '-'], {
      conductivity: [b.plateConductivity, 'W/(m·K)'],
      thickness: [b.plateThickness, 'mm'],
      spacing: [b.tubeSpacing, 'mm'],
      tube: [b.tubeDiameter, 'mm'],
    }),
    step('panel-film', [b.filmCoefficient, U], { flow: [flow, 'm³/s'], bore: [b.innerDiameter, 'mm'] }),
    step('panel-efficiency-factor', [point.efficiencyFactor, '-'], { bond: [b.bondResistance, 'm·K/W'] }),
  ];
}

/** The line of the efficiency, and what else the papers would say. */
function lineSteps(a: Assessed): WorkingStep[] {
  const { outputs, masses, tubes, line, flow } = a;
  const eta0 = [line.eta0, '1'] as const;
  const a1 = [line.a1, U] as const;
  const a2 = [line.a2, 'W/(m²·K²)'] as const;
  const liquid = [masses.liquid, 'kg'] as const;
  return [
    step('panel-eta0', [line.eta0, '-'], {
      reduced: [line.points.map(({ reducedTemperature }) => reducedTemperature), 'm²·K/W'],
      efficiency: [line.points.map(({ efficiency }) => efficiency), '1'],
    }),
    step('panel-a1', a1),
    step('panel-a2', a2),
    step('panel-efficiency-at-work', [outputs.efficiencyAtWork, '-'], {
      eta0,
      a1,
      a2,
      difference: [WORK.difference, 'K'],
      light: [WORK.irradiance, 'W/m²'],
    }),
    step('panel-liquid', [outputs.fluidContent, 'm³'], { liquid }),
    step('panel-heat-capacity', [outputs.heatCapacity, 'J/(m²·K)'], {
      plate: [masses.plate, 'kg'],
      tubes: [masses.tubes, 'kg'],
      liquid,
      insulation: [masses.insulation, 'kg'],
      share: [0.01 * line.a1, '1'],
      covers: [masses.covers, 'kg'],
    }),
    step('panel-weight', [outputs.weightFull, 'kg/m²'], {
      empty: [outputs.weightEmpty, 'kg'],
      liquid,
      area: [a.grossArea, 'm²'],
    }),
    step(`panel-drop-${tubes.layout}`, [outputs.pressureDrop, 'Pa'], { water: [20, '°C'], flow: [flow, 'm³/s'] }),
    step('panel-stagnation', [outputs.stagnationTemperature, '°C'], {
      light: [STAGNATION.irradiance, 'W/m²'],
      air: [STAGNATION.ambientTemperature, '°C'],
    }),
  ];
}
