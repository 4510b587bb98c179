/** The working of a survey, line by line. */
import { show as digits, line as step, type WorkingStep } from '../../input/working.ts';
import { type Assessed, STANDARD, WORK } from './assess.ts';
import { fins } from './fin.ts';

const dB = 'Duffie & Beckman (2013)';

/** The working of a panel, for the middle point of the line. @internal */
export const surveySteps = (a: Assessed): WorkingStep[] => [...plateSteps(a), ...lineSteps(a)];

/** From the aperture to the collector efficiency factor. */
function plateSteps(a: Assessed): WorkingStep[] {
  const { build: b, tubes, line, flow } = a;
  const point = line.points[2]!;
  const { loss } = point;
  const fin = fins({ ...b, loss });
  const back = b.insulationConductivity / b.backThickness;
  const edge = (b.insulationConductivity / b.edgeThickness) * (b.edgeArea / b.area);
  const at = `with ${point.inletTemperature} °C at the inlet, ${STANDARD.irradiance} W/m² and ${STANDARD.ambientTemperature} °C`;
  return [
    step(
      'aperture',
      'A = length × width, less the rim',
      `${digits(tubes.length)} m × ${digits(tubes.width)} m`,
      [b.area, 'm²'],
      'geometry',
    ),
    step(
      'light taken by the plate',
      '(τα) × light left by dirt and age',
      `${digits(a.transmittanceAbsorptance)} × ${digits(b.transmittanceAbsorptance / a.transmittanceAbsorptance)}`,
      [b.transmittanceAbsorptance, '-'],
      `${dB} §5.1 to 5.5; condition: judgement`,
    ),
    step(
      'plate',
      `T_p by iteration, ${at}`,
      'see the points of the line',
      [point.plateTemperature, '°C'],
      `${dB} §6.9`,
    ),
    step(
      'loss through the covers',
      'U_t',
      `T_p ${digits(point.plateTemperature)} °C, N ${b.covers}, ε_p ${digits(b.plateEmittance)}, ε_g ${b.coverEmittance}, h_w ${digits(a.conditions.windCoefficient)}, β ${STANDARD.slope}°`,
      [point.topLoss, 'W/(m²·K)'],
      'Klein 1979',
    ),
    step(
      'loss of the back',
      'U_b = k/thickness',
      `${digits(b.insulationConductivity)}/${digits(b.backThickness)}`,
      [back, 'W/(m²·K)'],
      `${dB} §6.4`,
    ),
    step(
      'loss of the edge',
      'U_e = (k/thickness) perimeter × height/A',
      `${digits(b.insulationConductivity)}/${digits(b.edgeThickness)} × ${digits(b.edgeArea)}/${digits(b.area)}`,
      [edge, 'W/(m²·K)'],
      `${dB} §6.4`,
    ),
    step(
      'loss of the panel',
      'U_L = U_t + U_b + U_e',
      `${digits(point.topLoss)} + ${digits(back)} + ${digits(edge)}`,
      [loss, 'W/(m²·K)'],
      `${dB} §6.4`,
    ),
    step(
      'fin efficiency',
      'F = tanh(x)/x, x = √(U_L/(k δ)) (W − D)/2',
      `k ${digits(b.plateConductivity)}, δ ${digits(b.plateThickness)} m, W ${digits(b.tubeSpacing)} m, D ${digits(b.tubeDiameter)} m`,
      [fin, '-'],
      `${dB} §6.5`,
    ),
    step(
      'film inside the tubes',
      'h = Nu k/D_i',
      `${digits(flow * 60_000)} L/min through the panel, D_i ${digits(b.innerDiameter)} m`,
      [b.filmCoefficient, 'W/(m²·K)'],
      'laminar 4.364, times the allowance for inlets',
    ),
    step(
      'collector efficiency factor',
      "F' = (1/U_L)/{W [1/(U_L (D + (W − D) F)) + 1/C_b + 1/(π D_i h)]}",
      `1/C_b ${digits(b.bondResistance)} m·K/W`,
      [point.efficiencyFactor, '-'],
      `${dB} eq. 6.5.18`,
    ),
  ];
}

/** The line of the efficiency, and what else the papers would say. */
function lineSteps(a: Assessed): WorkingStep[] {
  const { outputs, masses, tubes, line, flow } = a;
  return [
    step(
      'eta0',
      'least squares of η = eta0 − a1 x − a2 G x² over five points',
      line.points.map(({ reducedTemperature: x, efficiency }) => `(${digits(x, 3)}; ${digits(efficiency)})`).join(' '),
      [line.eta0, '-'],
      'ISO 9806 form',
    ),
    step('a1', 'the same', 'see above', [line.a1, 'W/(m²·K)'], 'ISO 9806 form'),
    step('a2', 'the same', 'see above', [line.a2, 'W/(m²·K²)'], 'ISO 9806 form'),
    step(
      'efficiency at work',
      'eta0 − (a1 + a2 d) d/G',
      `${digits(line.eta0)} − (${digits(line.a1)} + ${digits(line.a2)} × ${WORK.difference}) × ${WORK.difference}/${WORK.irradiance}`,
      [outputs.efficiencyAtWork, '-'],
      'ISO 9806 form',
    ),
    step(
      'liquid',
      'tubes and headers',
      `${digits(masses.liquid)} kg of water`,
      [outputs.fluidContent, 'm³'],
      'geometry',
    ),
    step(
      'heat capacity',
      'Σ weight × mass × c over A',
      `plate ${digits(masses.plate, 3)} kg, tubes ${digits(masses.tubes, 3)}, water ${digits(masses.liquid, 3)}, half of the insulation ${digits(masses.insulation, 3)}, ${digits(0.01 * line.a1, 2)} of the cover ${digits(masses.covers, 3)}`,
      [outputs.heatCapacity, 'J/(m²·K)'],
      'EN ISO 9806, calculation of the capacity, from memory',
    ),
    step(
      'weight full',
      'Σ mass over gross area',
      `(${digits(outputs.weightEmpty, 3)} + ${digits(masses.liquid, 3)}) kg/${digits(a.grossArea)} m²`,
      [outputs.weightFull, 'kg/m²'],
      'densities: handbook',
    ),
    step(
      'pressure drop',
      `Darcy–Weisbach, ${tubes.layout}`,
      `water 20 °C, ${digits(flow * 60_000)} L/min`,
      [outputs.pressureDrop, 'Pa'],
      'loop page of the theory',
    ),
    step(
      'stagnation',
      '(τα) G = U_L(T_p) (T_p − T_a)',
      '1000 W/m², 30 °C, still air (half of h_w)',
      [outputs.stagnationTemperature, '°C'],
      'Klein 1979, extrapolated above 200 °C',
    ),
  ];
}
