// Lines of the workings of the glycol: how much, how strong, how old, how thin.
import type { StepCode } from '@noonloop/sim-core';
import type { LineWords } from './line-words.ts';

const PRACTICE = 'common practice, no source';
const INVERTED = 'Melinder 2010, inverted';

/** By code. */
export const GLYCOL_LINES: Readonly<
  Record<
    Extract<StepCode, `share-${string}` | `glycol-${string}` | `ageing-${string}` | `thinning-${string}`>,
    LineWords
  >
> = {
  'share-coldest': {
    quantity: 'coldest absorber',
    formula: 'T_min = T_air − s D/a1, hour by hour without light',
    numbers: '{hour}: {air} − {fall}',
    source: 'steady; long-wave of the file, or Berdahl & Martin 1984 with a cloudless sky',
  },
  'share-freezing-point': {
    quantity: 'freezing point wanted',
    formula: 'T_min − margin',
    numbers: '{coldest} − {margin}',
    source: `margin {3 K} to {5 K}: ${PRACTICE}`,
  },
  'share-by-mass': { quantity: 'glycol by mass', formula: 'freezing point(x) = T', source: INVERTED },
  'share-by-volume': {
    quantity: 'glycol by volume',
    formula: 'v = (x/ρ_g)/(x/ρ_g + (1 − x)/ρ_w)',
    numbers: 'the larger of {needed} and the least {least} by mass',
    source: 'volumes before mixing at {20 °C}',
  },
  'share-glycol': {
    quantity: 'glycol to pour in',
    formula: 'v × (liquid of the loop + liquid in the vessel when filled)',
    numbers: '{share} × ({loop} + {vessel})',
    source: 'mixing shrinks by up to a hundredth: top up with mixture, never with water',
  },
  'glycol-by-freezing-point': {
    quantity: 'glycol by mass',
    formula: 'freezing point(x) = reading',
    numbers: '{shown} ± {give}',
    source: INVERTED,
  },
  'glycol-by-refractive-index': {
    quantity: 'glycol by mass',
    formula: '(n² − 1)/(n² + 2) = ρ (x r_g + (1 − x) r_w)',
    numbers: '{shown} ± {give} at {sample}',
    source: 'Lorentz & Lorenz, density of Melinder 2010; pure indices from memory',
  },
  'glycol-by-brix': {
    quantity: 'glycol by mass',
    formula: 'n(°Bx) of sugar = n(x) of glycol',
    numbers: '{shown} ± {give}',
    source: 'ICUMSA table from memory; Lorentz & Lorenz with Melinder 2010',
  },
  'glycol-by-density': {
    quantity: 'glycol by mass',
    formula: 'ρ(x, t) = reading',
    numbers: '{shown} ± {give} at {sample}',
    source: INVERTED,
  },
  'glycol-freezing-point': {
    quantity: 'freezing point',
    formula: 'Melinder’s curve at x',
    numbers: 'x = {share}, weakest {weakest}: {ofWeakest}',
    source: 'Melinder 2010',
  },
  'ageing-hours': {
    quantity: 'equivalent hours',
    formula: 'Σ 2^((T − limit)/ΔT)',
    numbers: 'limit {limit}, ΔT {doubling}, 8760 hours; where it boiled out, T up to {hottest}',
    source: 'pace: rule of thumb',
  },
  'ageing-next-test': {
    quantity: 'months to the next test',
    formula: '12 × hours worth a test/equivalent hours, 3 to 12',
    numbers: '12 × {worth}/{hours}',
    source: `yearly at least: ${PRACTICE}`,
  },
  'thinning-volume': {
    quantity: 'stirred volume',
    formula: 'collectors + pipe + coil + liquid in the vessel',
    numbers: '{parts} + {vessel}',
    source: 'geometry; gas law',
  },
  'thinning-least': {
    quantity: 'share that still protects',
    formula: 'freezing point(x*) = T_min',
    numbers: '{coldest}',
    source: INVERTED,
  },
  'thinning-days': {
    quantity: 'days until protection is gone',
    formula: 't* = (V/q) ln[x_0 ρ(x_0)/(x* ρ(x*))]',
    numbers: '{volume}/({leak}) × ln({start}/{end})',
    source: 'mass balance of a stirred volume',
  },
};
