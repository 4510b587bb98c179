// Lines of the workings of pressures and vessels.
import type { StepCode } from '@noonloop/sim-core';
import type { LineWords } from './line-words.ts';

const PRACTICE = 'common practice, no source';
const STANDARD = 'EN 12828, from memory';
const GAS_LAW = 'gas law, isothermal';
const PRESSED = '{vessel} × {precharge}/{gas} − {air}';
const SMALL_RULE = '20 % of a vessel of up to {0.015 m³}';
const RULE = '0.5 % of V_system, at least {0.003 m³}';

/** By code. */
export const LOOP_LINES: Readonly<
  Record<Extract<StepCode, `loop-${string}` | `vessel-${string}` | `potable-${string}`>, LineWords>
> = {
  'loop-relief': { quantity: 'relief valve', formula: 'of the design', source: 'design' },
  'loop-relief-chosen': {
    quantity: 'relief valve',
    formula: 'highest setting sold that the weakest part bears',
    numbers: 'rated {rated}; sold {sold}',
    source: PRACTICE,
  },
  'loop-end-pressure': {
    quantity: 'end pressure',
    formula: 'relief less {5e4 Pa}, above {5e5 Pa} less 10 %',
    numbers: 'relief {relief}',
    source: STANDARD,
  },
  'loop-column': {
    quantity: 'column of liquid',
    formula: 'ρ g H',
    numbers: '{density} × g × {height}',
    source: 'hydrostatics',
  },
  'loop-fill-pressure': {
    quantity: 'fill pressure, loop cold',
    formula: 'ρ g H + top pressure',
    numbers: '{column} + {top}',
    source: 'makers’ manuals: {1e5 Pa} or {1.3e5 Pa} and {1e4 Pa} for each {1 m}',
  },
  'loop-liquid': {
    quantity: 'liquid of the loop',
    formula: 'collectors + pipe + coil',
    source: 'geometry of the design',
  },
  'loop-expansion': {
    quantity: 'expansion volume',
    formula: 'V_e = [ρ(T_fill)/ρ(T_max) − 1] V_system',
    numbers: '{coefficient} × {volume}, to {hot}',
    source: '{fluid}; a glycol’s density is extrapolated above {100 °C}',
  },
  'loop-steam-reach': {
    quantity: 'steam reaches',
    formula: "L = P A/[U' (T_s − {30 °C})]",
    numbers: '{power} at {perArea}; steam of {steam} at the end pressure; pipe of {pipe}, there and back',
    source: 'IEA SHC Task 26, from memory: {50 W/m²} where the array empties well, {120 W/m²} where badly',
  },
  'loop-steam-volume': {
    quantity: 'steam volume',
    formula: 'collectors, and pipe as far as steam reaches',
    source: 'geometry of the design',
  },
  'loop-smallest-vessel': {
    quantity: 'smallest vessel',
    formula: 'V_N = (V_e + V_steam)(p_end + p_air)/(p_end − p_fill) + V_reserve',
    numbers: '({expansion} + {steam}) × {endAbsolute}/({end} − {fill}) + reserve',
    source: STANDARD,
  },
  'loop-vessel': { quantity: 'vessel sold', formula: 'list', numbers: '{sold}', source: PRACTICE },
  'loop-reserve-small': {
    quantity: 'reserve in it, loop cold',
    formula: SMALL_RULE,
    numbers: '{share} of {vessel}',
    source: STANDARD,
  },
  'loop-reserve': {
    quantity: 'reserve in it, loop cold',
    formula: RULE,
    numbers: '{share} of {vessel}',
    source: STANDARD,
  },
  'loop-precharge': {
    quantity: 'pre-charge',
    formula: 'p_pre = (p_fill + p_air)(1 − V_reserve/V_N) − p_air',
    numbers: '{fill} × (1 − {reserve}/{vessel}) − {air}',
    source: `${GAS_LAW}; makers’ manuals: {3e4 Pa} or {5e4 Pa} below the fill pressure`,
  },
  'loop-hot': {
    quantity: 'pressure hot',
    formula: 'p = V_N (p_pre + p_air)/(V_N − w) − p_air',
    numbers: PRESSED,
    source: GAS_LAW,
  },
  'loop-with-steam': {
    quantity: 'pressure with steam',
    formula: 'the same, steam’s volume pushed in',
    numbers: PRESSED,
    source: GAS_LAW,
  },
  'loop-boiling': {
    quantity: 'boiling at the top',
    formula: 't_sat(p_top/y)',
    numbers: '{top} absolute',
    source: 'IF97, Raoult',
  },
  'vessel-coefficient': {
    quantity: 'expansion coefficient',
    formula: 'e = ρ(T_fill)/ρ(T_max) − 1',
    numbers: '{fillDensity}/{hotDensity} − 1',
    source: '{fluid}',
  },
  'vessel-coefficient-beyond': {
    quantity: 'expansion coefficient',
    formula: 'e = ρ(T_fill)/ρ(T_max) − 1',
    numbers: '{fillDensity}/{hotDensity} − 1',
    source: '{fluid}; extrapolated above {validTo}',
  },
  'vessel-expansion': {
    quantity: 'expansion volume',
    formula: 'V_e = e V_system',
    numbers: '{coefficient} × {volume}',
    source: STANDARD,
  },
  'vessel-reserve-given': { quantity: 'water reserve', formula: 'given', source: 'given' },
  'vessel-reserve-small': { quantity: 'water reserve', formula: SMALL_RULE, source: STANDARD },
  'vessel-reserve': { quantity: 'water reserve', formula: RULE, source: STANDARD },
  'vessel-smallest': {
    quantity: 'smallest vessel',
    formula: 'V_N = (V_e + V_steam + V_reserve) (p_end + p_air)/(p_end − p_pre)',
    numbers: '({expansion} + {steam} + {reserve}) × {endAbsolute}/({end} − {precharge})',
    source: `${STANDARD}; steam volume: common practice`,
  },
  'vessel-fill': {
    quantity: 'fill pressure',
    formula: 'p = V_N (p_pre + p_air)/(V_N − V_reserve) − p_air',
    numbers: '{vessel} × {precharge}/({vessel} − {reserve}) − {air}',
    source: GAS_LAW,
  },
  'potable-expansion': {
    quantity: 'water that the tank gives off',
    formula: 'V_e = V_tank [ρ(t_cold)/ρ(t_hot) − 1]',
    numbers: '{volume} × [{coldDensity}/{hotDensity} − 1], {cold} to {hot}',
    source: 'IAPWS SR6-08',
  },
  'potable-smallest': {
    quantity: 'smallest vessel',
    formula: 'V_N = V_e (p_end + p_air)/(p_end − p_supply)',
    numbers: '{expansion} × {endAbsolute}/({end} − {supply})',
    source: `${GAS_LAW}; end pressure nine tenths of the relief valve’s`,
  },
  'potable-vessel': { quantity: 'vessel sold', formula: 'next size of the list', source: PRACTICE },
};
