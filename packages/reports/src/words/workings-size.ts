// Lines of the workings of panels, tank, pipe, coil and pump.
import type { StepCode } from '@noonloop/sim-core';
import type { LineWords } from './line-words.ts';

type Of<Prefix extends string> = Extract<StepCode, `${Prefix}-${string}`>;

const PRACTICE = 'common practice, no source';
const START = '{modules} module(s) of {rated}';

/** By code. */
export const SIZE_LINES: Readonly<Record<Of<'array' | 'tank' | 'pipe' | 'coil' | 'pump'>, LineWords>> = {
  'array-demand': {
    quantity: 'demand of a day in {month}',
    formula: 'Q = ρ c V (t_tap − t_mains)',
    numbers: '{heat} × {volume} × ({tap} − {mains})',
    source: 'heat of water; mains as in the design',
  },
  'array-tank-loss': {
    quantity: 'loss of the tank while they cover it',
    formula: 'Q_l = UA (t_tap − t_room) 24 h',
    numbers: '{loss} × ({tap} − {room}) × 24 h',
    source: 'tank of the design, as warm as the taps want',
  },
  'array-gain': {
    quantity: 'gain of an area of panel in {month}',
    formula: 'q = η0 H_u − (a1 d + a2 d²) N_u',
    numbers: '{eta0} × {light} − ({a1} × {d} + {a2} × ({d})²) × {time}',
    source: 'ISO 9806 line over the hours with gain; d at the mean air of those hours, the value hour by hour',
  },
  'array-panel-heat': {
    quantity: 'heat of one panel',
    formula: 's A q',
    numbers: '{share} × {area} × {gain}',
    source: 's: judgement',
  },
  'array-panels': {
    quantity: 'panels for that month',
    formula: 'n = (Q + Q_l)/(s A q), the fewest that cover 95 %',
    numbers: '({demand} + {loss})/{perPanel} = {least}',
    source: 'the month with most surplus: more panels stand hot in it; fewer leave the tank colder and bring more each',
  },
  'array-year-share': {
    quantity: 'share of the year',
    formula: 'Σ days c Q/Σ days Q,  c Q = n s A q(t + Δ) − UA (t − t_room) 24 h,  t = t_mains + c (t_tap − t_mains)',
    numbers: '{panels} panels, twelve months',
    source: 'month by month, the fluid Δ above the tank; a simulation has the last word',
  },
  'tank-for-sun': {
    quantity: 'volume for the sun',
    formula: 'V = A q/(ρ c (t_max − t_start))',
    numbers: '{area} × {gain}/({heat} × ({highest} − {start}))',
    source: 'heat of water; a bright day without draw stays below the highest temperature',
  },
  'tank-for-draw': {
    quantity: 'volume for the draw',
    formula: 'V = days × V_day (t_tap − {10 °C})/({60 °C} − {10 °C})',
    numbers: '{days} × {volume} × {hotShare}',
    source: `hot water of {60 °C} mixed with mains of {10 °C}; days: ${PRACTICE}`,
  },
  'tank-per-area': {
    quantity: 'volume for an area of collector',
    formula: 'V/A',
    numbers: '{volume}/{area}',
    source: `{0.05 m³/m²} to {0.075 m³/m²}: ${PRACTICE}`,
  },
  'tank-sold': { quantity: 'next size sold', formula: 'list', numbers: '{sold}', source: PRACTICE },
  'pipe-flow-given': { quantity: 'flow', formula: 'given', source: 'given' },
  'pipe-flow-common': { quantity: 'flow', formula: '{common} × A', numbers: '{common} × {area}', source: PRACTICE },
  'pipe-velocity': {
    quantity: 'velocity',
    formula: 'v = 4 V̇/(π D²)',
    numbers: '4 × {flow}/(π × ({bore})²), tube {tube}',
    source: `at most {highest}: ${PRACTICE}`,
  },
  'pipe-head': {
    quantity: 'head',
    formula: 'H = (f L/D + Σ K) v²/(2 g)',
    numbers: 'Re {reynolds}, L {length}, Σ K {fittings}, fluid {fluid}',
    source: 'Darcy–Weisbach, Haaland 1983',
  },
  'pipe-head-cold': {
    quantity: 'head, fluid cold',
    formula: 'the same',
    numbers: 'fluid {fluid}',
    source: 'viscosity: Melinder 2010',
  },
  'pipe-loss-per-metre': {
    quantity: 'loss of a length of pipe',
    formula: "f/U' = ln(D_i/D)/(2 π k) + 1/(π D_i h)",
    numbers:
      "{bridges}/U' = ln({outer}/{tube})/(2 π × {conductivity}) + 1/(π × {outer} × {10 W/(m²·K)}), {thickness} of insulation",
    source: 'conduction through a shell; film h and factor f for heat bridges: judgement',
  },
  'pipe-loss': {
    quantity: 'loss of the pipe',
    formula: "U' L (t − t_air)",
    numbers: '{perMetre} × {length} × ({fluid} − {air})',
    source: 'steady',
  },
  'pipe-loss-share': {
    quantity: 'share of full-sun heat',
    formula: 'loss/(η0 G A)',
    numbers: '{loss}/({eta0} × {1000 W/m²} × {area})',
    source: 'judgement',
  },
  'pipe-resistance': {
    quantity: 'resistance of the insulation',
    formula: 'R = (D_i/2) ln(D_i/D)/k',
    numbers: '{radius} × ln({outer}/{tube})/{conductivity}; R-3 is {0.5283 m²·K/W}',
    source: 'US energy codes: R-3 above {40.6 °C}, from memory',
  },
  'pipe-outdoors': {
    quantity: 'insulation out of doors',
    formula: 'twice the tube’s outside, R-3, and the loss',
    numbers: 'tube of {tube}; indoors {thickness}, once its outside',
    source: 'European practice: 100 % of the tube indoors, 200 % out of doors, from memory',
  },
  'coil-heat': { quantity: 'heat in full sun', formula: 'P = q A', numbers: '{flux} × {area}', source: PRACTICE },
  'coil-per-metre': {
    quantity: 'conductance of a length of coil',
    formula: '1/UA = 1/(h_i A_i) + wall + scale + 1/(h_o A_o)',
    numbers: 'h_i {inside}, h_o {outside}, Re {reynolds}, {flow} at {fluid}',
    source: 'VDI heat atlas inside, Churchill & Chu 1975 outside',
  },
  'coil-length': {
    quantity: 'length',
    formula: "L = P/(U' Δt)",
    numbers: '{heat}/({conductance} × {difference})',
    source: `Δt {8 K} to {12 K}: ${PRACTICE}`,
  },
  'coil-surface': {
    quantity: 'outside surface',
    formula: 'π d_o L',
    numbers: 'π × {diameter} × {length}',
    source: 'geometry',
  },
  'coil-surface-per-area': {
    quantity: 'surface for an area of collector',
    formula: 'A_coil/A',
    numbers: '{surface}/{area}',
    source: `0.15 to 0.3 for smooth tube: ${PRACTICE}`,
  },
  'coil-effectiveness': {
    quantity: 'effectiveness',
    formula: 'ε = 1 − e^(−UA/(ρ c_p V̇))',
    numbers: '1 − e^(−({conductance})/({capacityRate}))',
    source: 'tank of one temperature around the coil',
  },
  'coil-collector-share': {
    quantity: 'what it leaves of the collectors’ heat',
    formula: '1/[1 + (A F_R U_L/(ṁ c_p))(1/ε − 1)]',
    numbers: 'F_R U_L {loss}, A {area}, ṁ c_p {capacityRate}',
    source: 'de Winter 1975',
  },
  'pump-module': {
    quantity: 'module for the start wanted',
    formula: 'P = P_start/(η_booster × P_mp(light)/P_rated)',
    numbers: '{power}/({efficiency} × {perRated}), in {light}',
    source: 'single diode, De Soto 2006; start power of the design',
  },
  'pump-start-booster': {
    quantity: 'start',
    formula: 'η_booster P_mp(light) = P_start',
    numbers: `{power}, ${START}`,
    source: 'bisection',
  },
  'pump-start-direct': {
    quantity: 'start',
    formula: 'I_standstill(light) = I_start',
    numbers: `{current}, ${START}`,
    source: 'bisection',
  },
  'pump-start-never': { quantity: 'start', formula: 'not reached up to {highest}', source: 'bisection' },
  'pump-stop-booster': {
    quantity: 'stop',
    formula: 'η_booster P_mp(light) = P_stop',
    numbers: `{power}, ${START}`,
    source: 'bisection',
  },
  'pump-stop-direct': {
    quantity: 'stop',
    formula: 'I_standstill(light) = I_friction',
    numbers: `{current}, ${START}`,
    source: 'bisection',
  },
  'pump-stop-never': { quantity: 'stop', formula: 'not reached up to {highest}', source: 'bisection' },
  'pump-flow': {
    quantity: 'flow in full sun',
    formula: 'pump curve at the power offered = Darcy–Weisbach',
    numbers: '{power}, fluid {fluid}',
    source: 'affinity laws; loop page of the theory',
  },
  'pump-flow-per-area': {
    quantity: 'flow for an area of collector',
    formula: 'V̇/A',
    numbers: '{flow}/{area}',
    source: `{low} (low flow) to {high} (high flow): ${PRACTICE}`,
  },
  'pump-warming': {
    quantity: 'warming through the array',
    formula: 'Δt = η0 G A/(ρ c_p V̇)',
    numbers: '{eta0} × {1000 W/m²} × {area}/({heat} × {flow})',
    source: 'cold tank; ρ c_p of loop fluids within 6 %',
  },
  'pump-dull': {
    quantity: 'flow on a dull morning',
    formula: 'the same, fluid cold',
    numbers: '{power} in {light}, fluid {fluid}',
    source: 'viscosity: Melinder 2010',
  },
  'pump-dull-standing': {
    quantity: 'flow on a dull morning',
    formula: 'the same, fluid cold',
    numbers: '{power} in {light}, fluid {fluid}: {flow}, but a standing pump does not start',
    source: 'viscosity: Melinder 2010',
  },
  'pump-best-start': {
    quantity: 'start that delivers most',
    formula: 'the year with each start',
    numbers: 'starts in {tried} deliver {delivered}; as designed, in {designed}, {asDesigned}',
    source: 'simulation of this roof; less with half that light: {half}, with twice: {twice}',
  },
};
