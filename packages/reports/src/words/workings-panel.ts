// Lines of the workings of a surveyed panel and of a yard test.
import type { StepCode } from '@noonloop/sim-core';
import type { LineWords } from './line-words.ts';

const BOOK = 'Duffie & Beckman (2013)';
const LINE = { formula: 'least squares of η = eta0 − a1 x − a2 G x² over five points', source: 'ISO 9806 form' };
const HEAT = {
  quantity: 'heat of reading {reading}',
  formula: 'q = ρ c_p V̇ (t_out − t_in)/A + C dt_m/dt',
  source: '{fluid}; error: JCGM 100',
};
const OF_LINE = '; the line gives {ofLine}, ± {error} by the tools';
const FIT = {
  formula: 'q = eta0 K G − a1 d − a2 d |d|, weighted least squares',
  numbers: 'K G: {light}; d: {difference}',
  source: 'ISO 9806 form; K: b0',
};
const DROP = { quantity: 'pressure drop', numbers: 'water {water}, {flow}', source: 'loop page of the theory' };

/** By code. */
export const PANEL_LINES: Readonly<Record<Extract<StepCode, `panel-${string}` | `yard-${string}`>, LineWords>> = {
  'panel-aperture': {
    quantity: 'aperture',
    formula: 'A = length × width, less the rim',
    numbers: '{length} × {width}',
    source: 'geometry',
  },
  'panel-light': {
    quantity: 'light taken by the plate',
    formula: '(τα) × light left by dirt and age',
    numbers: '{clean} × {left}',
    source: `${BOOK} §5.1 to 5.5; condition: judgement`,
  },
  'panel-plate': {
    quantity: 'plate',
    formula: 'T_p by iteration',
    numbers: '{inlet} at the inlet, {light} and {air}',
    source: `${BOOK} §6.9`,
  },
  'panel-top-loss': {
    quantity: 'loss through the covers',
    formula: 'U_t',
    numbers: 'T_p {plate}, N {covers}, ε_p {plateEmittance}, ε_g {coverEmittance}, h_w {wind}, β {slope}',
    source: 'Klein 1979',
  },
  'panel-back-loss': {
    quantity: 'loss of the back',
    formula: 'U_b = k/thickness',
    numbers: '{conductivity}/{thickness}',
    source: `${BOOK} §6.4`,
  },
  'panel-edge-loss': {
    quantity: 'loss of the edge',
    formula: 'U_e = (k/thickness) perimeter × height/A',
    numbers: '{conductivity}/{thickness} × {edge}/{area}',
    source: `${BOOK} §6.4`,
  },
  'panel-loss': {
    quantity: 'loss of the panel',
    formula: 'U_L = U_t + U_b + U_e',
    numbers: '{top} + {back} + {edge}',
    source: `${BOOK} §6.4`,
  },
  'panel-fin': {
    quantity: 'fin efficiency',
    formula: 'F = tanh(x)/x, x = √(U_L/(k δ)) (W − D)/2',
    numbers: 'k {conductivity}, δ {thickness}, W {spacing}, D {tube}',
    source: `${BOOK} §6.5`,
  },
  'panel-film': {
    quantity: 'film inside the tubes',
    formula: 'h = Nu k/D_i',
    numbers: '{flow} through the panel, D_i {bore}',
    source: 'laminar 4.364, times the allowance for inlets',
  },
  'panel-efficiency-factor': {
    quantity: 'collector efficiency factor',
    formula: "F' = (1/U_L)/(W [1/(U_L (D + (W − D) F)) + 1/C_b + 1/(π D_i h)])",
    numbers: '1/C_b {bond}',
    source: `${BOOK} eq. 6.5.18`,
  },
  'panel-eta0': { quantity: 'eta0', ...LINE, numbers: 'x: {reduced}; η: {efficiency}' },
  'panel-a1': { quantity: 'a1', ...LINE, numbers: 'the same points' },
  'panel-a2': { quantity: 'a2', ...LINE, numbers: 'the same points' },
  'panel-efficiency-at-work': {
    quantity: 'efficiency at work',
    formula: 'eta0 − (a1 + a2 d) d/G',
    numbers: '{eta0} − ({a1} + {a2} × {difference}) × {difference}/({light})',
    source: 'ISO 9806 form',
  },
  'panel-liquid': {
    quantity: 'liquid',
    formula: 'tubes and headers',
    numbers: '{liquid} of water',
    source: 'geometry',
  },
  'panel-heat-capacity': {
    quantity: 'heat capacity',
    formula: 'Σ weight × mass × c over A',
    numbers:
      'plate {plate}, tubes {tubes}, water {liquid}, half of the insulation {insulation}, {share} of the cover {covers}',
    source: 'EN ISO 9806, calculation of the capacity, from memory',
  },
  'panel-weight': {
    quantity: 'weight full',
    formula: 'Σ mass over gross area',
    numbers: '({empty} + {liquid})/{area}',
    source: 'densities: handbook',
  },
  'panel-drop-harp': { ...DROP, formula: 'Darcy–Weisbach, tubes side by side' },
  'panel-drop-serpentine': { ...DROP, formula: 'Darcy–Weisbach, one tube to and fro' },
  'panel-stagnation': {
    quantity: 'stagnation',
    formula: '(τα) G = U_L(T_p) (T_p − T_a)',
    numbers: '{light}, {air}, still air (half of h_w)',
    source: 'Klein 1979, extrapolated above {200 °C}',
  },
  'yard-heat': { ...HEAT, numbers: `{capacityRate} × ({outlet} − {inlet})${OF_LINE}` },
  'yard-heat-warming': {
    ...HEAT,
    numbers: `{capacityRate} × ({outlet} − {inlet}) + {capacity} × {warming}${OF_LINE}`,
  },
  'yard-eta0': { quantity: 'eta0', ...FIT },
  'yard-a1': { quantity: 'a1', ...FIT },
  'yard-a2': { quantity: 'a2', ...FIT },
};
