/** Cheap tests and what they show, as codes. */

/** All tests. */
export const CARDS = [
  'catch-vessel',
  'pump-by-ear',
  'pressure-cold',
  'pressure-swing',
  'pipes-at-noon',
  'hot-pipe-before-sunrise',
  'panels-from-the-ground',
  'stops-early',
  'controller-display',
  'tap-by-thermometer',
  'heater-display',
  'tank-while-drawing',
  'gurgling',
  'second-thermometer',
  'module-voltage',
  'second-pressure-gauge',
  'tank-drain',
  'vessel-pin',
  'air-vent',
  'coil-by-the-hour',
] as const;

/** Name of a test. */
export type CardCode = (typeof CARDS)[number];

/** All outcomes of tests. */
export const OUTCOMES = [
  'wet',
  'dry',
  'silent-or-jerking',
  'hums',
  'lower',
  'as-filled',
  'swings-wide',
  'swings-as-usual',
  'cold-or-far-apart',
  'both-hot',
  'both-cooler',
  'as-usual',
  'warm-at-night',
  'cold-at-night',
  'dirt-fog-or-shadow',
  'clean-in-sun',
  'stops-in-sun',
  'runs-on',
  'shows-limit',
  'shows-sensor',
  'shows-running',
  'tap-cool',
  'tap-as-set',
  'off-its-setting',
  'at-its-setting',
  'top-falls-at-once',
  'top-holds',
  'gurgles',
  'quiet',
  'differ',
  'agree',
  'hardly-any-voltage',
  'full-voltage',
  'grit-or-slow',
  'runs-clear',
  'liquid-or-no-gas',
  'gas-at-its-mark',
  'air-comes',
  'fluid-comes',
  'far-above-tank',
  'near-tank',
] as const;

/** What one sees, hears or reads. */
export type OutcomeCode = (typeof OUTCOMES)[number];
